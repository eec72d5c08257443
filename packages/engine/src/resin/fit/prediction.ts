import { cholesky } from '../../quantity/least-squares.ts'
import type { Band } from '../bands.ts'
import { H_CUP } from '../cup.ts'
import type { ResinModel } from '../model.ts'
import type { CupFit } from './cup-fit.ts'
import { CUP_PARAMETERS, effect, inCup, modelAt } from './cup-parameter.ts'

/** Ends of 90 % in standard deviations: Φ(1.645) = 0.95. */
export const NINETY = 1.6448536269514722

/**
 * What the model leaves of the rate from one batch to the next, one standard deviation of its logarithm:
 * ratio weighed by hand, shape of the cup against a ball, one heat capacity. 5 % at 90 % (practice; a cylinder
 * against a ball of the same V/A: 1.2 % of the time to gel, computed).
 */
const LEFT_OPEN = 0.03

/** What a prediction is reckoned from. */
export interface Believed {
  readonly model: ResinModel
  /** The same resin as it leads heat in the maker's cups. */
  readonly modelInCup: ResinModel
  /** Film coefficient of the maker's cups, W/(m²·K). */
  readonly hCupWm2K: number
}

/**
 * Predictions from a fit, each with its 90 % band.
 *
 * The joint doubt is turned into independent directions (Cholesky of the covariance), each quantity's slope is
 * taken over one standard deviation either way, and the quantity is then reckoned at the two points that lie
 * 1.645 standard deviations along its own steepest direction. Exact for a quantity that is linear in θ, and
 * for one that rises throughout along a single direction, however bent: a peak near the edge of running away.
 * In structural reliability the same points are those of the first-order method.
 *
 *   ends  q(θ ± 1.645·L·g/|g|),   g_j = (q(θ + L_j) − q(θ − L_j))/2,   L·Lᵀ = covariance
 *
 * `quantities` gives finite numbers, always as many; for times give the logarithm or the time, for what is
 * not reached a large number. Cost: 27 calls and two for each quantity.
 */
export function predictionBands(
  fit: Pick<CupFit, 'base' | 'theta' | 'covariance'>,
  quantities: (believed: Believed) => readonly number[]
): readonly Band[] {
  const size = CUP_PARAMETERS
  const factor = cholesky(fit.covariance.slice(0, size).map(row => Float64Array.from(row.slice(0, size))))
  // Directions: the fit's own, and last the one that no fit closes.
  const at = (along: ArrayLike<number>, times: number): readonly number[] => {
    const theta = fit.theta.map((x, i) => {
      if (i >= size) return x
      let moved = x
      for (let j = 0; j <= i; j++) moved += factor[i]![j]! * along[j]! * times
      return moved
    })
    const model = scaledRate(modelAt(fit.base, theta), Math.exp(LEFT_OPEN * along[size]! * times))
    const given = quantities({
      model,
      modelInCup: inCup(model, theta),
      hCupWm2K: H_CUP * effect(theta, 'film')
    })
    const odd = given.find(x => !Number.isFinite(x))
    if (odd !== undefined)
      throw new RangeError(`a quantity to predict is ${odd}; a finite number is asked for`)
    return given
  }
  const central = at(new Float64Array(size + 1), 0)
  const sides = Array.from({ length: size + 1 }, (_, j) => {
    const unit = new Float64Array(size + 1)
    unit[j] = 1
    return { up: at(unit, 1), down: at(unit, -1) }
  })
  return central.map((value, q): Band => {
    const slope = sides.map(({ up, down }) => (up[q]! - down[q]!) / 2)
    const steep = Math.hypot(...slope)
    if (!(steep > 0)) return { central: value, low: value, high: value }
    const along = slope.map(s => s / steep)
    const ends = [at(along, -NINETY)[q]!, at(along, NINETY)[q]!]
    return { central: value, low: Math.min(value, ...ends), high: Math.max(value, ...ends) }
  })
}

function scaledRate(model: ResinModel, factor: number): ResinModel {
  const { kinetics } = model
  return { ...model, kinetics: { ...kinetics, k2At25PerS: kinetics.k2At25PerS * factor } }
}
