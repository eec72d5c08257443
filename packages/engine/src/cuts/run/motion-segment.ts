import type { ShopMachine } from '../../piece/shop-schema.ts'
import type { Move } from '../toolpath.ts'

/**
 * Moves as a motion model sees them, one entry each in flat arrays: how long, how fast at most, and which way they
 * begin and end. mm, mm/s; ways are unit vectors.
 */
export interface Segments {
  readonly count: number
  /** 0 rapid, 1 cutting, 2 standing still. */
  readonly kind: Uint8Array
  readonly lengthMm: Float64Array
  /** Fastest it may go, mm/s; of a dwell its seconds stand in `lengthMm`. */
  readonly most: Float64Array
  /** Six to a move: way at its start, way at its end. */
  readonly way: Float64Array
}

/** What of a machine its time depends on. */
export type MotionLimits = Pick<
  ShopMachine,
  'rapid' | 'feed' | 'plunge' | 'acceleration' | 'corner' | 'change'
>

export const RAPID = 0
export const CUTTING = 1
export const STANDING = 2

/** Fills segments move by move; arcs may lie in any of the three planes. */
export class SegmentPen {
  readonly kind: Uint8Array
  readonly lengthMm: Float64Array
  readonly most: Float64Array
  readonly way: Float64Array
  private count = 0
  private readonly limits: MotionLimits

  constructor(moves: number, limits: MotionLimits) {
    this.kind = new Uint8Array(moves)
    this.lengthMm = new Float64Array(moves)
    this.most = new Float64Array(moves)
    this.way = new Float64Array(6 * moves)
    this.limits = limits
  }

  stand(seconds: number): void {
    this.kind[this.count] = STANDING
    this.lengthMm[this.count] = seconds
    this.count++
  }

  /** Straight on by dx, dy, dz. @param feed mm/min; null: rapid */
  line(dx: number, dy: number, dz: number, feed: number | null): void {
    const length = Math.hypot(dx, dy, dz)
    const k = length === 0 ? 0 : 1 / length
    this.add(length, dz, feed, Number.POSITIVE_INFINITY, [dx * k, dy * k, dz * k, dx * k, dy * k, dz * k])
  }

  /**
   * An arc, rising evenly. First and second are the axes of its plane in the order that makes counter-clockwise
   * positive, then the third: 0 x, 1 y, 2 z. Start and end are given from the middle.
   */
  arc(
    axes: readonly [first: number, second: number, third: number],
    start: readonly [number, number],
    end: readonly [number, number],
    rise: number,
    clockwise: boolean,
    feed: number
  ): void {
    const radius = Math.hypot(...start)
    const flat = sweep(start, end, clockwise) * radius
    const length = Math.hypot(flat, rise)
    const way = new Array<number>(6).fill(0)
    for (const [i, p] of [start, end].entries()) {
      const r = Math.hypot(...p) || 1
      const sign = clockwise ? -1 : 1
      const share = length === 0 ? 0 : flat / length
      way[3 * i + axes[0]] = (-sign * p[1] * share) / r
      way[3 * i + axes[1]] = (sign * p[0] * share) / r
      way[3 * i + axes[2]] = length === 0 ? 0 : rise / length
    }
    // Round a circle of R the speed v turns with v²/R; rising, the circle flattens by the square of its share.
    const curve = flat === 0 ? Number.POSITIVE_INFINITY : radius * (length / flat) ** 2
    this.add(length, axes[2] === 2 ? rise : 0, feed, curve, way)
  }

  done(): Segments {
    return { count: this.count, kind: this.kind, lengthMm: this.lengthMm, most: this.most, way: this.way }
  }

  private add(length: number, dz: number, feed: number | null, curve: number, way: readonly number[]): void {
    const { rapid, feed: fastest, plunge, acceleration } = this.limits
    let most = (feed === null ? rapid : Math.min(feed, fastest)) / 60
    // Down into the work no faster than the machine takes straight down.
    if (feed !== null && dz < 0) most = Math.min(most, (plunge / 60) * (length / -dz))
    this.kind[this.count] = feed === null ? RAPID : CUTTING
    this.lengthMm[this.count] = length
    this.most[this.count] = Math.min(most, Math.sqrt(acceleration * curve))
    this.way.set(way, 6 * this.count)
    this.count++
  }
}

/** Angle turned from start to end about the middle, 0 to 2π; a full turn where they are the same. */
function sweep(start: readonly [number, number], end: readonly [number, number], clockwise: boolean): number {
  const turn = Math.atan2(end[1], end[0]) - Math.atan2(start[1], start[0])
  const on = clockwise ? -turn : turn
  const same = Math.hypot(end[0] - start[0], end[1] - start[1]) < 1e-9
  if (same) return 2 * Math.PI
  const positive = ((on % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  return positive
}

const XY = [0, 1, 2] as const

/** The segments of a path. The first move comes from nowhere and takes no time. */
export function segmentsOf(moves: readonly Move[], limits: MotionLimits): Segments {
  const pen = new SegmentPen(moves.length, limits)
  let at: { x: number; y: number; z: number } | null = null
  for (const m of moves) {
    if (m.kind === 'dwell') pen.stand(m.seconds)
    else {
      const from = at ?? m
      if (m.kind === 'arc')
        pen.arc(
          XY,
          [from.x - m.cx, from.y - m.cy],
          [m.x - m.cx, m.y - m.cy],
          m.z - from.z,
          m.clockwise,
          m.feedMmMin
        )
      else pen.line(m.x - from.x, m.y - from.y, m.z - from.z, m.kind === 'line' ? m.feedMmMin : null)
      at = m
    }
  }
  return pen.done()
}
