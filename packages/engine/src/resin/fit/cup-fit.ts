import { type LeastSquares, leastSquares } from '../../quantity/least-squares.ts'
import { inRange } from '../../quantity/range.ts'
import type { ResinModel } from '../model.ts'
import { fillOf } from '../vessel.ts'
import { BOUND, indexOf, PARAMETERS } from './cup-parameter.ts'
import {
  type CupMark,
  courseOf,
  type FitProblem,
  type Kept,
  marksOf,
  nothingKept,
  residualFunctions
} from './cup-residual.ts'
import { type CupReading, type CupTest, LEAST_READINGS } from './cup-test.ts'

/** What a cup test gives: plain data but for the model, which is a resin's as any other. */
export interface CupFit {
  readonly base: ResinModel
  /** The class's model with what was learned. */
  readonly model: ResinModel
  /** θ and its covariance, in the order of PARAMETERS. */
  readonly theta: readonly number[]
  readonly covariance: readonly (readonly number[])[]
  /** Readings as they were fitted (thinned to 300 by means), what the fit shows there and the difference, °C and K. */
  readonly residuals: readonly {
    readonly timeMin: number
    readonly measuredC: number
    readonly fittedC: number
    readonly offK: number
    /** offK over what a reading at that place is good for. */
    readonly sigmas: number
  }[]
  /** Moments told by hand, strings and gelled, and when the fit comes to them. */
  readonly marks: readonly CupMark[]
  /** The fitted temperature in the middle and as shown, from mixing to the last reading; at most 240 points. */
  readonly curve: readonly {
    readonly timeMin: number
    readonly middleC: number
    readonly meanConversion: number
  }[]
  readonly noise: Noise
  /** Whether a peak of the cup lies within the readings: they rise and then fall. */
  readonly peakSeen: boolean
  /** What start and room were expected to be before the fit, °C, and the start's doubt, K. */
  readonly expected: { readonly startC: number; readonly startDoubt: number; readonly roomC: number }
  readonly iterations: number
}

/** What the residuals say of the readings. */
export interface Noise {
  /** Standard deviation of a reading about the fit, K. */
  readonly sigmaK: number
  /** Correlation of a reading's error with the next's, 0..0.95. */
  readonly correlation: number
  /** As many independent readings as these are worth. */
  readonly effectiveReadings: number
}

/** Most readings fitted: more are averaged in groups. */
const MOST_FITTED = 300
/** No household thermometer and no model of ours is better, K. */
export const LEAST_SIGMA_K = 0.25
/** What one shape and one heat capacity leave open, of the rise over the room: cp runs 1700-2100 J/(kg·K) (memory). */
const MODEL_SHARE = 0.02
/** A first reading by then, or by that share of the test, tells the temperature at the start: a fast resin has warmed after five minutes. */
const EARLY_MIN = 1
const EARLY_SHARE = 0.02
/** Without one the start is known so well, K. */
const UNSEEN_START_K = 2

/**
 * Fits a resin to a cup test: weighted least squares with the class as prior (least-squares.ts), the cup by
 * cup-course.ts, thermometer lag, the clock's zero, start, room and the cup's own shedding of heat fitted along.
 *
 *   minimise Σ((shown − read)/σ)² + moments + Σθ²
 *
 * σ is found from the residuals and made larger by (1 + ρ)/(1 − ρ), ρ the correlation of neighbours: readings
 * that stray together count for fewer, and what the model cannot follow shows as such straying. Besides, each
 * reading carries its time's rounding times the slope, and 2 % of its rise over the room. Exponents, energies and k1/k2 are fitted with narrow
 * priors so that their doubt passes into every later prediction.
 *
 * Source: textbook (Bard, Nonlinear Parameter Estimation; effective number of an AR(1) series n(1−ρ)/(1+ρ)),
 * memory. Check: bands against readings of another integrator with other exponents (tests, docs/prove-all.md).
 *
 * Limits: one room temperature; one cup shape, the sphere of the same V/A; a peak above 150 °C says when, not
 * how hot. Throws RangeError on values out of range.
 */
