import type { Ring } from '../shape/region.ts'

/**
 * The part of a ring where a·x + b·y + c ≥ 0 (Sutherland & Hodgman 1974, Comm. ACM 17:32; memory).
 *
 * The ring keeps its turning sense. One that is not convex may be left with edges that run forth and back along
 * the line: right for integrals over what it encloses, not for drawing.
 */
export function clip(ring: Ring, a: number, b: number, c: number): Ring {
  const n = ring.length
  if (n < 6) return new Float64Array(0)
  const out = new Float64Array(2 * n)
  let size = 0
  let px = ring[n - 2]!
  let py = ring[n - 1]!
  let pd = a * px + b * py + c
  for (let k = 0; k < n; k += 2) {
    const x = ring[k]!
    const y = ring[k + 1]!
    const d = a * x + b * y + c
    if (d >= 0 !== pd >= 0) {
      const t = pd / (pd - d)
      out[size++] = px + t * (x - px)
      out[size++] = py + t * (y - py)
    }
    if (d >= 0) {
      out[size++] = x
      out[size++] = y
    }
    px = x
    py = y
    pd = d
  }
  return out.subarray(0, size)
}
