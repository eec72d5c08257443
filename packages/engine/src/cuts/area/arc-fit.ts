import { thinnedLine } from '../../shape/thin.ts'

/** A straight piece of a path, mm. */
interface LineSpan {
  readonly kind: 'line'
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

/** A piece of a circle about (cx, cy), at most half of it, mm. */
interface ArcSpan {
  readonly kind: 'arc'
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
  readonly cx: number
  readonly cy: number
  readonly clockwise: boolean
}

export type Span = LineSpan | ArcSpan

/** Largest radius of an arc, mm: beyond it a line does as well. */
const MOST_RADIUS_MM = 5000
/** Fewest chords that are taken for an arc: three points lie on a circle whatever they mean. */
const LEAST_CHORDS = 3

/**
 * Lines and arcs in the place of a line of points (x0,y0,x1,y1,... mm; a closed one ends where it starts). Every
 * point, and every place between two points, lies within `tolMm` of what replaces it.
 *
 * An arc is taken where at least three chords in a row lie on one circle: through the first, the middle and the
 * last point, all points within the tolerance of it, no chord with a sagitta above the tolerance, turning one
 * way and by half a turn at most. The longest such run is taken, from the start on. What is left between arcs
 * is thinned (Ramer 1972; see shape/thin.ts).
 *
 * Check: test/cuts/area/arc-fit.test.ts (circles, rings with round corners, seeded lines).
 */
export function arcsOf(line: Float64Array, tolMm: number): Span[] {
  const n = line.length / 2
  const out: Span[] = []
  let from = 0
  const straight = (to: number) => {
    if (to <= from) return
    const thin = thinnedLine(line.subarray(2 * from, 2 * to + 2), tolMm)
    for (let k = 2; k < thin.length; k += 2) out.push(lineSpan(thin, k))
  }
  for (let i = 0; i + LEAST_CHORDS < n; ) {
    const last = lastOnArc(line, i, n, tolMm)
    if (last === null) {
      i++
      continue
    }
    straight(i)
    out.push(last.span)
    from = last.at
    i = last.at
  }
  straight(n - 1)
  return out
}

/** Lines alone within `tolMm`: for a control that takes no arcs. */
export function linesOnly(line: Float64Array, tolMm: number): Span[] {
  const thin = thinnedLine(line, tolMm)
  const out: Span[] = []
  for (let k = 2; k < thin.length; k += 2) out.push(lineSpan(thin, k))
  return out
}

function lineSpan(points: Float64Array, k: number): LineSpan {
  return {
    kind: 'line',
    x0: points[k - 2]!,
    y0: points[k - 1]!,
    x1: points[k]!,
    y1: points[k + 1]!
  }
}

// The longest arc that starts at point i: doubled until it fails, then halved.
function lastOnArc(
  line: Float64Array,
  i: number,
  n: number,
  tolMm: number
): { readonly at: number; readonly span: ArcSpan } | null {
  let span = arcThrough(line, i, i + LEAST_CHORDS, tolMm)
  if (span === null) return null
  let good = i + LEAST_CHORDS
  let bad = n
  for (let step = LEAST_CHORDS; good < n - 1; step *= 2) {
    const j = Math.min(n - 1, good + step)
    const longer = arcThrough(line, i, j, tolMm)
    if (longer === null) {
      bad = j
      break
    }
    span = longer
    good = j
  }
  while (bad - good > 1 && good < n - 1) {
    const j = (good + bad) >> 1
    const longer = arcThrough(line, i, j, tolMm)
    if (longer === null) bad = j
    else {
      span = longer
      good = j
    }
  }
  return { at: good, span }
}

function arcThrough(line: Float64Array, i: number, j: number, tolMm: number): ArcSpan | null {
  const m = (i + j) >> 1
  const [ax, ay, bx, by, ex, ey] = [
    line[2 * i]!,
    line[2 * i + 1]!,
    line[2 * m]!,
    line[2 * m + 1]!,
    line[2 * j]!,
    line[2 * j + 1]!
  ]
  const [ux, uy, vx, vy] = [bx - ax, by - ay, ex - ax, ey - ay]
  const cross = 2 * (ux * vy - uy * vx)
  if (cross === 0) return null
  const [uu, vv] = [ux * ux + uy * uy, vx * vx + vy * vy]
  const cx = ax + (vy * uu - uy * vv) / cross
  const cy = ay + (ux * vv - vx * uu) / cross
  const radius = Math.hypot(ax - cx, ay - cy)
  if (!(radius <= MOST_RADIUS_MM)) return null
  const turn = Math.sign(cross)
  let sweep = 0
  for (let k = i; k < j; k++) {
    const [px, py, qx, qy] = [
      line[2 * k]! - cx,
      line[2 * k + 1]! - cy,
      line[2 * k + 2]! - cx,
      line[2 * k + 3]! - cy
    ]
    if (Math.abs(Math.hypot(qx, qy) - radius) > tolMm) return null
    if (Math.abs(Math.hypot(px + qx, py + qy) / 2 - radius) > tolMm) return null
    const step = Math.atan2(px * qy - py * qx, px * qx + py * qy)
    if (step * turn <= 0) return null
    sweep += Math.abs(step)
  }
  // A little over half is a half that was rounded.
  if (sweep > Math.PI + 1e-4) return null
  return { kind: 'arc', x0: ax, y0: ay, x1: ex, y1: ey, cx, cy, clockwise: turn < 0 }
}
