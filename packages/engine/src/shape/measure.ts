import { rowAt, rowsOf } from './edge-rows.ts'
import { segmentDistance2, segmentShare } from './edge-tree.ts'
import { orientation } from './orientation.ts'
import type { Bounds, Region, Ring } from './region.ts'

/**
 * Area of one ring, mm²: positive counter-clockwise, negative clockwise.
 *
 *   A = ½ Σ (x_k − x_0)(y_{k+1} − y_0) − (x_{k+1} − x_0)(y_k − y_0)      (about the first point: keeps digits)
 */
export function ringArea(ring: Ring): number {
  const n = ring.length
  const x0 = ring[0] ?? 0
  const y0 = ring[1] ?? 0
  let twice = 0
  for (let k = 2; k + 3 < n; k += 2) {
    twice += (ring[k]! - x0) * (ring[k + 3]! - y0) - (ring[k + 2]! - x0) * (ring[k + 1]! - y0)
  }
  return twice / 2
}

/** Area of a region, holes taken off, mm². */
export function area(region: Region): number {
  let sum = 0
  for (const ring of region.rings) sum += ringArea(ring)
  return sum
}

/** Length of all edges, outer and inner, mm. */
export function perimeter(region: Region): number {
  let sum = 0
  for (const ring of region.rings) {
    const n = ring.length
    for (let k = 0, p = n - 2; k < n; p = k, k += 2) {
      sum += Math.hypot(ring[k]! - ring[p]!, ring[k + 1]! - ring[p + 1]!)
    }
  }
  return sum
}

/** The box about a region, mm; of EMPTY the box of nothing (min +Infinity, max −Infinity). */
export function bounds(region: Region): Bounds {
  let minX = Number.POSITIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (const ring of region.rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const x = ring[k]!
      const y = ring[k + 1]!
      if (x < minX) minX = x
      if (x > maxX) maxX = x
      if (y < minY) minY = y
      if (y > maxY) maxY = y
    }
  }
  return { minX, minY, maxX, maxY }
}

/**
 * Centre of area, mm.
 *
 *   C = Σ over triangles (P_0, P_k, P_{k+1}) of signed area × mean of the corners, over the whole area
 *
 * @throws Error for a region without area
 */
export function centroid(region: Region): { x: number; y: number } {
  const x0 = region.rings[0]?.[0] ?? 0
  const y0 = region.rings[0]?.[1] ?? 0
  let twice = 0
  let sumX = 0
  let sumY = 0
  for (const ring of region.rings) {
    const n = ring.length
    for (let k = 0, p = n - 2; k < n; p = k, k += 2) {
      const px = ring[p]! - x0
      const py = ring[p + 1]! - y0
      const qx = ring[k]! - x0
      const qy = ring[k + 1]! - y0
      const cross = px * qy - qx * py
      twice += cross
      sumX += cross * (px + qx)
      sumY += cross * (py + qy)
    }
  }
  if (!(Math.abs(twice) > 0)) throw new Error('a region without area has no centre of area')
  return { x: x0 + sumX / (3 * twice), y: y0 + sumY / (3 * twice) }
}

/**
 * Whether a point lies in the region; the boundary counts as inside. Exact for the coordinates given: the
 * winding number by half-open crossings, each decided by the sign of {@link orientation}.
 * @throws Error for a coordinate that is not a finite number
 */
export function inside(region: Region, x: number, y: number): boolean {
  refuseNonFinite(x, y)
  const sorted = rowsOf(region)
  let winding = 0
  if (sorted !== null) {
    const { at, rows, starts } = sorted
    if (y < sorted.minY || y > sorted.maxY) return false
    const row = rowAt(sorted, y)
    for (let i = starts[row]!; i < starts[row + 1]!; i++) {
      const e = rows[i]!
      const turn = turnAt(at[e]!, at[e + 1]!, at[e + 2]!, at[e + 3]!, x, y)
      if (turn === ON) return true
      winding += turn
    }
    return winding !== 0
  }
  for (const ring of region.rings) {
    const n = ring.length
    let ax = ring[n - 2]!
    let ay = ring[n - 1]!
    for (let k = 0; k < n; k += 2) {
      const bx = ring[k]!
      const by = ring[k + 1]!
      const turn = turnAt(ax, ay, bx, by, x, y)
      if (turn === ON) return true
      winding += turn
      ax = bx
      ay = by
    }
  }
  return winding !== 0
}

/** The point lies on the edge. */
const ON = 2

// What an edge adds to the winding number of a point: 1, -1 or 0; or that the point lies on it.
function turnAt(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  // Edges wholly above or below cannot matter; a level edge only if the point lies on it.
  if (ay <= y ? by < y : by > y) return 0
  if (ay === y && by === y) return (ax <= x ? bx >= x : bx <= x) ? ON : 0
  const up = ay <= y && by > y
  const down = ay > y && by <= y
  // Wholly to the right: a crossing of the ray to the right, whatever the slope.
  if (ax > x && bx > x) return up ? 1 : down ? -1 : 0
  if (ax < x && bx < x) return 0
  const side = orientation(ax, ay, bx, by, x, y)
  if (side === 0) return ON
  return up && side > 0 ? 1 : down && side < 0 ? -1 : 0
}

/** The nearest place of a boundary. */
export interface Nearest {
  readonly x: number
  readonly y: number
  /** Distance to the boundary, mm: negative inside the region, 0 on its edge, positive outside. */
  readonly distanceMm: number
}

/**
 * The place of the region's boundary nearest to a point (the first of equals).
 * @throws Error for EMPTY, and for a coordinate that is not a finite number
 */
export function nearest(region: Region, x: number, y: number): Nearest {
  refuseNonFinite(x, y)
  let least = Number.POSITIVE_INFINITY
  let foundX = 0
  let foundY = 0
  for (const ring of region.rings) {
    const n = ring.length
    let ax = ring[n - 2]!
    let ay = ring[n - 1]!
    for (let k = 0; k < n; k += 2) {
      const bx = ring[k]!
      const by = ring[k + 1]!
      if (segmentDistance2(ax, ay, bx, by, x, y) < least) {
        least = segmentDistance2(ax, ay, bx, by, x, y)
        const t = segmentShare(ax, ay, bx, by, x, y)
        foundX = ax + t * (bx - ax)
        foundY = ay + t * (by - ay)
      }
      ax = bx
      ay = by
    }
  }
  if (least === Number.POSITIVE_INFINITY) throw new Error('an empty region has no boundary')
  const distance = Math.sqrt(least)
  return { x: foundX, y: foundY, distanceMm: distance > 0 && inside(region, x, y) ? -distance : distance }
}

function refuseNonFinite(x: number, y: number): void {
  if (!Number.isFinite(x) || !Number.isFinite(y)) {
    throw new Error(`a point needs two finite coordinates; found (${x}, ${y})`)
  }
}
