import { alarmsOf } from './calendar/alarms.ts'
import type { Besides } from './calendar/besides.ts'
import { withBesides } from './calendar/besides.ts'
import { clashWords } from './calendar/clash-words.ts'
import { neverOpen, oddHours, openingsOf } from './calendar/openings.ts'
import { notPlaced } from './calendar/placed-tasks.ts'
import type { CalendarAnswer, CalendarProblem, CalendarSolution } from './calendar/solve/problem.ts'
import { FULL_EFFORT } from './calendar/solve/problem.ts'
import { quickCalendar, solveCalendar } from './calendar/solve/solve.ts'
import type { Gap, Task } from './calendar/task.ts'
import type { PieceTasks } from './calendar/tasks.ts'
import { tasksOf } from './calendar/tasks.ts'
import { delivered } from './calendar/tasks-deliver.ts'
import { boughtInTurn, toldApart } from './cost/together.ts'
import type { Days, DayTask, OrderBy } from './days-answer.ts'
import type { Changed, Replanned } from './days-ways.ts'
import { waysOut } from './days-ways.ts'
import type { Work } from './findings/work.ts'
import type { Piece } from './piece/piece-schema.ts'
import type { TimedProgram } from './programs/program-set.ts'
import { programsOf, taskReckoning } from './task-reckoning.ts'
import type { PlanInput } from './work.ts'
import { workOf } from './work.ts'

/** How the days are asked for. */
export interface DaysOptions {
  /** The only source of "now": ISO 8601 with offset. */
  readonly asOf: string
  /** quick: the first calendar found, machine minutes by feeds, nothing cast anew. */
  readonly effort?: 'quick' | 'full'
  /** More of a resource than one: two pairs of hands, say. */
  readonly capacity?: Readonly<Record<string, number>>
}

/** The pours are cast again at the starts the calendar chose at most so often. */
const MOST_ROUNDS = 4
/** Weeks looked at beyond what the waits and the work ask for, and at the most. */
const WEEKS_MORE = 8
const MOST_WEEKS = 260

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
  const { days, answer } = placed(inputs, options, [])
  if (answer.kind !== 'clash' || options.effort === 'quick' || inputs.some(i => neverOpen(i.shop)))
    return days
  const again = ({ inputs: changed, hands, givenUp }: Changed): Replanned => {
    const more = { ...options, ...(hands > 1 && { capacity: { ...options.capacity, hands } }) }
    const quick = placed(changed, { ...more, effort: 'quick' }, givenUp)
    // What clashes at once clashes with more effort too: only the minutes of the machine are better known then.
    const full = quick.answer.kind === 'unsettled' ? placed(changed, more, givenUp) : quick
    return { days: full.days, members: full.answer.kind === 'clash' ? full.answer.members : [] }
  }
  return { ...days, waysOut: waysOut(inputs, days, answer.members, again) }
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

/** A plan that is made already. `pass`: windows that can pass are let pass. */
interface Made {
  readonly work: Work
  readonly programs: readonly TimedProgram[] | null
  readonly besides: Besides | null
  readonly pass: boolean
}

function placed(
  inputs: readonly PlanInput[],
  options: DaysOptions,
  givenUp: readonly string[],
  made: Made | null = null
): { readonly days: Days; readonly answer: CalendarAnswer } {
  const originMs = Math.floor(Date.parse(options.asOf) / 60_000) * 60_000
  const quick = options.effort === 'quick'
  const { shop } = inputs[0]!
  const works = made === null ? worksOf(inputs, originMs) : [made.work]
  const pieces = inputs.map((input, i) => started(input, works[i]!, i, inputs.length, originMs, quick, made))
  // Who asks only when it is ready asks for no reasons.
  const solve = (p: CalendarProblem) =>
    quick ? quickCalendar(p) : solveCalendar(p, { ...FULL_EFFORT, ...(made !== null && { asks: 0 }) })
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
    answer
  }
}

