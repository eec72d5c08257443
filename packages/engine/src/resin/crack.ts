import { inRange } from '../quantity/range.ts'
import { strainAfterGel } from './shrinkage.ts'

/**
 * Strain that pulls on a casting where it cannot shrink, beside the strain at which cast resin breaks. A
 * caution with its figures, never a statement of strength.
 *
 *   cure      S·(1 − αg)/3                           what shrinks after gel, linear (shrinkage.ts)
 *   cooling   α_T·(T_core − T_skin)                  the core was hotter when it set, and shrinks more on cooling
 *   corner    (cure + cooling)·(1 + 2·√(a/ρ))        Inglis: a notch of depth a and root radius ρ
 *   round     cure + cooling                         a hard ball in resin that shrinks on it: the hoop strain at
 *                                                    its face is the free strain itself (Lamé)
 *
 *   S volume shrinkage 1   αg conversion at gel   α_T 65e-6 1/K (glass 55-75: read 70)   a depth of the resin at
 *   the corner, mm         ρ radius there, mm
 *
 * Source: Inglis 1913; Lamé's thick sphere (memory); strain at break 3-6 % of clear castings (memory).
 * Check: S 5 %, αg 0.6: 0.67 %; 50 K: 0.33 %; round hole a = ρ: 3 times.
 *
 * Limits: linear and elastic: warm resin creeps, so slow cure and slow cooling strain less than this says; timber
 * gives way a little too. The depth of the pour stands for the size of the notch. Above a tenth of strain the
 * figure itself means nothing but "far past".
 */
export interface RestraintStrain {
  readonly cure: number
  readonly cooling: number
  /** Sum, nothing concentrated. */
  readonly free: number
}

export function restraintStrain(p: {
  readonly shrinkage: number
  readonly gelConversion: number
  readonly coreOverSkinK: number
}): RestraintStrain {
  inRange('difference of core and skin in K', p.coreOverSkinK, 0, 400)
  const cure = strainAfterGel(p.shrinkage, p.gelConversion)
  const cooling = EXPANSION_PER_K * p.coreOverSkinK
  return { cure, cooling, free: cure + cooling }
}

/** Linear thermal expansion of cured resin, 1/K: 55-75e-6 in the glass. */
const EXPANSION_PER_K = 65e-6

/** How many times the free strain a corner of `radiusMm` sees in resin `depthMm` deep. */
export function cornerFactor(depthMm: number, radiusMm: number): number {
  inRange('depth in mm', depthMm, 0, 5000)
  inRange('radius of a corner in mm', radiusMm, 1e-3, 1e5)
  return 1 + 2 * Math.sqrt(depthMm / radiusMm)
}

/** Strain at which clear castings break: 3 to 6 % (memory). */
export const BREAK_STRAIN: readonly [low: number, high: number] = [0.03, 0.06]

/**
 * How much cooler the face is than the hottest place, K, of a layer that is `aboveRoomK` over its room at its
 * hottest: heat made evenly, all of it leaving by the face, steady.
 *
 *   (T_max − T_face)/(T_max − T_room) = (Bi/2)/(1 + Bi/2),   Bi = h·L/k
 *
 * Source: plane wall with even generation, one face insulated (Incropera & DeWitt, chapter 3; memory).
 * Check: Bi 2: a half. Limits: with heat leaving below as well the difference is smaller.
 */
export function coreOverFaceK(aboveRoomK: number, depthMm: number, hWm2K: number, kWmK: number): number {
  inRange('depth in mm', depthMm, 0, 5000)
  const half = (hWm2K * depthMm) / 1000 / kWmK / 2
  return (Math.max(0, aboveRoomK) * half) / (1 + half)
}
