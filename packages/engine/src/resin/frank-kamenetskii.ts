import { inRange } from '../quantity/range.ts'
import type { Shape } from './column-grid.ts'
import { GAS_CONSTANT } from './constant.ts'

/**
 * Thermal explosion limits: when a reacting body can no longer shed its heat.
 *
 * Steady heat balance with an exponential source, θ = E/(R·T0²)·(T − T0):
 *
 *   θ″ + (j/x)·θ′ + δ·e^θ = 0,   θ′(0) = 0,   θ′(1) = −Bi·θ(1)
 *   δ = E/(R·T0²)·q·L²/k          Bi = h·L/k
 *
 *   q  heat rate at T0        W/m³       L  half thickness, or radius    m
 *   k  conductivity           W/(m·K)    h  film coefficient             W/(m²·K)
 *
 * Above a critical δ no steady state exists. Each shape's solutions form a curve in one parameter; the
 * critical δ is its greatest value. Slab: θ = θm − 2·ln cosh(D·x). Cylinder: θ = θm − 2·ln(1 + q·x²).
 * Sphere: the isothermal Emden function, integrated (Runge-Kutta).
 *
 * Sources: Frank-Kamenetskii, Diffusion and Heat Transfer in Chemical Kinetics (memory); the values 0.88,
 * 2 and 3.32 are read. Check: 0.8785, 2.0000, 3.3220 at Bi → ∞; (j + 1)·Bi/e at Bi → 0.
 *
 * Limits: a screening number. It ignores that the reactant is used up; with an adiabatic rise of about
 * 200 K the true limit is 1.5-2.5 times higher (memory). The column (column.ts) is the answer.
 */
export function criticalDelta(shape: Shape, biot = Number.POSITIVE_INFINITY): number {
  if (!(biot > 0)) throw new Error(`the Biot number is ${biot}; above 0`)
  if (shape === 'sphere') return greatestOfEmden(biot)
  const curve = shape === 'slab' ? slabDelta : cylinderDelta
  // The parameter at the greatest δ goes from 0 (Bi → 0) to 1.2 (slab) and 1 (cylinder) at Bi → ∞; δ has one
  // hump in it, so narrowing about the best of 200 points five times is exact to 1e-12.
  let best = 0
  let low = 0
  let high = 3
  for (let round = 0; round < 6; round++) {
    const step = (high - low) / 200
    let at = low
    for (let i = 1; i <= 200; i++) {
      const delta = curve(low + i * step, biot)
      if (delta > best) {
        best = delta
        at = low + i * step
      }
    }
    low = Math.max(0, at - step)
    high = at + step
  }
  return best
}

/** δ of the slab's steady state with D = `d`. */
function slabDelta(d: number, biot: number): number {
  const middle = (2 * d * Math.tanh(d)) / biot + 2 * Math.log(Math.cosh(d))
  return 2 * d * d * Math.exp(-middle)
}

/** δ of the cylinder's steady state with q. */
function cylinderDelta(q: number, biot: number): number {
  const middle = (4 * q) / (1 + q) / biot + 2 * Math.log(1 + q)
  return 8 * q * Math.exp(-middle)
}

/** Sphere: ψ″ + (2/ξ)·ψ′ = e^−ψ; at the edge θs = ξψ′/Bi, θm = θs + ψ, δ = ξ²·e^−θm. */
function greatestOfEmden(biot: number): number {
  // The greatest δ lies near ξ = √(3·Bi) for a small Bi and at 4.07 for a fixed wall: steps of 1/2000 of the range.
  const end = Math.min(8, 4 * Math.sqrt(3 * biot))
  const step = end / 2000
  // series about the centre: ψ = ξ²/6 − …, so that 2ψ′/ξ has no pole
  let x = step
  let psi = x ** 2 / 6 - x ** 4 / 120
  let slope = x / 3 - x ** 3 / 30
  const curvature = (at: number, p: number, s: number): number => Math.exp(-p) - (2 * s) / at
  let best = 0
  while (x < end) {
    best = Math.max(best, x * x * Math.exp(-psi - (x * slope) / biot))
    const a1 = curvature(x, psi, slope)
    const s2 = slope + (step / 2) * a1
    const a2 = curvature(x + step / 2, psi + (step / 2) * slope, s2)
    const s3 = slope + (step / 2) * a2
    const a3 = curvature(x + step / 2, psi + (step / 2) * s2, s3)
    const s4 = slope + step * a3
    const a4 = curvature(x + step, psi + step * s3, s4)
    psi += (step / 6) * (slope + 2 * s2 + 2 * s3 + s4)
    slope += (step / 6) * (a1 + 2 * a2 + 2 * a3 + a4)
    x += step
  }
  return best
}

/** δ of a body: activation energy J/mol, T0 in K, heat rate at T0 in W/m³, L in m, k in W/(m·K). */
export function frankKamenetskiiDelta(body: {
  readonly eJPerMol: number
  readonly tempK: number
  readonly heatWm3: number
  readonly lengthM: number
  readonly kWmK: number
}): number {
  inRange('temperature in K', body.tempK, 200, 700)
  inRange('conductivity in W/(m·K)', body.kWmK, 1e-6, 1e9)
  return ((body.eJPerMol / (GAS_CONSTANT * body.tempK ** 2)) * body.heatWm3 * body.lengthM ** 2) / body.kWmK
}

/** ψ above which a well-mixed body cannot shed its heat: 1/e (Semenov). */
export const SEMENOV_CRITICAL = 1 / Math.E

/** ψ = E/(R·T0²)·q·(V/A)/h of a well-mixed body; V/A in m, q in W/m³, h in W/(m²·K). Screening, as above. */
export function semenovNumber(body: {
  readonly eJPerMol: number
  readonly tempK: number
  readonly heatWm3: number
  readonly volumePerAreaM: number
  readonly hWm2K: number
}): number {
  inRange('temperature in K', body.tempK, 200, 700)
  inRange('film coefficient in W/(m²·K)', body.hWm2K, 1e-9, 1e9)
  return (
    ((body.eJPerMol / (GAS_CONSTANT * body.tempK ** 2)) * body.heatWm3 * body.volumePerAreaM) / body.hWm2K
  )
}
