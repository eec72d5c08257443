import type { PourCast } from '../cast/cast.ts'
import type { Days, DayTask } from '../days-answer.ts'
import type { Work } from '../findings/work.ts'
import type { ZoneClock } from '../quantity/zone-clock.ts'
import { zoneClock } from '../quantity/zone-clock.ts'
import { stepKeys } from '../steps/step-key.ts'

/** When a step is done by the calendar, ms since 1970; `begun`: a reading or the document says so. */
export interface StepTime {
  readonly startMs: number
  readonly endMs: number
  readonly begun: boolean
}

/** A pour by the calendar: what closes counts from its first stir, what opens from the end of its last batch. */
export interface PourTime {
  /** When it is weighed out, where that is done well before it is stirred; else null. */
  readonly weighMs: number | null
  readonly mixMs: number
  readonly pouredMs: number
  /** As it cures when it is poured at that hour; null: not predicted. */
  readonly cast: PourCast | null
}

/** The calendar of one piece as its sheets say it: on the clock of the shop, by the steps of the plan. */
export interface DayTimes {
  readonly clock: ZoneClock
  /** Index of the step; null: nothing is done then (a wait). */
  readonly steps: readonly (StepTime | null)[]
  /** Moments at which a step is begun again, for later fills of the mould, ms. By index of the step. */
  readonly againMs: readonly (readonly number[])[]
  /** When a wait is over: what comes after it begins. By index of the step; null for all else. */
  readonly untilMs: readonly (number | null)[]
  /** By index of the pour; null: it is no step. */
  readonly pours: readonly (PourTime | null)[]
  /** When it is ready. */
  readonly readyMs: number
}

/** The times of a calendar; null where there is none, or where it is of several pieces. */
export function dayTimes(days: Days | null, work: Work): DayTimes | null {
  if (days === null || days.readyMs === null || days.readyMs.length !== 1) return null
  const ms = (min: number) => days.originMs + Math.round(min) * 60_000
  const keys = stepKeys(work.steps)
  const everyFill = keys.map(key => days.tasks.filter(t => t.task.step === key))
  // A step is where its first fill is; later ones are said beside it.
  const ofStep = everyFill.map(own => own.filter(t => (t.task.fill ?? 1) === 1))
  const againMs = everyFill.map((own, i) => {
    const begins = new Map<number, number>()
    for (const { task, startMin } of own.filter(t => (t.task.fill ?? 1) > 1 && isOwn(t, work.steps[i]!.kind)))
      begins.set(task.fill!, Math.min(startMin, begins.get(task.fill!) ?? Number.POSITIVE_INFINITY))
    return [...begins.values()].map(ms)
  })
  const steps = ofStep.map((tasks, i): StepTime | null => {
    const own = tasks.filter(t => t.task.attended && isOwn(t, work.steps[i]!.kind))
    const all = own.length > 0 ? own : tasks
    if (all.length === 0) return null
    return {
      startMs: ms(Math.min(...all.map(t => t.startMin))),
      endMs: ms(Math.max(...all.map(t => t.endMin))),
      begun: all.some(t => t.task.fixed !== null)
    }
  })
  const untilMs = work.steps.map((step, i): number | null => {
    if (step.kind !== 'wait') return null
    const filled = step.why === 'sand' ? (ofStep[i - 1] ?? []) : []
    const level = filled.find(t => t.task.kind === 'level')
    return level !== undefined ? ms(level.startMin) : (steps.slice(i).find(t => t !== null)?.startMs ?? null)
  })
  const pours = work.piece.pours.map((_, pour): PourTime | null => {
    const i = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === pour)
    const tasks = i < 0 ? [] : ofStep[i]!
    const mix = tasks.find(t => t.task.kind === 'mix' && isStir(t))
    const poured = tasks.filter(t => t.task.kind === 'pour')
    if (mix === undefined || poured.length === 0) return null
    const weigh = tasks.find(t => t.task.kind === 'mix')!
    // Said to be done, its tasks share the span from the first stir to the last batch.
    if (tasks.every(t => t.task.fixed?.why === 'done'))
      return {
        weighMs: null,
        mixMs: ms(Math.min(...tasks.map(t => t.startMin))),
        pouredMs: ms(Math.max(...tasks.map(t => t.endMin))),
        cast: days.casts[0]?.[pour] ?? null
      }
    return {
      weighMs: weigh.endMin < mix.startMin ? ms(weigh.startMin) : null,
      mixMs: ms(mix.startMin),
      pouredMs: ms(Math.max(...poured.map(t => t.endMin))),
      cast: days.casts[0]?.[pour] ?? null
    }
  })
  return { clock: zoneClock(days.timeZone), steps, againMs, untilMs, pours, readyMs: days.readyMs[0]! }
}

// Weighing comes before it, under the same kind.
function isStir({ task }: DayTask): boolean {
  return task.says.startsWith('Mix')
}

// A pour is from its first stir to its last batch; it is watched, and a filling levelled once it is hard, at another time.
function isOwn(at: DayTask, kind: Work['steps'][number]['kind']): boolean {
  const { task } = at
  if (kind === 'pour') return task.kind === 'pour' || (task.kind === 'mix' && isStir(at))
  return kind !== 'fill' || task.kind !== 'level'
}
