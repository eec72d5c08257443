import { FARTHEST_MM } from './clip.ts'
import { DrawingError } from './drawing-error.ts'
import { endpointArc } from './endpoint-arc.ts'
import type { Arc } from './flatten.ts'
import {
  arcChords,
  cubicChords,
  flattenArc,
  flattenCubic,
  flattenQuadratic,
  quadraticChords
} from './flatten.ts'
import type { Matrix } from './matrix.ts'
import { IDENTITY } from './matrix.ts'
import type { Ring } from './region.ts'

/** How many points a drawing may come to; shared by all its shapes. */
export class PointBudget {
  readonly most: number
  #left: number

  constructor(most: number) {
    this.most = most
    this.#left = most
  }

  /** @throws DrawingError when `count` more points are too many */
  take(count: number): void {
    this.#left -= count
    if (!(this.#left >= 0)) {
      throw new DrawingError(
        `the drawing comes to more than ${this.most} points at this tolerance; at most ${this.most} are allowed`
      )
    }
  }
}

/** Points of a line nearer than this are one point, mm: rounding of relative commands, far below the grid. */
const SAME_MM = 1e-6

/**
 * Draws lines and curves given in a drawing's own units, maps them to mm and flattens them there, so that the
 * chord tolerance holds in mm under any transform.
 *
 * A subpath that is closed, or whose end meets its start, becomes a ring; any other an open line. Subpaths
 * without length are dropped.
 */
export class Pen {
  readonly rings: Ring[] = []
  readonly open: Float64Array[] = []
  /** Where the pen is, drawing units. */
  x = 0
  y = 0
  #startX = 0
  #startY = 0
  #buffer = new Float64Array(64)
  #size = 0
  readonly #tol: number
  readonly #matrix: Matrix
  readonly #budget: PointBudget

  constructor(tolMm: number, budget: PointBudget, matrix: Matrix = IDENTITY) {
    if (!(tolMm > 0 && Number.isFinite(tolMm)))
      throw new Error(`a tolerance of ${tolMm} mm; it must be above 0`)
    this.#tol = tolMm
    this.#budget = budget
    this.#matrix = matrix
  }

  moveTo(x: number, y: number): void {
    this.finish()
    this.#budget.take(1)
    this.x = this.#startX = x
    this.y = this.#startY = y
  }

  lineTo(x: number, y: number): void {
    this.#begin()
    this.#budget.take(1)
    this.#putEnd(x, y)
  }

