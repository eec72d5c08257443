import { clockOf } from '../cast/clock.ts'
import type { Patch } from '../piece/patch.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { Step } from '../steps/step.ts'
import type { Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

type Fix = Pick<Found, 'fix' | 'fixSays'>

/** Minutes on the clock from one step of the list to a later one (indices from 0). */
export function intervalMin(work: Work, from: number, to: number): number {
  return work.clock[to]!.startMin - work.clock[from]!.startMin
}

/** Whether the order and its waits are the document's: those the plan puts in come from the windows. */
export function orderIsGiven(work: Work): boolean {
  return work.piece.steps !== undefined
}

/**
 * The fix that lets at least `neededMin` pass between two steps of a given order: a later moment where the
 * later step has one that rules, else a longer last wait between them, else a wait put before it.
 */
export function lengthen(work: Work, from: number, to: number, neededMin: number): Fix {
  if (!orderIsGiven(work)) return {}
  const step = work.steps[to]!
  const wait = lastWait(work, from, to)
  if (step.begins !== undefined && work.clock[to]!.given) {
    const moved = search(work, from, to, neededMin, to, minutes => ({
      ...step,
      begins: laterMoment(step.begins!, minutes)
    }))
    const at = laterMoment(step.begins, Math.ceil(moved - 1e-9))
    return {
      fix: [{ op: 'replace', path: `/steps/${to}/at`, value: at }],
      fixSays: `${step.says} not before ${at.replace('T', ' ').slice(0, 16)}`
    }
  }
  if (wait === null) {
    const minutes = wholeMinutes(neededMin - intervalMin(work, from, to))
    return {
      fix: [{ op: 'add', path: `/steps/${to}`, value: { do: 'wait', for: waitWords(minutes) } }],
      fixSays: `Wait ${formatMinutes(minutes)} before it`
    }
  }
  const old = lengthMin(work, wait)
  const more = search(work, from, to, neededMin, wait, minutes => ({
    ...work.steps[wait]!,
    waitMin: old + minutes
  }))
  return setWait(work, wait, wholeMinutes(old + more), 'up')
}

/** The fix that lets at most `mostMin` pass: the last wait between them made shorter; none where no wait is long enough. */
export function shorten(work: Work, from: number, to: number, mostMin: number): Fix {
  const wait = orderIsGiven(work) ? lastWait(work, from, to) : null
  if (wait === null) return {}
  const old = lengthMin(work, wait)
  const next = Math.floor(old - (intervalMin(work, from, to) - mostMin) + 1e-9)
  return next < 0 ? {} : setWait(work, wait, next, 'down')
}

function setWait(work: Work, wait: number, minutes: number, rounding: 'up' | 'down'): Fix {
  const fix = setQuantity(work.document, `/steps/${wait}/for`, 'time', minutes, rounding, 0.1)
  return { fix, fixSays: `Wait ${timeOf(fix)}` }
}

/** The time that a patch sets, in the words of the document where it has some. */
export function timeOf(patch: Patch): string {
  const { value } = patch[patch.length - 1] as { value: number | string }
  return typeof value === 'string' ? value : formatMinutes(value)
}

// A wait until something bears is as long as the clock says.
function lengthMin(work: Work, wait: number): number {
  return work.steps[wait]!.waitMin ?? work.clock[wait]!.waitMin
}

function lastWait(work: Work, from: number, to: number): number | null {
  for (let k = to - 1; k > from; k--) if (work.steps[k]!.kind === 'wait') return k
  return null
}

// Minutes to add to one step so that `neededMin` pass between two. A moment that stands later swallows part
// of what is added, hence a few rounds: beyond it every minute counts.
function search(
  work: Work,
  from: number,
  to: number,
  neededMin: number,
  changed: number,
  change: (minutes: number) => Step
): number {
  const { front, back } = work.materials.coats
  let added = 0
  for (let round = 0; round < 6; round++) {
    const steps = work.steps.map((s, k) => (k === changed ? change(added) : s))
    const clock = clockOf(steps, work.casts, [front, back], work.materials.markingResins)
    const lacking = neededMin - (clock[to]!.startMin - clock[from]!.startMin)
    if (lacking <= 1e-6) break
    added += lacking
  }
  return added
}

// From a day on in whole hours, as a maker would set it; up.
function wholeMinutes(minutes: number): number {
  return rounded(minutes, 'up', minutes > 24 * 60 ? 60 : 1)
}

function waitWords(minutes: number): string {
  return minutes % (24 * 60) === 0 ? `${minutes / (24 * 60)} d` : `${minutes} min`
}

/** A moment that many minutes later (earlier when negative), with the offset it was given with. */
export function laterMoment(moment: string, minutes: number): string {
  const offset = /(?:Z|[+-]\d\d:\d\d)$/.exec(moment)![0]
  const sign = offset.startsWith('-') ? -1 : 1
  const offsetMin = offset === 'Z' ? 0 : sign * (Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6)))
  const local = new Date(Date.parse(moment) + (minutes + offsetMin) * 60_000)
  return `${local.toISOString().slice(0, 16)}${offset}`
}
