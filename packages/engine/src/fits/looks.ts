import type { Materials } from '../cast/facts.ts'
import { CHAR_LOOK, HOLLOW_LOOK, hardwareLook, timberLook, WALL_LOOK } from '../catalogue/look.ts'
import type { Bands, Srgb } from '../catalogue/pigment-optics.ts'
import { insideReflectance, linearOf } from '../catalogue/pigment-optics.ts'
import type { Optics } from '../colour/stacked.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Stack } from '../stack/stack.ts'
import { strengthDoubt, tintOptics } from './tint.ts'

/** A mix as light meets it, with the factor within which its strength is known. */
export interface MixLook extends Optics {
  /** 1 for a mix without pigment. */
  readonly doubt: number
}

/** A timber: reflectances inside, per band; its charred sides lie between its level faces. */
export interface TimberLook {
  readonly wood: Bands
  /** null: not charred. */
  readonly char: Bands | null
  /** Heights as cast of its underside and of the lowest place of its top. */
  readonly lowMm: number
  readonly highMm: number
}

/** How everything in a piece looks: plain numbers, for cores, drawings and the page alike. */
export interface Looks {
  readonly timbers: readonly TimberLook[]
  readonly pours: readonly MixLook[]
  readonly markings: readonly MixLook[]
  /** What sits in each cut and former, as seen in air, linear in light; null when nothing does. */
  readonly inCuts: readonly (Bands | null)[]
  readonly inFormers: readonly (Bands | null)[]
  /** What lies behind an open piece, and the inside of a closed cut: as seen in air, linear in light. */
  readonly wall: Bands
  readonly hollow: Bands
  /** Heights as cast of the finished faces. */
  readonly faces: readonly [low: number, high: number]
  /** Whether heights as cast grow towards the front. */
  readonly frontUp: boolean
}

/** Looks of everything in a piece. */
export function looksOf(stack: Stack, materials: Materials): Looks {
  const { piece, entries, geometry } = stack
  const mix = (tint: Parameters<typeof tintOptics>[0], densityGMl: number): MixLook => ({
    ...tintOptics(tint, densityGMl),
    doubt: strengthDoubt(tint)
  })
  const sittingIn = (id: string, wanted: string | undefined): Bands | null => {
    const i = entries.hardware.findIndex(h => h.value.in === id || h.id === wanted)
    return i < 0 ? null : linearOf(hardwareLook(materials.hardware[i]!.kind))
  }
  return {
    timbers: piece.timbers.map((t, i) => ({
      wood: insideOf(timberLook(materials.timbers[i]!)),
      char: t.charred > 0 ? insideOf(CHAR_LOOK) : null,
      lowMm: geometry.timbers[i]!.base,
      highMm: geometry.timbers[i]!.low
    })),
    pours: piece.pours.map((_, i) => pourLook(piece, materials, i)),
    markings: piece.markings.map((_, i) =>
      mix(materials.markingTints[i]!, materials.markingResins[i]!.densityGMl)
    ),
    inCuts: entries.cuts.map(c => sittingIn(c.id, c.value.for)),
    inFormers: entries.formers.map(f => sittingIn(f.id, undefined)),
    wall: linearOf(WALL_LOOK),
    hollow: linearOf(HOLLOW_LOOK),
    faces: [stack.finishedLow, stack.finishedHigh],
    frontUp: piece.down === 'back'
  }
}

/** A pour as it looks on the whole: a marbled one as its colours would when mixed through. */
function pourLook(piece: Piece, materials: Materials, i: number): MixLook {
  const { densityGMl } = materials.resins[i]!
  const strands = materials.marblingTints[i]!
  const shares = piece.pours[i]!.marbling ?? []
  const total = shares.reduce((sum, m) => sum + m.share, 0)
  const tint = [
    ...materials.tints[i]!,
    ...strands.flatMap((s, j) => s.map(t => ({ ...t, share: (t.share * shares[j]!.share) / total })))
  ]
  return { ...tintOptics(tint, densityGMl), doubt: strengthDoubt(tint) }
}

/** A colour seen, as reflectance inside. */
export function insideOf(srgb: Srgb): Bands {
  const [r, g, b] = linearOf(srgb)
  return [insideReflectance(r), insideReflectance(g), insideReflectance(b)]
}
