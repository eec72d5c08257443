import type { Days } from '../days-answer.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan, Planned } from '../plan.ts'
import { dayTimes } from './day-times.ts'
import type { Markup } from './markup.ts'
import { html, raw, scriptJson } from './markup.ts'
import { coreModelOf } from './model.ts'
import { layersPart } from './page-card.ts'
import type { Numbered } from './page-finding.ts'
import { counts, numbered, sentence } from './page-finding.ts'
import type { PageFont } from './page-font.ts'
import { FONT_LICENCE, fontFaces } from './page-font.ts'
import { buyPart, mouldPart, quantityPart } from './page-lists.ts'
import { placed } from './page-place.ts'
import { programsPart } from './page-programs.ts'
import { sheetPart } from './page-sheet.ts'
import { stepsPart } from './page-steps.ts'
import type { ProvedSet } from './run-programs.ts'
import { sha256Base64 } from './sha256.ts'
import type { Addressed } from './sheet-views.ts'
import { sheetViews } from './sheet-views.ts'

/** What the caller reads from files: the engine reads none. */
export interface PageAssets {
  /** The page's script and style, whole. */
  readonly script: string
  readonly style: string
  readonly fonts: readonly PageFont[]
  /** Said over the job card: that a piece is invented, say. */
  readonly notice?: string
  /** Programs as they were made and proved; left out: none were. */
  readonly programs?: ProvedSet | null
  /** The calendar of the piece; left out: days count waits only. */
  readonly days?: Days | null
}

/**
 * A plan as one page that asks for nothing else: drawing sheet, job card, buy list and mould. Script and style
 * are named by their hashes in a content security policy that allows no request of any kind. It is written in the
 * shop's units, like the sheets on paper.
 * `address` gives pictures an address of their own (`data:`); without it the plan shows level parts alone.
 * @throws Error for a script or style that would end its own element
 */
export function page(planned: Planned, assets: PageAssets, address?: Addressed): string {
  const { plan, work } = planned
  const L = lengthsOf(work.shop)
  const model = coreModelOf(work, L.shown)
  const all = numbered(plan)
  const at = placed(plan, all)
  const { markup: sheet, data } = sheetPart(plan, work, model, sheetViews(work, model, address))
  // A browser reads every line end as a line feed before it hashes.
  const style = `${fontFaces(assets.fonts)}${assets.style}`.replace(/\r\n?/g, '\n')
  const script = assets.script.replace(/\r\n?/g, '\n')
  refuseEnd(style, 'style')
  refuseEnd(script, 'script')
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${sha256Base64(script)}'`,
    `style-src 'sha256-${sha256Base64(style)}'`,
    'font-src data:',
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'"
  ].join('; ')
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${raw(policy)}">
<meta name="color-scheme" content="light dark">
<title>${plan.name}: plan</title>
${FONT_LICENCE}
<style>${raw(style)}</style>
</head>
<body>
<a class="skip" href="#card">To the job card</a>
<header class="top"><p class="mark">Castwright</p><h1>${plan.name}</h1><div class="tools"><span>planned ${plan.asOf.slice(0, 10)}, ${L.unit}, ${L.degree}, g</span><button type="button" class="link" id="theme" hidden>Dim</button></div></header>
${verdict(plan, all, L)}
<main>
${sheet}
<div class="card" id="card" role="region" aria-label="Job card">
${notices(planned, assets.notice)}
${layersPart(plan, work, model, L, at)}
${stepsPart(plan, work, L, at, all, dayTimes(assets.days ?? null, work))}
</div>
<div class="lists">
${quantityPart(plan)}
${programsPart(assets.programs ?? null, plan.verdict !== 'stop')}
${buyPart(plan, L)}
${mouldPart(plan, work, at)}
</div>
</main>
<footer><p>Figures carry their basis where they are judged. Where work can hurt someone, the safety data sheet, the machine’s manual, local codes and licensed trades go before anything written here.</p></footer>
<script type="application/json" id="piece-data">${scriptJson(data)}</script>
<script>${raw(script)}</script>
</body>
</html>
`.text
}

// One sentence on where the piece stands, and a walk through what is found.
function verdict(plan: Plan, all: readonly Numbered[], L: Lengths): Markup {
  return html`<section class="verdict" aria-label="Verdict"><p class="count">${counts(all)}</p><p class="say" id="verdict">${L.beside(verdictWords(plan))}</p>${
    all.length === 0
      ? null
      : html`<p class="walk"><span id="walk-at" role="status">${all.length} to look at</span><a class="btn" id="next-finding" href="#finding-1">Next finding</a></p>`
  }</section>`
}

/** The verdict of a plan as one sentence or two; what was overridden is not left out of it. */
export function verdictWords(plan: Plan): string {
  if (plan.verdict !== 'ready') return sentence(plan.says)
  const over = plan.despite.length
  return over === 0
    ? 'Nothing stands against it.'
    : `Nothing else stands against it: ${over === 1 ? 'one finding is' : `${over} findings are`} gone on despite, with a reason.`
}

function notices({ plan }: Planned, notice: string | undefined): Markup | null {
  const lines: Markup[] = []
  if (notice !== undefined) lines.push(html`<p>${notice}</p>`)
  if (plan.effort === 'preview')
    lines.push(html`<p><b>First pass.</b> Heat and cure are coarse; figures may still move.</p>`)
  for (const d of plan.despite)
    lines.push(html`<p class="over"><b>Gone on despite</b> ${d.id}, because: ${d.because}</p>`)
  return lines.length === 0 ? null : html`<div class="notices" role="note">${lines}</div>`
}

function refuseEnd(text: string, name: 'script' | 'style'): void {
  if (new RegExp(`</${name}|<!--`, 'i').test(text))
    throw new Error(`the ${name} of the page holds "</${name}" or "<!--", which would end or hide it`)
}
