import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'
import type { FlowHistory } from './fluidity.ts'
import { fluidity, fluidityReachedMin } from './fluidity.ts'

/**
 * Bubbles that rise in thickening resin.
 *
 *   Stokes               u = ρ·g·d²/(18·η)         a skin that does not slip: what counts, resin is never clean
 *   Hadamard-Rybczynski  u = ρ·g·d²/(12·η)         1.5 times that: a clean bubble, the fast end only
 *   way in a history     z = (ρ·g·d²/18)·∫dt/η     so the smallest that leaves a depth L:
 *   smallest that leaves d = √(18·L/(ρ·g·∫dt/η))
 *
 *   d diameter m   ρ density of the liquid kg/m³ (the air's own is a thousandth)   η viscosity Pa·s
 *
 * Source: Stokes 1851; Hadamard 1911, Rybczynski 1911 (memory). Measured speeds lie between the two by the
 * surface-active matter on the bubble (Langmuir 25 (2009) 8899, abstract read).
 * Check: 1 mm in 0.3 Pa·s at 1100 kg/m³ rises 2.0 mm/s; 0.1 mm in 0.7 Pa·s takes 49 min for 25 mm.
 *
 * Limits: Reynolds number under about 1 (3 mm in 0.3 Pa·s has 0.2); single bubbles that neither meet nor grow;
 * no surface film that keeps them from bursting (flame or hot air is for that); the depth is measured from
 * the bubble to the face.
 */
export function stokesRiseMmS(diameterMm: number, viscosityPaS: number, densityKgM3: number): number {
  inRange('diameter of a bubble in mm', diameterMm, 0, 50)
  inRange('viscosity in Pa·s', viscosityPaS, 1e-6, 1e9)
  inRange('density in kg/m³', densityKgM3, 500, 3000)
  return riseConstant(diameterMm, densityKgM3) / viscosityPaS
}

/** The fast end: {@link stokesRiseMmS} times 1.5, a bubble whose skin slips freely. */
export const CLEAN_OVER_STOKES = 1.5

// mm/s times Pa·s.
function riseConstant(diameterMm: number, densityKgM3: number): number {
  return (densityKgM3 * GRAVITY_M_PER_S2 * (diameterMm / 1000) ** 2 * 1000) / 18
}

/** Smallest bubble, mm, that rises through `depthMm` from `fromMin` on before the mix is stuck; Infinity when none does. */
export function smallestThatLeavesMm(
  history: FlowHistory,
  depthMm: number,
  densityKgM3: number,
  fromMin = 0
): number {
  inRange('depth in mm', depthMm, 0, 5000)
  const m = fluidity(history, fromMin)
  if (m <= 0) return depthMm === 0 ? 0 : Number.POSITIVE_INFINITY
  return 1000 * Math.sqrt((18 * depthMm) / 1000 / (densityKgM3 * GRAVITY_M_PER_S2 * m))
}

/** Minutes until bubbles of `diameterMm` and larger have left `depthMm`; null when the mix is stuck first. */
export function clearAfterMin(
  history: FlowHistory,
  depthMm: number,
  diameterMm: number,
  densityKgM3: number,
  fromMin = 0
): number | null {
  inRange('diameter of a bubble in mm', diameterMm, 1e-4, 50)
  const wanted = depthMm / riseConstant(diameterMm, densityKgM3)
  const at = fluidityReachedMin(history, wanted, fromMin)
  return at === null ? null : at - fromMin
}

/**
 * Smallest bubble that is seen, mm: one minute of arc at reading distance, 300 to 350 mm, is 0.09 to 0.10
 * (acuity of a good eye: memory). Smaller ones together still look like haze.
 */
export const SEEN_MM = 0.1

/** Surface tension of liquid epoxy mixes, N/m: 36-47 mN/m, 42 (memory). */
const SURFACE_TENSION_NM = 0.042

/** Capillary length √(γ/(ρ·g)), mm: 2.0 for liquid epoxy. */
export function capillaryLengthMm(densityKgM3: number, tensionNM = SURFACE_TENSION_NM): number {
  inRange('density in kg/m³', densityKgM3, 500, 3000)
  return 1000 * Math.sqrt(tensionNM / (densityKgM3 * GRAVITY_M_PER_S2))
}

/** Excess pressure in a bubble, Pa: Laplace, 2γ/r. Check: r 50 µm, 42 mN/m: 1.7 kPa. */
export function laplacePa(diameterMm: number, tensionNM = SURFACE_TENSION_NM): number {
  inRange('diameter of a bubble in mm', diameterMm, 1e-4, 50)
  return (4 * tensionNM) / (diameterMm / 1000)
}

/**
 * Diameter, mm, that a bubble of `diameterMm` at the air's pressure takes when the air over the mould stands at
 * `pressurePa`: Boyle with Laplace's excess, (p + 4γ/d)·d³ constant at one temperature. A pot at 4 bar makes
 * a bubble 0.63 times as wide; a pump at a tenth of the air's pressure 2.1 times.
 *
 * Limits: bubble size only. Air that goes into solution, boiling of the mix and foam are not in it.
 */
export function bubbleAtPressureMm(
  diameterMm: number,
  pressurePa: number,
  tensionNM = SURFACE_TENSION_NM
): number {
  inRange('pressure in Pa', pressurePa, 100, 5e6)
  const kept = (STANDARD_PA + laplacePa(diameterMm, tensionNM)) * diameterMm ** 3
  let low = 0
  let high = diameterMm * Math.cbrt(1 + STANDARD_PA / pressurePa) * 4
  // (p·d³ + 4γ·d²) rises throughout with d: bisection to a part in 1e12.
  for (let i = 0; i < 60; i++) {
    const d = (low + high) / 2
    if (pressurePa * d ** 3 + 4 * tensionNM * 1000 * d ** 2 < kept) low = d
    else high = d
  }
  return high
}

/** The air's pressure at sea level, Pa: standard atmosphere, exact by definition. */
export const STANDARD_PA = 101_325

/**
 * Widest round recess in which a bubble is held fast by surface tension, mm: in an upright tube closed by the
 * liquid a bubble does not rise when R < 0.918·√(γ/(ρ·g)) (Bretherton, J Fluid Mech 10 (1961) 166; Bond number
 * 0.842; memory). 3.6 mm for liquid epoxy: why dots of 2 to 3 mm will not fill by themselves.
 *
 * Limits: a round, upright hole that resin closes at its mouth; a long stroke lets air out along itself and
 * is freer.
 */
export function holdsBubbleBelowMm(densityKgM3: number, tensionNM = SURFACE_TENSION_NM): number {
  return 2 * BRETHERTON * capillaryLengthMm(densityKgM3, tensionNM)
}

/** √0.842, Bretherton's limit in capillary lengths. */
const BRETHERTON = Math.sqrt(0.842)
