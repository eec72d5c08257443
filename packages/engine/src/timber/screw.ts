import { inRange } from '../quantity/range.ts'

/**
 * Wood screws that hold timber down in a mould: pulled straight out of side grain.
 *
 *   p = 108.25·G²·D·L          N at which it pulls out        working value p/5
 *
 *   G  specific gravity, oven-dry mass and volume     D  diameter of the shank, mm
 *   L  length of the threaded part in the timber, mm
 *
 * Source: Wood Handbook (FPL-GTR-190/282) chapter 8, withdrawal of wood screws, metric form (memory; 15 700·G²·D·L in
 * pounds and inches is the same within 0.1 %); a fifth of it for use: common practice (memory).
 * Check: G 0.55, 4 mm, 15 mm: 1965 N, 393 N in use.
 *
 * Limits: into side grain, with a pilot hole, for a pull along the screw that lasts hours. Half in end grain. Nothing
 * here is a claim of strength in use: it tells how many screws keep timber from floating.
 */
export function screwHoldsN(specificGravity: number, diameterMm: number, threadInMm: number): number {
  inRange('specific gravity', specificGravity, 0.1, 1.5, '(water is 1)')
  inRange('diameter of the screw', diameterMm, 1, 12, 'mm')
  inRange('thread in the timber', threadInMm, 1, 200, 'mm')
  return (PULL_OUT * specificGravity ** 2 * diameterMm * threadInMm) / WORKING
}

const PULL_OUT = 108.25
/** Pull-out over what is counted on. */
const WORKING = 5
