import { cholesky, leastSquares } from '../quantity/least-squares.ts'
import { inRange } from '../quantity/range.ts'
import type { DryingCurve, DryingStart } from './drying-curve.ts'
import { dryingCurve } from './drying-curve.ts'
import { DIFFUSION_M2_PER_S } from './settle.ts'

/**
 * A drying log: the weights of a timber over weeks, fitted with a slab that dries towards the balance of its room,
 * and the day on which its core will have come down to a moisture.
 *
 *   m(t)    = m_d·(1 + M(t)/100)
 *   M(t)    = M_e + (M_0 − M_e)·R(F + κ·t)/R(F)        R = 1 − meanFraction (settle.ts)
 *   core(t) = M_e + (M_0 − M_e)/R(F)·(4/π)·exp(−π²·(F + κ·t))
 *
 *   m  mass, g     m_d  oven-dry mass, g       M_0  mean moisture at the first weighing, %
 *   M_e  where it will settle, %               κ  D/L², 1/day
 *   F  how far it had already dried when first weighed, as a Fourier number: small for timber even through its
 *      thickness, above 0.1 for one whose profile is the first mode
 *
 * Five parameters, each with what is known beforehand, by {@link leastSquares}: M_e from the air, κ from the
 * thickness with D of 1 to 5e-10 m²/s and slower by the surface, m_d and M_0 nearly free, tied by whatever moisture
 * was metered or dried in the oven. The band comes from its covariance, widened where the weights scatter more than the
 * scale explains, by draws of a fixed seed; 5 and 95 %.
 *
 * Source: Crank, plane sheet (memory); Bayesian least squares (textbook).
 * Check: seeded logs of another integrator (explicit diffusion with a resistance at the surface, a scale that
 * scatters) hold their bands; closed form where the weights are exact.
 *
 * Limits: the air is taken to stay as it is: a change of season moves M_e. Above fibre saturation water leaves
 * faster than by diffusion and the forecast comes late or early. Ends dry first; the log says nothing of them.
 */

/** Days since the first weighing, and g. */
export interface Weighing {
  readonly day: number
  readonly massG: number
}

/** Moisture known by other means on a day of the log, % ± `doubtPct` (taken as the 90 % band). */
export interface KnownMoisture {
  readonly day: number
  readonly pct: number
  readonly doubtPct: number
}

export interface DryingLogInput {
  readonly weighings: readonly Weighing[]
  readonly known: readonly KnownMoisture[]
  readonly thicknessMm: number
  /** Balance of the air it stands in, with its band. */
  readonly airPct: number
  readonly airLowPct: number
  readonly airHighPct: number
  /** What the core is to come down to, %. */
  readonly wantedPct: number
  /** Step of the scale, g. */
  readonly scaleG: number
}

type Band = readonly [low: number, central: number, high: number]

/** What a log says; days count from the first weighing. */
export interface DryingLog {
  /** Mean and core at the last weighing, %. */
  readonly meanPct: Band
  readonly corePct: Band
  /** Where it will settle, %. */
  readonly settlesPct: Band
  /** Day on which the core has come to the wanted moisture; null when it never does in that air. */
  readonly readyDay: number | null
  readonly readyFrom: number | null
  /** null: it may never. */
  readonly readyTo: number | null
}

/** Why no fit is made; `day` names the weighing at fault. */
export interface LogRefused {
  readonly refused: 'few' | 'short' | 'gains' | 'jump'
  readonly day: number
}

const LEAST_WEIGHINGS = 3
/** Shorter logs say nothing a scale can tell, days (practice: weekly weights). */
const LEAST_DAYS = 7
/** What weights scatter by beside the step of the scale: draughts, dust, knots of stickers (practice), share of the mass. */
const SCATTER = 0.001
/** A gain from one weighing to the next, or a miss of the curve, beyond this share of the mass is no drying. */
const JUMP = 0.01
/** Half of the central 90 % of a normal distribution, in standard deviations. */
const NINETY = 1.645
/** The band of the air is the widest that was read: two standard deviations. */
const AIR_BAND = 2
const DRAWS = 400
/** No draw lies further from what was believed beforehand, standard deviations. */
const FARTHEST = 6
const SECONDS_PER_DAY = 86_400

