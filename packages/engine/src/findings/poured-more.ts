import { EXCESS_LIMIT, runningTotal } from '../mould/leak.ts'
import { decimals, formatMass } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Excess that is said before it is a stop: a tenth, about what thickness and gaps may be off (practice). */
const CAUTION_EXCESS = 0.1

/** More poured than what the mould should hold. */
export const pouredMore: Check = {
  id: 'poured-more',
  about: 'a running total of what was poured, against the estimate',
  cases: ['C34'],
  run
}

function run(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, id, at }): Found[] => {
    const expected = work.stack.pours[index]!.massG * work.quantity.blanks
    const batches = work.readings.flatMap(r => (r.kind === 'poured' && r.pour === id ? [r.mass] : []))
    if (batches.length === 0 || expected <= 0) return []
    // One density: the ratio of masses is that of volumes.
    const total = runningTotal(batches, expected)
    if (total.excess <= CAUTION_EXCESS) return []
    const { stop } = total
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: `${formatMass(total.pouredMl)} have gone into ${id} in ${batches.length} ${batches.length === 1 ? 'batch' : 'batches'}; ${formatMass(expected)} fill it: ${decimals(total.excess * 100, 0)} % more. ${stop ? 'Stop and look' : 'Look'} for a leak or a hollow before the next batch; a gap under a timber or a base that sags looks the same.`,
        value: total.excess * 100,
        unit: '%',
        limit: (stop ? EXCESS_LIMIT : CAUTION_EXCESS) * 100,
        basis:
          'readings of what left the vessels, against the free volume of the mould by density; a tenth and half again: common practice, no source',
        settledBy: 'the height of the resin in the mould'
      }
    ]
  })
}
