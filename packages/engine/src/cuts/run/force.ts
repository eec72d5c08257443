import type { CutMaterial } from '../../catalogue/chip-load.ts'
import { CUTTING_ENERGY } from '../../catalogue/chip-load.ts'
import { inRange } from '../../quantity/range.ts'

/**
 * What a cut takes.
 *
 *   Q   material removed      mm³/min    Q = ae·ap·vf
 *   kc  energy of cutting     N/mm²      kc(h) = kc(0.1)·(h/0.1)^−m
 *   P   power at the edge     W          P = kc·Q/60 000
 *   M   torque                Nm         M = P/(2π·n/60)
 *   F   mean push round the edge, N      F = 60·P/vc
 *   F1  push of one tooth at its thickest chip, N    F1 = kc·ap·h
 *
 * Source: textbook (memory); kc and m: catalogue/chip-load.ts, orders of magnitude.
 * Check: kc 40, ae 6, ap 3, vf 3000 give Q 54 000 and 36 W; F·vc = 60·P.
 * Limits: a sharp edge. The push away from the wall is a further third to half of F and not counted.
 */
export function removedMm3Min(widthMm: number, depthMm: number, feed: number): number {
  return widthMm * depthMm * feed
}

/** Energy of cutting at a chip thickness, N/mm²: middle, low, high. @param chipMm 0.001 to 5 */
export function cuttingEnergyNmm2(
  material: CutMaterial,
  chipMm: number
): { readonly central: number; readonly low: number; readonly high: number } {
  const { kcNmm2, power } = CUTTING_ENERGY[material]
  const size = (inRange('chip', chipMm, 1e-3, 5, 'mm') / 0.1) ** -power
  const [low, high] = kcNmm2
  return { central: ((low + high) / 2) * size, low: low * size, high: high * size }
}

/** Power at the edge, W. */
export function powerW(energyNmm2: number, removed: number): number {
  return (energyNmm2 * removed) / 60_000
}

/** Torque, Nm. */
export function torqueNm(power: number, rpm: number): number {
  return power / ((2 * Math.PI * inRange('turns a minute', rpm, 1, 1e6)) / 60)
}

/** Mean push round the edge, N. @param speedMMin speed of the edge, m/min */
export function meanForceN(power: number, speedMMin: number): number {
  return (60 * power) / inRange('speed of the edge', speedMMin, 1e-3, 1e5, 'm/min')
}

/** Push of one tooth at its thickest chip, N. */
export function toothForceN(energyNmm2: number, depthMm: number, chipMm: number): number {
  return energyNmm2 * depthMm * chipMm
}
