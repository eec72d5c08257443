import { Hours } from './solve/hours.ts'
import type { Placed } from './solve/problem.ts'
import type { Opening, Task } from './task.ts'

/** A span of a task on a day. */
export interface LaneSpan {
  readonly id: string
  readonly fromMin: number
  readonly toMin: number
}

/** A stretch of a day drawn to one scale. */
export interface Stretch {
  readonly kind: 'open' | 'night' | 'away'
  readonly fromMin: number
  readonly toMin: number
  /** Where it begins on its day, and how wide it is: open minutes of a busy day are 1 wide. */
  readonly at: number
  readonly width: number
}

/** One day of the calendar as lanes. */
export interface DayLanes {
  readonly fromMin: number
  readonly toMin: number
  readonly attended: readonly LaneSpan[]
  readonly unattended: readonly LaneSpan[]
  readonly stretches: readonly Stretch[]
  readonly width: number
  /** Nothing attended on it. */
  readonly quiet: boolean
}

/** How wide a minute is against an open one of a busy day: drawn narrow, never left out. Practice. */
const NIGHT_WIDTH = 0.15
const AWAY_WIDTH = 0.2
const QUIET_WIDTH = 0.12

/**
 * The days of a calendar as lanes of attended and unattended time, night and hours away, with time squeezed: open
 * hours of busy days wide, nights and hours away narrow, quiet days narrower. Every minute has a place.
 *
 * @param midnights minutes of the midnights that part the days, in order
 */
export function lanesOf(
  tasks: readonly Task[],
  placed: readonly Placed[],
  openings: readonly Opening[],
  nights: readonly Opening[],
  midnights: readonly number[]
): DayLanes[] {
  const open = new Hours(openings)
  const night = new Hours(nights)
  const at = new Map(placed.map(p => [p.id, p]))
  return midnights.slice(1).map((toMin, n) => {
    const fromMin = midnights[n]!
    const attended: LaneSpan[] = []
    const unattended: LaneSpan[] = []
    for (const { id, attended: there } of tasks)
      for (const [a, b] of at.get(id)?.parts ?? []) {
        const lo = Math.max(a, fromMin)
        const hi = Math.min(b, toMin)
        if (hi > lo) (there ? attended : unattended).push({ id, fromMin: lo, toMin: hi })
      }
    const byStart = (x: LaneSpan, y: LaneSpan) => x.fromMin - y.fromMin || x.toMin - y.toMin
    const quiet = attended.length === 0
    const stretches: Stretch[] = []
    const edges = [fromMin, toMin]
    for (const [a, b] of [...open.within(fromMin, toMin), ...night.within(fromMin, toMin)]) edges.push(a, b)
    edges.sort((x, y) => x - y)
    let x = 0
    for (let k = 1; k < edges.length; k++) {
      const [a, b] = [edges[k - 1]!, edges[k]!]
      if (b <= a) continue
      const mid = (a + b) / 2
      const kind =
        open.nextStart(mid, 0) === mid ? 'open' : night.nextStart(mid, 0) === mid ? 'night' : 'away'
      const scale = quiet ? QUIET_WIDTH : kind === 'open' ? 1 : kind === 'night' ? NIGHT_WIDTH : AWAY_WIDTH
      stretches.push({ kind, fromMin: a, toMin: b, at: x, width: (b - a) * scale })
      x += (b - a) * scale
    }
    return {
      fromMin,
      toMin,
      attended: attended.sort(byStart),
      unattended: unattended.sort(byStart),
      stretches,
      width: x,
      quiet
    }
  })
}

/** Where a moment of a day is drawn, from its left edge. */
export function placeOn(day: DayLanes, atMin: number): number {
  for (const s of day.stretches)
    if (atMin <= s.toMin) return s.at + (Math.max(0, atMin - s.fromMin) / (s.toMin - s.fromMin)) * s.width
  return day.width
}
