import type { LearnedFactor, TimedWork } from './learned-minutes.ts'
import { learnedFactors } from './learned-minutes.ts'
import type { StepRecord } from './step-times.ts'
import type { TaskKind } from './task.ts'
import type { PieceTasks } from './tasks.ts'

/**
 * What recorded minutes of steps teach of each kind of work: a step's time is shared by its attended tasks as they were
 * reckoned, so that each of its kinds gets one ratio.
 */
export function learnedOf(
  { tasks, reckoned }: PieceTasks,
  records: ReadonlyMap<string, StepRecord>
): Map<TaskKind, LearnedFactor> {
  const timed: TimedWork[] = []
  for (const [step, { tookMin }] of records) {
    if (tookMin === null) continue
    const own = tasks.filter(t => t.step === step && t.needs.includes('hands'))
    const total = own.reduce((sum, t) => sum + reckoned.get(t.id)!, 0)
    if (!(total > 0)) continue
    for (const kind of new Set(own.map(t => t.kind))) {
      const part = own.filter(t => t.kind === kind).reduce((sum, t) => sum + reckoned.get(t.id)!, 0)
      timed.push({ kind, reckonedMin: part, tookMin: (tookMin * part) / total })
    }
  }
  return learnedFactors(timed)
}
