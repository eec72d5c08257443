import { SVGPathData } from 'svg-pathdata'

/**
 * The points of SVG path data and what can be done to one of them, in the path's own frame (y down). A path is
 * first made of lines and cubic curves alone: arcs become cubics (closer than 0.03 % of their radius, the usual
 * bound for a quarter turn; textbook), quadratics exactly.
 */
interface Knot {
  x: number
  y: number
  /** Control points of the curve to the next knot; null for a straight line. */
  out: [number, number, number, number] | null
}
interface Line {
  readonly knots: Knot[]
  readonly closed: boolean
}

/** Two places nearer than this are one, mm: a path often returns to its start before Z. */
const SAME_MM = 1e-6

/** The points of each line of a path; none when it cannot be read. */
export function pointsOf(d: string): { x: number; y: number; curved: boolean }[][] {
  return (linesOf(d) ?? []).map(line => line.knots.map(k => ({ x: k.x, y: k.y, curved: k.out !== null })))
}

/** The path with a point moved, the handles at it along with it; null when there is no such point. */
export function moved(d: string, ring: number, index: number, x: number, y: number): string | null {
  return edited(d, ring, index, ({ knots, closed }, knot) => {
    const [dx, dy] = [x - knot.x, y - knot.y]
    knot.x = x
    knot.y = y
    if (knot.out) knot.out = [knot.out[0] + dx, knot.out[1] + dy, knot.out[2], knot.out[3]]
    const before = index > 0 ? knots[index - 1] : closed ? knots[knots.length - 1] : undefined
    if (before?.out && before !== knot)
      before.out = [before.out[0], before.out[1], before.out[2] + dx, before.out[3] + dy]
    return true
  })
}

/** The path with a point more on the stretch after `index`, at its share `t`: de Casteljau on curves. */
export function added(d: string, ring: number, index: number, t: number): string | null {
  return edited(d, ring, index, ({ knots, closed }, knot) => {
    const next = knots[index + 1] ?? (closed ? knots[0] : undefined)
    if (next === undefined) return false
    const mix = (a: number, b: number) => a + t * (b - a)
    if (knot.out === null) {
      knots.splice(index + 1, 0, { x: mix(knot.x, next.x), y: mix(knot.y, next.y), out: null })
      return true
    }
    const [x1, y1, x2, y2] = knot.out
    const along = (p0: number, p1: number, p2: number, p3: number) => {
      const [a, b, c] = [mix(p0, p1), mix(p1, p2), mix(p2, p3)]
      const [e, f] = [mix(a, b), mix(b, c)]
      return { a, e, at: mix(e, f), f, c }
    }
    const u = along(knot.x, x1, x2, next.x)
    const v = along(knot.y, y1, y2, next.y)
    knot.out = [u.a, v.a, u.e, v.e]
    knots.splice(index + 1, 0, { x: u.at, y: v.at, out: [u.f, v.f, u.c, v.c] })
    return true
  })
}

/** The path without a point; the stretches on either side become one, a curve when one of them was. */
export function removed(d: string, ring: number, index: number): string | null {
  return edited(d, ring, index, ({ knots, closed }, knot) => {
    const before = index > 0 ? knots[index - 1] : closed ? knots[knots.length - 1] : undefined
    const next = knots[index + 1] ?? (closed ? knots[0] : undefined)
    if (before && next && before !== knot) {
      // A straight stretch has its handles a third of the way along.
      const [bx, by] = before.out ?? [before.x + (knot.x - before.x) / 3, before.y + (knot.y - before.y) / 3]
      const end = knot.out ?? [0, 0, next.x + (knot.x - next.x) / 3, next.y + (knot.y - next.y) / 3]
      before.out = before.out === null && knot.out === null ? null : [bx, by, end[2], end[3]]
    }
    knots.splice(index, 1)
    return true
  })
}

function edited(
  d: string,
  ring: number,
  index: number,
  edit: (line: Line, knot: Knot) => boolean
): string | null {
  const lines = linesOf(d)
  const line = lines?.[ring]
  const knot = line?.knots[index]
  if (!lines || !line || !knot || edit(line, knot) === false) return null
  return written(lines)
}

function linesOf(d: string): Line[] | null {
  let commands: SVGPathData['commands']
  try {
    commands = new SVGPathData(d).toAbs().normalizeHVZ(false).normalizeST().qtToC().aToC().commands
  } catch {
    return null
  }
  const out: { knots: Knot[]; closed: boolean }[] = []
  let line: { knots: Knot[]; closed: boolean } | null = null
  let start: Knot | null = null
  for (const c of commands) {
    if (c.type === SVGPathData.MOVE_TO) {
      start = { x: c.x, y: c.y, out: null }
      line = { knots: [start], closed: false }
      out.push(line)
    } else if (c.type === SVGPathData.CLOSE_PATH) {
      if (line === null) continue
      line.closed = true
      const [first, last] = [line.knots[0]!, line.knots[line.knots.length - 1]!]
      if (line.knots.length > 1 && Math.hypot(first.x - last.x, first.y - last.y) < SAME_MM) line.knots.pop()
      line = null
    } else if (c.type === SVGPathData.LINE_TO || c.type === SVGPathData.CURVE_TO) {
      if (start === null) return null
      if (line === null) {
        // After Z the pen stands where the line began.
        line = { knots: [{ x: start.x, y: start.y, out: null }], closed: false }
        out.push(line)
      }
      if (c.type === SVGPathData.CURVE_TO) line.knots[line.knots.length - 1]!.out = [c.x1, c.y1, c.x2, c.y2]
      line.knots.push({ x: c.x, y: c.y, out: null })
    } else return null
  }
  return out.filter(l => l.knots.length > 1)
}

function written(lines: readonly Line[]): string {
  const n = (v: number) => `${Math.round(v * 1e4) / 1e4 + 0}`
  return lines
    .map(({ knots, closed }) => {
      const first = knots[0]!
      let d = `M ${n(first.x)} ${n(first.y)}`
      knots.forEach((k, i) => {
        const next = knots[i + 1] ?? (closed ? first : undefined)
        if (next === undefined) return
        if (k.out !== null) d += ` C ${k.out.map(n).join(' ')} ${n(next.x)} ${n(next.y)}`
        else if (next !== first) d += ` L ${n(next.x)} ${n(next.y)}`
      })
      return closed ? `${d} Z` : d
    })
    .join(' ')
}
