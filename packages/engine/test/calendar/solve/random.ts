import type { CalendarProblem } from '../../../src/calendar/solve/problem.ts'
import type { Gap, Task } from '../../../src/calendar/task.ts'
import { days, gap, seeded, task } from './problem.ts'

/** A seeded problem of so many tasks: chains with windows, shared hands, machine and mould, hours of several kinds. */
export function randomProblem(seed: number, count: number, pieces = 1): CalendarProblem {
  const r = seeded(seed)
  const tasks: Task[] = []
  const gaps: Gap[] = []
  for (let p = 0; p < pieces; p++)
    for (let i = 0; i < count; i++) {
      const id = `${p}-${i}`
      const attended = r.chance(0.65)
      const kind = r.below(4)
      const needs = attended
        ? kind === 0
          ? ['hands', 'machine']
          : kind === 1
            ? ['hands', 'mould A']
            : ['hands']
        : kind === 0
          ? ['mould A']
          : []
      tasks.push(
        task(id, attended ? 5 + r.below(kind === 3 ? 400 : 110) : r.below(1500), {
          piece: `p${p}`,
          attended,
          mayPause: attended && kind === 3,
          needs,
          notBeforeMin: r.chance(0.1) ? r.below(3000) : null,
          dueMin: r.chance(0.03) ? 2000 + r.below(20_000) : null,
          fixed:
            i === 0 && r.chance(0.15)
              ? { startMin: -30 - r.below(300), endMin: r.chance(0.5) ? null : -10, why: 'begun' }
              : null
        })
      )
      if (i > 0 && r.chance(0.9)) {
        const least = r.chance(0.5) ? 0 : r.below(900)
        gaps.push(
          gap(
            `${p}-${Math.max(0, i - 1 - r.below(2))}`,
            id,
            least,
            r.chance(0.25) ? least + r.below(1500) : null
          )
        )
      }
    }
  const hours = r.below(3)
  const openings =
    hours === 0
      ? days(60, [7, 22])
      : hours === 1
        ? days(60, [8, 12], [13, 18])
        : days(60, [17, 21])
            .concat(days(60, [6, 7]))
            .sort((a, b) => a[0] - b[0])
  return {
    tasks,
    gaps,
    openings,
    asOfMin: 0,
    odd: days(60, [20, 24]),
    capacity: r.chance(0.2) ? { machine: 2 } : {}
  }
}
