import type { Paths64 } from 'clipper2-ts'
import { Clipper64, ClipperOffset, ClipType, EndType, FillRule, JoinType, PathType } from 'clipper2-ts'

/**
 * The one door to the clipping library: millimetres go onto an integer grid, are clipped exactly there, and
 * come back.
 *
 * The grid is 1e-4 mm: far below what is cut or poured, and written so that every length of four decimals in
 * a document stays what it is (k/10000 is the double nearest to it). The clipper decides sides by exact signs:
 * products of coordinate differences stay below 2^53 up to 9 m, beyond it goes on in big integers; crossings
 * are rounded to the grid, at worst by a grid step or two for edges that nearly coincide.
 */
const UNITS_PER_MM = 10_000

/** The step of the grid, mm. */
export const GRID_MM = 1 / UNITS_PER_MM

/** Largest coordinate that is clipped, mm. A workshop is smaller; beyond it doubles lose the grid. */
export const FARTHEST_MM = 1_000_000

/** What counts as inside: by winding number ≠ 0, odd, or > 0 (for rings known to be oriented). */
export type Rule = 'nonzero' | 'evenodd' | 'positive'
export type Operation = 'union' | 'difference' | 'intersection'
export type Join = 'round' | 'square' | 'mitre'

// Asked for in functions, so that a bundle that clips nothing holds nothing of the library.
function ruleOf(rule: Rule): FillRule {
  return rule === 'nonzero' ? FillRule.NonZero : rule === 'evenodd' ? FillRule.EvenOdd : FillRule.Positive
}

function clipOf(operation: Operation): ClipType {
  return operation === 'union'
    ? ClipType.Union
    : operation === 'difference'
      ? ClipType.Difference
      : ClipType.Intersection
}

function joinOf(join: Join): JoinType {
  return join === 'round' ? JoinType.Round : join === 'square' ? JoinType.Square : JoinType.Miter
}

/**
 * Combines two sets of rings. Returns outer rings counter-clockwise and holes clockwise; points that lie on a
 * straight line between their neighbours are left out, and so are rings thinner than the grid.
 * @throws Error for a coordinate that is not a number or beyond {@link FARTHEST_MM}
 */
export function clipRings(
  operation: Operation,
  subject: readonly Float64Array[],
  other: readonly Float64Array[] | null,
  rule: Rule
): Float64Array[] {
  const clipper = new Clipper64()
  clipper.preserveCollinear = false
  clipper.addPaths(toGrid(subject), PathType.Subject)
  if (other !== null) clipper.addPaths(toGrid(other), PathType.Clip)
  const solution: Paths64 = []
  clipper.execute(clipOf(operation), ruleOf(rule), solution)
  return fromGrid(solution)
}

/**
 * Moves the edges of oriented rings outward by `deltaMm` (inward when negative). Round joins are chords whose
 * ends lie on the arc and whose middles stay within `arcTolMm` of it. Mitres longer than twice the distance
 * are cut square.
 */
export function inflateRings(
  rings: readonly Float64Array[],
  deltaMm: number,
  join: Join,
  arcTolMm: number
): Float64Array[] {
  return inflate(rings, deltaMm, joinOf(join), EndType.Polygon, arcTolMm)
}

/** The area within `halfMm` of a line, with round joins; of a closed line (first point not repeated) both sides. */
export function inflateLine(
  line: Float64Array,
  halfMm: number,
  ends: 'round' | 'flat' | 'joined',
  arcTolMm: number
): Float64Array[] {
  const end = ends === 'joined' ? EndType.Joined : ends === 'round' ? EndType.Round : EndType.Butt
  return inflate([line], halfMm, JoinType.Round, end, arcTolMm)
}

/** The library's own bound on a mitre, in multiples of the distance: corners down to 60° stay sharp. */
const MITRE_LIMIT = 2

function inflate(
  lines: readonly Float64Array[],
  deltaMm: number,
  join: JoinType,
  end: EndType,
  arcTolMm: number
): Float64Array[] {
  // An arc is never coarser than an eighth of a turn; below a hundredth of a grid step the library would
  // fall back to a tolerance of its own.
  const arcTol = Math.max(0.02, Math.min(arcTolMm, 0.07 * Math.abs(deltaMm)) * UNITS_PER_MM)
  const offset = new ClipperOffset(MITRE_LIMIT, arcTol)
  offset.addPaths(toGrid(lines), join, end)
  const solution: Paths64 = []
  offset.execute(deltaMm * UNITS_PER_MM, solution)
  return fromGrid(solution)
}

function toGrid(rings: readonly Float64Array[]): Paths64 {
  return rings.map(ring => {
    const path = new Array<{ x: number; y: number }>(ring.length / 2)
    for (let k = 0; k < path.length; k++) path[k] = { x: onGrid(ring[2 * k]!), y: onGrid(ring[2 * k + 1]!) }
    return path
  })
}

function onGrid(mm: number): number {
  if (!(Math.abs(mm) <= FARTHEST_MM)) {
    throw new Error(`a coordinate of ${mm} mm; allowed are −${FARTHEST_MM} to ${FARTHEST_MM} mm`)
  }
  // + 0 turns −0 into 0.
  return Math.round(mm * UNITS_PER_MM) + 0
}

function fromGrid(paths: Paths64): Float64Array[] {
  const rings: Float64Array[] = []
  for (const path of paths) {
    if (path.length < 3 || thinnerThanGrid(path)) continue
    const ring = new Float64Array(2 * path.length)
    path.forEach((p, k) => {
      ring[2 * k] = p.x / UNITS_PER_MM
      ring[2 * k + 1] = p.y / UNITS_PER_MM
    })
    rings.push(ring)
  }
  return rings
}

// Mean thickness 2·area/perimeter below one step: what is left where two edges that should coincide were
// rounded differently.
function thinnerThanGrid(path: Paths64[number]): boolean {
  let twice = 0
  let around = 0
  let p = path[path.length - 1]!
  for (const q of path) {
    // About the first point, so that far-off shapes keep their digits.
    twice += (p.x - path[0]!.x) * (q.y - path[0]!.y) - (q.x - path[0]!.x) * (p.y - path[0]!.y)
    around += Math.hypot(q.x - p.x, q.y - p.y)
    p = q
  }
  return Math.abs(twice) < around
}
