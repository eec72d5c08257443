import type { Move } from '../toolpath.ts'
import { SAME_MM } from './free.ts'

/** A drilled hole as moves make it: from the crossing height down to it and back, mm. */
export interface Hole {
  readonly x: number
  readonly y: number
  readonly clearMm: number
  /** Where the feed begins, and the foot. */
  readonly fromMm: number
  readonly floorMm: number
  /** Deepest peck; null: in one go. */
  readonly peckMm: number | null
  /** Wait at the foot, s; of a hole in one go. */
  readonly seconds: number
  readonly feedMmMin: number
  /** Index of the first move after it. */
  readonly next: number
}

type Way = Exclude<Move, { kind: 'dwell' }>

/**
 * The hole that the moves from `i` drill, from a cutter that stands at `at`; null where they do something else. One hole:
 * straight down at rapid speed, down at a feed, up to where it began; and the same again, each time from no lower than
 * it had been, all at one feed.
 */
export function holeAt(moves: readonly Move[], i: number, at: Way): Hole | null {
  const over = (m: Move | undefined): m is Way =>
    m !== undefined && m.kind !== 'dwell' && m.kind !== 'arc' && m.x === at.x && m.y === at.y
  let k = i
  let fromMm = at.z
  let made: number | null = null
  let peckMm: number | null = null
  let seconds = 0
  let feedMmMin = 0
  let next = i
  for (;;) {
    let start = at.z
    const down = moves[k]
    if (over(down) && down.kind === 'rapid' && down.z < at.z) {
      start = down.z
      k++
    }
    const feed = moves[k]
    if (!over(feed) || feed.kind !== 'line' || feed.z >= start) break
    if (made !== null && (start < made - SAME_MM || feed.z >= made || feed.feedMmMin !== feedMmMin)) break
    k++
    const wait = moves[k]
    const waits = wait?.kind === 'dwell' ? wait.seconds : 0
    if (wait?.kind === 'dwell') k++
    const up = moves[k]
    // A wait between pecks is no cycle's.
    if (!over(up) || up.kind !== 'rapid' || up.z !== at.z || (waits > 0 && made !== null)) break
    k++
    if (made === null) {
      fromMm = start
      feedMmMin = feed.feedMmMin
      seconds = waits
    } else {
      if (seconds > 0) break
      peckMm = Math.max(peckMm ?? 0, made - feed.z)
    }
    made = feed.z
    next = k
  }
  if (made === null) return null
  return { x: at.x, y: at.y, clearMm: at.z, fromMm, floorMm: made, peckMm, seconds, feedMmMin, next }
}
