import { formatMass } from '../quantity/format.ts'
import type { Check } from './finding.ts'

/** One part of a resin that runs out while the other is there: what is left of it hardens nothing. */
export const hardenerShort: Check = {
  id: 'hardener-short',
  about: 'one part of a resin that runs out before the other',
  cases: [],
  run: work =>
    work.buy.flatMap(line => {
      if (line.lack === null) return []
      const { part, have, need } = line.lack
      const entry = work.entries.pours.find(p => p.value.resin === line.item)
      return [
        {
          severity: 'stop' as const,
          at: entry === undefined ? '' : entry.at,
          says: `do not start: ${line.name} needs ${formatMass(need)} of part ${part}, ${formatMass(have)} are there, and no pack of the shop holds ${part}. ${part === 'B' ? 'Resin without its hardener stays soft' : 'Hardener alone hardens nothing'}: get ${part} of the same make, or a kit.`,
          value: have,
          unit: 'g' as const,
          limit: need,
          basis: 'both parts in the ratio of the label; stock and packs as the shop gives them',
          settledBy: `the weight of ${part} on the shelf`
        }
      ]
    })
}
