import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'
import type { FlowHistory } from './fluidity.ts'
import { STUCK_PAS } from './fluidity.ts'

/**
 * Stones that sink (or light things that rise) in thickening resin.
 *
 *   balance of a sphere   Cd·(π/4)·d²·ρ·v²/2 = (π/6)·d³·|ρs − ρ|·g
 *   drag                  Cd = 24/Re·(1 + 0.15·Re^0.687)    Schiller & Naumann 1933, Re < 800 (memory)
 *   many at once          v = v0·(1 − φ)^n                   Richardson & Zaki 1954; n from {@link HINDERED}
 *
 *   d  diameter of the sphere of the same volume, m    Re = ρ·v·d/η    φ solid share
 *
 * Check: Re → 0 is Stokes; quartz of 1 mm in 0.5 Pa·s sinks 1.68 mm/s (density of the liquid 1100).
 *
 * Limits: spheres. Flat and angular pieces sink slower, by up to a half; walls within a few diameters slow
 * them too; stones that touch the floor or lie on each other have stopped.
 */
export function settlingMmS(grain: Grain, viscosityPaS: number): number {
  const { diameterMm, densityKgM3, liquidKgM3 } = grain
  inRange('diameter of a stone in mm', diameterMm, 1e-3, 500)
  inRange('density of a stone in kg/m³', densityKgM3, 50, 20_000)
  inRange('density of the liquid in kg/m³', liquidKgM3, 500, 3000)
  inRange('viscosity in Pa·s', viscosityPaS, 1e-6, 1e9)
  const share = inRange('solid share', grain.solidShare ?? 0, 0, 0.75)
  const d = diameterMm / 1000
  const difference = densityKgM3 - liquidKgM3
  const stokes = (Math.abs(difference) * GRAVITY_M_PER_S2 * d * d) / (18 * viscosityPaS)
  // Newton's method on v·(1 + 0.15·Re^0.687) = Stokes: convex and rising, so it closes in from Stokes' speed, which is too fast.
  const perSpeed = (liquidKgM3 * d) / viscosityPaS
  let v = stokes
  for (let i = 0; i < 50; i++) {
    const re = perSpeed * v
    const next = v - (v * (1 + 0.15 * re ** 0.687) - stokes) / (1 + 0.15 * 1.687 * re ** 0.687)
    if (Math.abs(next - v) <= 1e-13 * stokes) break
    v = next
  }
  return Math.sign(difference) * v * 1000 * (1 - share) ** HINDERED
}

/** What sinks or rises. */
export interface Grain {
  readonly diameterMm: number
  readonly densityKgM3: number
  readonly liquidKgM3: number
  /** Solid share of the crowd it moves in, 0..0.75; 0 (alone) if not given. */
  readonly solidShare?: number
}

/**
 * Exponent of Richardson and Zaki at small Reynolds numbers: 4.65 (memory), 4.48 ± 0.04 in a review of data for
 * grains too large to be moved by heat (arXiv 1710.09314, read). The review's is taken.
 */
export const HINDERED = 4.48

/** Drag coefficient of Schiller and Naumann, 1; Re above 0 and under 800. */
export function dragCoefficient(reynolds: number): number {
  inRange('Reynolds number', reynolds, 1e-12, 800)
  return (24 / reynolds) * (1 + 0.15 * reynolds ** 0.687)
}

/**
 * How far it sinks from `fromMin` on until the mix is stuck (or `toMin`), mm; negative when it rises. Without
 * floor and face: cut it off there.
 *
 * Speed is taken as a power of viscosity within a step in which that changes by a tenth at most: the integral
 * of the piece is then exact.
 * Check: constant viscosity gives speed times time; Stokes grains in an exponential history the closed form
 * (test).
 */
export function sinksMm(
  grain: Grain,
  history: FlowHistory,
  fromMin = 0,
  toMin = Number.POSITIVE_INFINITY
): number {
  const { min, viscosityPaS: eta } = history
  let way = 0
  for (let i = 1; i < min.length; i++) {
    const t0 = Math.max(min[i - 1]!, fromMin)
    const t1 = Math.min(min[i]!, toMin)
    if (t1 <= t0) continue
    const a = Math.log(Math.min(eta[i - 1]!, MOST_PAS))
    const slope = (Math.log(Math.min(eta[i]!, MOST_PAS)) - a) / (min[i]! - min[i - 1]!)
    const log = (t: number) => a + slope * (t - min[i - 1]!)
    // Where it gets stuck within the interval, the way ends there.
    const stuck = Math.log(STUCK_PAS)
    if (log(t0) >= stuck) break
    const end = log(t1) > stuck ? t0 + (stuck - log(t0)) / slope : t1
    const steps = Math.max(1, Math.ceil(Math.abs(log(end) - log(t0)) / STEP))
    for (let k = 0; k < steps; k++) {
      const [u, w] = [t0 + ((end - t0) * k) / steps, t0 + ((end - t0) * (k + 1)) / steps]
      way += meanOf(settlingMmS(grain, Math.exp(log(u))), settlingMmS(grain, Math.exp(log(w)))) * (w - u) * 60
    }
  }
  return way
}

const MOST_PAS = 1e9
const STEP = 0.1

// Logarithmic mean: exact for what changes exponentially.
function meanOf(a: number, b: number): number {
  if (Math.abs(a - b) <= 1e-6 * Math.abs(a)) return (a + b) / 2
  return (a - b) / Math.log(a / b)
}

/**
 * The earliest moment, min, from which on what goes in sinks or rises no more than `allowedMm` before the mix
 * is stuck; 0 when it may go in at once, null when the history ends before or less than nothing is allowed.
 */
export function staysFromMin(grain: Grain, history: FlowHistory, allowedMm: number): number | null {
  inRange('way allowed in mm', allowedMm, -10_000, 10_000)
  if (allowedMm < 0) return null
  const last = history.min[history.min.length - 1]!
  const stays = (t: number) => Math.abs(sinksMm(grain, history, t)) <= allowedMm
  if (stays(0)) return 0
  // A history that ends while the mix still flows says nothing of what comes after.
  if (history.viscosityPaS[history.min.length - 1]! < STUCK_PAS) return null
  let low = 0
  let high = last
  while (high - low > 0.01) {
    const middle = (low + high) / 2
    if (stays(middle)) high = middle
    else low = middle
  }
  return high
}

/** Diameter of the sphere of the volume of an ellipsoid of three axes, mm: ∛(a·b·c). */
export function sphereOfMm(axes: readonly [number, number, number]): number {
  return Math.cbrt(axes[0] * axes[1] * axes[2])
}

/** Mass of stones that a space takes when it is packed, g: loose and shaken. */
export function packsG(
  spaceMl: number,
  packing: readonly [low: number, high: number],
  densityKgM3: number
): readonly [low: number, high: number] {
  inRange('space in ml', spaceMl, 0, 1e9)
  const g = (spaceMl * densityKgM3) / 1000
  return [g * packing[0], g * packing[1]]
}
