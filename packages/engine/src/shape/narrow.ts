import { difference } from './combine.ts'
import type { EdgeTree } from './edge-tree.ts'
import { edgeDistance, edgeTree } from './edge-tree.ts'
import { bounds, ringArea } from './measure.ts'
import { offset } from './offset.ts'
import type { Region, Ring } from './region.ts'

export { inradius } from './inradius.ts'

/** A corner that a round cutter cannot reach into. */
export interface SharpCorner {
  readonly x: number
  readonly y: number
  /** Angle between the two sides of the corner as the cutter sees them, degrees: 90 in a square corner. */
  readonly angleDeg: number
  /** How far the cutter stays away from the corner, mm. */
  readonly leftMm: number
}

/**
 * Re-entrant corners (where the region's own angle is above 180°) whose radius is below `minRadiusMm`: what a
 * cutter of that radius, working outside the region, cannot clear. With `side: 'inside'` the cutter works within
 * the region (a pocket) and the outer corners count.
 *
 * By closing (out by the radius, then in again): what is filled is what the cutter leaves. A square corner
 * keeps (√2 − 1)·r. Corners that keep less than `leastMm` are left out: so little is the chords of a fillet, not
 * a corner; the region should be flattened to a fifth of it. A slit too narrow for the cutter is one corner, at
 * its deepest point.
 *
 * @throws Error for a radius or least depth not above 0
 */
export function sharpInnerCorners(
  region: Region,
  minRadiusMm: number,
  {
    side = 'outside',
    leastMm = 0.05
  }: { readonly side?: 'outside' | 'inside'; readonly leastMm?: number } = {}
): SharpCorner[] {
  if (!(minRadiusMm > 0)) throw new Error(`a radius of ${minRadiusMm} mm; it must be above 0`)
  if (!(leastMm > 0)) throw new Error(`a least depth of ${leastMm} mm; it must be above 0`)
  const out = side === 'outside' ? minRadiusMm : -minRadiusMm
  // Back a little farther, so that along smooth edges nothing is left that would join the corners.
  const play = leastMm / 5
  const options = { join: 'round', tolMm: leastMm / 10 } as const
  const rolled = offset(offset(region, out, options), -out - Math.sign(out) * play, options)
  const left = side === 'outside' ? difference(rolled, region) : difference(region, rolled)
  const tree = edgeTree(rolled.rings)
  const corners: SharpCorner[] = []
  for (const ring of left.rings) {
    if (!(ringArea(ring) > 0)) continue
    const corner = cornerOf(ring, tree, play)
    if (corner.leftMm >= leastMm) corners.push(corner)
  }
  return corners
}

// The edge of what is left runs along the two sides of the corner and back along the rolled edge. Its point
// farthest from the rolled edge is the corner; the sides are where it leaves and rejoins that edge.
function cornerOf(ring: Ring, rolled: EdgeTree, play: number): SharpCorner {
  const n = ring.length / 2
  const b = bounds({ rings: [ring] })
  // Where the cutter does not fit at all there is no rolled edge: then all of it stays.
  const whole = Math.hypot(b.maxX - b.minX, b.maxY - b.minY)
  const depths = new Float64Array(n)
  let deepest = 0
  for (let k = 0; k < n; k++) {
    depths[k] = Math.min(whole, edgeDistance(rolled, ring[2 * k]!, ring[2 * k + 1]!))
    if (depths[k]! > depths[deepest]!) deepest = k
  }
  const off = play / 4
  let first = deepest
  let last = deepest
  for (let k = 1; k < n && depths[(first + n - 1) % n]! > off; k++) first = (first + n - 1) % n
  for (let k = 1; k < n && depths[(last + 1) % n]! > off; k++) last = (last + 1) % n
  const before = (first + n - 1) % n
  const after = (last + 1) % n
  const ux = ring[2 * before]! - ring[2 * first]!
  const uy = ring[2 * before + 1]! - ring[2 * first + 1]!
  const vx = ring[2 * after]! - ring[2 * last]!
  const vy = ring[2 * after + 1]! - ring[2 * last + 1]!
  const angle = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy))
  return {
    x: ring[2 * deepest]!,
    y: ring[2 * deepest + 1]!,
    angleDeg: (angle * 180) / Math.PI,
    leftMm: Math.min(whole, depths[deepest]! + play)
  }
}
