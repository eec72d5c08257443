import type { Work } from '../findings/work.ts'
import type { Plan } from '../plan.ts'
import { roughTime } from '../quantity/rough.ts'
import type { FirstMoment } from './moment.ts'
import { dateOf, dayNumber, timeOf } from './moment.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** How the times of the sheet are to be read. */
export function clockWords(work: Work, first: FirstMoment | null): string {
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
  first: FirstMoment | null
): { day: string; when: string } {
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
    day: dateOf(ms, first.offsetMin),
    when: `${given ? '' : 'from '}${timeOf(ms, first.offsetMin)}`
  }
}

/** When the next pour bonds by itself to the one before: at that pour, and at the wait before it. */
export function windowFacts(work: Work, i: number, first: FirstMoment | null): RunFact[] {
  const step = work.steps[i]!
  const isPour = step.kind === 'pour' && step.pour!.value.kind === 'cast'
  if (!isPour && step.why !== 'recoat') return []
  const before = work.steps.slice(0, i).findLastIndex(s => s.kind === 'pour' && s.pour!.value.kind === 'cast')
  if (before < 0) return []
  const recoat = work.casts[work.steps[before]!.pour!.index]?.windows.recoat
  if (recoat === undefined) return []
  const start = work.clock[before]!.startMin
  const from = momentWords(start + recoat.open, first)
  const later = recoat.close === null ? 'any time later' : momentWords(start + recoat.close, first)
  // The day is said once.
  const day = from.split(' ').slice(0, 3).join(' ')
  const to = first !== null && later.startsWith(`${day} `) ? later.slice(day.length + 1) : later
  return [fact(isPour ? 'Pour between' : 'Pour the next between', `${from} and ${to}`)]
}

function momentWords(min: number, first: FirstMoment | null): string {
  if (first === null) return `+ ${roughTime(min)}`
  const ms = first.ms + min * 60_000
  return `${dateOf(ms, first.offsetMin)} ${timeOf(ms, first.offsetMin)}`
}