export function fitCup(given: CupTest, base: ResinModel): CupFit {
  checkTest(given)
  const test = { ...given, readings: thinned(given.readings) }
  const { volumePerAreaMm } = fillOf(
    { diameterMm: test.diameterMm, capacityMl: Number.MAX_VALUE },
    (test.massG / base.bulk.liquidKgM3) * 1000
  )
  const first = test.readings[0]!
  const early =
    first.timeMin <= Math.max(EARLY_MIN, EARLY_SHARE * test.readings[test.readings.length - 1]!.timeMin)
  const timeDoubt = timeDoubtMin(given.readings)
  const slopes = slopesOf(test.readings)
  const problem = (sigmaK: number): FitProblem => ({
    base,
    test,
    volumePerAreaMm,
    startC: test.startC ?? (early ? first.tempC : test.roomC),
    startDoubt: test.startC !== null || early ? 1 : UNSEEN_START_K,
    sigmaK: slopes.map((s, i) =>
      Math.hypot(sigmaK, s * timeDoubt, MODEL_SHARE * (test.readings[i]!.tempC - test.roomC))
    )
  })
  const kept = nothingKept()
  const solve = (sigmaK: number, from: Float64Array, most: number): LeastSquares =>
    leastSquares(
      { size: PARAMETERS.length, bound: BOUND, most, ...residualFunctions(problem(sigmaK), kept) },
      from
    )
  const tried = valleys(problem(FIRST_SIGMA_K), kept).map(from => solve(FIRST_SIGMA_K, from, ROUGHLY))
  const coarse = tried.reduce((a, b) => (b.cost < a.cost ? b : a))
  // The noise is read off a fit that follows the readings closely: off one that the class holds back, what it
  // holds back would count as noise, loosen the fit further, and so on.
  const close = solve(CLOSE_SIGMA_K, coarse.theta, WELL)
  const noise = noiseOf(test, close, problem(CLOSE_SIGMA_K))
  const sigma = effectiveSigma(noise, test.readings.length)
  const fit = solve(sigma, close.theta, WELL)
  const iterations = coarse.iterations + close.iterations + fit.iterations
  const last = courseOf(problem(sigma), fit.theta, kept)
  const { course, shownC, model } = last
  const single = problem(noise.sigmaK).sigmaK
  const step = Math.max(1, Math.ceil(course.timeS.length / 240))
  return {
    base,
    model,
    theta: [...fit.theta],
    covariance: fit.covariance.map(row => [...row]),
    residuals: test.readings.map((r, i) => ({
      timeMin: r.timeMin,
      measuredC: r.tempC,
      fittedC: shownC[i]!,
      offK: r.tempC - shownC[i]!,
      sigmas: (r.tempC - shownC[i]!) / single[i]!
    })),
    marks: marksOf(problem(sigma), last),
    curve: course.timeS.flatMap((s, i) =>
      i % step === 0 || i === course.timeS.length - 1
        ? [{ timeMin: s / 60, middleC: course.centreC[i]!, meanConversion: course.meanConversion[i]! }]
        : []
    ),
    noise,
    peakSeen: peakSeen(test.readings, noise.sigmaK),
    expected: (({ startC, startDoubt }) => ({ startC, startDoubt, roomC: test.roomC }))(problem(sigma)),
    iterations
  }
}

/** Standard deviations taken to find the valley, and to follow the readings closely, K. */
const FIRST_SIGMA_K = 3
const CLOSE_SIGMA_K = 0.4
/** Iterations: to choose a valley, and to reach its bottom. */
const ROUGHLY = 8
const WELL = 25
/** Errors of household thermometers hang together by so much (practice), which counts as so many readings. */
const USUAL_CORRELATION = 0.4
const USUAL_COUNT = 10

function checkTest(test: CupTest): void {
  const { readings } = test
  inRange('mass of the cup test in g', test.massG, 5, 50_000)
  inRange('diameter of the cup in mm', test.diameterMm, 20, 1000)
  inRange('room temperature in °C', test.roomC, 0, 45)
  if (readings.length < LEAST_READINGS)
    throw new RangeError(`a cup test has ${readings.length} readings; at least ${LEAST_READINGS}`)
  readings.forEach((r, i) => {
    inRange('time of a reading in min', r.timeMin, 0, 30 * 24 * 60)
    inRange('reading in °C', r.tempC, -10, 350)
    if (i > 0 && !(r.timeMin > readings[i - 1]!.timeMin))
      throw new RangeError(`reading ${i + 1} at ${r.timeMin} min does not come after the one before`)
  })
}

