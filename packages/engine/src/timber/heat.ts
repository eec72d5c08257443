import { inRange } from '../quantity/range.ts'

/**
 * Heat in timber: conductivity, heat capacity, diffusivity, thermal expansion.
 *
 *   eq. 4-15   k = G_x·(0.1941 + 0.004064·x) + 0.01864                       W/(m·K), across the grain
 *   eq. 4-16   c_0 = 0.1031 + 0.003867·T                                     kJ/(kg·K), oven-dry
 *   eq. 4-17   c_x = (c_0 + 4.18·x/100)/(1 + x/100) + A_c
 *              A_c = x·(−0.06191 + 2.36e-4·T − 1.33e-4·x)                    bond of water to wood
 *   eq. 4-18   α_R = (32.4·G_0 + 9.9)·1e-6                                   1/K, oven-dry, radial
 *   eq. 4-19   α_T = (32.4·G_0 + 18.4)·1e-6                                  1/K, oven-dry, tangential
 *
 *   G_x  specific gravity on oven-dry mass and volume at moisture x    T  temperature, K    x  moisture, %
 *
 * Source: Wood Handbook (FPL-GTR-190/282) chapter 4. Equation 4-15 and its ranges read; the others memory.
 * Check: G 0.50 at 12 % conducts 0.1401; 293.15 K and 12 % hold 1.620 kJ/(kg·K).
 *
 * Limits: 4-15 holds for G above 0.3, about 24 °C and less than 25 % moisture; single pieces ±20 %;
 * 2 to 3 % more per 10 K. 4-17 was fitted between 7 and 147 °C below fibre
 * saturation; colder is extrapolated to −10 °C. Above 30 % the water on top counts as free water (derived).
 */

/** Conductivity along the grain over that across it: 1.5 to 2.8, mean 1.8 (read). */
export const ALONG_OVER_ACROSS = { low: 1.5, central: 1.8, high: 2.8 }

/**
 * Conductivity across the grain, W/(m·K).
 *
 * @param specificGravity oven-dry mass over volume at this moisture, 0.1..1.5; below 0.3 extrapolated
 * @param moisturePct 0..60 %; above 25 extrapolated
 */
export function conductivityWPerMK(specificGravity: number, moisturePct: number): number {
  inRange('specific gravity', specificGravity, 0.1, 1.5, '(water is 1)')
  inRange('moisture content', moisturePct, 0, 60, '%')
  return specificGravity * (0.1941 + 0.004064 * moisturePct) + 0.01864
}

/**
 * Heat capacity of moist timber, kJ/(kg·K), per mass of timber with its water.
 *
 * @param tempK 263.15..420.15 K
 * @param moisturePct 0..200 %
 */
export function heatCapacityKJPerKgK(tempK: number, moisturePct: number): number {
  inRange('temperature', tempK, 263.15, 420.15, 'K')
  inRange('moisture content', moisturePct, 0, 200, '%')
  const dry = 0.1031 + 0.003867 * tempK
  const x = Math.min(moisturePct, 30)
  const bond = x * (-0.06191 + 2.36e-4 * tempK - 1.33e-4 * x)
  const bound = (dry + (WATER_KJ * x) / 100) / (1 + x / 100) + bond
  if (moisturePct <= 30) return bound
  // Past fibre saturation nothing binds the water: mass-weighted mean of the saturated timber and free water.
  return (bound * 1.3 + (WATER_KJ * (moisturePct - 30)) / 100) / (1 + moisturePct / 100)
}

/** Heat capacity of water in equation 4-17, kJ/(kg·K). */
const WATER_KJ = 4.18

/**
 * Thermal diffusivity across the grain, m²/s: k/(ρ·c).
 * Check: walnut at 8 % (0.14, 611 kg/m³, 1.53 kJ) about 1.5e-7; the handbook calls 1.6e-7 typical (memory).
 */
export function diffusivityM2PerS(
  conductivityWmK: number,
  densityKgM3: number,
  heatCapacityKJ: number
): number {
  inRange('conductivity', conductivityWmK, 1e-3, 10, 'W/(m·K)')
  inRange('density', densityKgM3, 50, 2000, 'kg/m³')
  inRange('heat capacity', heatCapacityKJ, 0.1, 10, 'kJ/(kg·K)')
  return conductivityWmK / (densityKgM3 * heatCapacityKJ * 1000)
}

/** Coefficient of thermal expansion across the grain, 1/K, oven-dry specific gravity 0.1..1.5. */
export function thermalExpansionPerK(ovenDryGravity: number, direction: 'radial' | 'tangential'): number {
  inRange('oven-dry specific gravity', ovenDryGravity, 0.1, 1.5, '(water is 1)')
  return (32.4 * ovenDryGravity + (direction === 'radial' ? 9.9 : 18.4)) * 1e-6
}

/** Coefficient of thermal expansion along the grain, 1/K, oven-dry: 3.1 to 4.5e-6 (memory). */
export const EXPANSION_ALONG_PER_K = { low: 3.1e-6, high: 4.5e-6 }
