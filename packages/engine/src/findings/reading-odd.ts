import type { Check, Found } from './finding.ts'
import { oddTimberReadings } from './timber-reading.ts'
import type { Work } from './work.ts'

/** Readings that contradict each other, or that cannot be used. */
export const readingOdd: Check = {
  id: 'reading-odd',
  about: 'readings that contradict each other, lie before their pour, or are of nothing in the piece',
  cases: [],
  run: work => [...work.casts.flatMap((_, i) => one(work, i)), ...nameless(work), ...oddTimberReadings(work)]
}

// Signs of cure of a pour that the piece does not have.
function nameless(work: Work): Found[] {
  const ids = work.entries.pours.map(p => p.id)
  return work.readings.flatMap((r): Found[] =>
    (r.kind !== 'stage' && r.kind !== 'temperature') || r.pour === undefined || ids.includes(r.pour)
      ? []
      : [
          {
            severity: 'caution',
            at: '/pours',
            says: `a reading of ${r.at.replace('T', ' ').slice(0, 16)} is of the pour “${r.pour}”, which the piece does not have; there ${ids.length === 1 ? 'is' : 'are'} ${ids.join(', ')}. It tells nothing.`,
            basis: 'the names of the document',
            settledBy: null
          }
        ]
  )
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
