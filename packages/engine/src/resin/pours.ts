import { inRange } from '../quantity/range.ts'

/**
 * Relative excess of depth that is taken as rounding: 0.5 %. A depth of 2 in typed as 51 mm is 0.4 % over;
 * a greatest depth is known to ±25 % at best, so no pour is added for less.
 */
export const DEPTH_ROUNDING = 0.005

/**
 * Pours of at most `maxMm` needed for `totalMm`: ceil(total/max), forgiving `rounding` of the total.
 * Check: 2 in over 1/4 in is 8, not 9, in inches as in rounded millimetres.
 */
export function poursNeeded(totalMm: number, maxMm: number, rounding = DEPTH_ROUNDING): number {
  inRange('total depth in mm', totalMm, 1e-6, 1e6)
  inRange('greatest depth of a pour in mm', maxMm, 1e-6, 1e6)
  inRange('rounding', rounding, 0, 0.1)
  return Math.max(1, Math.ceil((totalMm / maxMm) * (1 - rounding) - 1e-9))
}
