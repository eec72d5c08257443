import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'

/**
 * A wet film on an upright face runs down.
 *
 *   v = ρ·g·h²/(2·η)        speed of its surface, m/s
 *   h = √(2·η·v/(ρ·g))      film that runs no faster than v
 *
 *   ρ density kg/m³, η viscosity Pa·s, h film m, g 9.80665 m/s²
 *
 * Source: viscous film down a plate without slip at the plate or drag at the air (textbook; derived).
 * Check: 0.2 mm of 1 Pa·s and 1000 kg/m³ run 0.196 mm/s.
 *
 * Limits: a liquid of one viscosity. Lacquers stiffen within seconds as their solvent leaves, and many are made
 * so that they stand: this is for resin, which does neither.
 */
/**
 * Speed up to which a film on an edge is taken to stand, mm/s: with it 1 Pa·s stands 0.14 mm thick, in the middle
 * of the 0.1 to 0.2 mm of practice.
 */
const STANDS_MM_PER_S = 0.1

/** Speed of the surface of a film on an upright face, mm/s. */
export function sagMmPerS(filmUm: number, viscosityPaS: number, densityKgM3: number): number {
  const h = inRange('film', filmUm, 0, 50_000, 'µm') * 1e-6
  return (1000 * densityOf(densityKgM3) * GRAVITY_M_PER_S2 * h * h) / (2 * viscosityOf(viscosityPaS))
}

/** Thickest film on an upright face that runs no faster than `mmPerS`, µm. */
export function standingUm(
  viscosityPaS: number,
  densityKgM3: number,
  mmPerS: number = STANDS_MM_PER_S
): number {
  const v = inRange('speed', mmPerS, 0, 1000, 'mm/s')
  // The speed goes with the square of the film.
  return Math.sqrt(v / sagMmPerS(1, viscosityPaS, densityKgM3))
}

function viscosityOf(paS: number): number {
  return inRange('viscosity', paS, 1e-4, 1e6, 'Pa·s')
}

function densityOf(kgM3: number): number {
  return inRange('density', kgM3, 500, 3000, 'kg/m³')
}
