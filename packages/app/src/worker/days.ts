import { clashWords } from '../../../engine/src/calendar/clash-words.ts'
import { lanesOf } from '../../../engine/src/calendar/lanes.ts'
import { moved } from '../../../engine/src/calendar/moved.ts'
import { midnightsOf, nightHours } from '../../../engine/src/calendar/openings.ts'
import type { CalendarProblem, CalendarSolution } from '../../../engine/src/calendar/solve/problem.ts'
import type { Task } from '../../../engine/src/calendar/task.ts'
import { daysOf } from '../../../engine/src/days.ts'
import type { Days } from '../../../engine/src/days-answer.ts'
import { daysIcs, localMoment } from '../../../engine/src/days-data.ts'
import { formatHours, formatMinutes } from '../../../engine/src/quantity/format.ts'
import { capital } from '../../../engine/src/sheets/model.ts'
import { bestTimes } from './best-times.ts'
import { clockOf, orders } from './day-words.ts'
import type { DayLane, DayMove, DaysView, DayView } from './days-view.ts'
import type { Ask } from './messages.ts'
import { columnOf, inputOf, keyOf } from './planner.ts'

type DaysAsk = Extract<Ask, { kind: 'days' }>
type Shop = ReturnType<typeof inputOf>['shop']

let kept: { readonly key: string; readonly days: Days } | null = null

/** The days of what is on the desk, with tasks put where the maker wants them. */
export function daysView(ask: DaysAsk): DaysView {
  const input = inputOf(ask)
  const key = `${ask.asOf} ${keyOf(ask)}`
  if (kept?.key !== key) kept = { key, days: daysOf(input, { asOf: ask.asOf }) }
  const first = kept.days
  const put = withMoves(first, ask.moves)
  return {
    ...viewOf(put.days, input.shop, put.says),
    placed: placedNow(input.piece.value.placed, put),
    notPlaced: first.notPlaced,
    best: bestTimes(put.days, columnOf(ask))
  }
}

interface Put {
  readonly days: Days
  readonly says: DaysView['moved']
  /** Moves that found a calendar. */
  readonly held: readonly DayMove[]
}

// What the piece says already, with what was put since; the later goes before.
function placedNow(before: DaysView['placed'], { days, held }: Put): DaysView['placed'] {
  const moments = new Map(before.map(p => [p.task, p.at]))
  for (const { id, toMin } of held)
    moments.set(id, localMoment(days.originMs + toMin * 60_000, days.timeZone))
  return [...moments].map(([task, at]) => ({ task, at }))
}

/** Tasks are put one after the other; where one clashes the calendar before it stays, and the clash is said. */
function withMoves(first: Days, moves: readonly DayMove[]): Put {
  let days = first
  const held: DayMove[] = []
  let says: DaysView['moved'] = null
  for (const { id, toMin } of moves) {
    const task = days.problem.tasks.find(t => t.id === id)
    // A piece that was changed meanwhile may do without it.
    if (task === undefined || days.readyMs === null) continue
    const { problem, answer, outsideHours } = moved(days.problem, id, toMin)
    const time = timeWords(days)
    const head = `${task.says}: ${time(toMin)}`
    if (answer.kind !== 'placed') {
      const clash = answer.kind === 'clash' ? clashWords(problem, answer, time) : []
      says = { says: head, outsideHours: false, clash, others: [], readyMin: 0 }
      continue
    }
    const next = placedAnew(days, problem, answer)
    says = {
      says: head,
      outsideHours,
      clash: null,
      others: othersMoved(days, next, id),
      readyMin: Math.round((next.readyMs![0]! - first.readyMs![0]!) / 60_000)
    }
    days = next
    held.push({ id, toMin })
  }
  return { days, says, held }
}

function placedAnew(days: Days, problem: CalendarProblem, answer: CalendarSolution): Days {
  const at = new Map(answer.placed.map(p => [p.id, p]))
  const tasks = days.tasks.map(t => {
    const p = at.get(t.task.id)!
    return {
      ...t,
      task: problem.tasks.find(x => x.id === t.task.id)!,
      startMin: p.startMin,
      endMin: p.endMin,
      parts: p.parts,
      slackMin: Math.max(0, p.latestStartMin - p.startMin)
    }
  })
  const firstMin = Math.min(...tasks.filter(t => t.task.attended).map(t => t.startMin))
  return {
    ...days,
    problem,
    tasks,
    readyMs: [days.originMs + 60_000 * (answer.finishOf[''] ?? answer.finishMin)],
    firstMs: days.originMs + firstMin * 60_000,
    calendarDays: (answer.finishMin - firstMin) / 1440,
    visits: answer.visits,
    orderBy: days.orderBy.map(o => {
      const t = tasks.find(x => x.task.kind === 'delivery' && x.task.says === o.says)
      return t === undefined ? o : { ...o, byMin: t.startMin + t.slackMin }
    }),
    lateMin: Math.max(0, ...answer.late.map(l => l.byMin))
  }
}

/** So many of those that moved are said by name. */
const SAID_MOST = 6

