import { gapOf, type HardwareFit } from '../fits/hardware.ts'
import { decimals } from '../quantity/format.ts'
import { centroid } from '../shape/measure.ts'
import type { Found } from './finding.ts'
import { removeValue, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Nearer than this to the middle of its hole a part is where it is meant to be, mm. */
const PLACED_MM = 0.5

/** A part that lacks no more than this at the middle of its hole was meant for it: how tight it is comes after, mm. */
const NEARLY_MM = 0.5

/** A part that would go into its hole, if both were at one place. */
export interface Misplaced {
  readonly says: string
  readonly mend: Pick<Found, 'fix' | 'fixSays'>
}

/**
 * A part that sticks out of its hole only because the piece puts the two at different places; null where it would not
 * nearly go in at the middle of the hole either. What was never placed is moved: a hole without `at` to its part, else the part to
 * the hole.
 */
export function misplaced(work: Work, fit: HardwareFit, leastMm: number): Misplaced | null {
  const { at, id, value } = work.entries.hardware[fit.hardware]!
  const cut = work.entries.cuts.find(c => c.id === value.in || c.value.for === id)
  const region = cut === undefined ? null : (work.stack.geometry.cutRegions[cut.index] ?? null)
  if (cut === undefined || region === null || fit.part === null || value.at === undefined) return null
  const middle = centroid(region)
  const offMm = Math.hypot(fit.x - middle.x, fit.y - middle.y)
  if (offMm < PLACED_MM || gapOf(fit.part, value.turn, middle.x, middle.y, region) < leastMm - NEARLY_MM)
    return null
  const place = (x: number, y: number) => `${decimals(x, 1)}, ${decimals(y, 1)}`
  const { shape } = cut.value
  const alone =
    work.entries.hardware.filter(h => h.value.in === cut.id || cut.value.for === h.id).length === 1
  const unplaced = alone && shape !== undefined && shape.at === undefined
  const round = shape?.circle !== undefined || shape?.rectangle !== undefined
  return {
    says: `${id} is placed at ${place(fit.x, fit.y)}, ${cut.id} at ${place(middle.x, middle.y)}: ${decimals(offMm, 1)} mm apart. Move one to the other.`,
    mend:
      unplaced && round
        ? {
            fix: setValue(work.document, `${cut.at}/shape/at`, [fit.x, fit.y]),
            fixSays: `${cut.id} at ${place(fit.x, fit.y)}`
          }
        : { fix: removeValue(work.document, `${at}/at`), fixSays: `${id} in the middle of ${cut.id}` }
  }
}
