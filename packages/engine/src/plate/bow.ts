import { inRange } from '../quantity/range.ts'

/**
 * How far a strip of several stretches, each bent evenly, stands from the straight line between its ends.
 *
 *   w'' = −κ,   w = 0 at both ends           stretches one behind the other, no kink between them
 *
 *   κ  curvature of a stretch, 1/mm    w  height over the line between the ends, mm
 *
 * Within a stretch w is a parabola; its top, where it has one, is looked at besides the ends.
 *
 * Source: geometry. Check: one stretch gives κ·L²/8; curvature in the middle alone, θ = κ·d over a length L,
 * stands θ·(L/4 − d/8) in the middle (derived).
 *
 * Limits: small slopes.
 *
 * @returns mm, the largest by amount, with its sign: positive where the middle stands up
 */
export function bowMm(curvaturesPerMm: readonly number[], lengthsMm: readonly number[]): number {
  const n = curvaturesPerMm.length
  if (n !== lengthsMm.length)
    throw new RangeError(`${n} curvatures and ${lengthsMm.length} lengths; as many of each are asked for`)
  let length = 0
  let slope = 0
  let height = 0
  // With w and w' nought at the start, first: the line to the end is taken off afterwards.
  const starts: { x: number; w: number; slope: number }[] = []
  for (let k = 0; k < n; k++) {
    const [c, l] = [curvaturesPerMm[k]!, lengthsMm[k]!]
    inRange('curvature', c, -1e3, 1e3, '1/mm')
    inRange('length of a stretch', l, 0, 100_000, 'mm')
    starts.push({ x: length, w: height, slope })
    height += slope * l - (c * l * l) / 2
    slope -= c * l
    length += l
  }
  if (length === 0) return 0
  const chord = height / length
  let worst = 0
  starts.forEach(({ x, w, slope: s }, k) => {
    const [c, l] = [curvaturesPerMm[k]!, lengthsMm[k]!]
    const top = c === 0 ? 0 : (s - chord) / c
    for (const u of top > 0 && top < l ? [0, top] : [0]) {
      const off = w + s * u - (c * u * u) / 2 - chord * (x + u)
      if (Math.abs(off) > Math.abs(worst)) worst = off
    }
  })
  return worst
}
