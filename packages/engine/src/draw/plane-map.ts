/**
 * A flat thing seen by a pinhole camera maps to the picture by a homography,
 *
 *   (x, y) mm = ((a·u + b·v + c)/(g·u + h·v + i), (d·u + e·v + f)/(g·u + h·v + i))      u, v in px
 *
 * kept as nine numbers [a, b, c, d, e, f, g, h, i], signed so that the denominator is positive on the side of the
 * horizon that can be seen. Pictures count px to the right and down from the upper left corner, the middle of
 * the first px at (½, ½); the plan counts mm to the right and up.
 */
export type Homography = readonly [
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
  h: number,
  i: number
]
export type Point = readonly [number, number]

/** Where a px of the picture lies on the plan, mm; null at and beyond the horizon. */
export function pxToMm(h: Homography, u: number, v: number): [number, number] | null {
  return h[6] * u + h[7] * v + h[8] > 1e-9 ? apply(h, u, v) : null
}

/** Where a place of the plan lies in the picture, px; null when the camera did not see it. */
export function mmToPx(h: Homography, xMm: number, yMm: number): [number, number] | null {
  const back = inverse(h)
  const px = back === null ? null : apply(back, xMm, yMm)
  return px !== null && pxToMm(h, px[0], px[1]) !== null ? px : null
}

/** The map as it stands, horizon or not; null only where the denominator is 0. */
export function apply(h: Homography, u: number, v: number): [number, number] | null {
  const w = h[6] * u + h[7] * v + h[8]
  if (w === 0) return null
  return [(h[0] * u + h[1] * v + h[2]) / w, (h[3] * u + h[4] * v + h[5]) / w]
}

/** The map that first does `inner`, then `outer`. */
export function multiply(outer: Homography, inner: Homography): Homography {
  const at = (r: 0 | 3 | 6, c: 0 | 1 | 2) =>
    outer[r] * inner[c] + outer[r + 1]! * inner[c + 3]! + outer[r + 2]! * inner[c + 6]!
  return [at(0, 0), at(0, 1), at(0, 2), at(3, 0), at(3, 1), at(3, 2), at(6, 0), at(6, 1), at(6, 2)]
}

/** The map back; null for one that flattens the plane into a line. */
export function inverse(h: Homography): Homography | null {
  const [a, b, c, d, e, f, g, k, i] = h
  const [p, q, r] = [e * i - f * k, f * g - d * i, d * k - e * g]
  const det = a * p + b * q + c * r
  if (det === 0 || !Number.isFinite(det)) return null
  return divided(
    [p, c * k - b * i, b * f - c * e, q, a * i - c * g, c * d - a * f, r, b * g - a * k, a * e - b * d],
    det
  )
}

/** The same map with every number divided. */
export function divided([a, b, c, d, e, f, g, h, i]: Homography, by: number): Homography {
  return [a / by, b / by, c / by, d / by, e / by, f / by, g / by, h / by, i / by]
}

/** The vector that eight rows of nine send to nothing; null when there is more than one. Changes `rows`. */
export function nullVector(rows: number[][]): Homography | null {
  const order = [0, 1, 2, 3, 4, 5, 6, 7, 8]
  for (let k = 0; k < 8; k++) {
    let [pr, pc, most] = [k, k, 0]
    for (let r = k; r < 8; r++)
      for (let c = k; c < 9; c++)
        if (Math.abs(rows[r]![c]!) > most) [pr, pc, most] = [r, c, Math.abs(rows[r]![c]!)]
    if (most < 1e-10) return null
    ;[rows[k], rows[pr]] = [rows[pr]!, rows[k]!]
    for (const row of rows) [row[k], row[pc]] = [row[pc]!, row[k]!]
    ;[order[k], order[pc]] = [order[pc]!, order[k]!]
    for (let r = 0; r < 8; r++) {
      if (r === k) continue
      const f = rows[r]![k]! / rows[k]![k]!
      for (let c = k; c < 9; c++) rows[r]![c]! -= f * rows[k]![c]!
    }
  }
  const out = new Array<number>(9).fill(1)
  for (let k = 0; k < 8; k++) out[order[k]!] = -rows[k]![8]! / rows[k]![k]!
  out[order[8]!] = 1
  return out as unknown as Homography
}
