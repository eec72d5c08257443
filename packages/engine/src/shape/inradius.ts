import type { EdgeTree } from './edge-tree.ts'
import { edgeTree, nearestEdge, segmentShare } from './edge-tree.ts'
import { area, bounds, centroid, inside } from './measure.ts'
import type { Region } from './region.ts'

/** The largest circle that fits into a region. */
export interface InscribedCircle {
  readonly x: number
  readonly y: number
  readonly radiusMm: number
}

/** A square of the search: its centre, half its side, the distance at the centre and the most it can be within. */
interface Cell {
  readonly x: number
  readonly y: number
  readonly half: number
  /** Distance from the boundary, negative outside. */
  readonly distance: number
  readonly most: number
}

/** Squares looked at before the search is ended: reached only by strips some ten thousand times as long as wide. */
const MOST_CELLS = 200_000

/**
 * Largest inscribed circle: it fits, and its radius is within `precisionMm` of the largest possible.
 *
 * Branch and bound over squares of half side h about c, where the boundary is at distance d. Two bounds on the
 * distance at any place p of the square, s its shift from c:
 *
 * - d + h·√2: distance changes at most as fast as place
 * - for two places q1, q2 of the boundary, u_i the direction from q_i to c, any λ from 0 to 1:
 *   |p − q| = √(d² + 2d(s·u) + s²) ≤ d + s·u + s²/2d, so the lesser of both is at most
 *   λd1 + (1−λ)d2 + |λu1 + (1−λ)u2|·h√2 + h²/min(d1, d2)
 *
 * q1 is the nearest place, q2 the nearest as seen from as far again on the other side of c: between two sides
 * u1 + u2 vanishes, and the second bound closes in with h² along the whole middle line of a strip. The square
 * that promises most is divided first; squares that cannot beat the best by the precision are dropped.
 *
 * Limits: of a strip some ten thousand times as long as wide the circle found fits, but may not be the largest.
 *
 * @throws Error for a region without area, or a precision not above 0
 */
export function inradius(region: Region, precisionMm = 0.01): InscribedCircle {
  if (!(precisionMm > 0)) throw new Error(`a precision of ${precisionMm} mm; it must be above 0`)
  if (!(area(region) > 0)) throw new Error('a region without area has no inscribed circle')
  const tree = edgeTree(region.rings)
  const b = bounds(region)
  const middle = centroid(region)
  let best = cellAt(region, tree, middle.x, middle.y, 0, 0)
  const heap: Cell[] = []
  let cells = 0
  const look = (x: number, y: number, half: number, known: number) => {
    const cell = cellAt(region, tree, x, y, half, known)
    cells++
    if (cell.distance > best.distance) best = cell
    if (cell.most > best.distance + precisionMm) push(heap, cell)
  }
  // At most some hundred first squares along a strip.
  const wide = b.maxX - b.minX
  const high = b.maxY - b.minY
  const half = Math.max(Math.min(wide, high) / 2, wide / 200, high / 200)
  for (let x = b.minX + half; x - half < b.maxX; x += 2 * half) {
    for (let y = b.minY + half; y - half < b.maxY; y += 2 * half) look(x, y, half, 0)
  }
  while (heap.length > 0 && cells < MOST_CELLS) {
    const cell = pop(heap)
    if (cell.most <= best.distance + precisionMm) break
    const h = cell.half / 2
    // Farther from the boundary than a quarter's centre from this one: that lies on the same side.
    const known = Math.abs(cell.distance) > h * Math.SQRT2 ? Math.sign(cell.distance) : 0
    for (const dx of [-h, h]) for (const dy of [-h, h]) look(cell.x + dx, cell.y + dy, h, known)
  }
  return { x: best.x, y: best.y, radiusMm: Math.max(0, best.distance) }
}

// known: 1 inside, −1 outside, 0 not yet known.
function cellAt(region: Region, tree: EdgeTree, x: number, y: number, half: number, known: number): Cell {
  const q1 = nearestPlace(tree, x, y)
  const d1 = Math.hypot(x - q1.x, y - q1.y)
  const sign = known !== 0 ? known : inside(region, x, y) ? 1 : -1
  const reach = half * Math.SQRT2
  let most = sign * d1 + reach
  if (sign > 0 && d1 > 0) {
    const u1x = (x - q1.x) / d1
    const u1y = (y - q1.y) / d1
    const q2 = nearestPlace(tree, x + d1 * u1x, y + d1 * u1y)
    const d2 = Math.hypot(x - q2.x, y - q2.y)
    const u2x = (x - q2.x) / d2
    const u2y = (y - q2.y) / d2
    // λ that makes |λu1 + (1−λ)u2| least is ½ for unit vectors.
    most = Math.min(
      most,
      (d1 + d2) / 2 + Math.hypot((u1x + u2x) / 2, (u1y + u2y) / 2) * reach + half ** 2 / d1
    )
  }
  return { x, y, half, distance: sign * d1, most }
}

function nearestPlace(tree: EdgeTree, x: number, y: number): { x: number; y: number } {
  const { ends } = tree
  const e = 4 * nearestEdge(tree, x, y)
  const t = segmentShare(ends[e]!, ends[e + 1]!, ends[e + 2]!, ends[e + 3]!, x, y)
  return { x: ends[e]! + t * (ends[e + 2]! - ends[e]!), y: ends[e + 1]! + t * (ends[e + 3]! - ends[e + 1]!) }
}

// A binary heap with the most promising square on top.
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
