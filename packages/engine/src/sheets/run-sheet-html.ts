import type { Planned } from '../plan.ts'
import { scaleWords } from '../quantity/format.ts'
import { drawing } from './drawing.ts'
import type { Markup } from './markup.ts'
import { html, raw } from './markup.ts'
import { sentence } from './page-finding.ts'
import type { PageFont } from './page-font.ts'
import { FONT_LICENCE, fontFaces } from './page-font.ts'
import { batchesTitle, mlWords } from './run-mix.ts'
import type { RunAmounts, RunBlank, RunFact, RunTable } from './run-part.ts'
import { factLines } from './run-part.ts'
import type { RunFinding, RunSafety, RunSheet, RunSheetOptions, RunStep } from './run-sheet.ts'
import { runSheet } from './run-sheet.ts'
import { RUN_SHEET_STYLE } from './run-sheet-style.ts'
import { sha256Base64 } from './sha256.ts'

/** What the caller reads from files for the run sheet. */
export interface RunSheetAssets extends RunSheetOptions {
  /** The type it is set in; left out: what the reader's machine has. */
  readonly fonts?: readonly PageFont[]
}

/**
 * The run sheet as one page of HTML that asks for nothing else and runs no script: read on a screen, printed on
 * A4 or Letter. Every sheet of paper carries the piece's name, its number and what is gone on despite.
 * @throws Error for a font that is not base64
 */
