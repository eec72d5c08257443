import { beginsOf } from '../cast/starts.ts'
import { MACHINE_LEAST_DAYS } from '../cast/windows.ts'
import { sandingHazards } from '../finish/sands-at.ts'
import { zoneClock } from '../quantity/zone-clock.ts'
import { HEAVY_G, safetyOf } from '../steps/safety.ts'
import type { Step } from '../steps/step.ts'
import { stepKeys } from '../steps/step-key.ts'
import { fixByRecords } from './fixed-tasks.ts'
import type { LearnedFactor } from './learned-minutes.ts'
import { minutesByFeeds, mouldM2 } from './machine-minutes.ts'
import { placeByHand } from './placed-tasks.ts'
import { PRACTICE_WAIT } from './practice-minutes.ts'
import type { StepRecord } from './step-times.ts'
import type { Gap, Task, TaskKind } from './task.ts'
import type { OnStep } from './task-list.ts'
import { byPractice, TaskList } from './task-list.ts'
import { inTurn, rowOf } from './task-rows.ts'
import type { MachineMinutes, TaskWork } from './task-work.ts'
import { cutIt, fillIt, levelIt } from './tasks-cut.ts'
import { deliveries, fitIt, madeOutside } from './tasks-deliver.ts'
import { coatIt, sandIt } from './tasks-finish.ts'
import { makeMould, readyAgain } from './tasks-mould.ts'
import type { Poured } from './tasks-pour.ts'
import { pourIt, setStones } from './tasks-pour.ts'
import { prepareTimber, setTimber } from './tasks-timber.ts'

/** What tasks follow from besides the piece. */
export interface TaskOptions {
  /** Key of the piece among those of the calendar. */
  readonly piece: string
  /** The moment that is minute 0, ms since 1970. */
  readonly originMs: number
  /** Minutes of the machine by its programs; left out: by area and feed. */
  readonly machine?: readonly MachineMinutes[]
  readonly learned?: ReadonlyMap<TaskKind, LearnedFactor>
  readonly records?: ReadonlyMap<string, StepRecord>
  /** Pours whose start the calendar chose, by index: their `start` is no word of the maker and binds nothing. */
  readonly chosen?: ReadonlySet<number>
}

/** The tasks of a piece and the waits between them. */
export interface PieceTasks {
  readonly tasks: readonly Task[]
  readonly gaps: readonly Gap[]
  /** Minutes before corrections, by id of task. */
  readonly reckoned: ReadonlyMap<string, number>
  /** Task of the first stir of each pour, by index of the pour: where its clock begins. */
  readonly mixes: ReadonlyMap<number, string>
}

/** What comes after a wait starts no sooner than this says. */
interface Pending {
  readonly before: string
  readonly from: Gap['from']
  readonly leastMin: number
  readonly mostMin: number | null
  readonly says: string
  readonly late: string | null
  readonly soft: boolean
}

const DAY = 1440
/** Steps a cutter or heavy pressure works in: resin has to stand it. */
const CUTS = new Set<Step['kind']>(['drill pins', 'flatten', 'cut', 'mark', 'trim', 'work edges'])

/**
 * Every minute a piece asks for, as tasks in the order of its steps. Timbers and mould are made beside each other until
 * they meet; from there on one thing follows the other.
 *
 * Windows become waits: what opens counts from the last batch poured, what closes from the first stir, so that both
 * hold for every batch. Minutes: models of the piece where they know them, else practice (practice-minutes.ts); both
 * times what the shop corrects or has learned.
 *
 * Of several pieces alike the whole row is told: what is done to each blank so many times over, what is poured together
 * in common batches, the mould filled again until all are cast, coats in parts of the row that one window holds for.
 *
 * Limits: central windows, not their bands; every fill cures as the first, and what is recorded of a step is of all its
 * fills; what is set or drawn into several blanks at once has the window of one.
 */
