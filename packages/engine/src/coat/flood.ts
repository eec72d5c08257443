import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'

/**
 * How thick a liquid lies by itself, and when it needs a dam.
 *
 *   a = √(γ/(ρ·g))           capillary length
 *   h = 2·a·sin(θ/2)         thickness of a wide puddle
 *
 *   γ surface tension N/m, ρ density kg/m³, g 9.80665 m/s²
 *   θ angle between liquid and face at its rim; at a sharp edge it holds up to 90° and a little more
 *
 * Source: de Gennes, Brochard-Wyart and Quéré, Capillarity and wetting phenomena (memory); γ of epoxy 0.035 to
 * 0.045 N/m (memory).
 * Check: at 1100 kg/m³ a is 1.80 to 2.04 mm; γ 0.040: 20° 0.67, 45° 1.47, 60° 1.93, 90° 2.72, 120° 3.33 mm.
 *
 * Limits: a level face with a clean sharp edge. A rounded or dirty edge, a slope or a bump lets it run earlier;
 * thin liquid spread below about 1 mm may draw back from spots that it does not wet.
 */
/** Surface tension of liquid epoxy, N/m: 0.035 to 0.045 (memory). */
export const EPOXY_TENSION: readonly [low: number, middle: number, high: number] = [0.035, 0.04, 0.045]

/** Angle up to which a liquid holds at a sharp edge, degrees: upright (practice; it may bulge a little more). */
export const EDGE_DEG = 90

/** Thinner than this a liquid may draw back into craters unless it is spread, mm (practice). */
export const CRATERS_BELOW_MM = 1

/** What a dam stands over the coat, mm: two (practice), so that a wave or a slope does not run over. */
export const DAM_OVER_MM = 2

/** Capillary length, mm. */
export function capillaryMm(tensionNM: number, densityKgM3: number): number {
  inRange('surface tension', tensionNM, 0.005, 0.5, 'N/m')
  return (
    1000 * Math.sqrt(tensionNM / (inRange('density', densityKgM3, 500, 3000, 'kg/m³') * GRAVITY_M_PER_S2))
  )
}

/** Thickness at which a wide puddle stands, mm. */
export function puddleMm(tensionNM: number, densityKgM3: number, contactDeg: number): number {
  inRange('contact angle', contactDeg, 0, 180, '°')
  return 2 * capillaryMm(tensionNM, densityKgM3) * Math.sin((contactDeg * Math.PI) / 360)
}

/** What stands up to a sharp edge without a dam, mm: least, middle and most over the band of the tension. */
export function standsMm(densityKgM3: number): readonly [low: number, middle: number, high: number] {
  const [low, middle, high] = EPOXY_TENSION
  const at = (tension: number) => puddleMm(tension, densityKgM3, EDGE_DEG)
  return [at(low), at(middle), at(high)]
}

/** Height of dam for a coat, mm, in whole millimetres; 0 to 1000, a liquid stands higher than what it cures to. */
export function damForMm(coatMm: number): number {
  return Math.ceil(inRange('coat', coatMm, 0, 1000, 'mm') + DAM_OVER_MM - 1e-9)
}
