/** An affine map: x' = a·x + c·y + e, y' = b·x + d·y + f, written [a, b, c, d, e, f] as in SVG's matrix(). */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0]

/** The map that first does `inner`, then `outer`. */
export function multiply(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer
  const [p, q, r, s, t, u] = inner
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f]
}

/** Factor on areas: negative when the map mirrors, 0 when it flattens everything into a line. */
export function determinant([a, b, c, d]: Matrix): number {
  return a * d - b * c
}
