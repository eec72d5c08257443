import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsIn } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals } from '../quantity/format.ts'
import { lengthIn } from '../quantity/shown-units.ts'
import { bounds, centroid } from '../shape/measure.ts'
import type { CoreModel } from './core-model.ts'
import { corePartsAt } from './core-model.ts'
import { coreStrip } from './core-strip.ts'
import { coreWords } from './core-words.ts'
import { drawing } from './drawing.ts'
import { frontPatch } from './front-patch.ts'
import type { Mark, Sheet } from './mark.ts'
import { box } from './mark.ts'
import type { Markup } from './markup.ts'
import { html, raw } from './markup.ts'
import { dayNumber } from './moment.ts'
import type { PageData, PageView } from './page-data.ts'
import { modelData } from './page-data.ts'
import { massWords } from './page-lists.ts'
import { pointerMarks, wellInside } from './pointer.ts'
import { scaleBar } from './scale-bar.ts'
import { sectionAt } from './section-at.ts'
import { STRETCH } from './section-place.ts'
import type { SheetViews } from './sheet-views.ts'
import { svgMarks } from './svg.ts'

/** Width of the core column and of the section at the pointer, mm. */
const CORE_MM = 58
const ACROSS = { widthMm: 88, heightMm: 46 } as const
const STRIP_RANGE_MM = [84, 118] as const

/** The drawing sheet of a page and the data its script moves it by. */
export function sheetPart(
  plan: Plan,
  work: Work,
  model: CoreModel,
  drawn: readonly SheetViews[]
): { readonly markup: Markup; readonly data: PageData } {
  const L = lengthsIn(model.shown)
  const pointer = pointerOf(plan, work, model)
  const wide = drawn[0]!
  const height = Math.min(STRIP_RANGE_MM[1], Math.max(STRIP_RANGE_MM[0], wide.front.heightMm + 6))
  const data: PageData = {
    model: modelData(model),
    pointer,
    views: drawn.flatMap(d => d.views),
    strip: { widthMm: CORE_MM, heightMm: height },
    patchMm: CORE_MM,
    across: ACROSS
  }
  const [x, y] = pointer
  const thick = `${L.of(plan.totals.sizeMm[2], 1)} ${L.unit}`
  const markup = html`<section class="sheet" aria-label="Drawing sheet" data-face="front" data-heights="true">
<div class="cap c-plan"><h2>Plan</h2><div class="choice" data-choice="face" role="group" aria-label="Face shown">${choice('front', 'front face up', true)}${choice('back', 'turned over', false)}</div></div>
<div class="pad" id="plan">${drawn.map(d => html`${plane(d.front, d, 'front', pointer)}${plane(d.back, d, 'back', pointer)}`)}</div>
<div class="cap c-core"><h2>Core at the pointer</h2><div class="choice" data-choice="levels" role="group" aria-label="Heights of the core">${choice('finished', 'finished', true)}${choice('as cast', 'as cast', false)}</div></div>
<div class="core"><div id="core">${drawing(coreStrip(model, x, y, { levels: 'finished', widthMm: CORE_MM, heightMm: height }), 'strip', null)}</div>
<h2 class="sub">From the front <span>computed colours</span></h2><div id="patch">${drawing(frontPatch(model, x, y, CORE_MM), 'patch', null)}</div>
<p id="core-says" class="says-core" role="status">${coreWords(model, x, y)}</p></div>
<div class="cap c-section"><h2>Section A–A${wide.stepped ? ', stepped' : wide.across ? ', across' : ''}${drawn.map(d => (d.enlarged === 1 ? null : html` <span class="${d.id}">plan × ${d.enlarged}</span>`))}</h2><div class="choice" data-choice="heights" role="group" aria-label="Heights of the section">${choice('true', 'heights true', true)}${choice('stretched', `stretched × ${STRETCH}`, false)}</div></div>
<div class="section-aa">${drawn.map(
    d =>
      html`${drawing(d.sectionTrue, `aa ${d.id} true`, `Section A to A, heights true, finished thickness ${thick}`)}${drawing(d.sectionStretched, `aa ${d.id} stretched`, `Section A to A, heights stretched ${STRETCH} times`)}`
  )}</div>
<div class="across"><div class="cap"><h2>Section B–B at the pointer</h2><p class="f">enlarged, heights true</p></div><div id="across">${drawing(sectionAt(model, x, y, ACROSS), 'bb', null)}</div></div>
<div class="foot">${keyPart(model, L, drawn)}
${titleBlock(plan, L)}</div>
</section>`
  return { markup, data }
}

