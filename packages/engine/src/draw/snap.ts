/**
 * Snapping while something is moved on the plan: which small shift brings it onto a line that means something,
 * and which lines to draw while it lies there. Lengths mm on the plan; the screen says how near is near.
 */
export interface Box {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** What there is to snap to. */
export interface SnapScene {
  /** Where the centre lines of the piece cross. */
  readonly centre?: readonly [number, number]
  /** Boxes of the other timbers, cuts and so on: edges and middles. */
  readonly others: readonly Box[]
  /** The inside of the mould. */
  readonly mould?: Box
  /** Whole steps of this many mm, counted from 0; only where nothing else is near. */
  readonly gridMm?: number
}

export type SnapKind = 'centre line' | 'edge' | 'middle' | 'mould' | 'grid'

/** A line to draw: x = `at` (axis x) or y = `at` (axis y), from `from` to `to` along the other axis. */
export interface Guide {
  readonly axis: 'x' | 'y'
  readonly at: number
  readonly from: number
  readonly to: number
  readonly kind: SnapKind
}

export interface Snapped {
  /** What to add to the place of the moving thing, mm; 0 where nothing is near. */
  readonly dx: number
  readonly dy: number
  readonly guides: readonly Guide[]
}

/** The box about points or outlines (x0, y0, x1, y1, ...); of a single point a box without size. */
export function boxOf(...lines: readonly ArrayLike<number>[]): Box {
  let [minX, minY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  let [maxX, maxY] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const line of lines)
    for (let k = 0; k + 1 < line.length; k += 2) {
      minX = Math.min(minX, line[k]!)
      maxX = Math.max(maxX, line[k]!)
      minY = Math.min(minY, line[k + 1]!)
      maxY = Math.max(maxY, line[k + 1]!)
    }
  return { minX: minX, minY: minY, maxX: maxX, maxY: maxY }
}

/** Two places are one when they differ by less, mm: rounding of sums. */
const SAME_MM = 1e-6
/** Of equally near lines the earlier kind wins. */
const ORDER: readonly SnapKind[] = ['centre line', 'edge', 'middle', 'mould', 'grid']

/** A place of the moving box along one axis: an edge, or its middle. */
interface Feature {
  readonly at: number
  readonly middle: boolean
}

/** A line to snap to. `low` to `high`: how far along the other axis what it belongs to reaches. */
interface Line {
  readonly at: number
  readonly kind: SnapKind
  readonly low: number
  readonly high: number
}

/**
 * The shift that brings `moving` onto lines nearer than `toleranceMm`, each axis by itself: the nearest line of
 * centre lines, edges, middles and the mould; only when none is near, the grid. Edges go to edges and to
 * the mould, middles to middles, both to centre lines. Of equally near ones the kind named first in {@link SnapKind}
 * wins, then the lesser shift to the left or near side, then the first of the list: the answer never flickers.
 */
export function snapBox(moving: Box, scene: SnapScene, toleranceMm: number): Snapped {
  if (!(toleranceMm >= 0) || !Object.values(moving).every(Number.isFinite))
    return { dx: 0, dy: 0, guides: [] }
  const x = along(linesOf(scene, 'x'), features(moving.minX, moving.maxX), scene.gridMm, toleranceMm)
  const y = along(linesOf(scene, 'y'), features(moving.minY, moving.maxY), scene.gridMm, toleranceMm)
  const at: Box = {
    minX: moving.minX + x,
    maxX: moving.maxX + x,
    minY: moving.minY + y,
    maxY: moving.maxY + y
  }
  return {
    dx: x,
    dy: y,
    guides: [
      ...guides('x', linesOf(scene, 'x'), features(at.minX, at.maxX), at.minY, at.maxY),
      ...guides('y', linesOf(scene, 'y'), features(at.minY, at.maxY), at.minX, at.maxX)
    ]
  }
}

/** {@link snapBox} for a single point: a corner of an outline, the end of a line. */
export function snapPoint(at: readonly [number, number], scene: SnapScene, toleranceMm: number): Snapped {
  return snapBox({ minX: at[0], maxX: at[0], minY: at[1], maxY: at[1] }, scene, toleranceMm)
}

function features(low: number, high: number): Feature[] {
  const middle = { at: (low + high) / 2, middle: true }
  // A point is an edge and a middle at once.
  return high - low < SAME_MM
    ? [middle, { at: low, middle: false }]
    : [{ at: low, middle: false }, { at: high, middle: false }, middle]
}

function linesOf(scene: SnapScene, axis: 'x' | 'y'): Line[] {
  const out: Line[] = []
  const own = (b: Box) => (axis === 'x' ? ([b.minX, b.maxX] as const) : ([b.minY, b.maxY] as const))
  const other = (b: Box) => (axis === 'x' ? ([b.minY, b.maxY] as const) : ([b.minX, b.maxX] as const))
  if (scene.centre !== undefined) {
    const c = scene.centre[axis === 'x' ? 1 : 0]
    const [low, high] = scene.mould === undefined ? [c, c] : other(scene.mould)
    out.push({ at: scene.centre[axis === 'x' ? 0 : 1], kind: 'centre line', low, high })
  }
  for (const b of scene.others) {
    const [low, high] = other(b)
    const [from, to] = own(b)
    out.push({ at: from, kind: 'edge', low, high }, { at: to, kind: 'edge', low, high })
    out.push({ at: (from + to) / 2, kind: 'middle', low, high })
  }
  if (scene.mould !== undefined) {
    const [low, high] = other(scene.mould)
    for (const at of own(scene.mould)) out.push({ at, kind: 'mould', low, high })
  }
  return out
}

function fits(line: Line, feature: Feature): boolean {
  if (line.kind === 'centre line') return true
  return line.kind === 'middle' ? feature.middle : !feature.middle
}

function along(
  lines: readonly Line[],
  moving: readonly Feature[],
  gridMm: number | undefined,
  tol: number
): number {
  let best: { shift: number; rank: number } | null = null
  for (const line of lines)
    for (const feature of moving) {
      if (!fits(line, feature)) continue
      const shift = line.at - feature.at
      const rank = ORDER.indexOf(line.kind)
      if (Math.abs(shift) > tol) continue
      const nearer = best === null ? 1 : Math.abs(best.shift) - Math.abs(shift)
      const wins =
        Math.abs(nearer) > SAME_MM
          ? nearer > 0
          : best === null || rank < best.rank || (rank === best.rank && shift < best.shift - SAME_MM)
      if (wins) best = { shift, rank }
    }
  if (best !== null) return best.shift + 0
  if (gridMm === undefined || !(gridMm > 0)) return 0
  // The lower edge goes to the grid; with sizes of whole steps the other edge lies on it too.
  const edge = moving.find(f => !f.middle)!
  const shift = Math.round(edge.at / gridMm) * gridMm - edge.at
  return Math.abs(shift) <= tol ? shift + 0 : 0
}

// Every line the moved thing lies on, one guide a place: the first kind names it, its length reaches over all.
function guides(
  axis: 'x' | 'y',
  lines: readonly Line[],
  moved: readonly Feature[],
  low: number,
  high: number
): Guide[] {
  const out: Guide[] = []
  const sorted = [...lines].sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind))
  for (const line of sorted) {
    if (!moved.some(f => fits(line, f) && Math.abs(f.at - line.at) < SAME_MM)) continue
    const known = out.findIndex(g => Math.abs(g.at - line.at) < SAME_MM)
    const from = Math.min(low, line.low)
    const to = Math.max(high, line.high)
    if (known < 0) out.push({ axis, at: line.at, from, to, kind: line.kind })
    else
      out[known] = {
        ...out[known]!,
        from: Math.min(from, out[known]!.from),
        to: Math.max(to, out[known]!.to)
      }
  }
  return out
}
