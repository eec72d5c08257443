import { decimals, formatMass } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import { resinNeedG } from './resin-short.ts'
import type { Work } from './work.ts'

/** Bought beyond the need by more than this share is said. Judgement: half again. */
const OVER = 0.5

/** Resin bought far beyond the need: it ages on the shelf. */
export const resinOver: Check = {
  id: 'resin-over',
  about: 'resin bought far beyond the need',
  cases: ['C31'],
  run: work => [...packs(work), ...bought(work)]
}

function packs(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, id, at, value }): Found[] => {
    const need = resinNeedG(work, index)
    const most = need * (1 + OVER)
    if (value.pack === undefined || need <= 0 || value.pack <= most) return []
    return [
      {
        severity: 'note',
        at: `${at}/pack`,
        says: `${formatMass(value.pack)} are set aside for ${id}, which takes ${formatMass(need)}: ${over(value.pack, need)} left over.`,
        value: value.pack,
        unit: 'g',
        limit: most,
        basis:
          'need with what stays in the vessels; half again is our mark, resin ages on the shelf (practice)',
        fix: setQuantity(work.document, `${at}/pack`, 'mass', most, 'down', 1),
        fixSays: `${formatMass(Math.floor(most))} for ${id}`
      }
    ]
  })
}

// Whole packs of the buy list, beside what the shelf holds.
function bought(work: Work): Found[] {
  return work.buy.flatMap((line): Found[] => {
    if (line.group !== 'resin' || line.packs.length === 0) return []
    const have = line.stock + line.buy
    const first = work.entries.pours.find(p => p.value.resin === line.item)
    if (first === undefined || line.need <= 0 || have <= line.need * (1 + OVER)) return []
    return [
      {
        severity: 'note',
        at: `${first.at}/resin`,
        says: `${formatMass(line.buy)} of ${line.item} are bought in whole packs for a need of ${formatMass(line.need)}: ${over(have, line.need)} left over. A smaller pack, or a second piece, would use it.`,
        value: have,
        unit: 'g',
        limit: line.need * (1 + OVER),
        basis:
          'packs at least cost that hold need and spare; half again is our mark, resin ages on the shelf (practice)'
      }
    ]
  })
}

function over(have: number, need: number): string {
  return `${formatMass(have - need)} (${decimals((have / need - 1) * 100, 0)} %)`
}
