import { type Bands, linearOf, srgbOf } from '../catalogue/pigment-optics.ts'

/**
 * Colours as a screen takes them and back: sRGB.
 *
 *   c_lin = c/12.92                      c ≤ 0.04045;      else ((c + 0.055)/1.055)^2.4
 *   c     = 12.92·c_lin                  c_lin ≤ 0.0031308; else 1.055·c_lin^(1/2.4) − 0.055
 *   (X Y Z) = M·(R G B)_lin              primaries of the standard, white D65 = (0.95047, 1, 1.08883)
 *
 *   c      a band of sRGB, 0..1 (written here 0..255)      c_lin  the same, linear in light, 0..1
 *
 * Source: IEC 61966-2-1 (memory; the two halves meet within 1e-7); matrix of its primaries and white (memory).
 * Check: every one of the 256 steps comes back; white is D65; a general colour library gives the same.
 *
 * Limits: three bands stand for the whole spectrum, so that two colours that match here may differ under other
 * light. What lies outside the screen's colours is cut off at its edge.
 */
export type Xyz = readonly [x: number, y: number, z: number]

/** Tristimulus values of the white, D65, 2° observer (CIE 15; memory). */
export const WHITE: Xyz = [0.95047, 1, 1.08883]

/** A band linear in light, 0..1, as sRGB 0..255, not rounded; beyond the ends it is cut off. */
export function encodedOf(linear: number): number {
  const c = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055
  return 255 * Math.min(1, Math.max(0, c))
}

/** "#rrggbb" of three bands linear in light. */
export function hexOf(linear: Bands): `#${string}` {
  const part = (c: number) => Math.round(encodedOf(c)).toString(16).padStart(2, '0')
  return `#${part(linear[0])}${part(linear[1])}${part(linear[2])}`
}

/** The bands of "#rrggbb", linear in light. */
export function linearOfHex(hex: string): Bands {
  return linearOf(srgbOf(hex))
}

/** Tristimulus values, Y = 1 for white, of three bands linear in light. */
export function xyzOf([r, g, b]: Bands): Xyz {
  return [
    0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
    0.2126729 * r + 0.7151522 * g + 0.072175 * b,
    0.0193339 * r + 0.119192 * g + 0.9503041 * b
  ]
}

/** Three bands linear in light, of tristimulus values; below 0 or above 1 where no screen shows them. */
export function linearOfXyz([x, y, z]: Xyz): Bands {
  return [
    3.2404542 * x - 1.5371385 * y - 0.4985314 * z,
    -0.969266 * x + 1.8760108 * y + 0.041556 * z,
    0.0556434 * x - 0.2040259 * y + 1.0572252 * z
  ]
}
