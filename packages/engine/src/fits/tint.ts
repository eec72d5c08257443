import type { Materials, TintPigment } from '../cast/facts.ts'
import type { Bands } from '../catalogue/pigment-optics.ts'
import { coverDepthMm, differenceOverCard, lightThrough } from '../colour/cover-depth.ts'
import type { HidingDepth } from '../colour/hiding.ts'
import { hidingDepth, layerOfTint } from '../colour/hiding.ts'
import { mixOptics, type Optics } from '../colour/stacked.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { PourStack } from '../stack/stack.ts'

/** What a pour's tint does to what lies behind it. */
export interface Hiding {
  readonly pour: number
  /** Depth from which the eye sees nothing through it; null: it hides nothing (clear, or dye too thin to count). */
  readonly depth: HidingDepth | null
  /** The same by contrast ratio 0.98 (ISO 6504-1), mm; null for what hardly scatters. */
  readonly byContrastMm: number | null
  /** Share of light through its own depth, 0..1, against clear resin. */
  readonly light: number
  /** Meant to hide: the document says so, or the tint hides within the pour's own depth. */
  readonly meant: boolean
  /** Every pigment in it that matters is known by a card of the maker's. */
  readonly tested: boolean
}

/** Depth beyond which a tint does not count as hiding anything, mm. */
const NEVER_MM = 500
/** K/S beyond which a contrast ratio means nothing: two blacks. */
const MOST_RATIO = 100

/** One entry a pour. */
export function hidingOf(piece: Piece, materials: Materials, pours: readonly PourStack[]): Hiding[] {
  return piece.pours.map((pour, i): Hiding => {
    const { densityGMl } = materials.resins[i]!
    const own = pours[i]!.depth
    const tint = weakest(materials, i, own)
    const optics = tintOptics(tint, densityGMl)
    const { mm, contrastMm } = coverOf(tint, optics, densityGMl)
    const doubt = strengthDoubt(tint)
    const depth =
      mm === null || mm > NEVER_MM ? null : { centralMm: mm, lowMm: mm / doubt, highMm: mm * doubt }
    return {
      pour: i,
      depth,
      byContrastMm: contrastMm,
      light: lightThrough(optics, own),
      meant: pour.opaque ?? (depth !== null && depth.centralMm <= own),
      tested: tint.length > 0 && tint.every(t => t.pigment.card !== undefined)
    }
  })
}

// Of a marbled pour the colour through which most is seen: what lies behind shows between the others.
function weakest(materials: Materials, i: number, mm: number): readonly TintPigment[] {
  const { densityGMl } = materials.resins[i]!
  const base = materials.tints[i]!
  const strands = materials.marblingTints[i]!.map(s => [...base, ...s])
  if (strands.length === 0) return base
  const seen = strands.map(s => differenceOverCard(tintOptics(s, densityGMl), mm))
  return strands[seen.indexOf(Math.max(...seen))]!
}

/** Absorption and scattering of a tinted mix, 1/mm, in the three bands; `densityGMl` of the mix. */
export function tintOptics(tint: readonly TintPigment[], densityGMl: number): Optics {
  return mixOptics(
    tint.map(({ pigment, share }) => ({
      massFraction: share * pigment.pigmentFraction,
      scatterM2PerG: pigment.scatterBandsM2PerG ?? alike(pigment.scatterM2PerG),
      absorbM2PerG: pigment.absorbBandsM2PerG
    })),
    densityGMl * 1000
  )
}

/** Factor within which the strength of a tint is known: that of its least known pigment; 1 when there is none. */
export function strengthDoubt(tint: readonly TintPigment[]): number {
  return Math.max(1, ...tint.map(t => t.pigment.bandFactor))
}

interface Cover {
  readonly mm: number | null
  readonly contrastMm: number | null
}

// A plan is made at every edit, and an edit changes a tint or two: the last depths are kept by what they follow from.
const covers = new Map<string, Cover>()
const MOST_KEPT = 200

function coverOf(tint: readonly TintPigment[], optics: Optics, densityGMl: number): Cover {
  const key = [
    ...optics.scatterPerMm,
    ...optics.absorbPerMm,
    ...tint.map(t => t.pigment.absorbM2PerG * t.share)
  ].join()
  const known = covers.get(key)
  if (known !== undefined) return known
  const cover = { mm: coverDepthMm(optics), contrastMm: contrastMm(tint, densityGMl) }
  if (covers.size >= MOST_KEPT) covers.delete(covers.keys().next().value!)
  covers.set(key, cover)
  return cover
}

function contrastMm(tint: readonly TintPigment[], densityGMl: number): number | null {
  const layer = layerOfTint(
    tint.map(({ pigment, share }) => ({
      massFraction: share * pigment.pigmentFraction,
      scatterM2PerG: pigment.scatterM2PerG,
      absorbM2PerG: pigment.absorbM2PerG
    })),
    densityGMl * 1000
  )
  if (!(layer.absorbPerMm < MOST_RATIO * layer.scatterPerMm) || layer.scatterPerMm < 1e-6) return null
  const mm = hidingDepth(layer).centralMm
  return mm > NEVER_MM ? null : mm
}

function alike(x: number): Bands {
  return [x, x, x]
}
