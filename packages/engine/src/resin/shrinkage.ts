import { inRange } from '../quantity/range.ts'

/**
 * Shrinkage of a resin on cure, and what of it shows.
 *
 * Volume shrinkage in the sense of ISO 3521 (overall shrinkage of unsaturated polyester and epoxy resins),
 * from densities at 23 °C, as a fraction of the cured volume:
 *
 *   S = (ρ_cured − ρ_liquid)/ρ_cured
 *
 * It is taken as linear in conversion: αg of it falls before gel, 1 − αg after.
 *
 * Limits: one measured epoxy shrank faster after gel than before (slope ratio 64.6 : 42.5, Yang et al.
 * 2016, abstract, read); contraction on cooling from the exotherm comes on top.
 *
 * Source of the density form: ISO 3521 (memory).
 */
export function shrinkageFromDensities(liquidKgM3: number, curedKgM3: number): number {
  inRange('density of the liquid in kg/m³', liquidKgM3, 500, 3000)
  inRange('density of the cured resin in kg/m³', curedKgM3, liquidKgM3, 3000)
  return (curedKgM3 - liquidKgM3) / curedKgM3
}

/**
 * By how much the face of a pour that is bonded to its mould falls, as a fraction of its depth.
 *
 *   fall = S·(αg + (1 − αg)/3)
 *
 * Before gel the resin is a liquid: it cannot shrink sideways from the walls, so the whole of the volume
 * loss is taken by the level. After gel it shrinks alike in three directions, and a third shows in depth.
 *
 * Check: S = 5 %, αg = 0.6: 3.67 %. Bounds: S/3 (gelled at once) to S (never gels).
 *
 * Limits: a wide casting held fast at its floor and walls cannot shrink sideways after gel either, and
 * then falls by nearly the whole of S; the return value is the least of what is to be topped up.
 */
export function levelFall(shrinkage: number, gelConversion: number): number {
  inRange('volume shrinkage', shrinkage, 0, 0.2)
  inRange('conversion at gel', gelConversion, 0, 1)
  return shrinkage * (gelConversion + (1 - gelConversion) / 3)
}

/**
 * Linear strain that builds up after gel, S·(1 − αg)/3: what pulls on inclusions, timber and facing.
 * Check: S = 5 %, αg = 0.6: 0.67 %.
 */
export function strainAfterGel(shrinkage: number, gelConversion: number): number {
  inRange('volume shrinkage', shrinkage, 0, 0.2)
  inRange('conversion at gel', gelConversion, 0, 1)
  return (shrinkage * (1 - gelConversion)) / 3
}
