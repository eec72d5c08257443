/**
 * From what a deep layer looks like to how strongly its pigment absorbs.
 *
 *   R_m  = (1 − k1)·(1 − k2)·R/(1 − k2·R)     seen from outside, gloss left out; turned round for R
 *   K/S  = (1 − R)²/(2·R)                      Kubelka-Munk, layer without end
 *   K*   = S*·(K/S)
 *
 *   R_m  reflectance seen, 0..1    R  reflectance inside the layer    K*, S*  m² per g of pigment
 *   k1   reflected at the surface from outside, ((n − 1)/(n + 1))² = 0.0465 for n = 1.55
 *   k2   reflected back inside at the surface, diffuse: 0.6
 *
 * Source: Saunderson, J. Opt. Soc. Am. 32 (1942) 727 (memory; k2 0.4 measured, 0.6 by calculation for n 1.5);
 * index 1.55 of amine-cured epoxy (memory; general range 1.50 to 1.57 read); Kubelka & Munk 1931 (textbook).
 * Check: R_m 0.922 gives R 0.9864 and K/S 0.00009; R_m 0.003 gives R 0.0078 and K/S 63.
 *
 * Limits: three broad bands (the red, green and blue of sRGB), one pigment, a plane glossy surface.
 */
export const SURFACE_REFLECTION = ((1.55 - 1) / (1.55 + 1)) ** 2
export const INTERNAL_REFLECTION = 0.6

/** A colour as a screen takes it, IEC 61966-2-1: red, green, blue, 0..255. */
export type Srgb = readonly [red: number, green: number, blue: number]
/** One value for each of the three bands: red, green, blue. */
export type Bands = readonly [red: number, green: number, blue: number]

/** Luminance of the three linear bands (IEC 61966-2-1 primaries, D65). */
const LUMINANCE: Bands = [0.2126729, 0.7151522, 0.072175]

/** The bands of "#rrggbb". */
export function srgbOf(hex: string): Srgb {
  const band = (i: number) => Number.parseInt(hex.slice(i, i + 2), 16)
  return [band(1), band(3), band(5)]
}

/** sRGB to linear reflectance, each band 0..1 (IEC 61966-2-1). */
export function linearOf(srgb: Srgb): Bands {
  const linear = (c: number): number =>
    c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4
  return [linear(srgb[0]), linear(srgb[1]), linear(srgb[2])]
}

/** Reflectance inside the layer from the one seen (0..1). */
export function insideReflectance(seen: number): number {
  return seen / ((1 - SURFACE_REFLECTION) * (1 - INTERNAL_REFLECTION) + INTERNAL_REFLECTION * seen)
}

/** K/S of a deep layer from the reflectance seen (above 0, to 1). */
export function ratioOfSeen(seen: number): number {
  if (!(seen > 0 && seen <= 1 - SURFACE_REFLECTION)) {
    throw new RangeError(`reflectance seen is ${seen}; allowed above 0 to ${1 - SURFACE_REFLECTION}`)
  }
  const inside = insideReflectance(seen)
  return (1 - inside) ** 2 / (2 * inside)
}

/** Sum of the three bands by luminance. */
export function luminanceOf(bands: Bands): number {
  return bands[0] * LUMINANCE[0] + bands[1] * LUMINANCE[1] + bands[2] * LUMINANCE[2]
}

/**
 * Relative absorption in the three bands of a clear colour, strongest 1, from how a thin layer of it looks
 * over white: the negative logarithm of each band.
 */
export function clearShape(overWhite: Srgb): Bands {
  const depth = linearOf(overWhite).map(r => -Math.log(r))
  const most = Math.max(...depth)
  return [depth[0]! / most, depth[1]! / most, depth[2]! / most]
}
