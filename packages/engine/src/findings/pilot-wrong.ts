import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** How far a hole may lie beside the pilot's range, mm: bits come in steps of a tenth to a half. */
const BESIDE_MM = 0.2

/** A hole too small or too large for the screw or insert that goes in. */
export const pilotWrong: Check = {
  id: 'pilot-wrong',
  about: 'a pilot hole that splits what is round it, or holds nothing; a wood screw in resin',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { pilot, chain } = fit
    if (pilot === null || chain === null || chain.measured !== 'diameter') return []
    const { at, id } = work.entries.hardware[fit.hardware]!
    const cut = chain.of === 'cut' ? work.entries.cuts[chain.index]! : undefined
    // Right through, a screw has its shank in it and its thread beyond.
    if (cut?.value.through === true) return []
    const hole = cut?.id ?? work.entries.formers[chain.index]!.id
    if (pilot.never !== null)
      return [
        {
          severity: 'caution',
          at,
          says: `${id} goes into resin at ${hole}: ${pilot.never}.`,
          basis: pilot.basis
        }
      ]
    const mm = chain.drawnMm
    const small = mm < pilot.lowMm - BESIDE_MM
    if (!small && mm <= pilot.highMm + BESIDE_MM) return []
    const wanted = (pilot.lowMm + pilot.highMm) / 2
    const circle = cut?.value.shape?.grow === undefined ? cut?.value.shape?.circle : undefined
    return [
      {
        severity: 'caution',
        at,
        says: `${id} goes into ${hole}, ${decimals(mm, 2)} mm across; in ${pilot.into}${pilot.nearEnd ? ', near the end of the timber,' : ''} it wants ${decimals(pilot.lowMm, 1)} to ${decimals(pilot.highMm, 1)}. ${small ? `Smaller, it splits the ${pilot.into} or breaks off.` : 'Larger, its thread holds little or nothing.'}`,
        value: mm,
        unit: 'mm',
        limit: small ? pilot.lowMm - BESIDE_MM : pilot.highMm + BESIDE_MM,
        basis: pilot.basis,
        settledBy: 'one driven into an offcut',
        ...(circle === undefined
          ? {}
          : {
              fix: setQuantity(
                work.document,
                `${cut!.at}/shape/circle`,
                'length',
                wanted,
                small ? 'up' : 'down'
              ),
              fixSays: `${hole} about ${decimals(wanted, 1)} across`
            })
      }
    ]
  })
}
