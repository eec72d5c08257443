import type { ResinKinetics } from '../catalogue/resin.ts'
import type { ResinResult } from '../resin/column-result.ts'
import { crossingS } from '../resin/conversion.ts'
import { SYRUP_PAS } from '../resin/thickening.ts'
import { hardMin } from './hard.ts'
import { RECOAT_CLOSES_AT, valueAt } from './windows.ts'

/** What was seen of a pour at a time after it was mixed. */
export type Sign = 'strings' | 'tacky' | 'gelled' | 'hard' | 'temperature'

export interface PourSign {
  readonly sign: Sign
  readonly afterMin: number
  /** Of a temperature, °C. */
  readonly tempC?: number
}

/** How active a resin is in a pour, against what the plan took, by what was seen of it. */
export interface Activity {
  /** Times the rate of cure that was taken. */
  readonly factor: number
  readonly band: readonly [number, number]
  /** The band of times that is left: times × (1 ± this). */
  readonly timeBand: number
  /** Signs that do not go together with the rest, by index. */
  readonly odd: readonly number[]
  /** The factor each sign by itself asks for; null where no factor gives it, or any of a range does. Empty where all go together. */
  readonly alone: readonly (number | null)[]
}

/** Factors looked at: beyond them it is another resin, or the clock was wrong. */
export const LEAST_FACTOR = 0.25
export const MOST_FACTOR = 4

/**
 * How sure a sign is: the time at which one calls it, in its logarithm (practice: a level of viscosity called
 * within a factor of 1.4 is called within 8 % of the time), and a thermometer, K.
 */
const SIGMA = { strings: 0.08, gelled: 0.08, tacky: 0.1, hard: 0.15 } as const
const SIGMA_K = 1.5
/** A sign farther off than this many of its sigmas goes against the rest. */
const ODD = 2.5
/** Times are never known better than this: batches of one resin differ (practice). */
const LEAST_BAND = 0.04

/** What a run says of a sign: off by so many sigmas; positive when the resin seems slower than the run. */
type Off = (run: ResinResult, sign: PourSign) => number

/**
 * Re-estimates the activity of a resin from signs of one pour: least squares on the logarithm of the factor,
 * with the band of the resin as the prior.
 *
 *   S(x) = (x − x0)²/p² + Σ off_i(x)²,   x = ln factor
 *   strings   mean viscosity 3 Pa·s, when it first does        gelled  half of it, when it first does
 *   tacky     surface between gel and a conversion of 0.8      hard    by then 15 K of glass transition over the room
 *   temperature   between the outer face and the hottest place: a reading does not say where it was taken
 *
 * S is looked at on a grid, then closed in on by golden section; the band is from its curvature, widened where
 * the signs disagree (√(S/n)).
 *
 * Check: signs of a made pour give its factor back (tests). Limits: one factor for all of the cure; a room that
 * differs from the plan's is taken for activity.
 *
 * @param run the pour at a factor; `prior.timeBand` as a resin's band of times, 0 < it < 1
 */
export function activityFrom(
  signs: readonly PourSign[],
  prior: { readonly factor: number; readonly timeBand: number },
  kinetics: ResinKinetics,
  run: (factor: number) => ResinResult
): Activity {
  const known = new Map<number, ResinResult>()
  const at = (x: number): ResinResult => {
    const found = known.get(x) ?? run(Math.exp(x))
    known.set(x, found)
    return found
  }
  const offs: Off = (r, s) => off(kinetics, r, s)
  const priorX = Math.log(prior.factor)
  const sum = (x: number, list: readonly PourSign[], weight = 1): number =>
    weight * ((x - priorX) / prior.timeBand) ** 2 + list.reduce((s, sign) => s + offs(at(x), sign) ** 2, 0)
  const best = lowest(x => sum(x, signs))
  const step = 0.02
  const curvature = (sum(best + step, signs) - 2 * sum(best, signs) + sum(best - step, signs)) / step ** 2
  const spread = Math.sqrt(Math.max(1, sum(best, signs) / Math.max(1, signs.length)))
  // At a kink of a one-sided sign the curvature says nothing: the prior's stays.
  const sigma = Math.min(prior.timeBand, (curvature > 0 ? Math.sqrt(2 / curvature) : prior.timeBand) * spread)
  const timeBand = Math.max(LEAST_BAND, sigma)
  const odd = signs.flatMap((s, i) => (Math.abs(offs(at(best), s)) > ODD ? [i] : []))
  // What each says by itself is asked only where they do not go together.
  const alone = (odd.length === 0 ? [] : signs).map(s => {
    const x = lowest(y => sum(y, [s], 1e-4))
    return Math.abs(offs(at(x), s)) > 1 || one(s) ? null : Math.exp(x)
  })
  const factor = Math.exp(best)
  return { factor, band: [factor * (1 - timeBand), factor * (1 + timeBand)], timeBand, odd, alone }
}

// Signs that hold over a range of factors.
function one(s: PourSign): boolean {
  return s.sign === 'tacky' || s.sign === 'hard'
}

function off(kinetics: ResinKinetics, run: ResinResult, s: PourSign): number {
  const h = run.history
  const endMin = h.timeS[h.timeS.length - 1]! / 60
  const minutes = (timeS: number | null) => (timeS === null ? 2 * endMin : timeS / 60)
  const late = (atMin: number, sigma: number) =>
    Math.log(Math.max(1, s.afterMin) / Math.max(1, atMin)) / sigma
  switch (s.sign) {
    case 'strings':
      return late(
        minutes(
          crossingS(
            h.timeS,
            h.meanViscosityPaS.map(v => Math.log(v)),
            Math.log(SYRUP_PAS)
          )
        ),
        SIGMA.strings
      )
    case 'gelled':
      return late(minutes(run.halfGelS), SIGMA.gelled)
    case 'tacky': {
      const from = late(minutes(crossingS(h.timeS, h.outerConversion, kinetics.gelConversion)), SIGMA.tacky)
      const to = late(minutes(crossingS(h.timeS, h.outerConversion, RECOAT_CLOSES_AT)), SIGMA.tacky)
      return from < 0 ? from : Math.max(0, to)
    }
    case 'hard':
      return Math.min(0, late(hardMin(h) ?? 2 * endMin, SIGMA.hard))
    case 'temperature': {
      const [outer, hottest] = [valueAt(h.timeS, h.outerC, s.afterMin), valueAt(h.timeS, h.maxC, s.afterMin)]
      const sigma = Math.hypot(SIGMA_K, (hottest - outer) / 2)
      return ((outer + hottest) / 2 - s.tempC!) / sigma
    }
  }
}

// Least value over the factors looked at: a grid, then golden section about its best point.
function lowest(f: (x: number) => number): number {
  const [from, to] = [Math.log(LEAST_FACTOR), Math.log(MOST_FACTOR)]
  const points = 24
  const at = (k: number) => from + ((to - from) * k) / points
  let k = 0
  for (let i = 1; i <= points; i++) if (f(at(i)) < f(at(k))) k = i
  let [low, high] = [at(Math.max(0, k - 1)), at(Math.min(points, k + 1))]
  const golden = (Math.sqrt(5) - 1) / 2
  // Each step keeps one of the two places it looked at: a run is dear.
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)]
  let [fa, fb] = [f(a), f(b)]
  while (high - low > 1e-3) {
    if (fa <= fb) {
      high = b
      ;[b, fb] = [a, fa]
      a = high - golden * (high - low)
      fa = f(a)
    } else {
      low = a
      ;[a, fa] = [b, fb]
      b = low + golden * (high - low)
      fb = f(b)
    }
  }
  return (low + high) / 2
}
