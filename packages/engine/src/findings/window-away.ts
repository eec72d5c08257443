import { nobodyThere } from '../cast/bench-hours.ts'
import type { LocalTime } from '../cast/local-time.ts'
import { timeWords } from '../cast/local-time.ts'
import type { Check, Found } from './finding.ts'
import { momentOf } from './moment.ts'
import type { Need } from './pour-needs.ts'
import { needsOf, otherStart, thereFor, WATCH_MIN } from './pour-needs.ts'
import type { Work } from './work.ts'

/** A window that falls at night or when nobody is at the bench. Asked only where the document gives a moment. */
export const windowAway: Check = {
  id: 'window-away',
  about: 'a window of a pour, or the watch after it, at night or when nobody is there',
  cases: ['O6'],
  run: work =>
    work.steps.flatMap((s, k) => {
      const at = s.kind === 'pour' ? momentOf(work, k) : null
      return at === null ? [] : one(work, k, s.pour!.index, at)
    })
}

function one(work: Work, step: number, pour: number, at: LocalTime): Found[] {
  const { id, at: entry } = work.entries.pours[pour]!
  const needs = needsOf(work, pour)
  const unmet = needs.filter(n => thereFor(work, at, n) < n.min - 1e-6)
  if (unmet.length === 0) return []
  // What is poured is moved no more: somebody comes, or an alarm is set.
  const poured = work.readings.some(r => (r.kind === 'mixed' || r.kind === 'poured') && r.pour === id)
  const other = poured ? null : otherStart(work, step, at, needs)
  return unmet.map((need): Found => {
    const there = thereFor(work, at, need)
    return {
      severity: 'caution',
      at: entry,
      says: `${id}, mixed ${timeWords(at)}, ${spanWords(work, at, need)}. ${other === null ? 'Be there then, or have somebody there.' : other.words === null ? 'No start within a day and a half fits: other hours, another resin or an alarm.' : `Mixed ${other.words} it would fit.`}`,
      value: there,
      unit: 'min',
      limit: need.min,
      basis: `hours at the bench: ${work.shop.hours === undefined ? 'none given, night from 22 to 7' : 'the shop’s'}; ${need.span[0] === 0 ? `the first ${WATCH_MIN} min are watched: common practice, no source` : 'the window of the pour, cure model'}`,
      settledBy: need.span[0] === 0 ? null : 'the reading that sharpens that window, once it is poured',
      ...(other !== null && 'fix' in other ? { fix: other.fix!, fixSays: other.fixSays! } : {})
    }
  })
}

function spanWords(work: Work, at: LocalTime, need: Need): string {
  const [from, to] = need.span
  const why =
    nobodyThere(work.shop, at, from) ??
    nobodyThere(work.shop, at, to) ??
    nobodyThere(work.shop, at, (from + to) / 2)
  const when = from === 0 ? 'in its first hour' : `from ${timeWords(at, from)} to ${timeWords(at, to)}`
  return `${need.does} ${when}, ${why === 'night' ? 'which is at night' : 'when nobody is at the bench'}`
}
