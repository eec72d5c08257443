import type { PourCast } from '../cast/cast.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import type { Plan, PlanPour } from '../plan.ts'
import { decimals, formatVolume } from '../quantity/format.ts'
import { aboutTime, roughTime } from '../quantity/rough.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { degreesIn, METRIC } from '../quantity/shown-units.ts'
import { fromFixedUnit } from '../quantity/unit.ts'
import { CAUTION_ABOVE_C, RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { CoreModel } from './core-model.ts'
import { curveSheet } from './curve.ts'
import { drawing } from './drawing.ts'
import type { Mark, Sheet } from './mark.ts'
import { box } from './mark.ts'
import type { Markup } from './markup.ts'
import { html } from './markup.ts'
import { capital } from './model.ts'
import { findingBlock } from './page-finding.ts'
import type { Placed } from './page-place.ts'
import type { WindowRow, WindowsAsked } from './window-rows.ts'
import { windowRows } from './window-rows.ts'

/** Width of a curve on the card, mm. */
const CURVE_MM = 86
const ART = { width: 12, height: 58 } as const

/** The layers as they lie, deepest at the foot, each with what follows from it and what stands against it. */
export function layersPart(plan: Plan, work: Work, model: CoreModel, L: Lengths, at: Placed): Markup {
  const order = layerOrder(plan, work)
  return html`<section class="layers" aria-labelledby="layers-head">
<h2 id="layers-head">Layers <span>deepest at the bottom; not the order of work</span></h2>
<div class="lay">${drawing(artSheet(plan, work, model), 'art', 'The layers in proportion, front at the top')}
<ol reversed class="plain">${order.map(i => layer(plan, work, L, i, at))}</ol></div>
</section>`
}

// From the front to the back; what only coats the timber comes last.
export function layerOrder(plan: Plan, work: Work): number[] {
  const up = work.piece.down === 'back'
  const middle = (p: PlanPour) => (p.stack.floor + p.stack.level) / 2
  return plan.pours
    .map((_, i) => i)
    .sort((a, b) => {
      const [p, q] = [plan.pours[a]!, plan.pours[b]!]
      if ((p.kind === 'seal') !== (q.kind === 'seal')) return p.kind === 'seal' ? 1 : -1
      return up ? middle(q) - middle(p) : middle(p) - middle(q)
    })
}

function layer(plan: Plan, work: Work, L: Lengths, i: number, at: Placed): Markup {
  const pour = plan.pours[i]!
  const { stack, cast } = pour
  const document = work.piece.pours[i]!
  const [low, high] = cast?.peakBandC ?? [0, 0]
  return html`<li class="layer">
<div class="r"><h3>${capital(pour.id)}</h3><p class="f">${KIND_WORDS[document.kind]}, ${work.materials.resins[i]!.name}</p></div>
<dl class="facts">
<div><dt>As cast</dt><dd>${L.of(stack.depth, 1, 1)}<u>${L.unit}</u></dd></div>
<div><dt>Finished</dt><dd>${pour.finishedMm === null ? '–' : html`${L.of(pour.finishedMm, 1, 1)}<u>${L.unit}</u>`}</dd></div>
<div><dt>Volume</dt><dd>${amount(formatVolume(stack.liquidMl))}</dd></div>
<div><dt>Peak</dt><dd>${
    cast === null
      ? html`<span class="q">not predicted</span>`
      : cast.runaway
        ? html`<b class="st">runaway</b>`
        : html`${L.degrees(cast.peakC)}<u>${L.degree}</u> <span class="band">${L.degrees(low)}–${high > RUNAWAY_ABOVE_C ? 'runaway' : L.degrees(high)}</span>`
  }</dd></div>
</dl>
${batches(plan, work, i, L.shown)}
${curve(plan, i, L.shown)}
${windows(plan, i)}
${(at.pours.get(i) ?? []).map(n => findingBlock(n, L))}</li>`
}

/** Which windows of a pour matter: whether another goes on it in the mould, whether it lies there itself. */
export function windowsAsked(pours: readonly Pick<PlanPour, 'kind' | 'stack'>[], i: number): WindowsAsked {
  const inMould = pours[i]!.kind === 'cast'
  const level = pours[i]!.stack.liquidLevel
  const next = inMould && pours.some((p, k) => k !== i && p.kind === 'cast' && p.stack.liquidLevel > level)
  return { next, inMould }
}

/**
 * Temperature and viscosity of a pour over the hours, each with its band, and its windows under them; null: not
 * predicted.
 */
export function curve(plan: Plan, i: number, shown: ShownUnits = METRIC): Markup | null {
  const { cast, id } = plan.pours[i]!
  return cast === null ? null : castCurve(cast, id, rowsOf(plan, i), shown, null)
}

/** The same of a cast by itself. `was`: how it was before something was tried. */
export function castCurve(
  cast: PourCast,
  id: string,
  rows: readonly WindowRow[],
  shown: ShownUnits,
  was: PourCast | null
): Markup {
  return drawing(
    curveSheet(cast, { widthMm: CURVE_MM, rows, shown, was }),
    'curve',
    curveWords(cast, id, rows, shown)
  )
}

/** What the curves of a pour show, for those who do not see them. */
export function curveWords(
  cast: PourCast,
  id: string,
  rows: readonly WindowRow[],
  shown: ShownUnits = METRIC
): string {
  const unit = shown.temperature
  const [low, high] = cast.peakBandC
  const peak = cast.runaway
    ? `it runs away after ${aboutTime(cast.peakMin)}`
    : `peak ${degreesIn(shown, cast.peakC)} ${unit} after ${aboutTime(cast.peakMin)}, between ${degreesIn(shown, low)} and ${high > RUNAWAY_ABOVE_C ? 'runaway' : degreesIn(shown, high)}, between ${roughTime(cast.peakMinBand[0])} and ${roughTime(cast.peakMinBand[1])}`
  const spans = rows.map(r => `${r.label.toLowerCase()}: ${r.says}`)
  return `Temperature and thickness of ${id} over the hours since it was poured: ${peak}; the limit is ${degreesIn(shown, CAUTION_ABOVE_C)} ${unit}${spans.length === 0 ? '' : `; ${spans.join('; ')}`}`
}

/** The windows of a pour that matter for it. */
export function rowsOf(plan: Plan, i: number): WindowRow[] {
  const { cast } = plan.pours[i]!
  return cast === null ? [] : windowRows(cast, windowsAsked(plan.pours, i))
}

export const KIND_WORDS = {
  cast: 'cast in the mould',
  seal: 'seal coat on timber',
  flood: 'flood coat',
  inlay: 'inlay'
} as const

/** "266 ml" with its unit in small type. */
function amount(words: string): Markup {
  const cut = words.lastIndexOf(' ')
  return cut < 0 ? html`${words}` : html`${words.slice(0, cut)}<u>${words.slice(cut + 1)}</u>`
}

// The table of what is weighed into each vessel.
export function batches(plan: Plan, work: Work, i: number, shown: ShownUnits = METRIC): Markup | null {
  const own = plan.pours[i]!.batches
  if (own === null) return null
  const { split, mixed } = own
  if (mixed === null) return split.possible ? null : html`<p class="f">${capital(split.says)}.</p>`
  const { mix } = work.materials.resins[i]!
  const tint = work.materials.tints[i]!
  const resolution = work.shop.scale.resolution
  // A gram is 0.035 oz: two places more say as much.
  const finer = shown.mass === 'oz' ? 2 : 0
  const places = (resolution >= 1 ? 0 : resolution >= 0.1 ? 1 : 2) + finer
  const scaled = (g: number) => fromFixedUnit(g, shown.mass)
  const weigh = (g: number) => decimals(scaled(g), places, places)
  // A pinch of pigment is said finer than the scale shows it: it takes a finer scale.
  const pinch = (g: number) =>
    decimals(scaled(g), Math.max(places, (g < 1 ? 2 : g < 20 ? 1 : 0) + finer), places)
  const tintG = tint.map(t => mixed.batchG * t.share)
  const resinG = mixed.batchG - tintG.reduce((a, b) => a + b, 0)
  const partAG = (resinG * mix.massA) / (mix.massA + mix.massB)
  const cups = mixed.count === 1 ? 'one batch' : `${mixed.count} batches, each`
  return html`<div class="scroll" tabindex="0" role="group" aria-label="What is weighed into a batch of ${plan.pours[i]!.id}"><table class="batch">
<thead><tr><th scope="col">Mix</th><th scope="col">A</th><th scope="col">B</th>${tint.length === 0 ? null : html`<th scope="col">tint</th>`}<th scope="col">total</th><th scope="col">out of the cup in</th></tr></thead>
<tbody><tr><th scope="row">${cups}</th><td>${weigh(partAG)}</td><td>${weigh(resinG - partAG)}</td>${
    tint.length === 0 ? null : html`<td>${pinch(mixed.batchG - resinG)}</td>`
  }<td>${weigh(mixed.batchG)}<u>${shown.mass}</u></td><td>${mixed.allowedMin === null ? '–' : roughTime(mixed.allowedMin, 'down')}</td></tr>
${
  tint.length === 0
    ? null
    : html`<tr class="tints"><td colspan="6">${tint.map((t, k) => html`<span>${t.pigment.name} <b>${pinch(tintG[k]!)}</b><u>${shown.mass}</u></span>`)}</td></tr>`
}</tbody></table></div>`
}

/** The windows of a pour, each with its band, and the reading that would sharpen each. */
export function windows(plan: Plan, i: number): Markup | null {
  const rows = rowsOf(plan, i)
  if (rows.length === 0) return null
  // One reading sharpens several windows: it stands once.
  const readings = new Map<string, string[]>()
  for (const r of rows) readings.set(r.sharper, [...(readings.get(r.sharper) ?? []), r.label])
  return html`<dl class="windows">${rows.map(r => html`<div><dt>${r.label}</dt><dd>${r.says}${r.band === '' ? null : html` <span class="between">band ${r.band}</span>`}</dd></div>`)}</dl>
<details class="why"><summary>What would sharpen these</summary><dl class="sharper">${[...readings].map(([reading, labels]) => html`<div><dt>${labels.map((l, k) => (k === 0 ? l : l.slice(0, 1).toLowerCase() + l.slice(1))).join(', ')}</dt><dd>${capital(reading)}.</dd></div>`)}</dl></details>`
}

// Pours between two banks of timber, thicknesses in proportion, thin ones at least to be seen.
export function artSheet(plan: Plan, work: Work, model: CoreModel): Sheet {
  const { width, height } = ART
  const order = layerOrder(plan, work).filter(i => plan.pours[i]!.kind !== 'seal')
  const thick = order.map(i => Math.max(0.2, plan.pours[i]!.finishedMm ?? plan.pours[i]!.stack.depth))
  const sum = thick.reduce((a, b) => a + b, 0) || 1
  const inner = height - 0.6
  const bank = model.timbers.length > 0 ? 2.4 : 0.3
  const marks: Mark[] = []
  model.timbers.slice(0, 2).forEach((t, k) => {
    const left = k === 0
    marks.push({
      kind: 'region',
      rings: [left ? box(0.3, 0.3, bank, 0.3 + inner) : box(width - bank, 0.3, width - 0.3, 0.3 + inner)],
      paint: t.paint,
      hatch: { kind: 'along', seed: k, angleDeg: 90 },
      edge: 'outline'
    })
  })
  let head = 0.3 + inner
  order.forEach((i, k) => {
    const drawn = model.pours[i]!
    const deep = Math.max(1.2, (inner * thick[k]!) / sum)
    const foot = k === order.length - 1 ? 0.3 : Math.max(0.3, head - deep)
    marks.push({
      kind: 'region',
      rings: [box(bank, foot, model.timbers.length > 1 ? width - bank : width - 0.3, head)],
      paint: drawn.paint,
      hatch: drawn.hatch,
      edge: 'outline'
    })
    head = foot
  })
  return { widthMm: width, heightMm: height, marks }
}
