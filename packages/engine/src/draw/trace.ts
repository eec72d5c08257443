import { segmentDistance2 } from '../shape/edge-tree.ts'
import { flattenCubic } from '../shape/flatten.ts'
import { selfCrossing } from '../shape/self-crossing.ts'
import { fitCubics, tangent } from './curve-fit.ts'
import { cornersOf, kept } from './line-corner.ts'

export { grayOf, snapToEdge } from './picture-edge.ts'

/** How a stroke is tidied. */
export interface TraceOptions {
  /** The greatest distance of any point of the stroke from the line made of it, mm: 0.3 to 20; 0.5 unless said. */
  readonly strayMm?: number
  /** Turns sharper than this stay corners, degrees: 20 to 170; 55 unless said. */
  readonly cornerDeg?: number
  /** Ends nearer than this are joined, mm; 0 leaves the line open. 5 unless said. */
  readonly closeMm?: number
}

/** A tidy line: corners in order, mm to 0.1; a closed one does not repeat its first point. */
export interface Traced {
  readonly points: [number, number][]
  readonly closed: boolean
  /** What the stroke really strays from the line, greatest, mm. */
  readonly strayMm: number
}

/** Points are kept to this, mm: a pencil line is wider. */
const GRID_MM = 0.1
const MOST_POINTS = 10_000
/** Most points put between those of a stroke: a longer one is divided less finely. */
const MOST_DIVIDED = 20_000
/** Edges looked at to either side of the last one when strays are measured. */
const WINDOW = 12

/**
 * A freehand stroke as a tidy line. Points mm; what else a pen tells (time, pressure) is not used.
 *
 * Douglas–Peucker (1973; memory) finds the corners, looked at over arms a few strays long so that the tremble of a
 * hand is none; between them the tremble is averaged out, smooth curves are fitted (curve-fit.ts) and laid out as
 * chords, and points that tell nothing are left out. The strays of all that and of rounding add up to what is allowed.
 */
export function traced(
  stroke: readonly (readonly [number, number])[],
  options: TraceOptions = {}
): Traced | { readonly problem: string } {
  const { strayMm = 0.5, cornerDeg = 55, closeMm = 5 } = options
  for (const [what, value, low, high] of [
    ['stray', strayMm, 0.3, 20],
    ['corner', cornerDeg, 20, 170],
    ['closing distance', closeMm, 0, 1000]
  ] as const)
    if (!(value >= low && value <= high))
      return { problem: `a ${what} of ${value}; allowed: ${low} to ${high}` }
  if (stroke.length > MOST_POINTS)
    return { problem: `a stroke of ${stroke.length} points; allowed: at most ${MOST_POINTS}` }
  let p = withoutRepeats(stroke)
  let n = p.length / 2
  if (n < 2 || extent(p) < 2 * strayMm) return { problem: 'a stroke too short to make a line of' }
  const closed =
    n >= 4 && Math.hypot(p[0]! - p[2 * n - 2]!, p[1]! - p[2 * n - 1]!) <= closeMm && extent(p) > 2 * closeMm
  if (closed) p = Float64Array.from([...p, p[0]!, p[1]!])
  p = divided(p, Math.max(strayMm, lengthOf(p) / MOST_DIVIDED))
  n = p.length / 2
  let corners = cornersOf(p, closed, strayMm, cornerDeg)
  if (closed && corners.length > 0) {
    // The seam of a closed line goes to a corner.
    p = Float64Array.from([...p.subarray(2 * corners[0]!, 2 * n - 2), ...p.subarray(0, 2 * corners[0]! + 2)])
    corners = corners.map(k => k - corners[0]!)
  }
  const ends = [...new Set([0, ...corners, n - 1])]
  // Without a corner the two ends of a closed line have one tangent.
  const seam =
    closed && corners.length === 0 ? tangent(p, n - 1 - Math.min(10, n - 2), Math.min(10, n - 1)) : null
  let out: [number, number][] = []
  const put = (x: number, y: number) => {
    const at: [number, number] = [Math.round(x / GRID_MM) / 10 + 0, Math.round(y / GRID_MM) / 10 + 0]
    const before = out[out.length - 1]
    if (before === undefined || before[0] !== at[0] || before[1] !== at[1]) out.push(at)
  }
  // The shares of what it may stray; rounding takes half the diagonal of the grid, the fit what is left.
  const [calmMm, chordMm, thinMm] = [0.35 * strayMm, 0.05 * strayMm, 0.1 * strayMm]
  const fitMm = strayMm - calmMm - chordMm - thinMm - GRID_MM * Math.SQRT1_2
  const calm = calmed(p, ends, seam !== null, 3 * strayMm, calmMm)
  put(calm[0]!, calm[1]!)
  for (let k = 0; k + 1 < ends.length; k++)
    for (const c of fitCubics(
      calm,
      ends[k]!,
      ends[k + 1]!,
      fitMm,
      seam,
      seam === null ? null : [-seam[0], -seam[1]]
    ))
      flattenCubic(c, chordMm, put)
  out = kept(Float64Array.from(out.flat()), thinMm).map(k => out[k]!)
  if (closed && out.length > 1 && same(out[0]!, out[out.length - 1]!)) out.pop()
  if (out.length < (closed ? 3 : 2)) return { problem: 'a stroke too small to make a line of' }
  const ring = Float64Array.from(out.flat())
  const cross = closed ? selfCrossing(ring) : null
  if (cross) return { problem: `the line crosses itself near (${cross.x.toFixed(1)}, ${cross.y.toFixed(1)})` }
  return { points: out, closed, strayMm: greatestStray(p, ring, closed) }
}

