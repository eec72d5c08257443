import { formatMinutes } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import { intervalMin, laterMoment, lengthen, orderIsGiven, shorten, timeOf } from './interval.ts'
import type { Work } from './work.ts'

/** Minutes past the edge that are let pass: the clock's own rounding. */
const SLACK_MIN = 1
/** A pour whose floor is this near to the level of another lies on it, mm. */
const ON_IT_MM = 0.5

/** A pour onto one that is still hot or liquid, or that has cured too far to bond by itself. */
export const recoatWindow: Check = {
  id: 'recoat-window',
  about: 'a pour before the one below has gelled and cooled, or after it has hardened',
  cases: ['C27', 'C48', 'C51'],
  run
}

function run(work: Work): Found[] {
  return recoatPairs(work).flatMap(({ below, next }) => one(work, below, next))
}

/**
 * Pours that lie on another, with the step of each: castings on what they stand on, and in an order of the
 * document's own a flood on the flood before it, unless that was sanded or flattened between.
 */
export function recoatPairs(work: Work): { readonly below: Poured; readonly next: Poured }[] {
  const poured = (kind: 'cast' | 'flood') =>
    work.steps.flatMap((s, k) =>
      s.kind === 'pour' && s.pour!.value.kind === kind ? [{ index: s.pour!.index, step: k }] : []
    )
  const casts = poured('cast')
  const floods = orderIsGiven(work) ? poured('flood') : []
  return [
    ...casts.flatMap((next, n) => {
      const below = casts.slice(0, n).findLast(b => liesOn(work, next.index, b.index))
      return below === undefined ? [] : [{ below, next }]
    }),
    ...floods.flatMap((next, n) => {
      const side = work.stack.pours[next.index]!.side
      const below = floods.slice(0, n).findLast(b => work.stack.pours[b.index]!.side === side)
      return below === undefined || abraded(work, below.step, next.step) ? [] : [{ below, next }]
    })
  ]
}

function abraded(work: Work, from: number, to: number): boolean {
  return work.steps.slice(from, to).some(s => s.kind === 'sand' || s.kind === 'flatten')
}

function liesOn(work: Work, upper: number, lower: number): boolean {
  return Math.abs(work.stack.pours[upper]!.floor - work.stack.pours[lower]!.level) < ON_IT_MM
}

interface Poured {
  readonly index: number
  readonly step: number
}

function one(work: Work, below: Poured, next: Poured): Found[] {
  const window = work.casts[below.index]?.windows.recoat
  const { id, at, value } = work.entries.pours[next.index]!
  const given = orderIsGiven(work) || value.after !== undefined || work.clock[next.step]!.given
  if (window === undefined || !given) return []
  const wait = intervalMin(work, below.step, next.step)
  const lower = work.entries.pours[below.index]!.id
  // Where it is hot until after it would close, the one good moment is when it has cooled.
  const close = window.close === null ? null : Math.max(window.close, window.open)
  const early = wait < window.open - SLACK_MIN
  if (!early && (close === null || wait <= close + SLACK_MIN)) return []
  const limit = early ? window.open : close!
  return [
    {
      severity: 'caution',
      at,
      says: early
        ? `${id} is poured ${formatMinutes(wait)} after ${lower}, which has gelled and cooled only after ${formatMinutes(window.open)}${between(window.openBand)}: on a soft or hot layer it sinks in, and their heat adds up.`
        : `${id} is poured ${formatMinutes(wait)} after ${lower}, which bonds by itself until about ${formatMinutes(close!)}${between(window.closeBand)}. Later: wash with water, sand it dull all over, wipe, then pour.`,
      value: wait,
      unit: 'min',
      limit,
      basis:
        'opens at gel of the surface and when no longer warm, closes at a surface conversion of 0.8 (fitted to practice): cure model of a generic class over its band',
      settledBy: window.settledBy,
      ...fixOf(work, below, next, limit, early)
    }
  ]
}

// The band of an end, where it has both.
function between([low, high]: readonly [number | null, number | null]): string {
  return low === null || high === null ? '' : ` (${formatMinutes(low)} to ${formatMinutes(high)})`
}

function fixOf(
  work: Work,
  below: Poured,
  next: Poured,
  limit: number,
  early: boolean
): Pick<Found, 'fix' | 'fixSays'> {
  const { at, id, value } = work.entries.pours[next.index]!
  if (orderIsGiven(work))
    return early ? lengthen(work, below.step, next.step, limit) : shorten(work, below.step, next.step, limit)
  const rounding = early ? 'up' : 'down'
  const minutes = early ? Math.ceil(limit) : Math.floor(limit)
  if (value.start !== undefined && work.clock[next.step]!.given) {
    const start = laterMoment(value.start, Math.round(minutes - intervalMin(work, below.step, next.step)))
    return {
      fix: [{ op: 'replace', path: `${at}/start`, value: start }],
      fixSays: `${id} at ${start.replace('T', ' ').slice(0, 16)}`
    }
  }
  const fix = setQuantity(work.document, `${at}/after`, 'time', minutes, rounding, 0.1)
  return { fix, fixSays: `${id} after ${timeOf(fix)}` }
}
