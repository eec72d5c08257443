import { decimals } from '../quantity/format.ts'
import { deepen, roomUnder } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import { LEAST_FLOOR_MM } from './thin-floor.ts'
import type { Work } from './work.ts'

/** A thread that does not reach through what is left in front of it, with its washer and nut. */
export const threadShort: Check = {
  id: 'thread-short',
  about: 'a shaft or thread too short for the thickness left',
  cases: ['C89', 'C91'],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { shaft } = fit
    if (shaft === null || shaft.hasMm >= shaft.needsMm - 1e-6) return []
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    const { passesMm, needsMm, hasMm, stock } = shaft
    const longer = stock.find(t => t >= needsMm)
    const lacking = needsMm - hasMm
    const nut = decimals(needsMm - passesMm, 1)
    return [
      {
        severity: 'stop',
        at,
        says: `${id} has a thread of ${decimals(hasMm, 1)} mm${value.thread === undefined ? ', the longest it is sold with' : ''}; it passes ${decimals(passesMm, 1)} mm and needs ${nut} more for washer and nut: ${decimals(lacking, 1)} mm too short. The length of the thread counts, not that of the whole shaft.`,
        value: hasMm,
        unit: 'mm',
        limit: needsMm,
        basis:
          'material round the shaft from the cores, finished; 3.2 mm (1/8 in) beyond it: common practice, no source',
        settledBy: 'the thread and the floor of the pocket, measured',
        ...(value.thread !== undefined && longer !== undefined
          ? {
              fix: setQuantity(work.document, `${at}/thread`, 'length', longer, 'up'),
              fixSays: `A thread of ${decimals(longer, 1)} mm`
            }
          : deeperPocket(work, fit.hardware, lacking))
      }
    ]
  })
}

// A deeper pocket, where it leaves a floor.
function deeperPocket(work: Work, hardware: number, byMm: number): Pick<Found, 'fix' | 'fixSays'> {
  const { id, value } = work.entries.hardware[hardware]!
  const cut = work.entries.cuts.find(c => c.id === value.in || c.value.for === id)
  if (cut === undefined || roomUnder(work, cut.index, LEAST_FLOOR_MM) < byMm) return {}
  return deepen(work, cut.index, byMm, 'up')
}
