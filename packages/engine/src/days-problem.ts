import { joined, oddHours, openingsOf } from './calendar/openings.ts'
import type { CalendarProblem, CalendarSolution } from './calendar/solve/problem.ts'
import type { Gap, Task } from './calendar/task.ts'
import type { PieceTasks } from './calendar/tasks.ts'
import type { DaysOptions } from './days-answer.ts'
import type { PlanInput } from './work.ts'

/** Weeks looked at beyond what the waits and the work ask for, and at the most. */
const WEEKS_MORE = 8
const MOST_WEEKS = 260

/** The tasks of several pieces as one problem of the calendar, in the hours of the shop. */
export function problemOf(
  parts: readonly PieceTasks[],
  shop: PlanInput['shop'],
  originMs: number,
  options: DaysOptions,
  givenUp: readonly string[]
): CalendarProblem {
  const helped = (options.capacity?.['hands'] ?? 1) > 1
  // Whoever helps can stay by a pour when the maker is gone.
  const tasks = parts
    .flatMap(p => p.tasks)
    .map(t => (helped && t.kind === 'watch' && t.needs.length === 0 ? { ...t, attended: false } : t))
    // Somebody comes back for these, outside the hours at the bench.
    .map(t => (givenUp.includes(t.says) ? { ...t, attended: false } : t))
  const gaps = parts.flatMap(p => p.gaps).map(g => (givenUp.includes(g.says) ? { ...g, mostMin: null } : g))
  const weeks = weeksOf(tasks, gaps)
  const openings = joined([...openingsOf(shop, originMs, weeks), ...(options.openOnce ?? [])])
  const vessels = shop.vessels.reduce((sum, v) => sum + v.count, 0)
  return {
    tasks,
    gaps,
    openings,
    odd: oddHours(shop, originMs, weeks),
    asOfMin: 0,
    capacity: {
      vessels,
      // A shop outside takes what comes.
      'firm sent out': tasks.length,
      'second pair': 1,
      ...options.capacity
    }
  }
}

function weeksOf(tasks: readonly Task[], gaps: readonly Gap[]): number {
  const waits = gaps.reduce((sum, g) => sum + g.leastMin, 0)
  const passes = tasks.reduce((sum, t) => sum + (t.attended ? 8 * t.minutes : t.minutes), 0)
  const dates = Math.max(0, ...tasks.map(t => Math.max(t.notBeforeMin ?? 0, t.fixed?.startMin ?? 0)))
  return Math.min(MOST_WEEKS, Math.ceil((Math.min(waits, 600_000) + passes + dates) / 10_080) + WEEKS_MORE)
}

/** Whether a calendar is of the very tasks of a problem and keeps every wait of it, to the minute it was rounded to. */
export function holds(problem: CalendarProblem, { placed }: CalendarSolution, of: readonly Task[]): boolean {
  const { tasks } = problem
  // Poured at another hour it may ask for more batches, or for somebody about its peak.
  if (tasks.length !== of.length) return false
  if (tasks.some((t, i) => t.id !== of[i]!.id || Math.abs(t.minutes - of[i]!.minutes) > 1)) return false
  const at = new Map(placed.map(p => [p.id, p]))
  return problem.gaps.every(g => {
    const [a, b] = [at.get(g.before), at.get(g.after)]
    if (a === undefined || b === undefined) return false
    const wait = (g.to === 'start' ? b.startMin : b.endMin) - (g.from === 'start' ? a.startMin : a.endMin)
    return wait >= g.leastMin - 1 && (g.mostMin === null || wait <= g.mostMin + 1)
  })
}
