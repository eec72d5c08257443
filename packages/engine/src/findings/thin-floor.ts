import { decimals } from '../quantity/format.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Least floor under a pocket, mm: thinner ones chip, print through and break under load (common practice). */
export const LEAST_FLOOR_MM = 3

/** A floor or web under a cut, thinner than practice. */
export const thinFloor: Check = {
  id: 'thin-floor',
  about: 'a floor left under a cut thinner than practice',
  cases: ['C76', 'C91'],
  run
}

function run(work: Work): Found[] {
  const filled = new Set(work.piece.pours.flatMap(p => p.into ?? []))
  return work.covers.flatMap(({ cut, floor }): Found[] => {
    const { id, at, value } = work.entries.cuts[cut]!
    // A cut that is filled again is as thick as before; the edge band of an outline is waste.
    if (floor === null || value.kind === 'outline' || filled.has(id)) return []
    // Of two cuts with a web between them the one entered later in the document says so.
    if (floor.met !== null && floor.met > cut) return []
    if (floor.mm <= 1e-6 || floor.mm >= LEAST_FLOOR_MM - 1e-6) return []
    const beyond = floor.met === null ? 'the other face' : work.entries.cuts[floor.met]!.id
    return [
      {
        severity: 'caution',
        at,
        says: `${id} leaves a floor of ${decimals(floor.mm, 1)} mm to ${beyond}, near ${decimals(floor.x, 0)}, ${decimals(floor.y, 0)}; below ${LEAST_FLOOR_MM} mm a floor chips when it is cut and breaks when it is pressed on.`,
        value: floor.mm,
        unit: 'mm',
        limit: LEAST_FLOOR_MM,
        basis: 'floor from the cores at the cut, finished; 3 mm: common practice, no source',
        settledBy: 'the thickness of the flattened piece, measured before the cut',
        ...deepen(work, cut, floor.mm - LEAST_FLOOR_MM, 'down')
      }
    ]
  })
}
