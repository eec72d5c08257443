import type { LocalTime } from '../cast/local-time.ts'
import type { Work } from '../findings/work.ts'
import type { Plan } from '../plan.ts'
import { roughTime } from '../quantity/rough.ts'
import type { DayTimes } from './day-times.ts'
import { endsOf } from './day-windows.ts'
import { dateOf, dayNumber, endOf, momentOf, timeOf } from './moment.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** What the times of a sheet come from: the calendar, else the first moment of the document, else nothing. */
export interface RunClock {
  readonly first: LocalTime | null
  readonly days: DayTimes | null
}

/** How the times of the sheet are to be read. */
export function clockWords(work: Work, { first, days }: RunClock): string {
  if (days !== null)
    return `Days and times are those of the calendar, on the clock of ${days.clock.zone}; what is begun stands where it was begun. Plan again after a reading that says otherwise: they move.`
  const from =
    first === null ? `Times count from ${originWords(work)}` : 'Moments are in the zone of the document'
  return `${from} and count waits only: work, nights and days away come on top.`
}

function hasCast(work: Work): boolean {
  return work.piece.pours.some(p => p.kind === 'cast')
}

function originWords(work: Work): string {
  return hasCast(work) ? 'the first pour into the mould' : 'the start'
}

/** The heading a step stands under and its time at the earliest. */
export function whenWords(
  plan: Plan,
  work: Work,
  i: number,
  { first, days }: RunClock
): { day: string; when: string } {
  if (days !== null) return byCalendar(days, i)
  const s = plan.steps[i]!
  const pour = plan.steps.findIndex((p, k) => p.kind === 'pour' && work.steps[k]!.pour!.value.kind === 'cast')
  if (i < pour) return { day: 'Before the first pour', when: '' }
  const number = dayNumber(s.startMin)
  if (first === null) {
    const when = s.startMin < 0.5 ? `+ 0 min` : `+ ${roughTime(s.startMin)}`
    return { day: `Day ${number}`, when }
  }
  const ms = first.ms + s.startMin * 60_000
  const given = work.clock[i]!.given || i === pour
  return {
    day: dateOf(ms, first.clock),
    when: `${given ? '' : 'from '}${timeOf(ms, first.clock)}`
  }
}

/** The heading and the time of a step in a calendar. */
export function byCalendar(days: DayTimes, i: number): { day: string; when: string } {
  const { clock } = days
  const time = days.steps[i] ?? null
  if (time !== null) {
    const end = endOf(time.startMs, time.endMs, clock)
    const to = end === '' ? '' : ` to ${end}`
    return {
      day: dateOf(time.startMs, clock),
      when: `${timeOf(time.startMs, clock)}${to}${time.begun ? ', begun' : ''}${againWords(days, i)}`
    }
  }
  // A wait stands under the day on which it begins.
  const before = days.steps.slice(0, i).findLast(t => t !== null) ?? null
  const until = days.untilMs[i] ?? null
  if (before === null || until === null) return { day: '', when: '' }
  return {
    day: dateOf(before.endMs, clock),
    when: `until ${endOf(before.endMs, until, clock) || momentOf(until, clock)}`
  }
}

function againWords({ againMs, clock }: DayTimes, i: number): string {
  const again = (againMs[i] ?? []).map(ms => momentOf(ms, clock))
  return again.length === 0 ? '' : `; the mould filled again: ${again.join(', ')}`
}

/** When the next pour bonds by itself to the one before: at that pour, and at the wait before it. */
export function windowFacts(work: Work, i: number, { first, days }: RunClock): RunFact[] {
  const step = work.steps[i]!
  const isPour = step.kind === 'pour' && step.pour!.value.kind === 'cast'
  if (days !== null && step.kind === 'demould') return demouldFacts(work, i, days)
  const weigh = step.kind === 'pour' ? days?.pours[step.pour!.index]?.weighMs : undefined
  const weighed =
    days === null || weigh === undefined || weigh === null ? [] : [fact('Weigh', momentOf(weigh, days.clock))]
  if (!isPour && step.why !== 'recoat') return weighed
  const before = work.steps.slice(0, i).findLastIndex(s => s.kind === 'pour' && s.pour!.value.kind === 'cast')
  if (before < 0) return weighed
  const label = isPour ? 'Pour between' : 'Pour the next between'
  const below = work.steps[before]!.pour!.index
  const time = days?.pours[below] ?? null
  if (days !== null && time !== null) {
    const [from, to] = endsOf(time, time.cast?.windows.recoat)
    if (from === null) return weighed
    const later = to === null ? 'any time later' : endOf(from, Math.max(from, to), days.clock)
    return [
      ...weighed,
      fact(label, `${momentOf(from, days.clock)} and ${later === '' ? 'not later' : later}`)
    ]
  }
  const recoat = work.casts[below]?.windows.recoat
  if (recoat === undefined) return weighed
  const start = work.clock[before]!.startMin
  const from = momentWords(start + recoat.open, first)
  const later = recoat.close === null ? 'any time later' : momentWords(start + recoat.close, first)
  // The day is said once.
  const day = from.split(' ').slice(0, 3).join(' ')
  const to = first !== null && later.startsWith(`${day} `) ? later.slice(day.length + 1) : later
  return [fact(label, `${from} and ${to}`)]
}

// It leaves the mould once every pour made by then is hard enough.
function demouldFacts(work: Work, i: number, days: DayTimes): RunFact[] {
  const froms = work.steps.slice(0, i).flatMap(s => {
    const time = s.kind === 'pour' && s.pour!.value.kind === 'cast' ? days.pours[s.pour!.index] : null
    const [from] = time === null || time === undefined ? [null] : endsOf(time, time.cast?.windows.demould)
    return from === null ? [] : [from]
  })
  return froms.length === 0
    ? []
    : [fact('Not before', momentOf(Math.max(...froms), days.clock), 'when it is hard enough')]
}

function momentWords(min: number, first: LocalTime | null): string {
  return first === null ? `+ ${roughTime(min)}` : momentOf(first.ms + min * 60_000, first.clock)
}
