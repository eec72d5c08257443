import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { holeName, partWords, widen } from './part-shape.ts'
import { seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** Play on a side from which a part that was pushed in tight is felt to be loose, mm (judgement). */
const LOOSE_MM = 0.03
/** How tight a fix makes it on a side in the end, mm: nominal less 0.05 across (practice). */
const TIGHT_MM = 0.025

/** A part to be pushed in tight that is loose, as drawn or in damp air. */
export const fitLoose: Check = {
  id: 'fit-loose',
  about: 'a press fit that has play, as it is drawn or once the timber swells',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return seatsOf(work).flatMap((seat): Found[] => {
    const { fit, entry, gapMm, leastMm } = seat
    // In resin a press fit is a matter of its own: it is better loose and glued.
    if (!seat.press || fit.chain === null || shareOf(fit.chain.walls.pours) > 0.5) return []
    const sure = fit.shares.reduce((sum, s) => sum + (s.sure ? s.sideMm[2] : s.sideMm[1]), 0)
    const most = gapMm + sure
    if (most <= LOOSE_MM) return []
    const drawn = gapMm > LOOSE_MM
    const hole = holeName(work, fit, 'its hole')
    // The rounding of the fix makes it wider by half of 0.05 at the most.
    const target = gapMm - most - TIGHT_MM
    return [
      {
        severity: 'caution',
        at: entry.at,
        says: `${entry.id}, ${partWords(seat.part)}, is to be pressed into ${hole}, but has ${decimals(most, 2)} mm of play on each side ${drawn ? 'as it is drawn' : 'in the dampest air, when the timber has swollen'}. Cut the hole smaller, or glue it.`,
        value: most,
        unit: 'mm',
        limit: LOOSE_MM,
        basis:
          'size as drawn, movement after Wood Handbook eq. 13-2; press fits in timber nominal less 0.05: common practice',
        settledBy: 'the part tried in a hole of the same bit in an offcut',
        ...(target >= leastMm && seat.part.shape === 'round' ? widen(work, fit, target) : {})
      }
    ]
  })
}

/** Sum of the shares of the walls that are of one kind. */
export function shareOf(walls: ReadonlyMap<number, number>): number {
  return [...walls.values()].reduce((sum, x) => sum + x, 0)
}
