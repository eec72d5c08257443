import { inRange } from '../quantity/range.ts'
import { daysToFraction, type SettlingDays } from './settle.ts'

/**
 * Is a slab dry enough? The rule of thumb beside what diffusion says.
 *
 *   rule       a year of air drying per inch of thickness, and metered
 *   diffusion  days until the core is within `tolerancePct` of the balance of its room: coreFraction =
 *              1 − tolerance/|M − M_room| (settle.ts)
 *
 * Source: the rule is common practice; makers disagree with it (one counts three years for two inches), so
 * that end is given too. Diffusion: Crank, see settle.ts.
 * Check: 2.5 in (63.5 mm) needs 2.5 years by the rule, 3.75 by the slow end; 12 months are not enough.
 *
 * Limits: the two answer different questions and lie a factor of ten apart. The rule covers green timber
 * stacked outdoors, in cold and damp months, with free water and stickers; it says nothing of the room the
 * piece will live in, where air-dried timber at 12 to 18 % goes on drying. Diffusion starts at fibre
 * saturation, takes the surface in balance with the room at once and is therefore the least time. Neither
 * replaces the meter or, better, an oven-dry sample from the core.
 */

/**
 * Air-drying years per inch of thickness, and the slow end that makers report (practice; 3 years for 2 in).
 */
const AIR_DRYING_YEARS_PER_INCH = { rule: 1, slow: 1.5 }

/** How near the core must come to the balance of its room, points of moisture (practice). */
const CORE_TOLERANCE_PCT = 1

const DAYS_PER_YEAR = 365.25

export interface DryingByRule {
  readonly neededYears: number
  readonly slowYears: number
  readonly driedYears: number
  /** `no` before the rule's time, `doubtful` between the rule and its slow end, `yes` after both. */
  readonly ready: 'no' | 'doubtful' | 'yes'
}

/** The rule of thumb for `driedDays` of air drying. Kiln-dried timber is outside it: meter it. */
export function dryingByRule(thicknessMm: number, driedDays: number): DryingByRule {
  inRange('thickness', thicknessMm, 1, 1000, 'mm')
  inRange('time of drying', driedDays, 0, 36_525, 'days')
  const inches = thicknessMm / 25.4
  const neededYears = inches * AIR_DRYING_YEARS_PER_INCH.rule
  const slowYears = inches * AIR_DRYING_YEARS_PER_INCH.slow
  const driedYears = driedDays / DAYS_PER_YEAR
  const ready = driedYears < neededYears ? 'no' : driedYears < slowYears ? 'doubtful' : 'yes'
  return { neededYears, slowYears, driedYears, ready }
}

/**
 * Least days until the core has come within `tolerancePct` of the room's balance. Moisture above fibre
 * saturation counts as 30 %: the free water before that is not diffusion and takes longer.
 */
export function dryingByDiffusion(input: {
  readonly thicknessMm: number
  readonly coreMoisturePct: number
  readonly roomMoisturePct: number
  readonly tolerancePct?: number
  readonly openFaces?: 1 | 2
  readonly diffusionM2PerS?: number
}): SettlingDays {
  const { coreMoisturePct, roomMoisturePct, tolerancePct = CORE_TOLERANCE_PCT, openFaces = 2 } = input
  inRange('moisture of the core', coreMoisturePct, 0, 200, '%')
  inRange('balance of the room', roomMoisturePct, 0, 30, '%')
  inRange('tolerance', tolerancePct, 0.05, 10, '%')
  const away = Math.abs(Math.min(coreMoisturePct, 30) - roomMoisturePct)
  const fraction = away <= tolerancePct ? 0 : 1 - tolerancePct / away
  const slab = {
    thicknessMm: input.thicknessMm,
    openFaces,
    ...(input.diffusionM2PerS === undefined ? {} : { diffusionM2PerS: input.diffusionM2PerS })
  }
  return daysToFraction(slab, fraction, 'core')
}
