import type { StepTime } from '../cast/clock.ts'
import { dayAfter } from '../quantity/day.ts'
import type { Step } from '../steps/step.ts'

const DAY_MIN = 1440

/** The day, YYYY-MM-DD, on which a step comes by the clock of waits; null: nothing says when the piece is begun. */
export type DayOf = (wanted: (step: Step) => boolean) => string | null

/**
 * Days on which material is used: the moment given to a pour, else `asOf` for the first, and the waits of the plan from
 * there; of several steps the last.
 *
 * Limits: hours of work and nights are not in it, so that by the calendar it is the same day or later.
 */
export function useDays(steps: readonly Step[], clock: readonly StepTime[], asOf: string | undefined): DayOf {
  const given = steps.findIndex(s => s.kind === 'pour' && s.pour!.value.start !== undefined)
  const anchor = given < 0 ? asOf : steps[given]!.pour!.value.start!
  if (anchor === undefined) return () => null
  const first = given < 0 ? Math.min(...clock.map(t => t.startMin)) : clock[given]!.startMin
  return wanted => {
    const at = steps.findLastIndex(wanted)
    return at < 0 ? null : dayAfter(anchor, (clock[at]!.startMin - first) / DAY_MIN)
  }
}
