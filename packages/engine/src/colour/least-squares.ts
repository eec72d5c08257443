/**
 * Nonlinear least squares of a few parameters: Gauss-Newton steps with Levenberg's damping.
 *
 *   least |r(p)|²:  (JᵀJ + λ·diag JᵀJ)·step = −Jᵀr;  λ a third after a step that helps, four times after one that does not
 *   covariance = (JᵀJ)⁻¹ at the minimum, for residuals in units of their standard deviation
 *
 * Derivatives by central differences. Source: Levenberg 1944, Marquardt 1963 (textbook). Check: a straight line's
 * closed form; the twelve coefficients of a card made by the model.
 *
 * Limits: the nearest minimum from the start; a dozen or so parameters, of size about 1 each.
 */
export interface LeastSquares {
  readonly at: Float64Array
  readonly residuals: Float64Array
  /** Row by row, as many rows as parameters. */
  readonly covariance: Float64Array
  readonly rounds: number
}

const MOST_ROUNDS = 200
const STEP = 1e-5

/** `residuals` writes `count` figures for parameters `p`. */
export function leastSquares(
  residuals: (p: ArrayLike<number>, out: Float64Array) => void,
  start: readonly number[],
  count: number
): LeastSquares {
  const n = start.length
  let at = Float64Array.from(start)
  let left = new Float64Array(count)
  let trial = new Float64Array(count)
  const ahead = new Float64Array(count)
  const back = new Float64Array(count)
  const jacobian = new Float64Array(count * n)
  const normal = new Float64Array(n * n)
  const right = new Float64Array(n)
  residuals(at, left)
  let cost = square(left)
  let damping = 1e-3
  let rounds = 0
  const slopes = () => {
    const moved = Float64Array.from(at)
    for (let j = 0; j < n; j++) {
      moved[j] = at[j]! + STEP
      residuals(moved, ahead)
      moved[j] = at[j]! - STEP
      residuals(moved, back)
      moved[j] = at[j]!
      for (let i = 0; i < count; i++) jacobian[i * n + j] = (ahead[i]! - back[i]!) / (2 * STEP)
    }
    normal.fill(0)
    right.fill(0)
    for (let i = 0; i < count; i++)
      for (let j = 0; j < n; j++) {
        const slope = jacobian[i * n + j]!
        if (slope === 0) continue
        right[j]! -= slope * left[i]!
        for (let k = 0; k < n; k++) normal[j * n + k]! += slope * jacobian[i * n + k]!
      }
  }
  slopes()
  for (; rounds < MOST_ROUNDS; rounds++) {
    const damped = Float64Array.from(normal)
    for (let j = 0; j < n; j++) damped[j * n + j]! += damping * Math.max(1e-9, normal[j * n + j]!)
    const inverse = inverted(damped, n)
    const next = Float64Array.from(at)
    let longest = 0
    for (let j = 0; j < n; j++) {
      let step = 0
      for (let k = 0; k < n; k++) step += inverse[j * n + k]! * right[k]!
      // A logarithm that leaps by more than e is not what the slope knows.
      step = Math.min(1, Math.max(-1, step))
      next[j]! += step
      longest = Math.max(longest, Math.abs(step))
    }
    residuals(next, trial)
    const there = square(trial)
    if (there <= cost) {
      ;[left, trial] = [trial, left]
      at = next
      const gain = cost - there
      cost = there
      damping = Math.max(1e-12, damping / 3)
      slopes()
      if (longest < 1e-9 || gain <= 1e-13 * cost) break
    } else {
      damping *= 4
      if (damping > 1e12) break
    }
  }
  return { at, residuals: left, covariance: inverted(normal, n), rounds }
}

function square(r: Float64Array): number {
  let sum = 0
  for (const x of r) sum += x * x
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY
}

// Gauss-Jordan with pivots; the matrix is symmetric and small.
function inverted(matrix: Float64Array, n: number): Float64Array {
  const a = Float64Array.from(matrix)
  const out = new Float64Array(n * n)
  for (let i = 0; i < n; i++) out[i * n + i] = 1
  for (let c = 0; c < n; c++) {
    let best = c
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r * n + c]!) > Math.abs(a[best * n + c]!)) best = r
    if (best !== c)
      for (let k = 0; k < n; k++) {
        ;[a[c * n + k], a[best * n + k]] = [a[best * n + k]!, a[c * n + k]!]
        ;[out[c * n + k], out[best * n + k]] = [out[best * n + k]!, out[c * n + k]!]
      }
    const pivot = a[c * n + c]! || 1e-300
    for (let k = 0; k < n; k++) {
      a[c * n + k]! /= pivot
      out[c * n + k]! /= pivot
    }
    for (let r = 0; r < n; r++) {
      const times = a[r * n + c]!
      if (r === c || times === 0) continue
      for (let k = 0; k < n; k++) {
        a[r * n + k]! -= times * a[c * n + k]!
        out[r * n + k]! -= times * out[c * n + k]!
      }
    }
  }
  return out
}