function othersMoved(before: Days, after: Days, id: string): string[] {
  const time = timeWords(after)
  const was = new Map(before.tasks.map(t => [t.task.id, t.startMin]))
  const found = after.tasks.filter(
    t => t.task.id !== id && t.task.attended && Math.abs(t.startMin - was.get(t.task.id)!) >= 1
  )
  const lines = found
    .slice(0, SAID_MOST)
    .map(t => `${t.task.says}: ${time(was.get(t.task.id)!)} → ${time(t.startMin)}`)
  return found.length > SAID_MOST ? [...lines, `and ${found.length - SAID_MOST} more`] : lines
}

/** Moments in words, by minutes since the origin: "Wed 16 Dec, 07:52". */
export function timeWords(days: Pick<Days, 'timeZone' | 'originMs'>): (min: number) => string {
  const of = clockOf(days)
  return min => {
    const { name, date, time } = of(Math.round(min))
    return `${name} ${date}, ${time}`
  }
}

function laneOf(task: Task): DayLane {
  if (!task.attended) return 'alone'
  if (task.needs.includes('machine')) return 'machine'
  return task.kind === 'watch' || task.kind === 'bubbles' ? 'stay' : 'hands'
}

function viewOf(
  days: Days,
  shop: Shop,
  says: DaysView['moved']
): Omit<DaysView, 'placed' | 'notPlaced' | 'best'> {
  const words = timeWords(days)
  const of = clockOf(days)
  const readyMin = days.readyMs === null ? null : (days.readyMs[0]! - days.originMs) / 60_000
  const tight = days.tasks
    .filter(t => t.task.attended && t.slackMin > 0 && t.task.fixed === null)
    .sort((a, b) => a.slackMin - b.slackMin)[0]
  return {
    ready: days.readyMs === null ? null : localMoment(days.readyMs[0]!, days.timeZone),
    readyWords: readyMin === null ? '' : words(readyMin),
    handsOn: formatHours(Math.max(1, days.handsOnMin)),
    calendarDays: days.calendarDays,
    visits: days.visits,
    settled: days.settled,
    late: days.lateMin > 0 ? formatMinutes(days.lateMin) : null,
    tightest:
      tight === undefined
        ? null
        : { says: tight.task.says, slack: formatMinutes(Math.max(1, tight.slackMin)) },
    orderBy: orders(days),
    clash: days.clash?.says ?? null,
    waysOut: days.waysOut.map(({ readyDays, ...w }) => ({ ...w, ready: words(readyDays * 1440) })),
    days: dayViews(days, shop),
    tasks: days.tasks.map(({ task, startMin, endMin, slackMin }) => {
      const [a, b] = [of(startMin), of(endMin)]
      const hours = `${a.time} to ${a.date === b.date ? '' : `${b.name} ${b.date}, `}${b.time}`
      return {
        id: task.id,
        says: capital(task.says),
        lane: laneOf(task),
        startMin,
        endMin,
        when: `${a.name} ${a.date}, ${hours}`,
        hours,
        takes: (task.attended ? formatHours : formatMinutes)(Math.max(1, task.minutes)),
        basis: task.basis.says,
        slack: slackMin >= 1 ? formatMinutes(slackMin) : null,
        fixed: task.fixed !== null,
        placed: task.fixed?.why === 'given',
        canMove: task.attended && (task.fixed === null || task.fixed.why === 'given'),
        safety: task.safety
      }
    }),
    moved: says,
    ics: days.tasks.length === 0 ? '' : daysIcs(days)
  }
}

/** Every third hour of the clock of a day is written, where the bench is open. */
const TICK_MIN = 180

function dayViews(days: Days, shop: Shop): DayView[] {
  if (days.tasks.length === 0) return []
  const lastMin = Math.max(...days.tasks.map(t => t.endMin))
  const count = Math.ceil(lastMin / 1440) + 1
  const weeks = Math.ceil(count / 7) + 1
  const tasks = days.tasks.map(t => t.task)
  const lane = new Map(tasks.map(t => [t.id, laneOf(t)]))
  const of = clockOf(days)
  return lanesOf(
    tasks,
    days.tasks.map(t => ({ ...t, id: t.task.id, latestStartMin: t.startMin + t.slackMin })),
    days.problem.openings,
    nightHours(shop, days.originMs, weeks),
    midnightsOf(shop, days.originMs, count)
  )
    .filter(d => d.fromMin <= lastMin)
    .map((d): DayView => {
      const { name, date } = of(Math.max(d.fromMin, d.fromMin + 1))
      const ticks = []
      for (let m = d.fromMin + TICK_MIN; m < d.toMin && !d.quiet; m += TICK_MIN)
        if (d.stretches.some(s => s.kind === 'open' && s.fromMin <= m && m <= s.toMin))
          ticks.push({ atMin: m, says: of(m).time.slice(0, 2) })
      return {
        name,
        date,
        quiet: d.quiet,
        fromMin: d.fromMin,
        toMin: d.toMin,
        width: d.width,
        stretches: d.stretches,
        ticks,
        spans: [...d.attended, ...d.unattended].map(s => ({ ...s, lane: lane.get(s.id)! }))
      }
    })
}
