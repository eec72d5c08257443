import type { MixingWay } from '../catalogue/mixing.ts'
import { inRange } from '../quantity/range.ts'

/**
 * What stirring does beside mixing: heat, air, and what is left unmixed on the wall.
 *
 *   heat   P = Kp·η·N²·D³, ΔT = P·t/(m·cp)         laminar stirrer, Re = ρ·N·D²/η under about 50
 *   air    share of the way of mixing; what stays is what is smaller than the smallest bubble that leaves
 *   wall   film·wetted area/volume: resin that the stirrer does not reach
 *
 *   Kp 70 for flat blades (50-110 by shape: Metzner & Otto, AIChE J 3 (1957) 3, memory)   N turns/s   D width m
 *
 * The heat of stirring is small (a paddle of 60 mm at 6 turns/s in 0.7 Pa·s puts in 0.4 W): a mix that grows
 * warm under the paddle does so by reacting, and that is the cup's model.
 * Check: η 0.7, N 6, D 0.06: Re 34, 0.38 W; 2 min into 1 kg: 0.025 K.
 *
 * Limits: air and film are practice without a source.
 */
export function stirringWatts(way: Pick<MixingWay, 'turnsPerS' | 'widthMm'>, viscosityPaS: number): number {
  inRange('viscosity in Pa·s', viscosityPaS, 1e-6, 1e4)
  return POWER_NUMBER * viscosityPaS * way.turnsPerS ** 2 * (way.widthMm / 1000) ** 3
}

const POWER_NUMBER = 70

/** Rise of temperature by stirring alone, K. `cpJkgK` of the mix, `massG` of the batch. */
export function stirringHeatK(
  way: Pick<MixingWay, 'turnsPerS' | 'widthMm' | 'minutes'>,
  viscosityPaS: number,
  massG: number,
  cpJkgK: number
): number {
  inRange('mass in g', massG, 0.1, 1e7)
  return (stirringWatts(way, viscosityPaS) * way.minutes * 60) / ((massG / 1000) * cpJkgK)
}

/**
 * Share of the mix that is air in bubbles smaller than `leavesMm`, careful and careless hand: what stays in.
 * Volume is taken as spread evenly over the logarithm of diameter between the way's smallest and largest.
 */
export function airThatStays(
  way: Pick<MixingWay, 'airShare' | 'bubbleMm'>,
  leavesMm: number
): readonly [low: number, high: number] {
  const [small, large] = way.bubbleMm
  const x = Math.log(Math.max(leavesMm, small) / small) / Math.log(large / small)
  const share = Math.min(1, x)
  return [way.airShare[0] * share, way.airShare[1] * share]
}

/**
 * Share of the view through `depthMm` of resin that the bubbles left in it cover, 0 and up, careful and careless
 * hand. Balls of diameter d that fill a share φ cover 1.5·φ·L/d; summed over the sizes that stay:
 *
 *   1.5·L·φ_all/ln(large/small)·(1/small − 1/leaves)
 *
 * Source: geometry of balls seen from above (exact while they do not overlap). Above about 2 % it is seen as
 * haze: the least contrast an eye tells (memory).
 */
export function hidesView(
  way: Pick<MixingWay, 'airShare' | 'bubbleMm'>,
  leavesMm: number,
  depthMm: number
): readonly [low: number, high: number] {
  const [small, large] = way.bubbleMm
  const end = Math.min(large, Math.max(leavesMm, small))
  const times = (1.5 * depthMm * (1 / small - 1 / end)) / Math.log(large / small)
  return [way.airShare[0] * times, way.airShare[1] * times]
}

/** Least share of the view that is seen as haze (contrast an eye tells: memory). */
export const SEEN_HAZE = 0.02

/** Film that a spatula leaves on the wall of a cup, mm (practice, no source). */
const WALL_FILM_MM = 0.3

/** Share of a batch that clings to wall and floor of a round vessel and is not reached by stirring, 0..1. */
export function clingsToWall(volumeMl: number, diameterMm: number): number {
  inRange('volume in ml', volumeMl, 0.1, 1e7)
  inRange('diameter of a vessel in mm', diameterMm, 5, 5000)
  const floor = (Math.PI / 4) * diameterMm ** 2
  const wall = (volumeMl * 1000 * 4) / diameterMm
  return Math.min(1, ((floor + wall) * WALL_FILM_MM) / (volumeMl * 1000))
}
