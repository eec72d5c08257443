import type { LearnedFactor, TimedWork } from './learned-minutes.ts'
import { learnedFactors } from './learned-minutes.ts'
import type { StepRecord } from './step-times.ts'
import type { TaskKind } from './task.ts'
import type { PieceTasks } from './tasks.ts'

/** A step that went on longer than this went on over a break: its moments say no minutes of work (practice). */
const MOST_SPAN_MIN = 240

/**
 * What recorded minutes of steps teach of each kind of work: a step's time is shared by its attended tasks as they were
 * reckoned, so that each of its kinds gets one ratio. Where
 * no minutes were said, the time from its beginning to its end stands for them, if all of the step is work of hands.
 */
export function learnedOf(
  { tasks, reckoned }: PieceTasks,
  records: ReadonlyMap<string, StepRecord>
): Map<TaskKind, LearnedFactor> {
  const timed: TimedWork[] = []
  for (const [step, record] of records) {
    const all = tasks.filter(t => t.step === step)
    const own = all.filter(t => t.needs.includes('hands'))
    const tookMin = record.tookMin ?? (own.length === all.length ? spanOf(record) : null)
    if (tookMin === null) continue
    const total = own.reduce((sum, t) => sum + reckoned.get(t.id)!, 0)
    if (!(total > 0)) continue
    for (const kind of new Set(own.map(t => t.kind))) {
      const part = own.filter(t => t.kind === kind).reduce((sum, t) => sum + reckoned.get(t.id)!, 0)
      timed.push({ kind, reckonedMin: part, tookMin: (tookMin * part) / total })
    }
  }
  return learnedFactors(timed)
}

function spanOf({ spanMin }: StepRecord): number | null {
  return spanMin !== null && spanMin > 0 && spanMin <= MOST_SPAN_MIN ? spanMin : null
}
