import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setValue, typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** Corners drawn sharper than the bit in its bush can make them. */
export const bushCorner: Check = {
  id: 'bush-corner',
  about: 'inside corners sharper than the router bit makes',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.hand.flatMap((h): Found[] => {
    const { doing } = h
    if (h.of !== 'cut' || doing === null || doing.corners.length === 0 || doing.leastRadiusMm === null)
      return []
    // Whether a part meets the corners is judged where it is fitted.
    if (work.entries.hardware.some(e => e.value.in === h.id)) return []
    const drawn = typedAt(work.document, `${h.at}/shape/rectangle`) !== undefined
    const count = doing.corners.length
    return [
      {
        severity: 'note',
        at: h.at,
        says: `${count} corner${count === 1 ? '' : 's'} of ${h.id} ${count === 1 ? 'is' : 'are'} drawn sharper than the bit of ${decimals(doing.bitMm!, 1)} makes ${count === 1 ? 'it' : 'them'}: ${decimals(doing.leastRadiusMm, 1)} mm round, up to ${decimals(Math.max(...doing.corners.map(c => c.leftMm)), 1)} mm left standing. Square them with a chisel, or draw them as they come.`,
        value: work.piece.cuts[h.index]!.shape?.corner ?? 0,
        unit: 'mm',
        limit: doing.leastRadiusMm,
        basis:
          'plane geometry: half of the bit; bits of the shop, where it lists none the usual sizes of the trade',
        ...(drawn
          ? {
              fix: setValue(work.document, `${h.at}/shape/corner`, rounded(doing.leastRadiusMm, 'up', 0.1)),
              fixSays: `Corners of ${decimals(doing.leastRadiusMm, 1)}`
            }
          : {})
      }
    ]
  })
}
