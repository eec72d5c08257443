import { joined } from './calendar/openings.ts'
import type { ClashMember } from './calendar/solve/problem.ts'
import type { Opening, Task } from './calendar/task.ts'
import type { Days, WayOut } from './days-answer.ts'
import { clock } from './days-candidates.ts'
import type { Changed, Replanned } from './days-changed.ts'
import { dayText } from './quantity/day.ts'
import { dayNumber, dayOfNumber, zoneClock } from './quantity/zone-clock.ts'

/** Hours between which nobody is asked to come (practice), minutes of the day. */
export const NOT_BEFORE_MIN = 6 * 60
export const NOT_AFTER_MIN = 22 * 60
/** Hours once are told in half hours, and nobody comes for less than one (practice). */
const STEP_MIN = 30
const LEAST_MIN = 60
/** A window shorter than this is kept on one visit (practice). */
const SOON_MIN = 6 * 60
/** A long day begins then; days looked at and tried for one (practice). */
const LONG_FROM_MIN = 7 * 60
const DAYS_AHEAD = 28
const DAYS_TRIED = 5
/** Clashes mended so, one after another, and openings (practice): beyond it the hours of the week are at fault. */
const MOST_CLASHES = 12
const MOST_OPENINGS = 10

/**
 * The way out of opening the bench on the days the windows fall, once each: the tasks at the far end of the windows
 * that clash are first placed without regard to the hours, which tells the moments they fall on; then the bench is
 * opened about those moments and all is planned anew, every task in the hours. null: that alone makes no calendar.
 *
 * Where the windows leave no such moments, one whole day that the bench is else closed on is tried instead.
 *
 * Limits: the fewest openings are not sought; a moment at night is put off to the morning, and where the window is
 * shut by then, this is no way.
 */
export function openOnce(
  before: Changed,
  days: Days,
  members: readonly ClashMember[],
  plan: Plan
): WayOut | null {
  if (!members.some(m => m.kind === 'hours')) return null
  return aboutWindows(before, days, members, plan) ?? wholeDay(before, days, plan)
}

type Plan = (changed: Changed) => Replanned

function aboutWindows(
  before: Changed,
  days: Days,
  members: readonly ClashMember[],
  plan: Plan
): WayOut | null {
  let found: Replanned = { days, members }
  let once: Opening[] = []
  const outside = new Set<string>()
  for (let n = 0; n < MOST_CLASHES; n++) {
    const late = windowTasks(found).filter(t => !outside.has(t.says))
    if (late.length === 0) return null
    for (const t of late) outside.add(t.says)
    found = plan({ ...before, openOnce: once, givenUp: [...outside] })
    if (found.days.readyMs === null) continue
    // The moments are known: open the bench about them, and place all in the hours.
    const more = momentsOf(found.days, outside)
    once = joined([...once, ...more])
    if (more.length === 0 || once.length > MOST_OPENINGS) return null
    found = plan({ ...before, openOnce: once })
    if (found.days.readyMs !== null) return told(found.days, once)
    outside.clear()
  }
  return null
}

// One long day that the bench is open on: where a seal, its pour and what that asks for do not go into the hours.
function wholeDay(before: Changed, days: Days, plan: Plan): WayOut | null {
  const { openings } = days.problem
  const { shown, moment } = zoneClock(days.timeZone)
  const first = dayNumber(shown(days.originMs))
  let tried = 0
  for (let n = 1; n <= DAYS_AHEAD && tried < DAYS_TRIED; n++) {
    const day = dayOfNumber(first + n)
    const at = (minute: number) => (moment(day, minute) - days.originMs) / 60_000
    const long: Opening = [at(LONG_FROM_MIN), at(NOT_AFTER_MIN)]
    // A day that is open has its own hours already: those closed come first to mind.
    if (openings.some(([a, b]) => a < long[1] && b > long[0])) continue
    tried++
    const found = plan({ ...before, openOnce: [long] })
    if (found.days.readyMs !== null)
      return told(found.days, [long], 'Open the bench on a day more, this once')
  }
  return null
}

// Tasks of a clash with the hours that somebody has to be there for; what begins a window stays in the hours.
function windowTasks({ days, members }: Replanned): Task[] {
  const { tasks, gaps } = days.problem
  if (!members.some(m => m.kind === 'hours')) return []
  const begins = members.flatMap(m => (m.kind === 'gap' && m.side === 'most' ? [gaps[m.gap]!.before] : []))
  if (begins.length === 0) return []
  const own = new Set(members.flatMap(m => (m.kind === 'task' ? [m.id] : [])))
  const taken = new Set([...own].filter(id => !begins.includes(id)))
  // What follows within hours falls outside them too: a pour on its mix, whoever stays by it on the pour.
  for (let size = -1; size < taken.size; ) {
    size = taken.size
    for (const g of gaps)
      if (g.mostMin !== null && g.mostMin <= SOON_MIN && taken.has(g.before)) taken.add(g.after)
  }
  return tasks.filter(t => t.attended && t.fixed === null && taken.has(t.id))
}

// When the bench is opened for them, outside its hours: what follows on each other at once.
function momentsOf(days: Days, outside: ReadonlySet<string>): Opening[] {
  const { openings } = days.problem
  const { shown } = zoneClock(days.timeZone)
  const away = days.tasks
    .filter(t => outside.has(t.task.says))
    .filter(t => !openings.some(([a, b]) => a <= t.startMin && t.endMin <= b))
    .map((t): Opening => [t.startMin, t.endMin])
  return joined(away, LEAST_MIN).map(([a, b]): Opening => {
    const { minute } = shown(days.originMs + a * 60_000)
    // At night nobody comes: in the morning, if the window is open still.
    const wait =
      minute < NOT_BEFORE_MIN
        ? NOT_BEFORE_MIN - minute
        : minute + b - a > NOT_AFTER_MIN
          ? 1440 - minute + NOT_BEFORE_MIN
          : 0
    const early = (minute + wait) % STEP_MIN
    const lasts = Math.max(LEAST_MIN, (Math.floor((early + b - a) / STEP_MIN) + 1) * STEP_MIN)
    return [a + wait - early, a + wait - early + lasts]
  })
}

function told(
  days: Days,
  once: readonly Opening[],
  does = 'Open the bench outside your hours on the days the windows fall, this once'
): WayOut {
  const { shown } = zoneClock(days.timeZone)
  const spans = once.map(([a, b]) => {
    const [from, to] = [shown(days.originMs + a * 60_000), shown(days.originMs + b * 60_000)]
    return `${dayText(from)} ${clock(from.minute)} to ${clock(to.minute)}`
  })
  return {
    id: 'open once',
    says: `${does}: ${spans.join('; ')}.`,
    risk: 'a window is missed when you are held up: what hangs on it is then sanded, or lost',
    on: 'plan',
    patch: null,
    readyDays: (Math.max(...days.readyMs!) - days.originMs) / 86_400_000
  }
}
