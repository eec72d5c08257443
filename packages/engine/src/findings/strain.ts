import { coreOverFaceK, restraintStrain } from '../resin/crack.ts'
import { H_TOP } from '../resin/slab.ts'
import type { Work } from './work.ts'

/**
 * Linear strain that a pour cannot follow where something holds it, nothing concentrated: what shrinks after gel,
 * and the core that set hotter than its face. null for a pour that is not predicted.
 */
export function freeStrain(work: Work, index: number): number | null {
  const cast = work.casts[index]
  const { record, shrinkagePct } = work.materials.resins[index]!
  if (!cast || record.model === null) return null
  const { kinetics, bulk } = record.model
  const { night, day } = work.shop.climate
  return restraintStrain({
    shrinkage: (work.piece.pours[index]!.shrinkage ?? shrinkagePct) / 100,
    gelConversion: kinetics.gelConversion,
    coreOverSkinK: coreOverFaceK(
      cast.peakC - (night + day) / 2,
      work.stack.pours[index]!.liquidDepth,
      H_TOP,
      bulk.kLiquidWmK + bulk.kSlopeWmK
    )
  }).free
}