/** Fits a log, or says why not. */
export function dryingLog(input: DryingLogInput): DryingLog | LogRefused {
  const { weighings, thicknessMm, airPct, wantedPct, scaleG } = input
  inRange('thickness', thicknessMm, 0.2, 1000, 'mm')
  inRange('balance of the air', airPct, 0, 40, '%')
  inRange('moisture wanted', wantedPct, 0, 40, '%')
  inRange('step of the scale', scaleG, 0, 10_000, 'g')
  const fault = faultOf(weighings)
  if (fault !== null) return fault
  const last = weighings.at(-1)!
  const start = startOf(input)
  const at = (theta: ArrayLike<number>): DryingCurve => dryingCurve(theta, start)
  const residualsAt = (theta: Float64Array): Float64Array => {
    const curve = at(theta)
    return Float64Array.from([
      ...weighings.map(w => (w.massG - curve.dryG * (1 + curve.mean(w.day) / 100)) / start.sigmaG),
      ...input.known.map(k => ((curve.mean(k.day) - k.pct) / Math.max(0.1, k.doubtPct)) * NINETY)
    ])
  }
  const fit = leastSquares(
    { size: 5, at: residualsAt, near: residualsAt, bound: 4, most: 60 },
    new Float64Array(5)
  )
  const misses = weighings.map((w, i) => Math.abs(fit.residuals[i]! * start.sigmaG) / w.massG)
  const worst = misses.indexOf(Math.max(...misses))
  if (misses[worst]! > JUMP) return { refused: 'jump', day: weighings[worst]!.day }
  const chi = weighings.reduce((sum, _, i) => sum + fit.residuals[i]! ** 2, 0)
  const wider = Math.sqrt(Math.max(1, chi / Math.max(1, weighings.length - 2)))
  const central = at(fit.theta)
  const draws = drawsOf(fit.theta, fit.covariance, wider).map(at)
  const band = (of: (c: DryingCurve) => number): Band => {
    const [low, high] = quantiles(draws.map(of))
    const middle = of(central)
    return [Math.min(low, middle), middle, Math.max(high, middle)]
  }
  const ready = band(c => c.coreDay(wantedPct))
  const day = (x: number): number | null => (Number.isFinite(x) ? x : null)
  return {
    meanPct: band(c => c.mean(last.day)),
    corePct: band(c => c.core(last.day)),
    settlesPct: band(c => c.settles),
    readyDay: day(ready[1]),
    readyFrom: day(ready[0]),
    readyTo: day(ready[2])
  }
}

function faultOf(weighings: readonly Weighing[]): LogRefused | null {
  const [first, last] = [weighings[0], weighings.at(-1)]
  if (first === undefined || last === undefined || weighings.length < LEAST_WEIGHINGS)
    return { refused: 'few', day: last?.day ?? 0 }
  if (last.day - first.day < LEAST_DAYS) return { refused: 'short', day: last.day }
  for (let i = 1; i < weighings.length; i++) {
    const [before, now] = [weighings[i - 1]!, weighings[i]!]
    if (now.massG > before.massG * (1 + JUMP)) return { refused: 'jump', day: now.day }
  }
  if (last.massG > first.massG * (1 + 4 * SCATTER)) return { refused: 'gains', day: last.day }
  return null
}

function startOf({
  weighings,
  known,
  thicknessMm,
  airPct,
  airLowPct,
  airHighPct,
  scaleG
}: DryingLogInput): DryingStart {
  const first = weighings[0]!
  // The surest moisture ties the mass down; without any the last weight stands a little above the balance.
  const surest = [...known].sort((a, b) => a.doubtPct - b.doubtPct)[0]
  const dryG =
    surest === undefined
      ? weighings.at(-1)!.massG / (1 + (airPct + 2) / 100)
      : massOn(weighings, surest.day) / (1 + surest.pct / 100)
  const meters = thicknessMm / 1000
  return {
    dryG,
    firstPct: Math.max(1, (first.massG / dryG - 1) * 100),
    airPct,
    airSpread: Math.max(0.3, (airHighPct - airLowPct) / 2 / AIR_BAND),
    ratePerDay: (DIFFUSION_M2_PER_S.central * SECONDS_PER_DAY) / meters ** 2,
    sigmaG: Math.hypot(scaleG / Math.sqrt(12), SCATTER * first.massG)
  }
}

function massOn(weighings: readonly Weighing[], day: number): number {
  return weighings.reduce((a, b) => (Math.abs(b.day - day) < Math.abs(a.day - day) ? b : a)).massG
}

// Draws about the fit, the same every time.
function drawsOf(theta: Float64Array, covariance: readonly Float64Array[], wider: number): Float64Array[] {
  const factor = cholesky(covariance)
  const normal = normals(20_261)
  return Array.from({ length: DRAWS }, () => {
    const z = theta.map(() => normal())
    const drawn = (x: number, i: number) =>
      x + wider * z.reduce((sum, v, k) => (k <= i ? sum + factor[i]![k]! * v : sum), 0)
    return theta.map((x, i) => Math.max(-FARTHEST, Math.min(FARTHEST, drawn(x, i))))
  })
}

// Box and Muller over a linear congruential generator (Numerical Recipes' constants; memory).
function normals(seed: number): () => number {
  let state = seed >>> 0
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return (state + 0.5) / 2 ** 32
  }
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next())
}

function quantiles(values: readonly number[]): readonly [number, number] {
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!
  return [at(0.05), at(0.95)]
}
