import { inRange } from '../quantity/range.ts'

/**
 * Specific gravity, density, air and greatest moisture of timber.
 *
 *   G_x = G_b/(1 − 0.265·G_b·(1 − x/30))       x < 30 %; G_b from 30 % on (no more swelling)
 *   ρ_x = 1000·G_x·(1 + x/100)                 kg/m³
 *   MC_max = 100·(1.54 − G_b)/(1.54·G_b)       %: cell walls saturated and every cell full
 *   v_a = 1 − G_x·(0.667 + 0.01·x)             air as a fraction of the volume
 *
 *   G_b  basic specific gravity: oven-dry mass over green volume, over water    x  moisture, %
 *   1.54 specific gravity of the cell wall with helium or water; 1.5 (so 0.667) in Siau's void fraction
 *
 * Source: Wood Handbook (FPL-GTR-190/282) equations 4-9 to 4-11 and 4-3 (memory); Siau, Transport Processes
 * in Wood (1984), void fraction (memory).
 * Check: walnut G_b 0.51 gives G_12 0.555, 622 kg/m³, MC_max 131 %, air (G 0.55) 0.59 at 8 % and 0.57 at 12 %.
 *
 * Limits: the swelling term is the average of species, so tabulated G_12 differs by up to 0.03 (black locust
 * 0.05); boards of one species spread by about 10 % (coefficient of variation; memory). Weigh and measure
 * yours.
 */

const START_PCT = 30
const SWELLING = 0.265
const CELL_WALL_GRAVITY = 1.54

/**
 * Specific gravity on oven-dry mass and volume at `moisturePct` (0..200 %), from the basic one (0.1..1.1).
 */
export function specificGravityAt(basicSpecificGravity: number, moisturePct: number): number {
  check(basicSpecificGravity, moisturePct)
  const missing = Math.max(0, 1 - moisturePct / START_PCT)
  return basicSpecificGravity / (1 - SWELLING * basicSpecificGravity * missing)
}

/** Density at `moisturePct`, kg/m³, water included. */
export function densityKgM3(basicSpecificGravity: number, moisturePct: number): number {
  return 1000 * specificGravityAt(basicSpecificGravity, moisturePct) * (1 + moisturePct / 100)
}

/**
 * Basic specific gravity from a density measured or tabulated at `moisturePct`: the exact inverse of
 * {@link densityKgM3}, for rows that only give kg/m³ at 12 %.
 *
 * @throws RangeError: density 50..2000 kg/m³, moisture 0..200 %, or a result outside 0.1..1.1
 */
export function basicSpecificGravityFromDensity(densityKgPerM3: number, moisturePct: number): number {
  inRange('density', densityKgPerM3, 50, 2000, 'kg/m³')
  inRange('moisture content', moisturePct, 0, 200, '%')
  const gravity = densityKgPerM3 / (1000 * (1 + moisturePct / 100))
  const missing = Math.max(0, 1 - moisturePct / START_PCT)
  const basic = gravity / (1 + SWELLING * gravity * missing)
  return inRange('basic specific gravity', basic, 0.1, 1.1, `(from ${densityKgPerM3} kg/m³)`)
}

/** Moisture when every cell is full of water, %. */
export function greatestMoisturePct(basicSpecificGravity: number): number {
  check(basicSpecificGravity, 0)
  return (100 * (CELL_WALL_GRAVITY - basicSpecificGravity)) / (CELL_WALL_GRAVITY * basicSpecificGravity)
}

/**
 * Air as a fraction of the volume, 0..1.
 *
 * @param specificGravity on oven-dry mass and volume at this moisture, 0.1..1.5 (tabulated, or from
 *   {@link specificGravityAt}). Near zero (heaviest timbers) the average constants can pass below nothing; that
 *   reads as 0.
 */
export function airFraction(specificGravity: number, moisturePct: number): number {
  inRange('specific gravity', specificGravity, 0.1, 1.5, '(water is 1)')
  inRange('moisture content', moisturePct, 0, 200, '%')
  return Math.max(0, 1 - specificGravity * (0.667 + 0.01 * moisturePct))
}

/**
 * Upper bound of the resin that a face can drink, g per m²: every void filled down to the depth that is open
 * to it. 1 kg/m³ over 1 mm is 1 g/m². The accessible depth is the weak figure: fractions of a mm across the
 * grain, centimetres into open end grain.
 */
export function resinUptakeBoundGPerM2(
  airFractionOfTimber: number,
  accessibleDepthMm: number,
  resinDensityKgM3: number
): number {
  inRange('air fraction', airFractionOfTimber, 0, 1, '(of the volume)')
  inRange('accessible depth', accessibleDepthMm, 0, 1000, 'mm')
  inRange('density of the resin', resinDensityKgM3, 500, 3000, 'kg/m³')
  return airFractionOfTimber * accessibleDepthMm * resinDensityKgM3
}

function check(basicSpecificGravity: number, moisturePct: number): void {
  inRange('basic specific gravity', basicSpecificGravity, 0.1, 1.1, '(water is 1)')
  inRange('moisture content', moisturePct, 0, 200, '%')
}
