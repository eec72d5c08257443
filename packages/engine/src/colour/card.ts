import { type Bands, insideReflectance, luminanceOf } from '../catalogue/pigment-optics.ts'
import { leastSquares } from '../quantity/least-squares.ts'
import { inRange } from '../quantity/range.ts'
import { coverDepthMm } from './cover-depth.ts'
import { encodedOf } from './srgb.ts'
import { laidOn, type Optics, seenOutside } from './stacked.ts'

/**
 * A maker's own hiding card: steps of a tinted mix cast over black and over white, of which the colours are read,
 * give the mix its absorption and scattering.
 *
 *   colour of step i over g = sRGB(outside(R(S, K, X_i, R_g)))     in each band; g black or white
 *   least Σ (colour read − colour reckoned)²/σ_c² + Σ (X_i − X_i read)²/σ_x² + Σ (ln(p/p₀)/σ_p)²
 *
 *   p   S and K in the three bands, as logarithms     X_i  true depth of a step, found with them
 *   σ_c  doubt of a colour read, steps of 255         σ_x  doubt of a depth read, mm
 *   p₀, σ_p  where the search starts, the generic pigment's, and how far it lets go: a factor of 20
 *
 * A pigment that only absorbs has no S to find. Depths stand among the unknowns because a step that is 0.1 mm deeper
 * than it was read pulls all six of its colours the same way. The covariance is that of the linearised problem
 * at the minimum, widened by χ² per degree of freedom where the readings scatter more than they were said to.
 *
 * Source: least squares with errors in both (quantity/least-squares.ts); layers as stacked.ts.
 * Check: colours made by the model give K and S back exactly; 200 seeded cards with errors of colour and depth hold
 * the truth within the 90 % bands in 85 to 95 of 100.
 *
 * Limits: three bands; an even light and a camera that reads the bare card as it is given, so gloss must be kept out
 * of the picture; bare card that resin touches is taken as glossy. Where every step hides, or none does anything, the
 * generic pigment's figure stands with its wide band.
 */
export interface CardStep {
  /** Depth as read, mm. */
  readonly mm: number
  /** Colours as read, linear in light. */
  readonly overBlack: Bands
  readonly overWhite: Bands
}

export interface Card {
  readonly steps: readonly CardStep[]
  /** The bare card as read, linear in light. */
  readonly black: Bands
  readonly white: Bands
  /** Doubt of a colour read, steps of 255, and of a depth, mm: one standard deviation each. */
  readonly colourDoubt: number
  readonly depthDoubtMm: number
}

export interface CardFit {
  readonly optics: Optics
  /** Factor either way within which nine of ten truths lie, per band. */
  readonly scatterFactor: Bands
  readonly absorbFactor: Bands
  /** The same of the depth that hides: what the pigment's strength is known by. */
  readonly strengthFactor: number
  /** Covariance of (ln S, ln K) in red, green and blue, six by six, row by row; zero rows for what is not there. */
  readonly covariance: Float64Array
  /** Root mean square of what is left over, steps of 255. */
  readonly misfit: number
}

/** 90 of 100 of a normal distribution lie within so many standard deviations. */
const NINETY = 1.6449
/** ln 20: how far a parameter may leave the generic pigment's without cost. */
const LOOSE = Math.log(20)
/** Of what the catalogue gives as nothing, the search starts here, 1/mm. */
const LEAST = 1e-4
/** Farthest that a parameter is sought from where it starts, in units of its looseness: a factor of 20⁵. */
const FARTHEST = 5
/** A card without errors is met to the last figures: the search goes on while a step gains this share of its cost. */
const LEAST_GAIN = 1e-12
const MOST_ROUNDS = 200

