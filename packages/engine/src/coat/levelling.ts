import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'

/**
 * How a wavy wet film levels: a ripple of height A and length L on a film h decays as
 *
 *   dA/dt = −A·h³·k²·(ρ·g + γ·k²)/(3·η)          k = 2π/L
 *
 * so that it is down to a part f when the fluidity ∫dt/η has come to 3·ln(1/f)/(h³·k²·(ρ·g + γ·k²)). Of the two
 * terms in brackets the first is the weight, the second the surface tension (Orchard's law alone):
 *
 *   τγ = 3·η·L⁴/(16·π⁴·γ·h³)       τg = 3·η·L²/(4·π²·ρ·g·h³)       alike at L = 2π·√(γ/(ρ·g)), 12 mm for epoxy
 *
 * Source: S. E. Orchard, Applied Scientific Research A 11 (1962) 451 (memory); weight after the same lubrication
 * equation (derived).
 * Check: 1 Pa·s, 5 mm, 1 mm, 0.040 N/m: 0.030 s; 0.5 Pa·s, 5 mm, 0.1 mm, 0.035 N/m: 17 s;
 * an integration of the equation in small steps (test).
 *
 * Limits: long waves, L > 6·h; small ripples; no skin, no solvent leaving, no draught of surface tension. It tells
 * nothing of a face out of level: the pool lies level and the face does not.
 */
export interface WetFilm {
  readonly filmMm: number
  readonly tensionNM: number
  readonly densityKgM3: number
}

/** Time constant by surface tension alone, s. */
export function tensionTimeS(film: WetFilm, waveMm: number, viscosityPaS: number): number {
  const { h, gamma } = si(film)
  const l = waveOf(waveMm)
  return (3 * viscosityOf(viscosityPaS) * l ** 4) / (16 * Math.PI ** 4 * gamma * h ** 3)
}

/** Time constant by weight alone, s. */
export function weightTimeS(film: WetFilm, waveMm: number, viscosityPaS: number): number {
  const { h, rho } = si(film)
  const l = waveOf(waveMm)
  return (3 * viscosityOf(viscosityPaS) * l ** 2) / (4 * Math.PI ** 2 * rho * GRAVITY_M_PER_S2 * h ** 3)
}

/** Fluidity that a ripple needs to come down to the part `left`, 1/Pa: both pull at it at once. */
export function levelNeedPerPa(film: WetFilm, waveMm: number, left: number): number {
  inRange('part that is left', left, 1e-9, 1)
  return Math.log(1 / left) / (1 / tensionTimeS(film, waveMm, 1) + 1 / weightTimeS(film, waveMm, 1))
}

/**
 * The longest ripple that a fluidity levels to the part `left`, mm: k² from the quadratic
 * γ·k⁴ + ρ·g·k² = 3·ln(1/left)/(h³·M).
 */
export function longestWaveMm(film: WetFilm, fluidityPerPa: number, left: number): number {
  const { h, gamma, rho } = si(film)
  inRange('part that is left', left, 1e-9, 1 - 1e-9)
  if (!(fluidityPerPa > 0)) return 0
  const c = (3 * Math.log(1 / left)) / (h ** 3 * fluidityPerPa)
  const b = rho * GRAVITY_M_PER_S2
  // The root written so that it does not cancel for long waves.
  const k2 = (2 * c) / (b + Math.sqrt(b * b + 4 * gamma * c))
  return (1000 * 2 * Math.PI) / Math.sqrt(k2)
}

/** What a pool is deeper at the low end of a face out of level, mm. */
export function wedgeMm(spanMm: number, outMmPerM: number): number {
  return (
    (inRange('span', spanMm, 0, 20_000, 'mm') * inRange('out of level', outMmPerM, 0, 100, 'mm/m')) / 1000
  )
}

/** A coat is to be even to a tenth of its depth (practice): out of level that keeps it so over a span, mm/m. */
export function levelWithinMmPerM(filmMm: number, spanMm: number): number {
  return (1000 * (inRange('film', filmMm, 0.001, 500, 'mm') / 10)) / inRange('span', spanMm, 1, 20_000, 'mm')
}

function si({ filmMm, tensionNM, densityKgM3 }: WetFilm) {
  return {
    h: inRange('film', filmMm, 0.001, 500, 'mm') / 1000,
    gamma: inRange('surface tension', tensionNM, 0.005, 0.5, 'N/m'),
    rho: inRange('density', densityKgM3, 500, 3000, 'kg/m³')
  }
}

function waveOf(mm: number): number {
  return inRange('length of a ripple', mm, 0.01, 20_000, 'mm') / 1000
}

function viscosityOf(paS: number): number {
  return inRange('viscosity', paS, 1e-4, 1e6, 'Pa·s')
}