export function runSheetHtml(planned: Planned, { fonts = [], ...options }: RunSheetAssets = {}): string {
  const s = runSheet(planned, options)
  const style = `${fontFaces(fonts)}${RUN_SHEET_STYLE}${paper(s)}`
  const policy = `default-src 'none'; style-src 'sha256-${sha256Base64(style)}'; font-src data:; base-uri 'none'; form-action 'none'`
  return html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<meta http-equiv="Content-Security-Policy" content="${raw(policy)}" />
<title>${s.name}: run sheet</title>
${fonts.length === 0 ? null : FONT_LICENCE}
<style>${raw(style)}</style>
</head>
<body>
<header>
<p class="top"><b>Run sheet</b><span>planned ${s.asOf.slice(0, 10)}</span></p>
<h1>${s.name}</h1>
${s.about === null ? null : html`<p class="about">${s.about}</p>`}
${facts(s.facts, 'head facts')}
${s.quantity === null ? null : html`<p class="all">${s.quantity}</p>`}
<p class="verdict">${s.verdict}</p>
${s.preview ? html`<p class="plain"><b>First pass.</b> Heat and cure are coarse; figures may still move.</p>` : null}
${s.despite.map(d => html`<div class="over" role="note"><p><b>Gone on despite ${d.id}.</b> ${d.says}</p><p><b>Because:</b> ${d.because}</p></div>`)}
</header>
<main>
${standing(s)}
${s.programs === null ? null : html`<section aria-labelledby="programs"><h2 id="programs">Programs</h2>${table(s.programs)}</section>`}
${s.written ? steps(s) : notWritten(s)}
</main>
<p class="closing">${s.closing}</p>
</body>
</html>
`.text
}

// What stands at the edge of every printed sheet. Words are written sign by sign, so none can end the string.
function paper(s: RunSheet): string {
  const despite = s.despite.map(d => `despite ${d.id}`).join(', ')
  const left = `${s.name}${despite === '' ? '' : `, gone on ${despite}`}${s.written ? '' : ', not written: a stop stands'}`
  const words =
    'font:400 9pt "Alegreya Sans","Gill Sans",system-ui,sans-serif;color:#45413b;vertical-align:top;padding-top:3mm'
  return `@page{margin:13mm 14mm 17mm;@bottom-left{content:${cssString(left)};${words};width:80%;text-align:left}@bottom-right{content:counter(page) " of " counter(pages);${words}}}`
}

function cssString(text: string): string {
  const signs = [...text].map(c =>
    /^[A-Za-z0-9 .,:-]$/.test(c) ? c : `\\${c.codePointAt(0)!.toString(16)} `
  )
  return `"${signs.join('')}"`
}

const KIND = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const

function standing(s: RunSheet): Markup | null {
  const list = s.findings.filter(f => f.because === null)
  if (list.length === 0) return null
  return html`<section aria-labelledby="stands"><h2 id="stands">What stands</h2>${list.map(f => {
    const where = f.step === null || !s.written ? f.about : `${f.about}, step ${f.step}`
    return html`<div class="find ${f.kind}"><p><span class="k">${KIND[f.kind]} ${f.number}, ${where}.</span> ${f.says}</p>${more(f)}</div>`
  })}</section>`
}

function more(f: RunFinding): Markup | null {
  if (f.fix === null && f.settledBy === null) return null
  const fix = f.fix === null ? null : html`Smallest change: <b>${f.fix}</b>. `
  return html`<p class="fix">${fix}${f.settledBy === null ? null : sentence(`Settled by ${f.settledBy}`)}</p>`
}

function steps(s: RunSheet): Markup {
  let day = ''
  const rows = s.steps.map(step => {
    const head = step.day === day ? null : html`<li class="day">${step.day}</li>`
    day = step.day
    return html`${head}${stepRow(step)}`
  })
  return html`<section aria-labelledby="steps"><h2 id="steps">Steps</h2><p class="plain">${s.clock}</p><ol>${rows}</ol></section>`
}

function notWritten(s: RunSheet): Markup {
  return html`<section aria-labelledby="steps"><h2 id="steps">Run sheet not written while a stop stands</h2>
<p class="plain">The ${s.keptBack} steps are written once what stands is cleared, or gone on despite with a reason.</p></section>
${s.steps.length === 0 ? null : html`<section aria-labelledby="begun"><h2 id="begun">Begun already</h2><ol>${s.steps.map(stepRow)}</ol></section>`}
<section aria-labelledby="safe"><h2 id="safe">Making safe</h2>${safety(s.makingSafe)}</section>`
}

function stepRow(s: RunStep): Markup {
  const brief = [s.face, s.brief].filter(x => x !== '')
  return html`<li class="step${s.kind === 'wait' ? ' wait' : ''}" id="step-${s.number}"><span class="box" role="img" aria-label="to tick"></span><div>
<div class="r"><h3><span class="n">${s.number}</span>${s.title}</h3>${s.when === '' ? null : html`<p class="when">${s.when}</p>`}</div>
${brief.length === 0 ? null : html`<p class="brief">${brief.map(b => html`<span>${b}</span>`)}</p>`}
${s.findings.map(stepFinding)}
${s.amounts === null ? null : amounts(s.amounts)}
${s.does.length === 0 ? null : html`<ul class="does">${s.does.map(d => html`<li>${d}</li>`)}</ul>`}
${factLines(s.facts).map(l => facts(l, 'facts'))}
${s.sanding === null ? null : table(s.sanding)}
${s.table === null ? null : table(s.table)}
${s.course === null ? null : drawing(s.course.sheet, 'course', s.course.words)}
${s.windows === null ? null : table(s.windows, 'when-table')}
${s.blanks.length === 0 ? null : html`<ul class="fill">${s.blanks.map(blank)}</ul>`}
${safety(s.safety)}</div></li>`
}

function stepFinding(f: RunFinding): Markup {
  return f.because === null
    ? html`<div class="find ${f.kind}"><p><span class="k">${KIND[f.kind]} ${f.number}.</span> ${f.says}</p></div>`
    : html`<div class="find despite"><p><span class="k">Gone on despite ${f.id}.</span> ${f.says} <b>Because:</b> ${f.because}</p></div>`
}

function facts(list: readonly RunFact[], name: string): Markup {
  return html`<dl class="${name}">${list.map(f => html`<div><dt>${f.label}</dt><dd>${f.value}${f.unit === '' ? null : html` <u>${f.unit}</u>`}</dd></div>`)}</dl>`
}

function amounts(a: RunAmounts): Markup {
  const title = batchesTitle(a)
  const weigh = (g: string) => html`<td>${g}<u>g</u></td>`
  return html`<table class="mix"><thead><tr><th scope="col">${title}</th>${a.shares.map(s => html`<th scope="col">${s.name}</th>`)}<th scope="col">Total</th></tr></thead>
<tbody><tr class="g"><th scope="row">weigh</th>${a.shares.map(s => weigh(s.words))}${weigh(scaleWords(a.totalG, a.places))}</tr>
<tr class="ml"><th scope="row">or measure</th>${a.shares.map(s => html`<td>${s.ml === null ? null : html`${mlWords(s.ml)}<u>ml</u>`}</td>`)}<td></td></tr></tbody></table>
<p class="cups">${
    a.batches === 1
      ? null
      : Array.from({ length: a.batches }, (_, k) => html`<span class="tick"><i></i>${k + 1}</span>`)
  }In a ${a.vessel}.</p>`
}

function table(t: RunTable, name = ''): Markup {
  return html`<table class="list ${name}"><caption>${t.title}</caption><thead><tr>${t.head.map(h => html`<th scope="col">${h}</th>`)}</tr></thead><tbody>${t.rows.map(
    r => html`<tr>${r.map((c, i) => (i === 0 ? html`<th scope="row">${c}</th>` : html`<td>${c}</td>`))}</tr>`
  )}</tbody></table>`
}

function blank(b: RunBlank): Markup {
  return html`<li><span class="l">${b.label}</span>${b.planned === null ? null : html` <span class="p">plan ${b.planned}</span>`}<span class="w"></span><u>${b.unit}</u></li>`
}

function safety(lines: readonly RunSafety[]): Markup | null {
  if (lines.length === 0) return null
  return html`<div class="safety"><p class="s">Safety</p><ul>${lines.map(
    l => html`<li>${l.line} <em>Gives way to ${l.defersTo.join('; ')}.</em></li>`
  )}</ul></div>`
}
