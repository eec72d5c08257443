/**
 * Bayesian least squares: minimises ½·|r(θ)|² + ½·|θ|² by Levenberg and Marquardt, with θ in units of the
 * prior's standard deviations, so that the prior is the unit matrix and the normal matrix JᵀJ + I is always
 * positive definite.
 *
 *   (JᵀJ + I + μ·diag)·Δθ = −(Jᵀr + θ),   covariance = (JᵀJ + I)⁻¹ at the minimum
 *
 *   r  residuals over their standard deviations    θ  parameters over theirs    J = ∂r/∂θ by forward differences
 *
 * Source: Levenberg 1944, Marquardt 1963 (memory); the covariance is that of a linear model with Gaussian
 * errors. Check: straight line with prior, closed form (test).
 *
 * Limits: one minimum; the caller finds the valley.
 */
export interface LeastSquares {
  readonly theta: Float64Array
  /** Residuals at θ. */
  readonly residuals: Float64Array
  /** Covariance of θ, rows of equal length. */
  readonly covariance: readonly Float64Array[]
  /** ½·(|r|² + |θ|²). */
  readonly cost: number
  readonly iterations: number
}

/** Residuals at θ; `near` prepares for the small changes of a Jacobian about it. */
export interface ResidualProblem {
  readonly size: number
  /** At θ, choosing steps anew. */
  readonly at: (theta: Float64Array) => Float64Array
  /** At a θ next to the one that `at` was last asked for. */
  readonly near: (theta: Float64Array) => Float64Array
  /** Largest |θ| of a parameter. */
  readonly bound: number
  /** Most iterations; 30 if not given. */
  readonly most?: number
  /** It ends where a step gains less than this share of the cost; 2e-5 if not given. */
  readonly gain?: number
}

const STEP = 0.002
const MOST_ITERATIONS = 30
const LEAST_GAIN = 2e-5

export function leastSquares(problem: ResidualProblem, start: Float64Array): LeastSquares {
  const { size, bound } = problem
  let theta = start.slice()
  let residuals = problem.at(theta)
  let cost = costOf(residuals, theta)
  let damping = 1e-3
  let iterations = 0
  let normal = matrix(size)
  for (; iterations < (problem.most ?? MOST_ITERATIONS); iterations++) {
    const jacobian = jacobianOf(problem, theta, residuals)
    const { normal: n, right } = normalOf(jacobian, residuals, theta)
    normal = n
    let better = false
    let gain = 0
    for (let k = 0; k < 8 && !better; k++) {
      const damped = normal.map((row, i) => {
        const copy = row.slice()
        copy[i]! *= 1 + damping
        return copy
      })
      const step = solve(cholesky(damped), right)
      const next = theta.map((x, i) => Math.min(bound, Math.max(-bound, x + step[i]!)))
      const tried = problem.at(next)
      const triedCost = costOf(tried, next)
      better = triedCost < cost
      if (better) {
        gain = cost - triedCost
        theta = next
        residuals = tried
        cost = triedCost
        damping = Math.max(1e-6, damping / 5)
      } else damping *= 6
    }
    if (!better) break
    if (gain < (problem.gain ?? LEAST_GAIN) * (1 + cost)) break
  }
  // The matrix at the minimum itself.
  problem.at(theta)
  normal = normalOf(jacobianOf(problem, theta, residuals), residuals, theta).normal
  return { theta, residuals, covariance: inverse(normal), cost, iterations }
}

function costOf(residuals: Float64Array, theta: Float64Array): number {
  let sum = 0
  for (const r of residuals) sum += r * r
  for (const x of theta) sum += x * x
  return Number.isFinite(sum) ? sum / 2 : Number.POSITIVE_INFINITY
}

function jacobianOf(problem: ResidualProblem, theta: Float64Array, at: Float64Array): Float64Array[] {
  // Both ends on the same steps: the base is taken anew by `near`.
  const base = problem.near(theta)
  return Array.from({ length: problem.size }, (_, j) => {
    const moved = theta.slice()
    moved[j]! += STEP
    const there = problem.near(moved)
    return at.map((_, i) => (there[i]! - base[i]!) / STEP)
  })
}

function normalOf(jacobian: readonly Float64Array[], residuals: Float64Array, theta: Float64Array) {
  const size = jacobian.length
  const normal = matrix(size)
  const right = new Float64Array(size)
  for (let j = 0; j < size; j++) {
    for (let k = 0; k <= j; k++) {
      let sum = j === k ? 1 : 0
      for (let i = 0; i < residuals.length; i++) sum += jacobian[j]![i]! * jacobian[k]![i]!
      normal[j]![k] = sum
      normal[k]![j] = sum
    }
    let sum = theta[j]!
    for (let i = 0; i < residuals.length; i++) sum += jacobian[j]![i]! * residuals[i]!
    right[j] = -sum
  }
  return { normal, right }
}

const matrix = (n: number): Float64Array[] => Array.from({ length: n }, () => new Float64Array(n))

/** Lower factor L of a symmetric positive definite A = L·Lᵀ. Throws where it is not one. */
export function cholesky(a: readonly Float64Array[]): Float64Array[] {
  const n = a.length
  const l = matrix(n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!
      if (i !== j) l[i]![j] = sum / l[j]![j]!
      else if (sum > 0) l[i]![i] = Math.sqrt(sum)
      else throw new Error(`a matrix that is not positive definite: pivot ${sum} at ${i}`)
    }
  return l
}

function solve(l: readonly Float64Array[], right: ArrayLike<number>): Float64Array {
  const n = l.length
  const x = Float64Array.from(right)
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= l[i]![k]! * x[k]!
    x[i]! /= l[i]![i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= l[k]![i]! * x[k]!
    x[i]! /= l[i]![i]!
  }
  return x
}

function inverse(a: readonly Float64Array[]): Float64Array[] {
  const l = cholesky(a)
  return a.map((_, j) => {
    const unit = new Float64Array(a.length)
    unit[j] = 1
    return solve(l, unit)
  })
}
