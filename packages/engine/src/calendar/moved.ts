import type { CalendarAnswer, CalendarClash, CalendarProblem } from './solve/problem.ts'
import { QUICK_EFFORT } from './solve/problem.ts'
import { solveCalendar } from './solve/solve.ts'

/** A calendar with one task put where the maker wants it. */
export interface Moved {
  readonly problem: CalendarProblem
  readonly answer: CalendarAnswer
  /** Whether the task lies in closed hours there: it stays, and it is said. */
  readonly outsideHours: boolean
}

/**
 * A maker puts a task elsewhere and the rest moves: solved at once with the task fixed there.
 *
 * @throws RangeError when the task is unknown or begun: what is begun stays
 */
export function moved(problem: CalendarProblem, id: string, toMin: number, effort = QUICK_EFFORT): Moved {
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
  const answer = solveCalendar(changed, effort)
  return {
    problem: changed,
    answer,
    outsideHours: answer.kind === 'placed' && answer.outsideHours.includes(id)
  }
}

/** A clash in words, a line for each member. `time` says a moment: "Saturday 10:00". */
export function clashWords(
  problem: CalendarProblem,
  clash: CalendarClash,
  time: (min: number) => string
): string[] {
  const said = (id: string): string => problem.tasks.find(t => t.id === id)?.says ?? id
  const of = (id: string) => problem.tasks.find(t => t.id === id)
  return clash.members.map(m => {
    if (m.kind === 'gap') {
      const g = problem.gaps[m.gap]!
      const ends = `${g.from} of "${said(g.before)}" to ${g.to} of "${said(g.after)}"`
      return m.side === 'least'
        ? `${ends}: at least ${spanWords(g.leastMin)} (${g.says})`
        : `${ends}: at most ${spanWords(g.mostMin ?? 0)} (${g.says})`
    }
    if (!('id' in m))
      return m.kind === 'hours' ? 'the hours at the bench' : `it is ${time(problem.asOfMin)} already`
    if (m.kind === 'task') return `"${said(m.id)}" takes ${spanWords(of(m.id)?.minutes ?? 0)}`
    if (m.kind === 'fixed') return `"${said(m.id)}" stands at ${time(of(m.id)?.fixed?.startMin ?? 0)}`
    if (m.kind === 'due') return `"${said(m.id)}" has to end by ${time(of(m.id)?.dueMin ?? 0)}`
    return `"${said(m.id)}" cannot begin before ${time(of(m.id)?.notBeforeMin ?? 0)}`
  })
}

function spanWords(min: number): string {
  const m = Math.round(min)
  if (m < 120) return `${m} min`
  if (m < 48 * 60) return m % 60 === 0 ? `${m / 60} h` : `${Math.floor(m / 60)} h ${m % 60} min`
  return `${(m / 1440).toFixed(1).replace(/\.0$/, '')} days`
}
