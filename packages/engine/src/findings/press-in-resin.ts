import type { SizeChain } from '../fits/chain.ts'
import type { Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { shareOf } from './fit-loose.ts'
import { removeValue, setValue } from './fix.ts'
import { holeName, partWords, widen } from './part-shape.ts'
import { seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** Clearance of metal in resin on the radius, mm (makers' reports; assumed, no source). */
const LEAST_MM = 0.1

/** A part pressed into resin: it holds, and splits the resin overnight or in the first cold. */
export const pressInResin: Check = {
  id: 'press-in-resin',
  about: 'a part pressed into resin without clearance on its radius',
  cases: ['C11'],
  run
}

function run(work: Work): Found[] {
  return seatsOf(work).flatMap((seat): Found[] => {
    const { fit, entry } = seat
    if (!seat.press || fit.chain === null || fit.clearanceMm === null) return []
    if (shareOf(fit.chain.walls.pours) <= 0.5) return []
    const [low, central, high] = fit.clearanceMm
    if (central >= LEAST_MM - 1e-6) return []
    const hole = holeName(work, fit, 'its hole')
    const wider = widen(work, fit, Math.max(seat.gapMm + LEAST_MM - central + 0.02, fit.wantedGapMm))
    return [
      {
        severity: 'caution',
        at: entry.at,
        says: `${entry.id}, ${partWords(seat.part)}, is pressed into resin in ${hole}, ${central < 0 ? `tight by ${decimals(-central, 2)} mm` : `with ${decimals(central, 2)} mm of play`} on the radius: resin that still shrinks on it, or cools on it, splits. Leave ${decimals(LEAST_MM, 1)} mm and glue it, once the resin is fully cured.`,
        value: central,
        unit: 'mm',
        band: [low, high],
        limit: LEAST_MM,
        basis: 'metal in resin wants about 0.1 mm on the radius: makers’ reports, common practice, no source',
        settledBy: 'the part pressed into an offcut of the same casting and left for a week',
        ...(wider.fix
          ? {
              fix: [
                ...wider.fix,
                ...(reamed(work, fit.chain) ?? []),
                ...setValue(work.document, `${entry.at}/fitting`, 'loose')
              ],
              fixSays: `${wider.fixSays}, ${entry.id} glued in loose`
            }
          : {})
      }
    ]
  })
}

// A hole that is no longer pressed into is drilled, not reamed to a class.
function reamed(work: Work, { of, index }: SizeChain): Patch | null {
  return of === 'cut' ? removeValue(work.document, `${work.entries.cuts[index]!.at}/toleranceClass`) : null
}
