import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'

/** A straight-sided cup or bucket. */
export interface Vessel {
  readonly diameterMm: number
  readonly capacityMl: number
}

/** How a volume stands in a vessel. */
export interface Fill {
  readonly heightMm: number
  /** Surface with top and base, mm². */
  readonly areaMm2: number
  /** V/A, mm: the length that says how well it sheds heat. */
  readonly volumePerAreaMm: number
  /** Radius of the sphere with the same V/A, mm: R = 3·V/A. */
  readonly sphereRadiusMm: number
}

/** Throws when the volume does not go in. */
export function fillOf(vessel: Vessel, volumeMl: number): Fill {
  inRange('diameter of the vessel in mm', vessel.diameterMm, 1, 100_000)
  inRange('volume in the vessel in ml', volumeMl, 1e-6, vessel.capacityMl)
  const baseMm2 = (Math.PI * vessel.diameterMm ** 2) / 4
  const volumeMm3 = volumeMl * 1000
  const heightMm = volumeMm3 / baseMm2
  const areaMm2 = 2 * baseMm2 + Math.PI * vessel.diameterMm * heightMm
  const volumePerAreaMm = volumeMm3 / areaMm2
  return { heightMm, areaMm2, volumePerAreaMm, sphereRadiusMm: 3 * volumePerAreaMm }
}

/**
 * Resin that stays on the wetted walls and base after a vessel has drained, ml.
 *
 *   film = 2/3·√(η·z/(ρ·g·t)), the mean over the height z of a film draining for t seconds
 *
 *   η viscosity Pa·s, ρ density kg/m³, g 9.80665 m/s², z height of the wall m
 *
 * Source: Jeffreys, Proc Camb Phil Soc 26 (1930) 204 (memory). Base: as thick as the walls.
 * Check: 0.7 Pa·s, 80 mm, 60 s: 0.20 mm.
 *
 * Limits: draining unscraped, at one viscosity; scraping brings it down, and brings unmixed resin along.
 */
export function clingingMl(
  vessel: Vessel,
  volumeMl: number,
  viscosityPaS: number,
  densityKgM3: number,
  drainS: number
): number {
  inRange('viscosity in Pa·s', viscosityPaS, 1e-6, 1e6)
  inRange('time of draining in s', drainS, 1, 1e5)
  const { heightMm, areaMm2 } = fillOf(vessel, volumeMl)
  const openMm2 = (Math.PI * vessel.diameterMm ** 2) / 4
  const filmM =
    (2 / 3) * Math.sqrt((viscosityPaS * (heightMm / 1000)) / (densityKgM3 * GRAVITY_M_PER_S2 * drainS))
  return Math.min(volumeMl, ((areaMm2 - openMm2) * filmM * 1000) / 1000)
}
