import { alarmsOf } from './calendar/alarms.ts'
import { clashWords } from './calendar/clash-words.ts'
import { notPlaced } from './calendar/placed-tasks.ts'
import type { CalendarAnswer, CalendarProblem } from './calendar/solve/problem.ts'
import { MOST_TASKS } from './calendar/solve/problem.ts'
import { delivered } from './calendar/tasks-deliver.ts'
import type { Days, DaysOptions, DayTask, OrderBy } from './days-answer.ts'
import type { CastTasks } from './days-pieces.ts'
import type { PlanInput } from './work.ts'

/** What the days are told from, beside the problem and its answer. */
interface Told {
  readonly inputs: readonly PlanInput[]
  readonly originMs: number
  readonly options: DaysOptions
  readonly rounds: number
  readonly settled: boolean
  readonly pieces: readonly CastTasks[]
}

/** The answer of the calendar as days: moments, alarms, dates to order by; or what clashes. */
export function told(problem: CalendarProblem, answer: CalendarAnswer, t: Told): Days {
  const common = {
    asOf: t.options.asOf,
    timeZone: t.inputs[0]!.shop.timeZone,
    originMs: t.originMs,
    names: t.inputs.map(i => i.piece.value.name),
    handsOnMin: problem.tasks.reduce((sum, x) => sum + (x.needs.includes('hands') ? x.minutes : 0), 0),
    rounds: t.rounds,
    settled: t.settled,
    casts: t.pieces.map(p => p.casts),
    problem,
    waysOut: [],
    notPlaced: t.inputs.flatMap(({ piece }, i) =>
      notPlaced(piece.value.placed, problem.tasks, t.originMs, id =>
        t.inputs.length === 1 ? id : `${i + 1}/${id}`
      )
    )
  }
  if (answer.kind !== 'placed')
    return {
      ...common,
      tasks: [],
      readyMs: null,
      firstMs: null,
      calendarDays: null,
      visits: 0,
      orderBy: [],
      lateMin: 0,
      clash:
        answer.kind === 'clash'
          ? { says: clashWords(problem, answer), smallest: answer.smallest }
          : {
              says: [
                problem.tasks.length > MOST_TASKS
                  ? `${problem.tasks.length} tasks are more than the ${MOST_TASKS} that are placed together: plan fewer pieces at a time, or cast more of them side by side in the mould ("gang" of "quantity")`
                  : 'no calendar was found in the search; nothing shows that there is none'
              ],
              smallest: false
            }
    }
  const windowed = new Set(problem.gaps.filter(g => g.mostMin !== null).map(g => g.after))
  const alarms = alarmsOf(
    answer.placed.map(({ startMin, endMin }, i) => {
      const { id, attended, fixed } = problem.tasks[i]!
      return { startMin, endMin, attended, late: windowed.has(id) && fixed === null }
    }),
    t.inputs[0]!.shop.alarm
  )
  const tasks = answer.placed.map((p, i): DayTask => {
    const task = problem.tasks[i]!
    return {
      task,
      startMin: p.startMin,
      endMin: p.endMin,
      parts: p.parts,
      slackMin: Math.max(0, p.latestStartMin - p.startMin),
      alarmMin: alarms[i]!
    }
  })
  const firsts = tasks.filter(x => x.task.attended).map(x => x.startMin)
  const first = firsts.length === 0 ? null : Math.min(...firsts)
  return {
    ...common,
    tasks,
    readyMs: t.pieces.map(
      (_, i) => t.originMs + 60_000 * (answer.finishOf[t.pieces.length === 1 ? '' : `${i + 1}`] ?? 0)
    ),
    firstMs: first === null ? null : t.originMs + first * 60_000,
    calendarDays: first === null ? null : (answer.finishMin - first) / 1440,
    visits: answer.visits,
    orderBy: ordersOf(tasks),
    lateMin: Math.max(0, ...answer.late.map(l => l.byMin)),
    clash: null
  }
}

// What several pieces use comes with one order, by the first moment any of them asks for.
function ordersOf(tasks: readonly DayTask[]): OrderBy[] {
  const orders = new Map<string, OrderBy>()
  for (const { task, startMin, slackMin } of tasks) {
    if (task.kind !== 'delivery') continue
    const item = task.id.replace(/^.*delivery /, '')
    const name = delivered(task)
    const key = `${item}\n${name}`
    const byMin = Math.min(startMin + slackMin, orders.get(key)?.byMin ?? Number.POSITIVE_INFINITY)
    orders.set(key, { item, name, says: task.says, byMin, days: task.minutes / 1440 })
  }
  return [...orders.values()]
}