function thinned(readings: readonly CupReading[]): readonly CupReading[] {
  const group = Math.ceil(readings.length / MOST_FITTED)
  if (group === 1) return readings
  const out: CupReading[] = []
  for (let i = 0; i < readings.length; i += group) {
    const some = readings.slice(i, i + group)
    const mean = (of: (r: CupReading) => number): number =>
      some.reduce((sum, r) => sum + of(r), 0) / some.length
    out.push({ timeMin: mean(r => r.timeMin), tempC: mean(r => r.tempC) })
  }
  return out
}

/** Standard deviation of a rounded time: whole minutes ±½, else ±½ of a tenth: step/√12. */
function timeDoubtMin(readings: readonly CupReading[]): number {
  const whole = readings.every(r => Math.abs(r.timeMin - Math.round(r.timeMin)) < 1e-6)
  return (whole ? 1 : 0.1) / Math.sqrt(12)
}

function slopesOf(readings: readonly CupReading[]): number[] {
  return readings.map((_, i) => {
    const a = readings[Math.max(0, i - 1)]!
    const b = readings[Math.min(readings.length - 1, i + 1)]!
    return (b.tempC - a.tempC) / (b.timeMin - a.timeMin)
  })
}

// The valleys to start from: speed over the whole span allowed, heat and k1/k2 at two values each, the best few.
// A peak that is shifted in time has no slope towards its place, so that descent from the class alone would end
// beside it.
function valleys(problem: FitProblem, kept: Kept): readonly Float64Array[] {
  const { at } = residualFunctions(problem, kept)
  const found: { theta: Float64Array; cost: number }[] = []
  for (let k = -8; k <= 8; k++)
    for (const heat of [-0.8, 0.8])
      for (const ratio of [-0.8, 0.8]) {
        const theta = new Float64Array(PARAMETERS.length)
        theta[indexOf('activity')] = (k / 8) * (BOUND - 0.01)
        theta[indexOf('heat')] = heat
        theta[indexOf('ratio')] = ratio
        const cost = at(theta).reduce(
          (sum, r) => sum + r * r,
          theta.reduce((sum, x) => sum + x * x, 0)
        )
        found.push({ theta, cost })
      }
  return found
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_VALLEYS)
    .map(f => f.theta)
}

const MOST_VALLEYS = 2

function noiseOf(test: CupTest, fit: LeastSquares, problem: FitProblem): Noise {
  const n = test.readings.length
  const slopeless = Array.from({ length: n }, (_, i) => fit.residuals[i]! * problem.sigmaK[i]!)
  // Steep readings stray by their times: weighed down as in the fit.
  const weights = Array.from({ length: n }, (_, i) => Math.min(1, problem.sigmaK[0]! / problem.sigmaK[i]!))
  const off = slopeless.map((r, i) => r * weights[i]!)
  const learned = fit.covariance.reduce((sum, row, i) => sum + (1 - Math.min(1, row[i]!)), 0)
  const square = off.reduce((sum, r) => sum + r * r, 0)
  const sigmaK = Math.max(LEAST_SIGMA_K, Math.sqrt(square / Math.max(1, n - learned)))
  let product = 0
  for (let i = 1; i < n; i++) product += off[i]! * off[i - 1]!
  const raw = square > 0 ? product / square : 0
  const expected = (n * raw + USUAL_COUNT * USUAL_CORRELATION) / (n + USUAL_COUNT)
  // Kendall's correction of a short series: the estimate is low by (1 + 3ρ)/n.
  const correlation = Math.min(0.95, Math.max(0, expected + (1 + 3 * expected) / (n + USUAL_COUNT)))
  return { sigmaK, correlation, effectiveReadings: (n * (1 - correlation)) / (1 + correlation) }
}

function effectiveSigma({ sigmaK, effectiveReadings }: Noise, n: number): number {
  return sigmaK * Math.sqrt(n / effectiveReadings)
}

function peakSeen(readings: readonly CupReading[], sigmaK: number): boolean {
  let top = 0
  readings.forEach((r, i) => {
    if (r.tempC > readings[top]!.tempC) top = i
  })
  const hot = readings[top]!.tempC
  const clear = Math.max(1, 3 * sigmaK)
  return hot - readings[0]!.tempC > clear && hot - readings[readings.length - 1]!.tempC > clear
}
