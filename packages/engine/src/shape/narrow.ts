import { difference } from './combine.ts'
import type { EdgeTree } from './edge-tree.ts'
import { edgeDistance, edgeTree } from './edge-tree.ts'
import { area, bounds, centroid, inside, ringArea } from './measure.ts'
import { offset } from './offset.ts'
import type { Region, Ring } from './region.ts'

/** The largest circle that fits into a region. */
export interface InscribedCircle {
  readonly x: number
  readonly y: number
  readonly radiusMm: number
}

/** A box of the search: its centre, half its side, the distance at the centre and the most it can be within. */
interface Cell {
  readonly x: number
  readonly y: number
  readonly half: number
  readonly distance: number
  readonly most: number
}

/**
 * Largest inscribed circle, its radius within `precisionMm` of the largest possible (and never above it).
 *
 * Branch and bound over square cells: distance to the boundary changes at most as fast as the place, so within
 * a cell it is at most the value at the centre plus half the diagonal. The cell that promises most is divided
 * first; cells that cannot beat the best by the precision are dropped.
 *
 * @throws Error for a region without area
 */
export function inradius(region: Region, precisionMm = 0.01): InscribedCircle {
  if (!(precisionMm > 0)) throw new Error(`a precision of ${precisionMm} mm; it must be above 0`)
  if (!(area(region) > 0)) throw new Error('a region without area has no inscribed circle')
  const tree = edgeTree(region.rings)
  const cellAt = (x: number, y: number, half: number): Cell => {
    const d = edgeDistance(tree, x, y)
    const distance = inside(region, x, y) ? d : -d
    return { x, y, half, distance, most: distance + half * Math.SQRT2 }
  }
  const b = bounds(region)
  const middle = centroid(region)
  let best = cellAt(middle.x, middle.y, 0)
  const heap: Cell[] = []
  const half = Math.min(b.maxX - b.minX, b.maxY - b.minY) / 2
  // At most some hundred first cells along a long strip.
  const side = Math.max(half, (b.maxX - b.minX) / 200, (b.maxY - b.minY) / 200)
  for (let x = b.minX; x < b.maxX; x += 2 * side) {
    for (let y = b.minY; y < b.maxY; y += 2 * side) push(heap, cellAt(x + side, y + side, side))
  }
  while (heap.length > 0) {
    const cell = pop(heap)
    if (cell.distance > best.distance) best = cell
    if (cell.most - best.distance <= precisionMm) break
    const h = cell.half / 2
    push(heap, cellAt(cell.x - h, cell.y - h, h))
    push(heap, cellAt(cell.x + h, cell.y - h, h))
    push(heap, cellAt(cell.x - h, cell.y + h, h))
    push(heap, cellAt(cell.x + h, cell.y + h, h))
  }
  return { x: best.x, y: best.y, radiusMm: Math.max(0, best.distance) }
}

// A binary heap with the most promising cell on top.
function push(heap: Cell[], cell: Cell): void {
  let k = heap.length
  heap.push(cell)
  while (k > 0) {
    const up = (k - 1) >> 1
    if (heap[up]!.most >= cell.most) break
    heap[k] = heap[up]!
    k = up
  }
  heap[k] = cell
}

function pop(heap: Cell[]): Cell {
  const top = heap[0]!
  const last = heap.pop()!
  const n = heap.length
  if (n === 0) return top
  let k = 0
  for (;;) {
    let down = 2 * k + 1
    if (down >= n) break
    if (down + 1 < n && heap[down + 1]!.most > heap[down]!.most) down++
    if (last.most >= heap[down]!.most) break
    heap[k] = heap[down]!
    k = down
  }
  heap[k] = last
  return top
}

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
 * keeps (√2 − 1)·r. Corners that keep less than `leastMm` are left out: that many micrometres are chords of a
 * fillet, not a corner. A slit too narrow for the cutter is found by its deepest point, too.
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
  const options = { join: 'round', tolMm: leastMm / 10 } as const
  const rolled = offset(offset(region, out, options), -out, options)
  const left = side === 'outside' ? difference(rolled, region) : difference(region, rolled)
  const tree = edgeTree(rolled.rings)
  const corners: SharpCorner[] = []
  for (const ring of left.rings) {
    if (!(ringArea(ring) > 0)) continue
    const corner = cornerOf(ring, tree, leastMm)
    if (corner.leftMm >= leastMm) corners.push(corner)
  }
  return corners
}

// The edge of what is left runs along the two sides of the corner and back along the rolled edge. Its point
// farthest from the rolled edge is the corner; the sides are where it leaves and rejoins that edge.
function cornerOf(ring: Ring, rolled: EdgeTree, leastMm: number): SharpCorner {
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
  const off = leastMm / 4
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
    leftMm: depths[deepest]!
  }
}
