import { decimals } from '../quantity/format.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** The point of a drill that comes out where its full size does not. */
export const pointThrough: Check = {
  id: 'point-through',
  about: 'the point of a drill that comes out of the far face of a blind hole',
  cases: [],
  run
}

/** Left before the point, mm: less shows as a bump or a light spot (practice). */
const LEAST_MM = 0.5

function run(work: Work): Found[] {
  return work.hand.flatMap((h): Found[] => {
    const tip = h.doing?.tipMm ?? 0
    const floor = h.of === 'cut' ? (work.covers.find(c => c.cut === h.index)?.floor ?? null) : null
    // Where its full size comes out too, that is said already.
    if (tip === 0 || floor === null || floor.mm <= 1e-6 || floor.mm >= tip) return []
    return [
      {
        severity: 'caution',
        at: h.at,
        says: `${h.id} leaves ${decimals(floor.mm, 1)} mm, and the point of the drill goes ${decimals(tip, 1)} mm deeper than its full size: it comes out by ${decimals(tip - floor.mm, 1)} mm. Drill it less deep, rout the floor, or take a bit with a shorter point.`,
        value: floor.mm,
        unit: 'mm',
        limit: tip,
        basis:
          'points of drills: cone of 118°, spur of about a third of the diameter, or an eighth with a flat floor (common practice, no source)',
        settledBy: 'the point of the bit, measured',
        ...deepen(work, h.index, floor.mm - tip - LEAST_MM, 'down')
      }
    ]
  })
}
