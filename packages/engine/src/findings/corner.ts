import type { Ring } from '../shape/region.ts'

/**
 * How far a ring turns at its point `k` (index of its x), degrees: between the chords to the places `reachMm`
 * along the ring before and after it. Positive: to the left, a corner that stands out of what the ring
 * encloses. 0 on rings shorter than four times the reach.
 *
 * Check: a square's corner 90; a circle of radius r over a reach s: 2·asin(s/(2r)) nearly, by chords.
 */
export function signedTurnDeg(ring: Ring, k: number, reachMm: number): number {
  const before = along(ring, k, reachMm, -2)
  const after = along(ring, k, reachMm, 2)
  if (before === null || after === null) return 0
  const [x, y] = [ring[k]!, ring[k + 1]!]
  const [ux, uy, vx, vy] = [x - before[0], y - before[1], after[0] - x, after[1] - y]
  return (Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * 180) / Math.PI
}

// The place so far along the ring from a point, forward (+2) or back (−2); null once round.
function along(ring: Ring, from: number, reachMm: number, step: 2 | -2): readonly [number, number] | null {
  const n = ring.length
  let left = reachMm
  let k = from
  for (let done = 0; done < n / 4; done += 1) {
    const next = (k + step + n) % n
    const [dx, dy] = [ring[next]! - ring[k]!, ring[next + 1]! - ring[k + 1]!]
    const length = Math.hypot(dx, dy)
    if (length >= left && length > 0)
      return [ring[k]! + (dx * left) / length, ring[k + 1]! + (dy * left) / length]
    left -= length
    k = next
  }
  return null
}
