import type { Motions } from '../motion.ts'

/** Thrown when a program asks for more moves than the bound. */
export class TooManyMotions extends Error {}

/** Motions that grow: flat arrays, doubled when full. */
export class MotionList {
  count = 0
  readonly most: number
  private room: number
  private kind: Uint8Array
  private line: Uint32Array
  private x: Float64Array
  private y: Float64Array
  private z: Float64Array
  private a: Float64Array
  private b: Float64Array
  private plane: Uint8Array
  private feed: Float32Array
  private spindle: Float32Array
  private tool: Uint16Array
  private offset: Uint16Array

  /**
   * @param guess how many moves are likely
   * @param most moves; one more throws
   */
  constructor(guess: number, most: number) {
    const room = Math.max(64, Math.min(guess, most))
    this.room = room
    this.most = most
    this.kind = new Uint8Array(room)
    this.line = new Uint32Array(room)
    this.x = new Float64Array(room)
    this.y = new Float64Array(room)
    this.z = new Float64Array(room)
    this.a = new Float64Array(room)
    this.b = new Float64Array(room)
    this.plane = new Uint8Array(room)
    this.feed = new Float32Array(room)
    this.spindle = new Float32Array(room)
    this.tool = new Uint16Array(room)
    this.offset = new Uint16Array(room)
  }

  push(
    kind: number,
    line: number,
    x: number,
    y: number,
    z: number,
    a: number,
    b: number,
    plane: number,
    feed: number,
    spindle: number,
    tool: number,
    offset: number
  ): void {
    const i = this.count
    if (i === this.room) this.grow()
    this.kind[i] = kind
    this.line[i] = line
    this.x[i] = x
    this.y[i] = y
    this.z[i] = z
    this.a[i] = a
    this.b[i] = b
    this.plane[i] = plane
    this.feed[i] = feed
    this.spindle[i] = spindle
    this.tool[i] = tool
    this.offset[i] = offset
    this.count = i + 1
  }

  done(): Motions {
    // What is far too roomy is given back.
    if (this.room > 2 * this.count + 64) this.resize(Math.max(1, this.count))
    const n = this.count
    return {
      count: n,
      kind: this.kind.subarray(0, n),
      line: this.line.subarray(0, n),
      x: this.x.subarray(0, n),
      y: this.y.subarray(0, n),
      z: this.z.subarray(0, n),
      a: this.a.subarray(0, n),
      b: this.b.subarray(0, n),
      plane: this.plane.subarray(0, n),
      feed: this.feed.subarray(0, n),
      spindle: this.spindle.subarray(0, n),
      tool: this.tool.subarray(0, n),
      offset: this.offset.subarray(0, n)
    }
  }

  private grow(): void {
    if (this.room >= this.most) throw new TooManyMotions()
    this.resize(Math.min(this.most, 2 * this.room))
  }

  private resize(room: number): void {
    const n = Math.min(room, this.count)
    const to = <T extends Uint8Array | Uint16Array | Uint32Array | Float32Array | Float64Array>(
      fresh: T,
      old: T
    ): T => {
      fresh.set(old.subarray(0, n))
      return fresh
    }
    this.kind = to(new Uint8Array(room), this.kind)
    this.line = to(new Uint32Array(room), this.line)
    this.x = to(new Float64Array(room), this.x)
    this.y = to(new Float64Array(room), this.y)
    this.z = to(new Float64Array(room), this.z)
    this.a = to(new Float64Array(room), this.a)
    this.b = to(new Float64Array(room), this.b)
    this.plane = to(new Uint8Array(room), this.plane)
    this.feed = to(new Float32Array(room), this.feed)
    this.spindle = to(new Float32Array(room), this.spindle)
    this.tool = to(new Uint16Array(room), this.tool)
    this.offset = to(new Uint16Array(room), this.offset)
    this.room = room
  }
}
