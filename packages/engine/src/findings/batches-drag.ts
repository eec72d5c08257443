import { formatMinutes } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** So many batches one after the other that the first has gelled before the last is in. */
export const batchesDrag: Check = {
  id: 'batches-drag',
  about: 'batches that take longer, one after the other, than the first stays liquid',
  cases: [],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

function one(work: Work, i: number): Found[] {
  const batches = work.batches[i]
  const gelMin = work.casts[i]?.windows.gelMin ?? null
  const { id, at, value } = work.entries.pours[i]!
  if (!batches || gelMin === null || value.kind !== 'cast') return []
  if (batches.mixed === null || batches.mixed.count < 2) return []
  const { count, standingMin } = batches.mixed
  const total = count * standingMin
  if (total <= gelMin) return []
  return [
    {
      severity: 'caution',
      at,
      says: `${id} is ${count} batches: stirred and poured one after the other they take about ${formatMinutes(total)}, and the first has gelled after ${formatMinutes(gelMin)}. It would set in layers that do not run together. Larger vessels, more hands or a slower resin.`,
      value: total,
      unit: 'min',
      limit: gelMin,
      basis:
        'minutes of stirring and pouring of a batch (common practice) times their number; gel of the class in the mould',
      settledBy: 'the time one batch takes'
    }
  ]
}
