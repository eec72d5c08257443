import { CAUTION_ABOVE_C } from '../../resin/limits.ts'
import { thickeningOf } from '../../resin/thickening.ts'
import type { PourCast } from '../cast.ts'
import type { FieldResult } from '../field/field-result.ts'
import type { Edge, WholeCast } from './whole-cast.ts'
import type { Span, Variant, WholeInput } from './whole-problem.ts'
import { AS_PLANNED, isCast } from './whole-problem.ts'

/** How a search runs the mould with something changed. */
export interface Trial {
  /** The mould up to a pour, that pour so many times as deep, in the room and with the mixes of the variant. */
  readonly run: (
    index: number,
    times: number,
    variant: Variant,
    startK: number,
    span: Span
  ) => Generator<undefined, FieldResult>
}

/** Pours whose edges are searched. */
export const MOST_EDGES = 8
/** A pour's heat is over after this at the latest that its peak comes, as a multiple, and at least these hours. */
const HORIZON = 1.6
const LEAST_HORIZON_S = 8 * 3600
/** Depths are searched up to this multiple of the planned one, rooms up to this many K off. */
const MOST_TIMES = 3
/** A pour thinner than this does not level by itself (practice): shallower is not searched. */
const LEAST_MM = 0.5
const MOST_ROOM_K = 15
/** Found within this share of the depth, and within these K. */
const DEPTH_SHARE = 0.01
const ROOM_K = 0.25
/** Steps by which what a millimetre and a degree do is measured. */
const STEP_K = 1
const WARMER_K = 10

/**
 * For each pour into the mould: how deep it could be, how warm the room, before the top of its band meets the limit
 * for clear work; what a millimetre and a degree do; what a warmer mix does. On the coarse grid, by the false
 * position method on runs of the whole mould; the difference of the fine run from the coarse one is added.
 *
 * Limits: one thing is changed at a time; the pour before stays as planned, those before that are taken as cured, later
 * ones are left out. Only the pours that come nearest to the limit are searched, {@link MOST_EDGES} at most.
 */
export function* edgesOf(
  input: WholeInput,
  casts: readonly (PourCast | null)[],
  best: WholeCast,
  trial: Trial
): Generator<undefined, (Edge | null)[]> {
  const out: (Edge | null)[] = casts.map(() => null)
  const pours = best.casts
    .flatMap(c => (c !== null && isCast(input, c.index) ? [c] : []))
    .sort((a, b) => a.startMin - b.startMin)
  const nearest = [...pours].sort((a, b) => b.peakBandC[1] - a.peakBandC[1]).slice(0, MOST_EDGES)
  for (const own of nearest) {
    const before = pours[pours.indexOf(own) - 1]
    out[own.index] = yield* edgeOf(input, own.index, own, (before?.startMin ?? own.startMin) * 60, trial)
  }
  return out
}

function* edgeOf(
  input: WholeInput,
  index: number,
  own: PourCast,
  fromS: number,
  trial: Trial
): Generator<undefined, Edge> {
  const limitC = CAUTION_ABOVE_C
  const startS = own.startMin * 60
  const untilS = startS + Math.max(LEAST_HORIZON_S, HORIZON * own.peakMinBand[1] * 60)
  const { doubt } = input.shop.climate
  const hot: Variant = { rate: 'fast', roomK: doubt, liquid: 1 }
  function* peak(
    times: number,
    variant: Variant,
    startK = 0
  ): Generator<undefined, FieldResult['pours'][number]> {
    const result = yield* trial.run(index, times, variant, startK, { fromS, untilS })
    return result.pours.find(p => p.pour === index)!
  }
  function* over(times: number, roomK: number): Generator<undefined, number> {
    const p = yield* peak(times, { ...hot, roomK: doubt + roomK })
    return p.peakC + offC - limitC
  }
  const coarse = yield* peak(1, AS_PLANNED)
  const offC = own.peakC - coarse.peakC
  const depth = input.stack.pours[index]!.liquidDepth
  const atPlan = yield* over(1, 0)
  const deepEnd = atPlan > 0 ? Math.min(0.05, LEAST_MM / depth) : MOST_TIMES
  const times = yield* crossing(t => over(t, 0), 1, atPlan, deepEnd, DEPTH_SHARE)
  const roomEnd = atPlan > 0 ? -MOST_ROOM_K : MOST_ROOM_K
  const roomK = yield* crossing(k => over(1, k), 0, atPlan, roomEnd, ROOM_K)
  const stepMm = Math.max(0.5, 0.05 * depth)
  const more = yield* peak(1 + stepMm / depth, AS_PLANNED)
  const room = yield* peak(1, { ...AS_PLANNED, roomK: STEP_K })
  const warm = yield* peak(1, AS_PLANNED, WARMER_K)
  const working = (p: FieldResult['pours'][number]): number | null => {
    const { kinetics, flow } = input.choices[index]!.record.model!
    const { timeS, meanC, meanConversion } = p.history
    return thickeningOf(kinetics, flow, { timeS, tempC: meanC }, meanConversion).doubleMin
  }
  const [cool, heated] = [working(coarse), working(warm)]
  return {
    limitC,
    over: atPlan > 0,
    depthMm: times === null ? (atPlan > 0 ? 0 : null) : times * depth,
    roomK,
    perMm: (more.peakC - coarse.peakC) / stepMm,
    perK: (room.peakC - coarse.peakC) / STEP_K,
    warmer: {
      peakK: warm.peakC - coarse.peakC,
      workingMin: cool === null || heated === null ? null : heated - cool
    }
  }
}

/** Where a rising function passes zero between two ends, from the safe side; null where it does not. */
function* crossing(
  at: (x: number) => Generator<undefined, number>,
  from: number,
  valueFrom: number,
  to: number,
  within: number
): Generator<undefined, number | null> {
  let [a, fa] = [from, valueFrom]
  let b = to
  let fb = yield* at(b)
  if (fa > 0 === fb > 0) return null
  // Half and half: a runaway makes the function a cliff, where the false position alone would creep.
  for (let k = 0; k < 12 && Math.abs(b - a) > within; k++) {
    const linear = a - (fa * (b - a)) / (fb - fa)
    const x =
      k % 2 === 0
        ? Math.min(
            Math.max(linear, Math.min(a, b) + 0.1 * Math.abs(b - a)),
            Math.max(a, b) - 0.1 * Math.abs(b - a)
          )
        : (a + b) / 2
    const fx = yield* at(x)
    if (fx > 0 === fa > 0) {
      a = x
      fa = fx
    } else {
      b = x
      fb = fx
    }
  }
  return fa <= 0 ? a : b
}