/** The tasks of a piece, and how its pours cure at the starts they were made with. */
type CastTasks = PieceTasks & Pick<Work, 'casts'>

interface Started {
  readonly work: Work
  readonly tasks: (work: Work, chosen: ReadonlySet<number>) => CastTasks
  readonly again: (before: CastTasks, placed: CalendarSolution, originMs: number) => CastTasks
}

// Of several pieces, what is bought for all: the shelf is there once.
function worksOf(inputs: readonly PlanInput[], originMs: number): Work[] {
  const works = inputs.map(i => workOf({ ...i, effort: 'preview', asOf: new Date(originMs).toISOString() }))
  if (works.length === 1) return works
  const names = toldApart(works.map(w => w.piece.name))
  const bought = boughtInTurn(
    works.map(({ needs, buy }, i) => ({ name: names[i]!, needs, buy })),
    inputs[0]!.shop
  )
  return works.map((w, i) => ({ ...w, buy: bought[i]! }))
}

function started(
  input: PlanInput,
  work: Work,
  index: number,
  count: number,
  originMs: number,
  quick: boolean,
  made: Made | null
): Started {
  const piece = count === 1 ? '' : `${index + 1}`
  const programs = made?.programs ?? (quick ? null : programsOf(work))
  const reckoning = taskReckoning(work, { piece, originMs }, programs)
  const tasks: Started['tasks'] = (w, chosen) => {
    const own = tasksOf(w, { ...reckoning, chosen })
    return { ...named(made?.besides ? withBesides(own, made.besides) : own, piece), casts: w.casts }
  }
  return {
    work,
    tasks,
    again: (before, placed, origin) => {
      const starts = new Map<number, string>()
      for (const [pour, id] of before.mixes) {
        const own = work.piece.pours[pour]!
        const given =
          own.start !== undefined || work.steps.some(s => s.pour?.index === pour && s.begins !== undefined)
        const at = placed.placed.find(p => p.id === id)
        if (own.kind === 'seal' || given || at === undefined) continue
        starts.set(pour, new Date(origin + at.startMin * 60_000).toISOString())
      }
      if (starts.size === 0) return before
      const cast = workOf({
        ...input,
        effort: 'preview',
        piece: { ...input.piece, value: withStarts(work.piece, starts) }
      })
      // Waits stay as the piece says them: a start that was chosen is no word of the maker.
      return tasks({ ...cast, clock: work.clock, buy: work.buy }, new Set(starts.keys()))
    }
  }
}

function withStarts(piece: Piece, starts: ReadonlyMap<number, string>): Piece {
  return {
    ...piece,
    pours: piece.pours.map((p, i) => {
      const start = starts.get(i)
      return start === undefined ? p : { ...p, start }
    })
  }
}

// Several pieces: every task under the number of its piece.
function named(of: PieceTasks, piece: string): PieceTasks {
  if (piece === '') return of
  const name = (id: string) => `${piece}/${id}`
  const own = (r: string) => (r === 'mould' ? `mould ${piece}` : r)
  return {
    tasks: of.tasks.map((t): Task => ({ ...t, id: name(t.id), needs: t.needs.map(own) })),
    gaps: of.gaps.map((g): Gap => ({ ...g, before: name(g.before), after: name(g.after) })),
    reckoned: new Map([...of.reckoned].map(([id, min]) => [name(id), min])),
    mixes: new Map([...of.mixes].map(([pour, id]) => [pour, name(id)]))
  }
}

function problemOf(
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
  const openings = openingsOf(shop, originMs, weeks)
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
function holds(problem: CalendarProblem, { placed }: CalendarSolution, of: readonly Task[]): boolean {
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

interface Told {
  readonly inputs: readonly PlanInput[]
  readonly originMs: number
  readonly options: DaysOptions
  readonly rounds: number
  readonly settled: boolean
  readonly pieces: readonly CastTasks[]
}

function told(problem: CalendarProblem, answer: CalendarAnswer, t: Told): Days {
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
              says: ['no calendar was found in the search; nothing shows that there is none'],
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