function choice(value: string, words: string, on: boolean): Markup {
  return html`<button type="button" value="${value}" aria-pressed="${on ? 'true' : 'false'}">${words}</button>`
}

// A plan with its pointer in a group of its own, which the script redraws.
function plane(
  sheet: Sheet,
  drawn: SheetViews,
  face: 'front' | 'back',
  [x, y]: readonly [number, number]
): Markup {
  const view = drawn.views.find(v => v.face === face) as PageView
  const base = drawing(sheet, `plan ${drawn.id} ${face}`, `Plan of the ${face}, ${drawn.id} drawing`)
  const pointer = `<g class="pointer">${svgMarks(pointerMarks(view, x, y), view.heightMm)}</g>`
  return raw(base.text.replace(/<\/svg>$/, `${pointer}</svg>`))
}

/**
 * Where the pointer stands first: at the worst finding of a cut, where it leaves least; else, of the middles of
 * cuts, hardware and the piece, where the core has most to show.
 */
export function pointerOf(plan: Plan, work: Work, model: CoreModel): readonly [number, number] {
  const worst = plan.findings.find(f => f.at.startsWith('/cuts/'))
  const cut = worst === undefined ? -1 : Number(worst.at.split('/')[2])
  const cover = work.covers.find(c => c.cut === cut)
  const layer = cover?.layers.find(l => work.hiding[l.pour]!.meant) ?? cover?.left
  if (layer) return onMiddle(work, cut, layer.x, layer.y)
  const b = bounds(work.stack.geometry.outline)
  const places: (readonly [number, number])[] = [
    [rounded((b.minX + b.maxX) / 2), rounded((b.minY + b.maxY) / 2)]
  ]
  work.stack.geometry.cutRegions.forEach((region, i) => {
    if (region !== null && region.rings.length === 1) {
      const c = centroid(region)
      places.push([rounded(c.x), rounded(c.y)])
    }
    const line = work.stack.geometry.cutLines[i]?.[0]
    if (line !== undefined) {
      const k = 2 * Math.floor(line.length / 4)
      places.push([rounded(line[k]!), rounded(line[k + 1]!)])
    }
  })
  for (const fit of work.fits) if (fit.part !== null) places.push([rounded(fit.x), rounded(fit.y)])
  let best = places[0]!
  let most = 0
  for (const p of places) {
    const parts = corePartsAt(model, ...p)
    if (parts.length > most && parts.some(q => q.material !== null)) {
      most = parts.length
      best = p
    }
  }
  return most > 0 ? best : besideOpenings(model, best)
}

/** Places looked at each way for one that is not an opening. */
const GRID = 24

// The place nearest to a middle that all is open at where the piece has something to show.
function besideOpenings(model: CoreModel, [x, y]: readonly [number, number]): readonly [number, number] {
  const b = bounds(model.geometry.outline)
  const at = (k: number, from: number, to: number) => rounded(from + ((to - from) * (k + 0.5)) / GRID)
  const places = Array.from({ length: GRID * GRID }, (_, k): readonly [number, number] => [
    at(k % GRID, b.minX, b.maxX),
    at(Math.floor(k / GRID), b.minY, b.maxY)
  ]).sort((p, q) => Math.hypot(p[0] - x, p[1] - y) - Math.hypot(q[0] - x, q[1] - y))
  return (
    places.find(
      p => wellInside(model.geometry.outline, ...p) && corePartsAt(model, ...p).some(q => q.material !== null)
    ) ?? [x, y]
  )
}

// A place in a groove moved to its middle line, so that both its sides are seen.
function onMiddle(work: Work, cut: number, x: number, y: number): readonly [number, number] {
  let [bestX, bestY, least] = [x, y, Number.POSITIVE_INFINITY]
  for (const line of work.stack.geometry.cutLines[cut] ?? []) {
    for (let k = 0; k + 3 < line.length; k += 2) {
      const [ax, ay] = [line[k]!, line[k + 1]!]
      const [dx, dy] = [line[k + 2]! - ax, line[k + 3]! - ay]
      const long = dx * dx + dy * dy
      const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long))
      const d = Math.hypot(ax + t * dx - x, ay + t * dy - y)
      if (d < least) {
        least = d
        bestX = ax + t * dx
        bestY = ay + t * dy
      }
    }
  }
  return [rounded(bestX), rounded(bestY)]
}