  quadraticTo(x1: number, y1: number, x: number, y: number): void {
    this.#begin()
    const p = this.#mapped(this.x, this.y, x1, y1, x, y)
    this.#budget.take(quadraticChords(p, this.#tol))
    flattenQuadratic(p, this.#tol, this.#put)
    this.x = x
    this.y = y
  }

  cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.#begin()
    const p = this.#mapped(this.x, this.y, x1, y1, x2, y2, x, y)
    this.#budget.take(cubicChords(p, this.#tol))
    flattenCubic(p, this.#tol, this.#put)
    this.x = x
    this.y = y
  }

  /** SVG's elliptical arc from where the pen is to (x, y). */
  arcTo(rx: number, ry: number, xRotDeg: number, large: boolean, sweep: boolean, x: number, y: number): void {
    const arc = endpointArc(this.x, this.y, rx, ry, xRotDeg, large, sweep, x, y)
    if (arc === null) this.lineTo(x, y)
    else this.#arc(arc, x, y)
  }

  /** A quarter of an upright ellipse about (cx, cy), from where the pen is to (x, y), turning from +x to +y. */
  quarterTo(cx: number, cy: number, rx: number, ry: number, x: number, y: number): void {
    // On the unit circle the start is one of (1, 0), (0, 1), (−1, 0), (0, −1).
    const t0 = (Math.PI / 2) * Math.round(Math.atan2((this.y - cy) / ry, (this.x - cx) / rx) / (Math.PI / 2))
    this.#arc({ cx, cy, ux: rx, uy: 0, vx: 0, vy: ry, t0, dt: Math.PI / 2 }, x, y)
  }

  #arc(arc: Arc, x: number, y: number): void {
    this.#begin()
    const [a, b, c, d, e, f] = this.#matrix
    const mapped: Arc = {
      cx: a * arc.cx + c * arc.cy + e,
      cy: b * arc.cx + d * arc.cy + f,
      ux: a * arc.ux + c * arc.uy,
      uy: b * arc.ux + d * arc.uy,
      vx: a * arc.vx + c * arc.vy,
      vy: b * arc.vx + d * arc.vy,
      t0: arc.t0,
      dt: arc.dt
    }
    this.#budget.take(arcChords(mapped, this.#tol))
    flattenArc(mapped, this.#tol, this.#put)
    // The end as given, not as computed from the centre.
    this.#size -= 2
    this.#putEnd(x, y)
  }

  close(): void {
    this.#budget.take(1)
    this.#end(true)
    this.x = this.#startX
    this.y = this.#startY
  }

  /** Ends a subpath that is still open; call it once after the last command. */
  finish(): void {
    this.#end(false)
  }

  #begin(): void {
    if (this.#size > 0) return
    this.#startX = this.x
    this.#startY = this.y
    this.#budget.take(1)
    this.#putEnd(this.x, this.y)
  }

  #putEnd(x: number, y: number): void {
    const [a, b, c, d, e, f] = this.#matrix
    this.#put(a * x + c * y + e, b * x + d * y + f)
    this.x = x
    this.y = y
  }

  readonly #put = (xMm: number, yMm: number): void => {
    if (!(Math.abs(xMm) <= FARTHEST_MM && Math.abs(yMm) <= FARTHEST_MM)) {
      throw new DrawingError(
        `a point at (${xMm}, ${yMm}) mm; allowed are −${FARTHEST_MM} to ${FARTHEST_MM} mm`
      )
    }
    if (this.#size + 2 > this.#buffer.length) {
      const larger = new Float64Array(2 * this.#buffer.length)
      larger.set(this.#buffer)
      this.#buffer = larger
    }
    this.#buffer[this.#size++] = xMm
    this.#buffer[this.#size++] = yMm
  }

  #mapped(...points: number[]): number[] {
    const [a, b, c, d, e, f] = this.#matrix
    const out = new Array<number>(points.length)
    for (let k = 0; k < points.length; k += 2) {
      out[k] = a * points[k]! + c * points[k + 1]! + e
      out[k + 1] = b * points[k]! + d * points[k + 1]! + f
    }
    return out
  }

  #end(closed: boolean): void {
    const line = withoutRepeats(this.#buffer.subarray(0, this.#size))
    this.#size = 0
    const n = line.length
    if (n < 4) return
    const returns = near(line[0]!, line[1]!, line[n - 2]!, line[n - 1]!)
    if ((closed || returns) && (returns ? n - 2 : n) >= 6) {
      this.rings.push(returns ? line.slice(0, n - 2) : line)
    } else if (closed && !returns) {
      // There and back along one stretch: a line, not an area.
      this.open.push(Float64Array.from([...line, line[0]!, line[1]!]))
    } else {
      this.open.push(line)
    }
  }
}

function withoutRepeats(points: Float64Array): Float64Array {
  const out = new Float64Array(points.length)
  let size = 0
  for (let k = 0; k < points.length; k += 2) {
    if (size > 0 && near(out[size - 2]!, out[size - 1]!, points[k]!, points[k + 1]!)) continue
    out[size++] = points[k]!
    out[size++] = points[k + 1]!
  }
  return out.slice(0, size)
}

function near(ax: number, ay: number, bx: number, by: number): boolean {
  return Math.abs(ax - bx) <= SAME_MM && Math.abs(ay - by) <= SAME_MM
}
