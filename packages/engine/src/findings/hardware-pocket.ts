import { decimals } from '../quantity/format.ts'
import { closedBy, lossWords } from './closed-by.ts'
import type { Check, Found } from './finding.ts'
import { misplaced } from './part-placed.ts'
import { holeName, partWords, widen } from './part-shape.ts'
import { after, leftWords, ROUNDING_MM, seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** Room beyond what is lacking that a fix gives, mm: a wider hole moves a little more. */
const SPARE_MM = 0.02

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
    if (gapMm >= wantedMm - ROUNDING_MM) return []
    const drawn = gapMm < leastMm - ROUNDING_MM
    const off = drawn ? misplaced(work, fit, leastMm) : null
    // Too little as drawn is less in the end: coats and the year close it further.
    const all = after(seat, fit.shares)
    const stop = drawn || all.severity === 'stop'
    const { at, id, value } = seat.entry
    const hole = holeName(work, fit, 'its hole')
    const size = partWords(seat.part)
    const says = drawn
      ? `${id}, ${size}, does not go into ${hole}: it lacks ${decimals(-gapMm, 1)} mm at its tightest.`
      : stop
        ? `${id}, ${size}, has ${decimals(gapMm, 3)} mm at its tightest in ${hole} as drawn; ${lossWords(closedBy(fit.shares, false))}, and ${leftWords(all.centralMm)}: it does not go in.`
        : `${id}, ${size}, has ${decimals(gapMm, 3)} mm at its tightest in ${hole} as drawn and wants ${decimals(wantedMm, 3)} on each side: parts differ, and timber and resin move. Measure yours.`
    // Wide enough for what is still to come too, or the next finding takes this one's place.
    const widest = Math.max(wantedMm, gapMm + all.lacksMm + SPARE_MM)
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: off?.says ?? says,
        value: drawn || !stop ? gapMm : all.centralMm,
        unit: 'mm',
        limit: stop ? leastMm : wantedMm,
        basis:
          value.clearance !== undefined
            ? 'gap wanted: the piece; sizes of the part as given'
            : 'sizes and play of the part: the catalogue, common practice, where the piece does not give them',
        settledBy: 'the part in the hand, measured',
        ...(off?.mend ?? widen(work, fit, stop && !drawn ? widest : wantedMm))
      }
    ]
  })
}