function rounded(mm: number): number {
  return Math.round(mm * 10) / 10
}

// What the hatching means: no standard fixes it for timber and resin.
export function keyList(model: CoreModel): Markup {
  const rows = [...model.timbers, ...model.pours, ...model.markings].map(m => ({
    name: m.name,
    words: m.words,
    paint: m.paint,
    hatch: m.hatch
  }))
  const seen = new Map<string, (typeof rows)[number]>()
  for (const r of rows) {
    const key = `${r.paint} ${r.hatch.kind} ${r.words}`
    const known = seen.get(key)
    if (known === undefined) seen.set(key, r)
    else
      seen.set(key, {
        ...known,
        name: `${known.name}, ${r.name.slice(0, 1).toLowerCase()}${r.name.slice(1)}`
      })
  }
  const shown = [...seen.values()].slice(0, 6)
  return html`<ul class="plain">${shown.map(
    r =>
      html`<li>${drawing(swatch(r), 'swatch', null)}<span><b>${r.name}</b> <span class="q">${r.words}</span></span></li>`
  )}</ul>`
}

function keyPart(model: CoreModel, L: Lengths, drawn: readonly SheetViews[]): Markup {
  return html`<div class="key">${keyList(model)}<div>${drawn.map(d => html`<div class="bar ${d.id}">${drawing(bar(d, L), 'scale', d.enlarged === 1 ? 'Scale bar of plan and section' : 'Scale bar of the plan')}</div>`)}<p class="f">${drawn.every(d => d.enlarged === 1) ? 'plan and A–A' : 'plan'}, ${L.unit}</p></div></div>`
}

function swatch(r: {
  readonly paint: CoreModel['pours'][number]['paint']
  readonly hatch: CoreModel['pours'][number]['hatch']
}): Sheet {
  const marks: Mark[] = [
    { kind: 'region', rings: [box(0.2, 0.2, 10.8, 5.3)], paint: r.paint, hatch: r.hatch, edge: 'outline' }
  ]
  return { widthMm: 11, heightMm: 5.5, marks }
}

function bar(d: SheetViews, L: Lengths): Sheet {
  return { widthMm: 52, heightMm: 7, marks: scaleBar(d.views[0]!.scale, 40, 2, 2, L.shown) }
}

// When it is delivered, min after the first pour; without that step, when the last wait is over.
export function readyMin(plan: Plan): number {
  return plan.steps.findLast(s => s.kind === 'deliver')?.startMin ?? plan.totals.waitDays * 1440
}

// Name, sizes, mass, cost and when: the lower right corner of a drawing.
function titleBlock(plan: Plan, L: Lengths): Markup {
  const { totals } = plan
  const priced = plan.buy.length > totals.unpriced
  return html`<div class="title"><div class="t-name"><p class="tn">${plan.name}</p><p class="f">${plan.effort === 'preview' ? html`first pass<br>` : null}${plan.asOf.slice(0, 10)}</p></div>
<dl><div><dt>Size, finished</dt><dd>${totals.sizeMm.map(mm => lengthIn(L.shown, mm, 1)).join(' × ')}</dd></div>
<div><dt>Mass, bare</dt><dd>${massWords(totals.massG)}</dd></div>
<div><dt>Ready</dt><dd>day ${dayNumber(readyMin(plan))}<u>at best</u></dd></div>
<div><dt>Scale</dt><dd>fit to window</dd></div>
<div><dt>Materials</dt><dd>${priced ? html`${totals.unpriced > 0 ? 'from ' : ''}${decimals(totals.materialCost, 0)}<u>${totals.currency}</u>` : 'no prices'}</dd></div>
<div><dt>Number</dt><dd>${plan.quantity.pieces}${plan.quantity.blanks > plan.quantity.pieces ? html`<u>of ${plan.quantity.blanks} blanks</u>` : null}</dd></div></dl></div>`
}
