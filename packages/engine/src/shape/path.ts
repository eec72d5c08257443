import { SVGPathData } from 'svg-pathdata'
import { dedupe } from './build.ts'
import type { Fill } from './combine.ts'
import { regionOfRings } from './combine.ts'
import { flattenArc, flattenCubic, flattenQuadratic } from './flatten.ts'
import type { Region, Ring } from './region.ts'

/** Path data that cannot be read: what was found, and where in the text. */
export class PathError extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'PathError'
  }
}

/** Numbers beyond this are refused, user units: nothing drawn is 10 km wide. */
export const FARTHEST = 1e7
/** Most points one path may be flattened to. */
const MOST_PATH_POINTS = 2_000_000

/** One run of a path. A closed one does not repeat its first point. */
export interface Trace {
  readonly points: Float64Array
  readonly closed: boolean
}

/**
 * The runs of SVG path data, flattened so that no chord strays more than `tol` (in the path's own units).
 * y is left as SVG has it: down.
 * @throws PathError
 */
export function tracePath(d: string, tol: number): Trace[] {
  if (!(tol > 0)) throw new PathError(`a tolerance of ${tol}; allowed: above 0`)
  const commands = read(d)
  const out: Trace[] = []
  let run: number[] = []
  let total = 0
  let x = 0
  let y = 0
  let startX = 0
  let startY = 0
  // Second control point of the curve before, for smooth curves: of a cubic, of a quadratic.
  let cubicX = 0
  let cubicY = 0
  let quadX = 0
  let quadY = 0
  let before = 0
  const end = (closed: boolean) => {
    const points = dedupe2(run, closed)
    if (points.length >= 4) out.push({ points, closed })
    total += run.length / 2
    run = []
  }
  for (const c of commands) {
    if (total + run.length / 2 > MOST_PATH_POINTS)
      throw new PathError(`a path of more than ${MOST_PATH_POINTS} points`)
    if (c.type === SVGPathData.CLOSE_PATH) {
      if (run.length > 0) end(true)
      x = startX
      y = startY
      before = c.type
      continue
    }
    const ox = c.relative ? x : 0
    const oy = c.relative ? y : 0
    const nx = 'x' in c ? ox + c.x : x
    const ny = 'y' in c ? oy + c.y : y
    if (c.type === SVGPathData.MOVE_TO) {
      if (run.length > 0) end(false)
      startX = nx
      startY = ny
    } else {
      if (run.length === 0) run.push(x, y)
      if (c.type === SVGPathData.CURVE_TO || c.type === SVGPathData.SMOOTH_CURVE_TO) {
        const smooth = c.type === SVGPathData.SMOOTH_CURVE_TO
        const follows = before === SVGPathData.CURVE_TO || before === SVGPathData.SMOOTH_CURVE_TO
        const x1 = smooth ? (follows ? 2 * x - cubicX : x) : ox + c.x1
        const y1 = smooth ? (follows ? 2 * y - cubicY : y) : oy + c.y1
        cubicX = ox + c.x2
        cubicY = oy + c.y2
        flattenCubic(run, x, y, x1, y1, cubicX, cubicY, nx, ny, tol)
      } else if (c.type === SVGPathData.QUAD_TO || c.type === SVGPathData.SMOOTH_QUAD_TO) {
        const smooth = c.type === SVGPathData.SMOOTH_QUAD_TO
        const follows = before === SVGPathData.QUAD_TO || before === SVGPathData.SMOOTH_QUAD_TO
        quadX = smooth ? (follows ? 2 * x - quadX : x) : ox + c.x1
        quadY = smooth ? (follows ? 2 * y - quadY : y) : oy + c.y1
        flattenQuadratic(run, x, y, quadX, quadY, nx, ny, tol)
      } else if (c.type === SVGPathData.ARC) {
        flattenArc(run, x, y, c.rX, c.rY, c.xRot, c.lArcFlag === 1, c.sweepFlag === 1, nx, ny, tol)
      } else {
        run.push(nx, ny)
      }
    }
    x = nx
    y = ny
    before = c.type
    if (!(Math.abs(x) <= FARTHEST && Math.abs(y) <= FARTHEST))
      throw new PathError(`a coordinate of ${Math.max(Math.abs(x), Math.abs(y))}; allowed: up to ${FARTHEST}`)
  }
  if (run.length > 0) end(false)
  return out
}

/** Closed rings and open lines of path data. A closed run of fewer than three points encloses nothing and is left out. */
export function parsePath(d: string, tol: number): { rings: Ring[]; open: Float64Array[] } {
  const traces = tracePath(d, tol)
  return {
    rings: traces.filter(t => t.closed && t.points.length >= 6).map(t => t.points),
    open: traces.filter(t => !t.closed).map(t => t.points)
  }
}

/** The region path data encloses. Open runs are closed by a straight line, as SVG fills them. */
export function pathRegion(d: string, tol: number, fill: Fill = 'nonzero'): Region {
  return regionOfRings(
    tracePath(d, tol).map(t => t.points),
    fill
  )
}

function read(d: string) {
  let commands: ReturnType<typeof SVGPathData.parse>
  try {
    commands = SVGPathData.parse(d)
  } catch (e) {
    throw new PathError(`path data that cannot be read: ${e instanceof Error ? e.message : String(e)}`)
  }
  for (const c of commands) {
    for (const value of Object.values(c)) {
      if (typeof value === 'number' && !(Math.abs(value) <= FARTHEST))
        throw new PathError(`the number ${value}; allowed: up to ${FARTHEST}`)
    }
  }
  return commands
}

function dedupe2(run: readonly number[], closed: boolean): Float64Array {
  const points = Float64Array.from(run)
  if (closed) return dedupe(points)
  const out: number[] = []
  for (let k = 0; k < points.length; k += 2) {
    if (k === 0 || points[k] !== out[out.length - 2] || points[k + 1] !== out[out.length - 1])
      out.push(points[k]!, points[k + 1]!)
  }
  return Float64Array.from(out)
}
