import type { ResinMix } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { type CupHistory, cupHistory } from './cup.ts'
import type { ResinModel } from './model.ts'
import { leastBatchG } from './stoichiometry.ts'
import { freshViscosityPaS } from './thickening.ts'
import { clingingMl, type Vessel } from './vessel.ts'

/** A pigment or filler in the mix: its share of the total mass. */
export interface TintPart {
  readonly name: string
  readonly massFraction: number
}

/**
 * How to split a mass of mix into equal batches, each out of its vessel in time.
 *
 * A batch stands while it is stirred and poured, mixMin + pourMinPerKg·kg, or brushed on: mixMin + its share of
 * brushMin. It must be out by the cup
 * model's `minutesOut` (cup.ts: twice the viscosity, 60 °C, or gel). The fewest batches are taken that fit
 * a vessel, last long enough, and are weighed well enough on the scale. Tint counts inside the total mass,
 * and the rest keeps A : B.
 *
 * Check: batches add up to the total; 8 g on a scale of 1 g steps is refused.
 *
 * Limits: batches are alike and mixed one after another; a family without a model has no allowed time, so
 * only vessel and scale speak. Density of the mix is the two parts' own, tint left out.
 */
export interface BatchRequest {
  readonly totalG: number
  readonly mix: ResinMix
  /** None if not given. */
  readonly tint?: readonly TintPart[]
  readonly vessels: readonly Vessel[]
  readonly scaleResolutionG: number
  /** null: a family that is not predicted. */
  readonly resin: ResinModel | null
  readonly roomC: number
  readonly startC?: number
  /** Stirring in two cups, min. */
  readonly mixMin: number
  readonly pourMinPerKg: number
  /** Brushing all of it on out of its vessels, min; left out: it is poured. */
  readonly brushMin?: number
  /** Accepted relative error of ratio from the scale; {@link MOST_RATIO_ERROR} if not given. */
  readonly maxRatioError?: number
}

/** Practice: 5 % off ratio is harmless (stoichiometry.ts). */
export const MOST_RATIO_ERROR = 0.05
/** Share of a vessel that is filled, so that it can be stirred. Practice. */
export const USABLE_FILL = 0.75
/** How long a vessel is left to drain, s. Practice. */
const DRAIN_S = 60
/** Stands for the viscosity of a mix of an unpredicted family, Pa·s: casting resins 0.5-0.9 (memory). */
const USUAL_PAS = 0.7

export interface Batches {
  readonly possible: true
  readonly count: number
  readonly batchG: number
  readonly partAG: number
  readonly partBG: number
  readonly partAMl: number
  readonly partBMl: number
  /** In the order asked for, g per batch. */
  readonly tintG: readonly number[]
  readonly vessel: Vessel
  /** Minutes each batch stands, and may stand (null: not predicted, or it never thickens in 72 h). */
  readonly standingMin: number
  readonly allowedMin: number | null
  readonly leastBatchG: number
  /** Stays in the two cups of a batch when drained and not scraped, % of the batch. */
  readonly leftoverPct: number
  readonly cup: CupHistory | null
}

export interface NoBatches {
  readonly possible: false
  /** `scale`: too small to weigh; `vessel`: no vessel fits; `heat`: even the least batch sets too soon. */
  readonly why: 'scale' | 'vessel' | 'heat'
  readonly says: string
  readonly leastBatchG: number
}

/** Splits; throws on input out of range. */
export function splitBatches(request: BatchRequest): Batches | NoBatches {
  const { totalG, mix, vessels } = request
  checkRequest(request)
  const tinted = (request.tint ?? []).reduce((sum, part) => sum + part.massFraction, 0)
  const maxError = request.maxRatioError ?? MOST_RATIO_ERROR
  const least = leastBatchG(mix, request.scaleResolutionG, maxError) / (1 - tinted)
  const mostCount = Math.floor((totalG / least) * (1 + 1e-9))
  if (mostCount < 1) {
    const scale = `a scale of ${request.scaleResolutionG} g steps weighs to ${round(maxError * 100)} %`
    const says = `${round(totalG)} g is less than ${round(least)} g, the least that ${scale}`
    return no('scale', least, `${says}: weigh on a finer scale or mix more`)
  }
  const largest = Math.max(...vessels.map(v => v.capacityMl)) * USABLE_FILL
  const gPerMl = densityOf(mix)
  const leastCount = Math.max(1, Math.ceil(totalG / gPerMl / largest - 1e-9))
  if (leastCount > mostCount) {
    const needs = `${round(least)} g, the least the scale weighs well, needs ${round(least / gPerMl)} ml`
    return no(
      'vessel',
      least,
      `${needs}; the largest vessel takes ${round(largest)} ml, filled to be stirred`
    )
  }

  // A smaller batch lasts longer and stands shorter, so "good" switches once between the two counts.
  let good = tryCount(request, leastCount)
  if (good) return finish(request, least, leastCount, good)
  let bad = leastCount
  let high = mostCount
  good = tryCount(request, high)
  if (!good) {
    const smallest = totalG / mostCount
    const late = `even ${round(smallest)} g is too thick or too hot after ${round(standingOf(request, smallest))} min`
    return no('heat', least, `${late}: a slower resin, a cooler room, or quicker hands`)
  }
  while (high - bad > 1) {
    const middle = (bad + high) >> 1
    const at = tryCount(request, middle)
    if (at) {
      high = middle
      good = at
    } else bad = middle
  }
  return finish(request, least, high, good)
}

