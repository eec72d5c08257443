import type { CutterShape } from '../../src/catalogue/cutter-shape.ts'
import { MOTION, type Motions } from '../../src/proving/motion.ts'

/** Writes moves as a reader would hand them over, one line of the file each. */
export class Program {
  private readonly rows: number[][] = []
  tool = 1
  offset = 1
  spindle = 18_000
  private x = Number.NaN
  private y = Number.NaN
  private z = Number.NaN

  rapid(x: number, y: number, z: number): this {
    return this.push(MOTION.rapid, x, y, z, 0, 0, 17, 0)
  }

  line(x: number, y: number, z: number, feed = 1000): this {
    return this.push(MOTION.line, x, y, z, 0, 0, 17, feed)
  }

  arc(
    clockwise: boolean,
    x: number,
    y: number,
    z: number,
    a: number,
    b: number,
    feed = 1000,
    plane = 17
  ): this {
    return this.push(clockwise ? MOTION.arcClockwise : MOTION.arcCounter, x, y, z, a, b, plane, feed)
  }

  stop(): this {
    return this.push(MOTION.stop, this.x, this.y, this.z, 0, 0, 17, 0)
  }

  change(tool: number, offset: number): this {
    this.tool = tool
    this.offset = offset
    return this.push(MOTION.change, this.x, this.y, this.z, 0, 0, 17, 0)
  }

  get lines(): number {
    return this.rows.length
  }

  motions(): Motions {
    const col = (k: number) => this.rows.map(r => r[k]!)
    return {
      count: this.rows.length,
      kind: Uint8Array.from(col(0)),
      line: Uint32Array.from(this.rows, (_, n) => n + 1),
      x: Float64Array.from(col(1)),
      y: Float64Array.from(col(2)),
      z: Float64Array.from(col(3)),
      a: Float64Array.from(col(4)),
      b: Float64Array.from(col(5)),
      plane: Uint8Array.from(col(6)),
      feed: Float32Array.from(col(7)),
      spindle: Float32Array.from(col(8)),
      tool: Uint16Array.from(col(9)),
      offset: Uint16Array.from(col(10))
    }
  }

  private push(
    kind: number,
    x: number,
    y: number,
    z: number,
    a: number,
    b: number,
    plane: number,
    feed: number
  ): this {
    this.rows.push([kind, x, y, z, a, b, plane, feed, this.spindle, this.tool, this.offset])
    this.x = x
    this.y = y
    this.z = z
    return this
  }
}

/** A flat cutter of 6 mm, with what a test wants otherwise. */
export function cutter(more: Partial<CutterShape> = {}): CutterShape {
  return {
    form: 'flat',
    diameterMm: 6,
    cornerMm: 0,
    angleDeg: 180,
    tipMm: 0,
    fluteMm: 25,
    shankMm: 6,
    reachMm: 35,
    holderMm: 20,
    headMm: 0,
    neckMm: 0,
    plunges: true,
    ...more
  }
}
