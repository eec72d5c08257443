import type { SVGCommand } from 'svg-pathdata'
import { SVGPathData } from 'svg-pathdata'
import { DrawingError, quote } from './drawing-error.ts'
import { Pen, PointBudget } from './pen.ts'
import type { FillRule, Region, Ring } from './region.ts'
import { regionOfRings } from './region.ts'
import { Scanner } from './scanner.ts'

/** Most points a single path may come to. */
const MOST_POINTS = 1_000_000

/** Closed and open lines of a path, in the path's own coordinates. */
export interface PathLines {
  readonly rings: Ring[]
  readonly open: Float64Array[]
}

/**
 * SVG path data as lines: one unit is one mm, y as in the data (SVG's points down). Curves are flattened with
 * chords that stray at most `tolMm`. A subpath ended by Z, or whose end meets its start, is a ring.
 * @throws DrawingError with the index for what is no path data, numbers beyond 1e7, more than a million points
 */
export function parsePath(d: string, tolMm: number): PathLines {
  const pen = new Pen(tolMm, new PointBudget(MOST_POINTS))
  drawPath(d, pen)
  return { rings: pen.rings, open: pen.open }
}

/** The region the closed subpaths of a path enclose, y as in the data. @throws DrawingError as {@link parsePath} */
export function pathRegion(d: string, tolMm: number, fillRule: FillRule = 'nonzero'): Region {
  return regionOfRings(parsePath(d, tolMm).rings, fillRule)
}

/** Draws path data (SVG 1.1, chapter 8; memory) with a pen. @throws DrawingError */
export function drawPath(d: string, pen: Pen): void {
  refuseUnclear(d)
  let last: SVGCommand['type'] | 0 = 0
  // The last control point, for the smooth commands.
  let controlX = 0
  let controlY = 0
  for (const c of commandsOf(d)) {
    const dx = 'relative' in c && c.relative ? pen.x : 0
    const dy = 'relative' in c && c.relative ? pen.y : 0
    switch (c.type) {
      case SVGPathData.MOVE_TO:
        pen.moveTo(dx + c.x, dy + c.y)
        break
      case SVGPathData.LINE_TO:
        pen.lineTo(dx + c.x, dy + c.y)
        break
      case SVGPathData.HORIZ_LINE_TO:
        pen.lineTo(dx + c.x, pen.y)
        break
      case SVGPathData.VERT_LINE_TO:
        pen.lineTo(pen.x, dy + c.y)
        break
      case SVGPathData.CURVE_TO:
      case SVGPathData.SMOOTH_CURVE_TO: {
        const smooth = c.type === SVGPathData.SMOOTH_CURVE_TO
        const follows = last === SVGPathData.CURVE_TO || last === SVGPathData.SMOOTH_CURVE_TO
        const x1 = smooth ? (follows ? 2 * pen.x - controlX : pen.x) : dx + c.x1
        const y1 = smooth ? (follows ? 2 * pen.y - controlY : pen.y) : dy + c.y1
        controlX = dx + c.x2
        controlY = dy + c.y2
        pen.cubicTo(x1, y1, controlX, controlY, dx + c.x, dy + c.y)
        break
      }
      case SVGPathData.QUAD_TO:
      case SVGPathData.SMOOTH_QUAD_TO: {
        const smooth = c.type === SVGPathData.SMOOTH_QUAD_TO
        const follows = last === SVGPathData.QUAD_TO || last === SVGPathData.SMOOTH_QUAD_TO
        const x1 = smooth ? (follows ? 2 * pen.x - controlX : pen.x) : dx + c.x1
        const y1 = smooth ? (follows ? 2 * pen.y - controlY : pen.y) : dy + c.y1
        controlX = x1
        controlY = y1
        pen.quadraticTo(x1, y1, dx + c.x, dy + c.y)
        break
      }
      case SVGPathData.ARC:
        pen.arcTo(c.rX, c.rY, c.xRot, c.lArcFlag === 1, c.sweepFlag === 1, dx + c.x, dy + c.y)
        break
      case SVGPathData.CLOSE_PATH:
        pen.close()
        break
    }
    last = c.type
  }
  pen.finish()
}

function commandsOf(d: string): SVGCommand[] {
  try {
    return new SVGPathData(d).commands
  } catch (e) {
    const said = e instanceof Error ? e.message.replace(/\.$/, '') : String(e)
    const where = /\bat (?:index "?)?\d+/.test(said) ? '' : ` (index ${d.length})`
    throw new DrawingError(`path data: ${said.charAt(0).toLowerCase()}${said.slice(1)}${where}`)
  }
}

const COMMANDS = 'MmZzLlHhVvCcSsQqTtAa'

// Refuses with an index what the parser would misread without a word: numbers before the first command or
// after Z (it glues them to the next number), zeros before a whole number ("007" becomes 0 and 7), a path that
// does not begin with a moveto; and numbers out of range, whose place it does not tell.
function refuseUnclear(d: string): void {
  const s = new Scanner(d)
  let command = ''
  let numbers = 0
  for (;;) {
    s.skipComma()
    if (s.done) return
    const here = s.at
    const c = s.next
    const fail = (what: string): never => {
      throw new DrawingError(`path data: ${what} at index ${here}`)
    }
    if (COMMANDS.includes(c)) {
      if (command === '' && c !== 'M' && c !== 'm') fail(`"${c}" before the first M`)
      command = c
      numbers = 0
      s.at++
      continue
    }
    if (!/^[-+.0-9]$/.test(c)) fail(`unexpected ${quote(c)}`)
    if (command === '') fail('a number before the first M')
    if (command === 'Z' || command === 'z') fail(`a number after ${command}, which takes none,`)
    const flag = (command === 'A' || command === 'a') && (numbers % 7 === 3 || numbers % 7 === 4)
    numbers++
    if (flag && (c === '0' || c === '1')) {
      s.at++
      continue
    }
    if (s.number() === null) fail(`${quote(d.slice(here, here + 8))} is no number`)
    if (/^[-+]?0[0-9]/.test(d.slice(here, here + 3))) {
      fail(`a number with zeros in front, ${quote(d.slice(here, s.at))},`)
    }
  }
}