interface Tried {
  readonly vessel: Vessel
  readonly cup: CupHistory | null
}

/** The smallest vessel in which a batch of total/count lasts long enough; null if none does. */
function tryCount(request: BatchRequest, count: number): Tried | null {
  const { resin, vessels, roomC } = request
  const massG = request.totalG / count
  const volumeMl = massG / densityOf(request.mix)
  const fitting = vessels
    .filter(v => v.capacityMl * USABLE_FILL >= volumeMl * (1 - 1e-9))
    .sort((a, b) => a.capacityMl - b.capacityMl)
  for (const vessel of fitting) {
    if (!resin) return { vessel, cup: null }
    const startC = request.startC ?? roomC
    // A label's density may differ from the class's: the cup is filled by volume.
    const filledG = (volumeMl * resin.bulk.liquidKgM3) / 1000
    const cup = cupHistory({ resin, massG: filledG, vessel, roomC, startC, effort: 'quick' })
    if (cup.minutesOut === null || standingOf(request, massG) <= cup.minutesOut) return { vessel, cup }
  }
  return null
}

function finish(request: BatchRequest, least: number, count: number, tried: Tried): Batches {
  const { mix, resin } = request
  const tint = request.tint ?? []
  const batchG = request.totalG / count
  const tintG = tint.map(part => part.massFraction * batchG)
  const clearG = batchG - tintG.reduce((sum, g) => sum + g, 0)
  const partAG = (clearG * mix.massA) / (mix.massA + mix.massB)
  const partBG = clearG - partAG
  const volumeMl = batchG / densityOf(mix)
  const startC = request.startC ?? request.roomC
  const viscosity = resin ? freshViscosityPaS(resin.flow, startC) : USUAL_PAS
  const densityKgM3 = densityOf(mix) * 1000
  const clinging = clingingMl(tried.vessel, volumeMl, viscosity, densityKgM3, DRAIN_S)
  return {
    possible: true,
    count,
    batchG,
    partAG,
    partBG,
    partAMl: partAG / mix.densityAGMl,
    partBMl: partBG / mix.densityBGMl,
    tintG,
    vessel: tried.vessel,
    standingMin: standingOf(request, batchG),
    allowedMin: tried.cup?.minutesOut ?? null,
    leastBatchG: least,
    leftoverPct: Math.min(100, (2 * clinging * 100) / volumeMl),
    cup: tried.cup
  }
}

/** Minutes from the first stir until a batch is out of its vessel. */
export function standingOf(request: BatchRequest, batchG: number): number {
  const { mixMin, pourMinPerKg, brushMin, totalG } = request
  return mixMin + (brushMin === undefined ? (pourMinPerKg * batchG) / 1000 : (brushMin * batchG) / totalG)
}

/** g/ml of A and B together, volumes adding up. */
function densityOf(mix: ResinMix): number {
  return (mix.massA + mix.massB) / (mix.massA / mix.densityAGMl + mix.massB / mix.densityBGMl)
}

function no(why: NoBatches['why'], least: number, says: string): NoBatches {
  return { possible: false, why, says, leastBatchG: least }
}

const round = (x: number): number => Number(x.toPrecision(3))

function checkRequest(request: BatchRequest): void {
  inRange('total mass in g', request.totalG, 1e-3, 1e14)
  inRange('minutes to mix', request.mixMin, 0, 600)
  // A minute into a blank that takes a hundredth of a gram.
  inRange('minutes to pour a kg', request.pourMinPerKg, 0, 100_000)
  if (request.brushMin !== undefined) inRange('minutes to brush it on', request.brushMin, 0, 1e6)
  inRange('part A by mass', request.mix.massA, 1e-9, 1e9)
  inRange('part B by mass', request.mix.massB, 1e-9, 1e9)
  if (request.vessels.length === 0) throw new Error('0 vessels given; at least 1')
  for (const v of request.vessels) {
    inRange('diameter of a vessel in mm', v.diameterMm, 1, 2000)
    inRange('capacity of a vessel in ml', v.capacityMl, 1, 1e6)
  }
  let tinted = 0
  for (const part of request.tint ?? []) {
    inRange(`mass fraction of ${part.name}`, part.massFraction, 0, 0.9)
    tinted += part.massFraction
  }
  inRange('mass fraction of all tint', tinted, 0, 0.9)
}
