import type { Bands, Srgb } from '../catalogue/pigment-optics.ts'
import {
  INTERNAL_REFLECTION,
  insideReflectance,
  linearOf,
  luminanceOf,
  SURFACE_REFLECTION,
  srgbOf
} from '../catalogue/pigment-optics.ts'
import type { Layer } from '../colour/hiding.ts'
import { reflectance } from '../colour/hiding.ts'
import type { CoreInterval } from '../stack/core.ts'

/**
 * How a core looks from the front: a stand-in until the optics model, good enough to tell the layers of a
 * drawing apart and to show what a thin cover lets through.
 *
 * Each of the three bands of sRGB is one Kubelka-Munk layer on the next, from the back to the front; the front
 * surface of resin reflects as in pigment-optics.ts. What lies behind all: paper where the piece is open
 * through, a dark hollow where a cut is closed by what the piece hangs on.
 *
 * Limits: three broad bands, diffuse light, resin without colour of its own, no gloss, no swirls; timber by a
 * guess of its look. No finding rests on it.
 */
export interface PourLook {
  readonly scatterPerMm: number
  readonly absorbPerMm: Bands
}

/** Looks of a piece's materials. */
export interface Looks {
  /** Reflectance of each timber inside, per band. */
  readonly timbers: readonly Bands[]
  readonly pours: readonly PourLook[]
  readonly markings: readonly PourLook[]
}

/** Reflectance of the paper under an open piece, and of a hollow against a wall (estimate, by eye). */
const PAPER_BEHIND = 0.78
const HOLLOW_BEHIND = 0.12
/** A gap behind the piece of this much counts as a hollow, mm. */
const HOLLOW_MM = 1

/** What an eye sees of a core from the front, "#rrggbb"; null of nothing. `parts` run from back to front. */
export function seenColour(
  looks: Looks,
  parts: readonly CoreInterval[],
  backMm: number
): `#${string}` | null {
  if (parts.length === 0) return null
  const first = parts[0]!
  const behind =
    Math.min(Math.abs(first.from - backMm), Math.abs(first.to - backMm)) > HOLLOW_MM
      ? HOLLOW_BEHIND
      : PAPER_BEHIND
  const bands: [number, number, number] = [behind, behind, behind]
  for (const { material, from, to } of parts) {
    if (material.kind === 'timber') {
      const own = looks.timbers[material.index]!
      for (let b = 0; b < 3; b++) bands[b] = own[b]!
      continue
    }
    if (material.kind === 'former') continue
    const look = material.kind === 'pour' ? looks.pours[material.index]! : looks.markings[material.index]!
    for (let b = 0; b < 3; b++) bands[b] = reflectance(layer(look, b), Math.abs(to - from), bands[b]!)
  }
  return hexOf(bands.map(outside) as unknown as Bands)
}

/** Colour of a pour by itself: `mm` of it over white. */
export function pourColour(look: PourLook, mm: number): `#${string}` {
  return hexOf([0, 1, 2].map(b => outside(reflectance(layer(look, b), mm, 0.85))) as unknown as Bands)
}

/** Colour of a timber. */
export function timberColour(inside: Bands): `#${string}` {
  return hexOf(inside.map(outside) as unknown as Bands)
}

/** Whether a pour tints at all: less than a tenth of light lost in 10 mm counts as clear. */
export function isClear(look: PourLook): boolean {
  return look.scatterPerMm < 0.001 && Math.max(...look.absorbPerMm) < 0.005
}

/** A colour seen, as reflectance inside. */
export function insideOf(srgb: Srgb): Bands {
  return linearOf(srgb).map(insideReflectance) as unknown as Bands
}

/** Luminance 0..1 of "#rrggbb" (IEC 61966-2-1 primaries). */
export function luminanceOfHex(hex: string): number {
  return luminanceOf(linearOf(srgbOf(hex)))
}

function layer(look: PourLook, band: number): Layer {
  return { scatterPerMm: look.scatterPerMm, absorbPerMm: look.absorbPerMm[band]! }
}

// From reflectance inside to what is seen outside, gloss left out (the other way round: insideReflectance).
function outside(inside: number): number {
  return ((1 - SURFACE_REFLECTION) * (1 - INTERNAL_REFLECTION) * inside) / (1 - INTERNAL_REFLECTION * inside)
}

// sRGB of linear bands (IEC 61966-2-1).
function hexOf(linear: Bands): `#${string}` {
  const part = (c: number): string => {
    const s = c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055
    return Math.round(255 * Math.min(1, Math.max(0, s)))
      .toString(16)
      .padStart(2, '0')
  }
  return `#${part(linear[0])}${part(linear[1])}${part(linear[2])}`
}
