import type { Besides } from './calendar/besides.ts'
import { neverOpen } from './calendar/openings.ts'
import type { CalendarAnswer, CalendarProblem } from './calendar/solve/problem.ts'
import { fullEffort, QUICK_EFFORT } from './calendar/solve/problem.ts'
import { solveCalendar } from './calendar/solve/solve.ts'
import type { Gap, Task } from './calendar/task.ts'
import type { Days, DaysOptions } from './days-answer.ts'
import type { Changed, Replanned } from './days-changed.ts'
import type { Made } from './days-pieces.ts'
import { started, worksOf } from './days-pieces.ts'
import { holds, problemOf } from './days-problem.ts'
import { told } from './days-told.ts'
import { waysOut } from './days-ways.ts'
import type { Work } from './findings/work.ts'
import type { PlanInput } from './work.ts'

/** The pours are cast again at the starts the calendar chose at most so often. */
const MOST_ROUNDS = 4

/** The days of a piece. @throws InputProblem when the piece cannot be used */
export function daysOf(input: PlanInput, options: DaysOptions): Days {
  return daysOfMany([input], options)
}

/**
 * The days of several pieces that share hands, machine, moulds and helpers; shop and zone are those of the first.
 *
 * Calendar and cast ask each other: windows follow from the hour a pour is made, and the calendar chooses that hour. So
 * the pours are cast again at the starts chosen; if every wait still holds the calendar stands, else it is made anew, at
 * most four times; `settled` says whether it came to rest.
 *
 * @throws InputProblem when a piece cannot be used
 */
export function daysOfMany(inputs: readonly PlanInput[], options: DaysOptions): Days {
  const { days, answer, works } = placed(inputs, options, [])
  if (answer.kind !== 'clash' || options.effort === 'quick' || inputs.some(i => neverOpen(i.shop)))
    return days
  const again = ({ inputs: changed, hands, givenUp, openOnce }: Changed): Replanned => {
    const more = { ...options, openOnce, ...(hands > 1 && { capacity: { ...options.capacity, hands } }) }
    // Pieces that stay as they are need not be planned again.
    const known = { works: changed.every((c, i) => planStays(c, inputs[i]!)) ? works : null }
    const quick = placed(changed, { ...more, effort: 'quick' }, givenUp, null, known)
    // What clashes at once clashes with more effort too: only the minutes of the machine are better known then.
    const full = quick.answer.kind === 'unsettled' ? placed(changed, more, givenUp, null, known) : quick
    return { days: full.days, members: full.answer.kind === 'clash' ? full.answer.members : [] }
  }
  return { ...days, waysOut: waysOut(inputs, days, answer.members, again) }
}

// The hours of a shop come into its calendar alone: no plan is made from them.
function planStays(changed: PlanInput, before: PlanInput): boolean {
  const { hours: _, ...shop } = changed.shop
  return (
    changed.piece === before.piece &&
    Object.entries(shop).every(([key, value]) => value === before.shop[key as keyof typeof shop])
  )
}

/** The days of a piece whose plan is made: those of {@link daysOf}, without ways out of a clash and the reasons of it. */
export function daysOfPlanned(
  input: PlanInput,
  made: Pick<Made, 'work' | 'programs'>,
  options: DaysOptions
): Days {
  return placed([input], options, [], { ...made, besides: null, pass: false }).days
}

/** What a piece that is planned already comes to in time. */
export interface Finish {
  /** Ready, ms since 1970; null: no calendar holds its waits. */
  readonly readyMs: number | null
  /** Every task, the work besides among them. */
  readonly tasks: readonly Task[]
  /** What has to be done because a window that can pass is passed. */
  readonly passed: readonly string[]
}

/**
 * When a piece is ready, its plan being made: the calendar of {@link daysOf}, without ways out of a clash. A window that
 * can pass and cannot be kept any more is let pass, and said.
 */
export function finishOf(
  input: PlanInput,
  { work, programs }: Pick<Made, 'work' | 'programs'>,
  options: DaysOptions,
  besides: Besides | null = null
): Finish {
  const of = (given: Besides | null, pass: boolean) =>
    placed([input], options, [], { work, programs, besides: given, pass }).days
  // Where the work besides does not go before all else, it goes beside it.
  const tries = besides === null ? [null] : [besides, { ...besides, first: false }]
  let last: Days | null = null
  for (const given of tries) {
    last = of(given, false)
    const { readyMs, problem } = last
    if (readyMs !== null) return { readyMs: readyMs[0]!, tasks: problem.tasks, passed: [] }
    if (!problem.gaps.some(g => g.soft)) continue
    const eased = of(given, true)
    if (eased.readyMs !== null)
      return { readyMs: eased.readyMs[0]!, tasks: eased.problem.tasks, passed: passedOf(eased, problem.gaps) }
  }
  return { readyMs: null, tasks: last!.problem.tasks, passed: [] }
}

// Windows that can pass and that this calendar does not keep.
function passedOf(days: Days, gaps: readonly Gap[]): string[] {
  const at = new Map(days.tasks.map(t => [t.task.id, t]))
  return gaps.flatMap(g => {
    const [a, b] = [at.get(g.before), at.get(g.after)]
    if (!g.soft || g.mostMin === null || a === undefined || b === undefined) return []
    const wait = (g.to === 'start' ? b.startMin : b.endMin) - (g.from === 'start' ? a.startMin : a.endMin)
    return wait > g.mostMin + 1 ? [g.late ?? g.says] : []
  })
}

function placed(
  inputs: readonly PlanInput[],
  options: DaysOptions,
  givenUp: readonly string[],
  made: Made | null = null,
  tried: { readonly works: readonly Work[] | null } | null = null
): { readonly days: Days; readonly answer: CalendarAnswer; readonly works: readonly Work[] } {
  const originMs = Math.floor(Date.parse(options.asOf) / 60_000) * 60_000
  const quick = options.effort === 'quick'
  const { shop } = inputs[0]!
  const works = tried?.works ?? (made === null ? worksOf(inputs, originMs) : [made.work])
  const pieces = inputs.map((input, i) => started(input, works[i]!, i, inputs.length, originMs, quick, made))
  // Who asks only when it is ready asks for no reasons; what is tried as a way out, for any set that clashes.
  const solve = (p: CalendarProblem) =>
    quick
      ? solveCalendar(p, { ...QUICK_EFFORT, smallest: tried === null })
      : solveCalendar(p, { ...fullEffort(p.tasks.length), ...(made !== null && { asks: 0 }) })
  const problemNow = () => {
    const p = problemOf(parts, shop, originMs, options, givenUp)
    return made?.pass ? { ...p, gaps: p.gaps.map(g => (g.soft ? { ...g, mostMin: null } : g)) } : p
  }
  let parts = pieces.map(p => p.tasks(p.work, new Set()))
  let problem = problemNow()
  let answer: CalendarAnswer = solve(problem)
  let rounds = 0
  let settled = quick
  while (!quick && answer.kind === 'placed' && rounds < MOST_ROUNDS) {
    rounds++
    const found = answer
    parts = pieces.map((p, i) => p.again(parts[i]!, found, originMs))
    const next = problemNow()
    settled = holds(next, found, problem.tasks)
    problem = next
    if (settled) break
    answer = solve(problem)
  }
  return {
    days: told(problem, answer, { inputs, originMs, options, rounds, settled, pieces: parts }),
    answer,
    works
  }
}
