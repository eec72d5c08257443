/**
 * How long a liquid lets things move in it: the fluidity gathered along a history of viscosity,
 *
 *   M = ∫ dt/η        1/Pa
 *
 * Everything slow that moves through resin (bubbles by Stokes, stones at small Reynolds numbers) goes a way
 * that is its own constant times M, so M is worked out once and asked many times.
 *
 * Between samples the logarithm of η is taken as straight (thickening is close to exponential): then the piece
 * of M is exact, Δt·(1/η0 − 1/η1)/ln(η1/η0).
 *
 * Check: constant η gives t/η; η = η0·e^(t/τ) gives (τ/η0)·(1 − e^(−t/τ)) (closed forms, test).
 *
 * Limits: the viscosity is one for the whole depth at a time; a skin that gels first is not seen.
 */

/** Viscosity against time: minutes rising, Pa·s above zero, of equal length (a pour's curve). */
export interface FlowHistory {
  readonly min: ArrayLike<number>
  readonly viscosityPaS: ArrayLike<number>
}

/**
 * Thicker than this nothing moves by its own weight any more, Pa·s: a pseudo-gel that no longer levels
 * (practice: heavy strands 50-100, pseudo-gel above 500). What still moves between here and gel is nothing.
 */
export const STUCK_PAS = 500

/** Fluidity between two moments, 1/Pa; until the mix is stuck when `toMin` is left out. Never negative. */
export function fluidity(history: FlowHistory, fromMin = 0, toMin = Number.POSITIVE_INFINITY): number {
  const { min, viscosityPaS: eta } = history
  let sum = 0
  for (let i = 1; i < min.length; i++) {
    const t0 = Math.max(min[i - 1]!, fromMin)
    const t1 = Math.min(min[i]!, toMin)
    if (t1 <= t0) continue
    const a = at(history, i, t0)
    const b = at(history, i, t1)
    if (a >= STUCK_PAS) break
    sum += piece((t1 - t0) * 60, a, b)
    if (eta[i]! >= STUCK_PAS) break
  }
  return sum
}

/** When the fluidity from `fromMin` on has come to `wanted`, min; null when the mix is stuck before. */
export function fluidityReachedMin(history: FlowHistory, wanted: number, fromMin = 0): number | null {
  const { min, viscosityPaS: eta } = history
  let left = wanted
  for (let i = 1; i < min.length; i++) {
    const t0 = Math.max(min[i - 1]!, fromMin)
    const t1 = min[i]!
    if (t1 <= t0) continue
    const a = at(history, i, t0)
    if (a >= STUCK_PAS) return null
    const here = piece((t1 - t0) * 60, a, at(history, i, t1))
    if (here >= left) return t0 + inversePiece(left, (t1 - t0) * 60, a, at(history, i, t1)) / 60
    left -= here
    if (eta[i]! >= STUCK_PAS) return null
  }
  return null
}

// Viscosity at a moment within the interval that ends at sample i; a gelled end counts as stuck.
function at({ min, viscosityPaS }: FlowHistory, i: number, t: number): number {
  const a = Math.min(viscosityPaS[i - 1]!, MOST_PAS)
  const b = Math.min(viscosityPaS[i]!, MOST_PAS)
  const x = (t - min[i - 1]!) / (min[i]! - min[i - 1]!)
  return a * (b / a) ** x
}

// Keeps a gelled sample from making the logarithm infinite.
const MOST_PAS = 1e9

function piece(spanS: number, a: number, b: number): number {
  const log = Math.log(b / a)
  // Near-equal ends: the series of (1 − e^−x)/x, exact to 1e-12 here.
  if (Math.abs(log) < 1e-4) return (spanS / a) * (1 - log / 2 + (log * log) / 6)
  return (spanS * (1 / a - 1 / b)) / log
}

// Seconds into a piece after which it has given `wanted`.
function inversePiece(wanted: number, spanS: number, a: number, b: number): number {
  const log = Math.log(b / a)
  if (Math.abs(log) < 1e-9) return wanted * a
  return (-Math.log(1 - (wanted * a * log) / spanS) * spanS) / log
}
