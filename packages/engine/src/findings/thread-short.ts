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
    if (shaft === null || shaft.hasMm >= shaft.needsMm + shaft.doubtMm - 1e-6) return []
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    const { passesMm, filmMm, doubtMm, needsMm, hasMm, stock } = shaft
    // Long enough at the middle, not where coats are thick and the pocket is shallow.
    const close = hasMm >= needsMm - 1e-6
    const most = needsMm + doubtMm
    const longer = stock.find(t => t >= most)
    const lacking = most - hasMm
    const passes = passesMm + filmMm
    const nut = decimals(needsMm - passes, 1)
    return [
      {
        severity: close ? 'caution' : 'stop',
        at,
        says: `${id} has a thread of ${decimals(hasMm, 1)} mm${value.thread === undefined ? ', the longest it is sold with' : ''}; it passes ${decimals(passes, 1)} mm${filmMm >= 0.05 ? ' with its coats' : ''} and needs ${nut} more for washer and nut: ${close ? `with the pocket cut a little shallow it is ${decimals(lacking, 2)} mm too short` : `${decimals(needsMm - hasMm, 1)} mm too short`}. The length of the thread counts, not that of the whole shaft.`,
        value: hasMm,
        unit: 'mm',
        limit: close ? most : needsMm,
        basis:
          'material round the shaft from the cores, finished, and the films of its coats; 3.2 mm (1/8 in) beyond it: common practice, no source',
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
