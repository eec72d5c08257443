import type { MotionLimits } from './motion-segment.ts'
import { SegmentPen } from './motion-segment.ts'
import type { MotionTime } from './motion-time.ts'
import { segmentsTime } from './motion-time.ts'

/**
 * Moves of a program that was read, one entry each: kind 0 rapid, 1 line, 2 and 3 arcs clockwise and counter-clockwise,
 * 4 a dwell, from 5 on a stop or a change; ends x, y, z in mm; a, b the middle of an arc along the two axes of its
 * plane (17: x y, 18: z x, 19: y z), of a dwell a its seconds; feed mm/min, 0 none.
 */
export interface ReadMoves {
  readonly count: number
  readonly kind: Uint8Array
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
  readonly a: Float64Array
  readonly b: Float64Array
  readonly plane: Uint8Array
  readonly feed: Float32Array
}

const LINE = 1
const ARC_CLOCKWISE = 2
const ARC_COUNTER = 3
const DWELL = 4
/** The two axes of a plane and the third, 0 x, 1 y, 2 z: counter-clockwise runs from the first to the second. */
const AXES: Readonly<Record<number, readonly [number, number, number]>> = {
  17: [0, 1, 2],
  18: [2, 0, 1],
  19: [1, 2, 0]
}

/**
 * How long a program takes, by the same model as a path of our own. Stops and changes of the cutter halt the
 * machine and count for nothing: how long they last is the maker's. The first move comes from an unknown place and
 * takes no time.
 */
export function programTime(moves: ReadMoves, machine: MotionLimits): MotionTime {
  const pen = new SegmentPen(moves.count, machine)
  const at: [number, number, number] = [Number.NaN, Number.NaN, Number.NaN]
  for (let i = 0; i < moves.count; i++) {
    const kind = moves.kind[i]!
    if (kind >= DWELL) {
      pen.stand(kind === DWELL ? moves.a[i]! : 0)
      continue
    }
    const to = [moves.x[i]!, moves.y[i]!, moves.z[i]!] as const
    const way = to.map((t, k) => (Number.isFinite(at[k]!) && Number.isFinite(t) ? t - at[k]! : 0))
    const known = at.every(Number.isFinite) && to.every(Number.isFinite)
    if ((kind === ARC_CLOCKWISE || kind === ARC_COUNTER) && known) {
      const axes = AXES[moves.plane[i]!] ?? AXES[17]!
      const [p, q, r] = axes
      const [ma, mb] = [moves.a[i]!, moves.b[i]!]
      pen.arc(
        axes,
        [at[p]! - ma, at[q]! - mb],
        [to[p]! - ma, to[q]! - mb],
        way[r]!,
        kind === ARC_CLOCKWISE,
        feedOf(moves.feed[i]!, machine)
      )
    } else pen.line(way[0]!, way[1]!, way[2]!, kind >= LINE ? feedOf(moves.feed[i]!, machine) : null)
    for (let k = 0; k < 3; k++) if (Number.isFinite(to[k]!)) at[k] = to[k]!
  }
  return segmentsTime(pen.done(), machine)
}

// Without a feed a machine refuses to move: taken at its greatest, the least time.
function feedOf(feed: number, machine: MotionLimits): number {
  return feed > 0 ? feed : machine.feed
}
