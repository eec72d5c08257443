/**
 * On which side of the line a→b the point c lies: > 0 left, < 0 right, 0 exactly on it.
 *
 *   det = (ax − cx)(by − cy) − (ay − cy)(bx − cx)
 *
 * The sign is exact for the doubles given. A floating-point filter answers almost always; near zero the
 * determinant is summed without rounding error from error-free products (Dekker 1971, Numer. Math. 18:224) and
 * sums (Knuth, TAOCP 2, 4.2.2). Filter bound (3 + 16ε)ε, ε = 2^-53: Shewchuk 1997, Discrete Comput. Geom. 18:305
 * (memory).
 *
 * Limits: coordinates below 1e140 and products above 1e-290 in magnitude, so that nothing over- or underflows.
 */
export function orientation(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  const left = (ax - cx) * (by - cy)
  const right = (ay - cy) * (bx - cx)
  const det = left - right
  if (Math.abs(det) >= FILTER * (Math.abs(left) + Math.abs(right))) return det
  return exactSign(ax, ay, bx, by, cx, cy)
}

const EPSILON = 2 ** -53
const FILTER = (3 + 16 * EPSILON) * EPSILON

// The six products of the expanded determinant, each as an exact pair, added into a growing expansion.
function exactSign(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  let sum: number[] = []
  for (const [p, q] of [
    [ax, by],
    [-ax, cy],
    [-cx, by],
    [-ay, bx],
    [ay, cx],
    [cy, bx]
  ] as const) {
    const product = p * q
    sum = grow(grow(sum, productError(p, q, product)), product)
  }
  // Non-overlapping, by increasing magnitude: the last one decides.
  return sum[sum.length - 1] ?? 0
}

/** 2^27 + 1: splits a double into two halves of 26 bits. */
const SPLITTER = 2 ** 27 + 1

// p·q − product, exactly.
function productError(p: number, q: number, product: number): number {
  const pc = SPLITTER * p
  const ph = pc - (pc - p)
  const pl = p - ph
  const qc = SPLITTER * q
  const qh = qc - (qc - q)
  const ql = q - qh
  return pl * ql - (product - ph * qh - pl * qh - ph * ql)
}

// Adds one double to an expansion; zeros are left out.
function grow(expansion: readonly number[], value: number): number[] {
  const out: number[] = []
  let carry = value
  for (const part of expansion) {
    const sum = carry + part
    const virtual = sum - carry
    const error = carry - (sum - virtual) + (part - virtual)
    if (error !== 0) out.push(error)
    carry = sum
  }
  if (carry !== 0) out.push(carry)
  return out
}