function same(a: readonly [number, number], b: readonly [number, number]): boolean {
  return a[0] === b[0] && a[1] === b[1]
}

function withoutRepeats(stroke: readonly (readonly [number, number])[]): Float64Array {
  const out: number[] = []
  for (const [x, y] of stroke) {
    if (!(Math.abs(x) <= 20_000 && Math.abs(y) <= 20_000)) continue
    if (out.length > 0 && Math.hypot(out[out.length - 2]! - x, out[out.length - 1]! - y) < 1e-3) continue
    out.push(x, y)
  }
  return Float64Array.from(out)
}

function extent(p: Float64Array): number {
  let [x0, x1, y0, y1] = [p[0]!, p[0]!, p[1]!, p[1]!]
  for (let k = 0; k < p.length; k += 2) {
    x0 = Math.min(x0, p[k]!)
    x1 = Math.max(x1, p[k]!)
    y0 = Math.min(y0, p[k + 1]!)
    y1 = Math.max(y1, p[k + 1]!)
  }
  return Math.hypot(x1 - x0, y1 - y0)
}

function lengthOf(p: Float64Array): number {
  let sum = 0
  for (let k = 2; k < p.length; k += 2) sum += Math.hypot(p[k]! - p[k - 2]!, p[k + 1]! - p[k - 1]!)
  return sum
}

// Long stretches get points in between, so that a curve cannot bulge where the hand went fast.
function divided(p: Float64Array, stepMm: number): Float64Array {
  const out: number[] = [p[0]!, p[1]!]
  for (let k = 2; k < p.length; k += 2) {
    const [x, y] = [p[k - 2]!, p[k - 1]!]
    const [dx, dy] = [p[k]! - x, p[k + 1]! - y]
    const parts = Math.max(1, Math.ceil(Math.hypot(dx, dy) / stepMm))
    for (let i = 1; i <= parts; i++)
      out.push(i === parts ? p[k]! : x + (dx * i) / parts, i === parts ? p[k + 1]! : y + (dy * i) / parts)
  }
  return Float64Array.from(out)
}

// Each point moved to the mean of its neighbours, weighted by a Gaussian of width `widthMm` of their distance, at
// most `mostMm` away. Points of `ends` stay; near them the neighbours reach equally far to both sides.
function calmed(
  p: Float64Array,
  ends: readonly number[],
  seamless: boolean,
  widthMm: number,
  mostMm: number
): Float64Array {
  const out = p.slice()
  const n = p.length / 2
  let span = 0
  for (let k = 0; k < n; k++) {
    while (ends[span + 1]! < k) span++
    const reach = seamless ? n - 2 : Math.min(k - ends[span]!, ends[span + 1]! - k)
    let [x, y, sum] = [p[2 * k]!, p[2 * k + 1]!, 1]
    for (let i = 1; i <= Math.min(reach, 40); i++) {
      const a = 2 * ((k - i + n - 1) % (n - 1))
      const b = 2 * ((k + i) % (n - 1))
      const [lo, hi] = seamless ? [a, b] : [2 * (k - i), 2 * (k + i)]
      const d2 = (p[hi]! - p[lo]!) ** 2 + (p[hi + 1]! - p[lo + 1]!) ** 2
      const w = Math.exp(-d2 / (8 * widthMm * widthMm))
      x += w * (p[lo]! + p[hi]!)
      y += w * (p[lo + 1]! + p[hi + 1]!)
      sum += 2 * w
      if (w < 1e-3) break
    }
    const [dx, dy] = [x / sum - p[2 * k]!, y / sum - p[2 * k + 1]!]
    const share = Math.min(1, mostMm / (Math.hypot(dx, dy) || 1))
    out[2 * k] = p[2 * k]! + share * dx
    out[2 * k + 1] = p[2 * k + 1]! + share * dy
  }
  return out
}

// Each point against the edges near the one nearest to the point before: both run along together. Never less than
// the true distance, and quick however often the line crosses itself.
function greatestStray(p: Float64Array, line: Float64Array, closed: boolean): number {
  const corners = line.length / 2
  const edges = closed ? corners : corners - 1
  let most = 0
  let near = 0
  for (let k = 0; k < p.length; k += 2) {
    let least = Number.POSITIVE_INFINITY
    let found = near
    for (let e = near - WINDOW; e <= near + WINDOW; e++) {
      if (!closed && (e < 0 || e >= edges)) continue
      const a = 2 * ((e + 2 * WINDOW * edges) % edges)
      const b = (a + 2) % line.length
      const d = segmentDistance2(line[a]!, line[a + 1]!, line[b]!, line[b + 1]!, p[k]!, p[k + 1]!)
      if (d < least) {
        least = d
        found = a / 2
      }
    }
    near = found
    most = Math.max(most, least)
  }
  return Math.sqrt(most)
}
