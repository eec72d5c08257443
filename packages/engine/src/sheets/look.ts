import type { Bands } from '../catalogue/pigment-optics.ts'
import { luminanceOf } from '../catalogue/pigment-optics.ts'
import { hexOf, linearOfHex } from '../colour/srgb.ts'
import { laidOn, type Optics, outsideBands } from '../colour/stacked.ts'
import { seenOf } from '../fits/core-colour.ts'
import type { Looks } from '../fits/looks.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { CoreInterval } from '../stack/core.ts'

// Colours of drawings, "#rrggbb": those of the computed colours, nothing of their own (see fits/core-colour.ts).

/** What an eye sees of a core, low to high, from a face; null of nothing. */
export function seenColour(looks: Looks, core: readonly CoreInterval[], face: Face): `#${string}` | null {
  const seen = seenOf(looks, core, face)
  return seen === null ? null : hexOf(seen)
}

/** Reflectance of the white that a pour is drawn over when it is drawn by itself. */
const DRAWN_OVER = 0.85

/** Colour of a pour by itself: `mm` of it over white. */
export function pourColour(look: Optics, mm: number): `#${string}` {
  const { scatterPerMm: s, absorbPerMm: k } = look
  const bands: Bands = [
    laidOn(s[0], k[0], mm, DRAWN_OVER),
    laidOn(s[1], k[1], mm, DRAWN_OVER),
    laidOn(s[2], k[2], mm, DRAWN_OVER)
  ]
  return hexOf(outsideBands(bands))
}

/** Colour of a body by its reflectance inside. */
export function bodyColour(inside: Bands): `#${string}` {
  return hexOf(outsideBands(inside))
}

/** Whether a pour tints at all: less than a tenth of light lost in 10 mm counts as clear. */
export function isClear(look: Optics): boolean {
  return Math.max(...look.scatterPerMm) < 0.001 && Math.max(...look.absorbPerMm) < 0.005
}

/** Luminance 0..1 of "#rrggbb". */
export function luminanceOfHex(hex: string): number {
  return luminanceOf(linearOfHex(hex))
}