export function tasksOf(work: TaskWork, options: TaskOptions): PieceTasks {
  const corrections = new Map(work.shop.minutes.map(m => [m.work, m.times]))
  const list = new TaskList(options.piece, options.learned ?? new Map(), corrections)
  const keys = stepKeys(work.steps)
  const machine = options.machine ?? minutesByFeeds(work)
  const first = new Map<string, string>()
  const poured: Poured[] = []
  const beside: string[] = []
  let firstOfFill = 0
  let mould: readonly string[] = []
  let main: readonly string[] | null = null
  let pending: Pending[] = []
  let filled: readonly { readonly on: OnStep; readonly task: string }[] = []
  let fitted: readonly string[] = []
  let coats: readonly string[] = []
  let zeroed = false

  const { fills } = work
  for (const { index, fill } of inTurn(work)) {
    const step = work.steps[index]!
    const on: OnStep = {
      step,
      key: keys[index]!,
      safety: safetyLines(work, index),
      ...rowOf(work, index, fill)
    }
    if (fill > 0 && index === fills!.from) {
      main = readyAgain(list, on, work, main ?? [])
      firstOfFill = poured.length
    }
    const from = list.tasks.length
    // What lies beside the mould waits for nothing but its own timber.
    const joined = () => main ?? [...mould, ...beside]
    switch (step.kind) {
      case 'prepare timber':
        beside.push(...prepareTimber(list, on, work, main ?? []))
        break
      case 'make mould':
        mould = makeMould(list, on, work, main ?? [])
        break
      case 'wait':
        wait(step, index)
        break
      case 'pour': {
        const seal = step.pour!.value.kind === 'seal' && main === null
        let after: readonly string[] = seal ? (step.inMould ? joined() : [...beside]) : joined()
        after = sandIt(list, on, work, index, false, after)
        const done = pourIt(list, on, work, after)
        between(done.poured, step)
        poured.push(done.poured)
        if (seal) beside.push(...done.ends)
        else main = done.ends
        break
      }
      default:
        main = others(step, index, on, joined())
    }
    const started = list.tasks[from]
    if (started === undefined) continue
    if (fill === 0) first.set(String(index), started.id)
    if (step.kind !== 'prepare timber' && step.kind !== 'make mould') {
      const mix = list.tasks.slice(from).find(t => t.kind === 'mix' && t.says.startsWith('Mix'))
      for (const p of pending) list.gap({ ...p, after: (mix ?? started).id })
      pending = []
    }
    const begins = fill === 0 ? beginsOf(step) : undefined
    if (begins !== undefined && !(step.kind === 'pour' && options.chosen?.has(step.pour!.index)))
      begin(list, step, from, (Date.parse(begins) - options.originMs) / 60_000)
  }
  deliveries(list, work, first)
  madeOutside(list, work, first)
  finish()
  fixByRecords(list, keys, options.records ?? new Map(), options.originMs)
  placeByHand(list, work.piece.placed, options.originMs)
  return {
    tasks: list.tasks,
    gaps: list.gaps,
    reckoned: list.reckoned,
    // The clock of a pour begins with its first fill.
    mixes: new Map([...poured].reverse().map(p => [p.index, p.mix]))
  }

  function others(step: Step, index: number, on: OnStep, after: readonly string[]): readonly string[] {
    switch (step.kind) {
      case 'set timber':
        return setTimber(list, on, work, after)
      case 'set stones':
        return setStones(list, on, work, poured[poured.length - 1], after)
      case 'demould': {
        const id = list.add(
          on,
          {
            what: '',
            kind: 'demould',
            says: step.says,
            takes: byPractice('demould', 1, mouldM2(work)),
            needs: lift(index, ['hands', 'mould']),
            times: on.blanks
          },
          after
        )
        for (const p of poured.slice(firstOfFill)) {
          const window = work.casts[p.index]?.windows.demould
          if (window !== undefined)
            list.gap({
              before: p.pour,
              after: id,
              leastMin: window.open,
              says: `${p.id} is hard enough to leave the mould`
            })
        }
        return [id]
      }
      case 'turn over':
        zeroed = false
        return [
          list.add(
            on,
            {
              what: '',
              kind: 'turn',
              says: step.says,
              takes: byPractice('turn'),
              needs: lift(index, ['hands']),
              times: on.blanks,
              // Between one blank and the next there is time.
              mayPause: on.blanks > 1
            },
            after
          )
        ]
      case 'fill': {
        const ends = fillIt(list, on, work, after)
        filled = [...filled, { on, task: ends[0]! }]
        return ends
      }
      case 'sand':
        return sandIt(list, on, work, index, true, after)
      case 'coat': {
        const sanded = sandIt(list, on, work, index, false, after)
        coats = coatIt(list, on, work, sanded)
        return coats
      }
      case 'fit':
        fitted = fitIt(list, { ...on, blanks: work.quantity.pieces }, after)
        return fitted
      case 'deliver':
        return deliver(on, after)
      default: {
        const ends = cutIt(list, on, work, index, machine, zeroed, after)
        const started = list.tasks.find(t => t.step === on.key)
        if (CUTS.has(step.kind) && started !== undefined)
          for (const p of poured.slice(-1))
            list.gap({
              before: p.pour,
              after: started.id,
              leastMin: MACHINE_LEAST_DAYS * DAY,
              says: `${p.id} stands a cutter, at the least`
            })
        if (machine.some(m => m.step === index)) zeroed = true
        return sandIt(list, on, work, index, false, ends)
      }
    }
  }

  function lift(index: number, needs: string[]): string[] {
    const mass = work.moves.find(m => m.step === index)?.massG ?? 0
    return mass >= HEAVY_G ? [...needs, 'second pair'] : needs
  }

  function wait(step: Step, index: number): void {
    const time = work.clock[index]!
    const says = time.given ? 'wait, as the piece says' : waitSays(step)
    if (step.why === 'sand' && filled.length > 0) {
      // All that was filled since the last such wait hardens in it, and is scraped level after it.
      for (const { on, task } of filled) {
        const level = levelIt(list, on, work, main ?? [])
        list.gap({ before: task, after: level, leastMin: time.waitMin, says: 'the filling is hard' })
        main = [level]
      }
      filled = []
      return
    }
    const ends = main ?? [...mould, ...beside]
    const last = poured[poured.length - 1]
    const window = windowOf(step, last)
    // A wait for a window counts from the pour, any other from what was done last.
    // Their own gaps hold these windows, and move with them.
    if (!time.given && window !== null && follows(work, index)) return
    const ofPour =
      window !== null || step.why === 'machine' || step.why === 'demould' || step.why === 'recoat'
    const before = ofPour && last !== undefined ? [last.pour] : step.why === 'load' ? coats : ends
    for (const id of before)
      pending.push({
        before: id,
        from: 'end',
        leastMin: time.waitMin,
        mostMin: null,
        says,
        late: null,
        soft: false
      })
  }

  function windowOf(step: Step, last: Poured | undefined) {
    return step.why === 'recoat' && last !== undefined
      ? (work.casts[last.index]?.windows.recoat ?? null)
      : null
  }

  // A pour on a pour of the mould: it bonds by itself within the window.
  function between(now: Poured, step: Step): void {
    const before = poured.slice(firstOfFill).at(-1)
    if (before === undefined || step.pour!.value.kind !== 'cast') return
    const window = work.casts[before.index]?.windows.recoat
    if (window === undefined) return
    list.gap({
      before: before.pour,
      after: now.mix,
      leastMin: window.open,
      says: `${before.id} is tacky and has cooled`
    })
    if (window.close !== null)
      list.gap({
        before: before.mix,
        after: now.mix,
        from: 'start',
        leastMin: 0,
        mostMin: Math.max(window.close, window.open),
        says: `recoat window of ${before.id}: until then ${now.id} bonds by itself`,
        late: `${before.id} is washed and sanded before ${now.id}`,
        soft: true
      })
  }

  function deliver(on: OnStep, after: readonly string[]): readonly string[] {
    let last = after
    if (fitted.length > 0)
      last = [
        list.add(
          on,
          {
            what: 'rest',
            kind: 'rest',
            says: 'It rests before use',
            takes: {
              minutes: PRACTICE_WAIT.rests,
              basis: { from: 'practice', says: 'a day after the last part: common practice, no source' }
            },
            attended: false
          },
          last
        )
      ]
    const pack = list.add(
      on,
      {
        what: 'pack',
        kind: 'pack',
        says: 'Look it over and pack it',
        takes: byPractice('pack'),
        times: work.quantity.pieces,
        needs: lift(on.step.number - 1, ['hands'])
      },
      last
    )
    for (const p of poured) {
      const service = work.casts[p.index]?.windows.service
      if (service !== undefined)
        list.gap({
          before: p.pour,
          after: pack,
          leastMin: service.open,
          says: `${p.id} is hard enough for use`
        })
    }
    return [pack]
  }

  function finish(): void {
    const { wanted, start } = work.piece
    if (start !== undefined) {
      const min = (Date.parse(start) - options.originMs) / 60_000
      list.tasks.forEach((t, i) => {
        if (t.kind !== 'delivery') list.tasks[i] = { ...t, notBeforeMin: min }
      })
    }
    if (wanted !== undefined) {
      const due = (endOfDay(wanted, work.shop.timeZone) - options.originMs) / 60_000
      const i = list.tasks.findLastIndex(t => t.kind !== 'delivery')
      if (i >= 0) list.tasks[i] = { ...list.tasks[i]!, dueMin: Math.floor(due) }
    }
  }
}

