import type { Work } from '../findings/work.ts'
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

/** Width of a curve on the card, mm. */
const CURVE_MM = 86
const ART = { width: 12, height: 58 } as const

/** The layers as they lie, deepest at the foot, each with what follows from it and what stands against it. */
export function layersPart(plan: Plan, work: Work, model: CoreModel, at: Placed): Markup {
  const order = layerOrder(plan, work)
  return html`<section class="layers" aria-labelledby="layers-head">
<h2 id="layers-head">Layers <span>deepest at the bottom; not the order of work</span></h2>
<div class="lay">${drawing(artSheet(plan, work, model), 'art', 'The layers in proportion, front at the top')}
<ol reversed class="plain">${order.map(i => layer(plan, work, i, at))}</ol></div>
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

function layer(plan: Plan, work: Work, i: number, at: Placed): Markup {
  const pour = plan.pours[i]!
  const { stack, cast } = pour
  const document = work.piece.pours[i]!
  const [low, high] = cast?.peakBandC ?? [0, 0]
  const after = pouredOver(plan, i)
  return html`<li class="layer">
<div class="r"><h3>${capital(pour.id)}</h3><p class="f">${KIND_WORDS[document.kind]}, ${work.materials.resins[i]!.name}</p></div>
<dl class="facts">
<div><dt>As cast</dt><dd>${decimals(stack.depth, 1, 1)}<u>mm</u></dd></div>
<div><dt>Finished</dt><dd>${pour.finishedMm === null ? '–' : html`${decimals(pour.finishedMm, 1, 1)}<u>mm</u>`}</dd></div>
<div><dt>Volume</dt><dd>${amount(formatVolume(stack.liquidMl))}</dd></div>
<div><dt>Peak</dt><dd>${
    cast === null
      ? html`<span class="q">not predicted</span>`
      : cast.runaway
        ? html`<b class="st">runaway</b>`
        : html`${decimals(cast.peakC, 0)}<u>°C</u> <span class="band">${decimals(low, 0)}–${high > RUNAWAY_ABOVE_C ? 'runaway' : decimals(high, 0)}</span>`
  }</dd></div>
</dl>
${batches(plan, work, i)}
${curve(plan, i)}
${windows(plan, i, after)}
${(at.pours.get(i) ?? []).map(n => findingBlock(n))}</li>`
}

/** Whether another pour goes on this one in the mould. */
export function pouredOver(plan: Plan, i: number): boolean {
  const pour = plan.pours[i]!
  return plan.pours.some(
    (p, k) =>
      k !== i && p.kind === 'cast' && pour.kind === 'cast' && p.stack.liquidLevel > pour.stack.liquidLevel
  )
}

/** The hottest temperature of a pour over the hours, with its limit and the span of the next; null: not predicted. */
export function curve(plan: Plan, i: number, shown: ShownUnits = METRIC): Markup | null {
  const { cast, id } = plan.pours[i]!
  if (cast === null) return null
  const after = pouredOver(plan, i)
  const [low, high] = cast.peakBandC
  return drawing(
    curveSheet(cast, { widthMm: CURVE_MM, next: after ? 'next pour' : null, shown }),
    'curve',
    `Hottest temperature in ${id} over the hours since it was poured: peak ${degreesIn(shown, cast.peakC)} ${shown.temperature} after ${aboutTime(cast.peakMin)}, between ${degreesIn(shown, low)} and ${degreesIn(shown, high)}; the limit is ${degreesIn(shown, CAUTION_ABOVE_C)} ${shown.temperature}${after ? `; the next pour bonds from ${aboutTime(cast.windows.recoat.open)}${cast.windows.recoat.close === null ? '' : ` to ${roughTime(cast.windows.recoat.close)}`}` : ''}`
  )
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
  const { split } = own
  if (!split.possible) return html`<p class="f">${capital(split.says)}.</p>`
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
  const cups = split.count === 1 ? 'one batch' : `${split.count} batches, each`
  return html`<div class="scroll" tabindex="0" role="group" aria-label="What is weighed into a batch of ${plan.pours[i]!.id}"><table class="batch">
<thead><tr><th scope="col">Mix</th><th scope="col">A</th><th scope="col">B</th>${tint.length === 0 ? null : html`<th scope="col">tint</th>`}<th scope="col">total</th><th scope="col">out of the cup in</th></tr></thead>
<tbody><tr><th scope="row">${cups}</th><td>${weigh(split.partAG)}</td><td>${weigh(split.partBG)}</td>${
    tint.length === 0 ? null : html`<td>${pinch(split.tintG.reduce((a, b) => a + b, 0))}</td>`
  }<td>${weigh(split.batchG)}<u>${shown.mass}</u></td><td>${split.allowedMin === null ? '–' : roughTime(split.allowedMin, 'down')}</td></tr>
${
  tint.length < 2 && (tint[0] === undefined || split.tintG[0] === undefined)
    ? null
    : html`<tr class="tints"><td colspan="6">${tint.map((t, k) => html`<span>${t.pigment.name} <b>${pinch(split.tintG[k] ?? 0)}</b><u>${shown.mass}</u></span>`)}</td></tr>`
}</tbody></table></div>`
}

export function windows(plan: Plan, i: number, after: boolean): Markup | null {
  const cast = plan.pours[i]!.cast
  if (cast === null) return null
  const w = cast.windows
  const span = (open: number, close: number | null) =>
    `${aboutTime(open)} to ${close === null ? 'any time later' : roughTime(close)}`
  const rows: [string, string][] = []
  if (w.working.close !== null) rows.push(['Workable in the mould', aboutTime(w.working.close, 'down')])
  if (after) rows.push(['Next pour', span(w.recoat.open, w.recoat.close)])
  rows.push(['Out of the mould from', aboutTime(w.demould.open)])
  return html`<dl class="windows">${rows.map(([k, v]) => html`<div><dt>${k}</dt><dd>${v}</dd></div>`)}</dl>`
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
