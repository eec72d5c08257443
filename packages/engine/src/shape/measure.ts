import type { Bounds, Region, Ring } from './region.ts'

/** Signed area of a ring, mm²: positive counter-clockwise (shoelace formula). */
export function ringArea(ring: Ring): number {
  const n = ring.length
  if (n < 6) return 0
  // Taken about the first point, so that a small ring far from the origin keeps its digits.
  const x0 = ring[0]!
  const y0 = ring[1]!
  let twice = 0
  for (let k = 2; k + 3 < n; k += 2) {
    twice += (ring[k]! - x0) * (ring[k + 3]! - y0) - (ring[k + 2]! - x0) * (ring[k + 1]! - y0)
  }
  return twice / 2
}

// A region never changes, so what is measured of it once holds.
const areas = new WeakMap<Region, number>()
const boxes = new WeakMap<Region, Bounds>()

/** Area of a region, mm². */
export function area(region: Region): number {
  let a = areas.get(region)
  if (a === undefined) {
    a = 0
    for (const ring of region.rings) a += ringArea(ring)
    areas.set(region, a)
  }
  return a
}

/** Length of all edges, holes included, mm. */
export function perimeter(region: Region): number {
  let sum = 0
  for (const ring of region.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2)
      sum += Math.hypot(ring[k]! - ring[p]!, ring[k + 1]! - ring[p + 1]!)
  }
  return sum
}

/** Smallest upright box round a region; all zero for an empty one. */
export function bounds(region: Region): Bounds {
  let box = boxes.get(region)
  if (box === undefined) {
    let minX = Number.POSITIVE_INFINITY
    let minY = Number.POSITIVE_INFINITY
    let maxX = Number.NEGATIVE_INFINITY
    let maxY = Number.NEGATIVE_INFINITY
    for (const ring of region.rings) {
      for (let k = 0; k < ring.length; k += 2) {
        minX = Math.min(minX, ring[k]!)
        maxX = Math.max(maxX, ring[k]!)
        minY = Math.min(minY, ring[k + 1]!)
        maxY = Math.max(maxY, ring[k + 1]!)
      }
    }
    box = region.rings.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : { minX, minY, maxX, maxY }
    boxes.set(region, box)
  }
  return box
}

/** Whether two boxes share no point. */
export function apart(a: Bounds, b: Bounds): boolean {
  return a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY
}

/** Middle of area of a region, mm; the middle of its box when it has no area. */
export function centroid(region: Region): { x: number; y: number } {
  const b = bounds(region)
  const ox = (b.minX + b.maxX) / 2
  const oy = (b.minY + b.maxY) / 2
  let sum = 0
  let sx = 0
  let sy = 0
  for (const ring of region.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const ax = ring[p]! - ox
      const ay = ring[p + 1]! - oy
      const bx = ring[k]! - ox
      const by = ring[k + 1]! - oy
      const cross = ax * by - bx * ay
      sum += cross
      sx += (ax + bx) * cross
      sy += (ay + by) * cross
    }
  }
  return sum === 0 ? { x: ox, y: oy } : { x: ox + sx / (3 * sum), y: oy + sy / (3 * sum) }
}

/** Whether a point lies in a region; points on an edge count as inside. Winding number, exact on vertices. */
export function inside(region: Region, x: number, y: number): boolean {
  const b = bounds(region)
  if (x < b.minX || x > b.maxX || y < b.minY || y > b.maxY) return false
  let winding = 0
  for (const ring of region.rings) {
    let px = ring[ring.length - 2]!
    let py = ring[ring.length - 1]!
    for (let k = 0; k < ring.length; k += 2) {
      const qx = ring[k]!
      const qy = ring[k + 1]!
      if (py <= y !== qy <= y || (py === y && qy === y)) {
        const cross = (qx - px) * (y - py) - (x - px) * (qy - py)
        if (cross === 0 && (x - px) * (x - qx) <= 0 && (y - py) * (y - qy) <= 0) return true
        if (py <= y && qy > y && cross > 0) winding++
        else if (py > y && qy <= y && cross < 0) winding--
      } else if (qx === x && qy === y) return true
      px = qx
      py = qy
    }
  }
  return winding !== 0
}

/** The nearest point of a region's edge, and its distance: negative inside, positive outside, mm. */
export function nearest(region: Region, x: number, y: number): { x: number; y: number; distanceMm: number } {
  let best = Number.POSITIVE_INFINITY
  let bx = Number.NaN
  let by = Number.NaN
  for (const ring of region.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const ax = ring[p]!
      const ay = ring[p + 1]!
      const dx = ring[k]! - ax
      const dy = ring[k + 1]! - ay
      const long = dx * dx + dy * dy
      const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long))
      const d = (ax + t * dx - x) ** 2 + (ay + t * dy - y) ** 2
      if (d < best) {
        best = d
        bx = ax + t * dx
        by = ay + t * dy
      }
    }
  }
  if (!Number.isFinite(best)) throw new Error('an empty region has no nearest point')
  const distance = Math.sqrt(best)
  return { x: bx, y: by, distanceMm: inside(region, x, y) ? -distance : distance }
}
