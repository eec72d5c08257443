import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { holeOf, widen } from './part-shape.ts'
import type { Work } from './work.ts'

/** Interference that a part pushed in tight still takes, mm on a side (common practice). */
const PRESS_MM = 0.1
/** A gap nearer than this to the limit is at it, mm: curves stray as much from their chords. */
const ROUNDING_MM = 0.01

/** A part that does not go into its hole, or goes in without the play it wants. */
export const hardwarePocket: Check = {
  id: 'hardware-pocket',
  about: 'hardware bigger than its pocket, or without the play it wants',
  cases: ['C91', 'C94', 'C11'],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    // A part whose body stays outside, as a handle's, puts only its screws into a hole.
    const bodyGoesIn = fit.record.pocket !== null || fit.record.body === null || value.clearance !== undefined
    if (fit.gapMm === null || fit.part === null || !bodyGoesIn) return []
    const press = value.fitting === 'press'
    const least = press ? -PRESS_MM : 0
    const wanted = press ? least : fit.wantedGapMm
    if (fit.gapMm >= wanted - ROUNDING_MM) return []
    const stop = fit.gapMm < least - ROUNDING_MM
    const hole = holeOf(work, fit.hardware)?.id ?? 'its hole'
    const { shape, lengthMm, widthMm } = fit.part
    const size =
      shape === 'round'
        ? `${decimals(widthMm, 1)} across`
        : `${decimals(lengthMm, 1)} × ${decimals(widthMm, 1)}`
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: stop
          ? `${id}, ${size}, does not go into ${hole}: it lacks ${decimals(-fit.gapMm, 1)} mm at its tightest.`
          : `${id}, ${size}, has ${decimals(fit.gapMm, 3)} mm at its tightest in ${hole} and wants ${decimals(wanted, 3)} on each side: parts differ, and timber and resin move. Measure yours.`,
        value: fit.gapMm,
        unit: 'mm',
        limit: stop ? least : wanted,
        basis:
          value.clearance !== undefined
            ? 'gap wanted: the piece; sizes of the part as given'
            : 'sizes and play of the part: the catalogue, common practice, where the piece does not give them',
        settledBy: 'the part in the hand, measured',
        ...widen(work, fit, wanted)
      }
    ]
  })
}
