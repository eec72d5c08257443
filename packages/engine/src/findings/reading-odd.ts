import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Readings of a pour that contradict each other, or that cannot be used. */
export const readingOdd: Check = {
  id: 'reading-odd',
  about: 'readings of a cure that contradict each other, or lie before their pour',
  cases: [],
  run: work => work.casts.flatMap((_, i) => one(work, i))
}

function one(work: Work, i: number): Found[] {
  const learned = work.casts[i]?.learned
  if (!learned) return []
  const { at, id } = work.entries.pours[i]!
  const basis =
    'least squares of the resin’s speed on what was read, its class as the prior; a time is called within 8 to 15 %: common practice'
  const said = [
    ...(learned.disagree === null ? [] : [`readings of ${id}: ${learned.disagree}.`]),
    ...learned.unused.map(u => `${u}.`)
  ]
  return said.map(
    (says): Found => ({
      severity: 'caution',
      at,
      says,
      basis,
      settledBy: 'another reading now: does it string, is it tacky, gelled, hard'
    })
  )
}