// A step with a moment of its own: a pour by its first stir, all else by its first task.
function begin(list: TaskList, step: Step, from: number, startMin: number): void {
  const i = list.tasks.findIndex(
    (t, k) => k >= from && (step.kind !== 'pour' || (t.kind === 'mix' && t.says.startsWith('Mix')))
  )
  if (i < 0) return
  list.tasks[i] = { ...list.tasks[i]!, fixed: { startMin, endMin: null, why: 'given' } }
}

// The last minute of a day where the piece is made, ms since 1970.
function endOfDay(day: string, timeZone: string): number {
  const [year, month, date] = day.split('-').map(Number)
  return zoneClock(timeZone).moment({ year: year!, month: month!, day: date! }, 1439)
}

// Whether the next pour of the order goes into the mould: its own window stands for the wait.
function follows(work: TaskWork, index: number): boolean {
  const next = work.steps.slice(index).find(s => s.kind === 'pour')
  return next?.pour?.value.kind === 'cast'
}

function waitSays(step: Step): string {
  switch (step.why) {
    case 'recoat':
      return 'until it takes the next pour'
    case 'demould':
      return 'until it is hard enough to leave the mould'
    case 'machine':
      return 'until it stands a cutter'
    case 'load':
      return 'until the coat bears load'
    default:
      return 'until it is hard enough for paper'
  }
}

function safetyLines(work: TaskWork, index: number): string[] {
  const step = work.steps[index]!
  return safetyOf(step, work.materials, {
    massG: work.moves.find(m => m.step === index)?.massG ?? 0,
    food: work.piece.food !== 'none',
    byHand: work.shop.machine === undefined,
    timber: work.piece.timbers.length > 0,
    sanding: sandingHazards(work.faces, work.steps, index)
  }).map(h => h.lines.join(' '))
}
