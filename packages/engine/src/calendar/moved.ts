import type { CalendarAnswer, CalendarProblem } from './solve/problem.ts'
import { solveCalendar } from './solve/solve.ts'

/** A calendar with one task put where the maker wants it. */
export interface Moved {
  readonly problem: CalendarProblem
  readonly answer: CalendarAnswer
  /** Whether the task lies in closed hours there: it stays, and it is said. */
  readonly outsideHours: boolean
}

/**
 * A maker puts a task elsewhere and the rest moves: solved at once with the task fixed there, as it is solved again when
 * the piece keeps it, so that what was shown stays.
 *
 * @throws RangeError when the task is unknown or begun: what is begun stays
 */
export function moved(problem: CalendarProblem, id: string, toMin: number): Moved {
  const task = problem.tasks.find(t => t.id === id)
  if (task === undefined) throw new RangeError(`no task is called "${id}"`)
  if (task.fixed !== null && task.fixed.why !== 'given')
    throw new RangeError(`"${task.says}" is begun: it stays where it is`)
  const changed: CalendarProblem = {
    ...problem,
    tasks: problem.tasks.map(t =>
      t.id === id ? { ...t, fixed: { startMin: Math.round(toMin), endMin: null, why: 'given' } as const } : t
    )
  }
  const answer = solveCalendar(changed)
  return {
    problem: changed,
    answer,
    outsideHours: answer.kind === 'placed' && answer.outsideHours.includes(id)
  }
}
