import { thicknessRead } from '../cuts/pins/thickness-read.ts'
import { decimals } from '../quantity/format.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import { LEAST_FLOOR_MM } from './thin-floor.ts'
import type { Work } from './work.ts'

/** How much thinner than planned a blank may come out, mm (case C76; practice). */
const THINNER_MM = 0.5

/** A wall between cuts from both faces that is thin enough once the blank is not as thick as planned. */
export const wallBetween: Check = {
  id: 'wall-between',
  about:
    'a wall between cuts from both faces, on the thickness as measured, or on one half a millimetre less',
  cases: ['C76'],
  run
}

function run(work: Work): Found[] {
  const read = thicknessRead(work.stack, work.readings)
  const lessMm = read === null ? THINNER_MM : read.plannedMm - read.measuredMm
  const filled = new Set(work.piece.pours.flatMap(p => p.into ?? []))
  return work.covers.flatMap(({ cut, floor }): Found[] => {
    if (floor === null || floor.met === null || floor.met > cut) return []
    const { id, at } = work.entries.cuts[cut]!
    // What is too thin as planned is said already.
    const then = floor.mm - lessMm
    if (filled.has(id) || floor.mm < LEAST_FLOOR_MM - 1e-6 || then >= LEAST_FLOOR_MM - 1e-6) return []
    const met = work.entries.cuts[floor.met]!.id
    const says =
      read === null
        ? `${id} and ${met} leave ${decimals(floor.mm, 1)} mm between them; each is cut from its own face, so of a blank ${decimals(THINNER_MM, 1)} mm thinner ${decimals(then, 1)} is left. Measure the blank once it is flattened.`
        : `the piece is ${decimals(read.measuredMm, 1)} mm thick where ${decimals(read.plannedMm, 1)} was planned: ${id} and ${met} leave ${decimals(then, 1)} mm between them instead of ${decimals(floor.mm, 1)}.`
    return [
      {
        severity: read === null ? 'note' : 'caution',
        at,
        says: `${says} Below ${LEAST_FLOOR_MM} mm it breaks.`,
        value: then,
        unit: 'mm',
        limit: LEAST_FLOOR_MM,
        basis: 'cores at the cuts, less what the blank lacks; 3 mm: common practice, no source',
        ...(read === null ? { settledBy: 'the thickness of the flattened piece' } : {}),
        ...deepen(work, cut, then - LEAST_FLOOR_MM, 'down')
      }
    ]
  })
}
