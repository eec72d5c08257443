import type { Materials } from '../cast/facts.ts'
import type { HidingDepth } from '../colour/hiding.ts'
import { hidingDepth, hidingDepthByLightness, layerOfTint } from '../colour/hiding.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { PourStack } from '../stack/stack.ts'

/** What a pour's tint does to what lies behind it. */
export interface Hiding {
  readonly pour: number
  /** Depth from which the tint hides; null: it hides nothing (clear, or dye too thin to count). */
  readonly depth: HidingDepth | null
  /** Meant to hide: the document says so, or the tint hides within the pour's own depth. */
  readonly meant: boolean
}

/** Depth beyond which a tint does not count as hiding anything, mm. */
const NEVER_MM = 500

/** One entry a pour. */
export function hidingOf(piece: Piece, materials: Materials, pours: readonly PourStack[]): Hiding[] {
  return piece.pours.map((pour, i): Hiding => {
    const tint = materials.tints[i]!
    const layer = layerOfTint(
      tint.map(t => ({
        massFraction: t.share * t.pigment.pigmentFraction,
        scatterM2PerG: t.pigment.scatterM2PerG,
        absorbM2PerG: t.pigment.absorbM2PerG
      })),
      materials.resins[i]!.densityGMl * 1000
    )
    const doubt = Math.max(1, ...tint.map(t => t.pigment.bandFactor))
    let depth: HidingDepth | null = null
    if (layer.scatterPerMm > 1e-6) depth = hidingDepth(layer, doubt)
    else if (layer.absorbPerMm > 1e-6) depth = hidingDepthByLightness(layer, undefined, doubt)
    if (depth !== null && depth.centralMm > NEVER_MM) depth = null
    return { pour: i, depth, meant: pour.opaque ?? (depth !== null && depth.centralMm <= pours[i]!.depth) }
  })
}