/** @throws RangeError when there are no steps or a figure is out of range */
export function fitCard(card: Card, generic: Optics): CardFit {
  const { steps } = card
  inRange('steps of the card', steps.length, 1, 60)
  inRange('doubt of a colour', card.colourDoubt, 0.05, 60, 'steps of 255')
  inRange('doubt of a depth', card.depthDoubtMm, 1e-4, 10, 'mm')
  for (const s of steps) inRange('depth of a step', s.mm, 0.01, 1000, 'mm')
  const scatters = luminanceOf(generic.scatterPerMm) > 0
  const behind = [card.black.map(inside), card.white.map(inside)] as const
  const start: number[] = []
  for (let b = 0; b < 3; b++)
    start.push(
      Math.log(Math.max(LEAST, generic.scatterPerMm[b]!)),
      Math.log(Math.max(LEAST, generic.absorbPerMm[b]!))
    )
  const free = scatters ? [0, 1, 2, 3, 4, 5] : [1, 3, 5]
  const n = free.length
  const all = new Float64Array(6).fill(Number.NEGATIVE_INFINITY)
  const place = (theta: ArrayLike<number>): void => {
    for (let k = 0; k < n; k++) all[free[k]!] = start[free[k]!]! + LOOSE * theta[k]!
  }
  const residuals = (theta: Float64Array): Float64Array => {
    place(theta)
    const out = new Float64Array(6 * steps.length)
    let at = 0
    steps.forEach((step, i) => {
      const mm = Math.max(step.mm / 10, step.mm + theta[n + i]! * card.depthDoubtMm)
      for (let b = 0; b < 3; b++) {
        const s = Math.exp(all[2 * b]!)
        const k = Math.exp(all[2 * b + 1]!)
        for (let g = 0; g < 2; g++) {
          const seen = encodedOf(seenOutside(laidOn(s, k, mm, behind[g]![b]!)))
          const read = encodedOf((g === 0 ? step.overBlack : step.overWhite)[b]!)
          out[at++] = (seen - read) / card.colourDoubt
        }
      }
    })
    return out
  }
  const size = n + steps.length
  const found = leastSquares(
    { size, at: residuals, near: residuals, bound: FARTHEST, most: MOST_ROUNDS, gain: LEAST_GAIN },
    new Float64Array(size)
  )
  const readings = 6 * steps.length
  const left = found.residuals
  let squares = 0
  for (const r of left) squares += r * r
  for (let i = n; i < size; i++) squares += found.theta[i]! ** 2
  const widen = Math.max(1, squares / Math.max(1, readings - n))
  const covariance = new Float64Array(36)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      covariance[6 * free[i]! + free[j]!] = widen * LOOSE ** 2 * found.covariance[i]![j]!
  place(found.theta)
  const factor = (k: number) => Math.exp(NINETY * Math.sqrt(Math.max(0, covariance[7 * k]!)))
  let misfit = 0
  for (const r of left) misfit += (r * card.colourDoubt) ** 2
  return {
    optics: opticsOf(all),
    scatterFactor: [factor(0), factor(2), factor(4)],
    absorbFactor: [factor(1), factor(3), factor(5)],
    strengthFactor: depthFactor(all, covariance),
    covariance,
    misfit: Math.sqrt(misfit / readings)
  }
}

// How far the hiding depth strays with the six logarithms, to first order.
function depthFactor(logs: Float64Array, covariance: Float64Array): number {
  const slope = new Float64Array(6)
  const depth = (k: number, by: number): number => {
    const moved = Float64Array.from(logs)
    moved[k]! += by
    return Math.log(coverDepthMm(opticsOf(moved)) ?? 1000)
  }
  for (let k = 0; k < 6; k++)
    if (Number.isFinite(logs[k]!)) slope[k] = (depth(k, 0.02) - depth(k, -0.02)) / 0.04
  let variance = 0
  for (let i = 0; i < 6; i++)
    for (let j = 0; j < 6; j++) variance += slope[i]! * covariance[6 * i + j]! * slope[j]!
  return Math.exp(NINETY * Math.sqrt(Math.max(0, variance)))
}

function opticsOf(logs: ArrayLike<number>): Optics {
  const at = (k: number) => Math.exp(logs[k]!)
  return { scatterPerMm: [at(0), at(2), at(4)], absorbPerMm: [at(1), at(3), at(5)] }
}

function inside(seen: number): number {
  return Math.min(1, insideReflectance(Math.max(0, seen)))
}
