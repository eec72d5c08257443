import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { holeName, partWords, widen } from './part-shape.ts'
import { ROUNDING_MM, seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** A part that does not go into its hole, or goes in without the play it wants. */
export const hardwarePocket: Check = {
  id: 'hardware-pocket',
  about: 'hardware bigger than its pocket, or without the play it wants',
  cases: ['C91', 'C94', 'C11'],
  run
}

function run(work: Work): Found[] {
  return seatsOf(work).flatMap((seat): Found[] => {
    const { fit, gapMm, leastMm, wantedMm } = seat
    const { at, id, value } = seat.entry
    if (gapMm >= wantedMm - ROUNDING_MM) return []
    const stop = gapMm < leastMm - ROUNDING_MM
    const hole = holeName(work, fit, 'its hole')
    const size = partWords(seat.part)
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: stop
          ? `${id}, ${size}, does not go into ${hole}: it lacks ${decimals(-gapMm, 1)} mm at its tightest.`
          : `${id}, ${size}, has ${decimals(gapMm, 3)} mm at its tightest in ${hole} and wants ${decimals(wantedMm, 3)} on each side: parts differ, and timber and resin move. Measure yours.`,
        value: gapMm,
        unit: 'mm',
        limit: stop ? leastMm : wantedMm,
        basis:
          value.clearance !== undefined
            ? 'gap wanted: the piece; sizes of the part as given'
            : 'sizes and play of the part: the catalogue, common practice, where the piece does not give them',
        settledBy: 'the part in the hand, measured',
        ...widen(work, fit, wantedMm)
      }
    ]
  })
}
