import type { Gap } from '../../../engine/src/calendar/task.ts'
import type { Days, DayTask } from '../../../engine/src/days-answer.ts'
import type { Work } from '../../../engine/src/findings/work.ts'
import type { BestTime } from './days-view.ts'

/** The best times of a calendar: windows that open and close again, where they lie as the tasks lie. */
export function bestTimes(days: Days, { casts }: Work): BestTime[] {
  const at = new Map(days.tasks.map(t => [t.task.id, t]))
  return days.problem.gaps.flatMap((g): BestTime[] => {
    const [before, after] = [at.get(g.before), at.get(g.after)]
    if (!g.soft || g.mostMin === null || before === undefined || after === undefined) return []
    // What was done is over: its best time with it.
    if (after.task.fixed !== null && after.task.fixed.why !== 'given') return []
    const close = momentOf(before, g.from) + g.mostMin
    const open = Math.max(...days.problem.gaps.filter(x => opens(x, g)).map(x => opening(x, at)))
    if (!(close > open)) return []
    const pour = /^\/pours\/(\d+)/.exec(before.task.at)?.[1]
    const window = pour === undefined ? undefined : casts[Number(pour)]?.windows.recoat
    const [early, late] =
      window === undefined ? [0, 0] : window.openBand.map(m => (m ?? window.open) - window.open)
    const [soon, last] =
      window?.close == null ? [0, 0] : window.closeBand.map(m => (m ?? window.close!) - window.close!)
    return [
      {
        id: after.task.id,
        says: g.says,
        ends: [open + early!, open + late!, close + soon!, close + last!]
      }
    ]
  })
}

// Of a window in two gaps the one says when it opens, the other when it closes.
function opens(gap: Gap, closes: Gap): boolean {
  return gap.after === closes.after && gap.to === 'start' && (gap === closes || gap.says.includes('tacky'))
}

function opening(gap: Gap, at: ReadonlyMap<string, DayTask>): number {
  const before = at.get(gap.before)
  return before === undefined ? Number.NEGATIVE_INFINITY : momentOf(before, gap.from) + gap.leastMin
}

function momentOf(task: DayTask, end: Gap['from']): number {
  return end === 'start' ? task.startMin : task.endMin
}
