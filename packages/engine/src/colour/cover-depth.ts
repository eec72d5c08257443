import { type Bands, luminanceOf } from '../catalogue/pigment-optics.ts'
import { inRange } from '../quantity/range.ts'
import { differenceOfBands, JUST_NOTICED } from './difference.ts'
import { laidOn, layerPasses, type Optics, outsideBands, stronger } from './stacked.ts'

/**
 * From what depth a tinted layer hides for the eye, and how much light it lets through.
 *
 *   hides at X:  ΔE00(X over black, X over white of 0.80) ≤ 1, seen from outside
 *   light(X)   = Y of T₀(X) in the three bands      share of what the same depth of clear resin lets through
 *   Pigment f times as strong hides at X/f: K/S stays, and S·X alone counts.
 *
 * Source: layers and surface as stacked.ts, difference as difference.ts; 1 just noticeable (practice); white of 0.80 as
 * for the contrast ratio (hiding.ts): for white both give the same depth within 2 %, and for a red, which lets red
 * light through that no luminance tells of, this one asks three times as much.
 * Check: at the depth found the difference is 1; depth scales inversely with strength (1/2, 1/3, 1/10);
 * light of a dye by Beer-Lambert.
 *
 * Limits: black against white is the worst that can lie behind: a timber behind a layer of its own colour is hidden
 * sooner. Even tint; swirls are thinner in places. Deeper than 1 m counts as never.
 */
const BLACK: Bands = [0, 0, 0]
const WHITE: Bands = [0.8, 0.8, 0.8]
const DEEPEST_MM = 1000
const THINNEST_MM = 1e-4

/** Difference ΔE00 of a layer over white and over black; `mm` 0..1e6. */
export function differenceOverCard(optics: Optics, mm: number): number {
  inRange('depth', mm, 0, 1e6, 'mm')
  return differenceOfBands(outsideBands(over(optics, mm, BLACK)), outsideBands(over(optics, mm, WHITE)))
}

/** Least depth that hides for the eye, mm; null when none up to 1 m does. */
export function coverDepthMm(optics: Optics): number | null {
  const seen = (mm: number) => differenceOverCard(optics, mm) > JUST_NOTICED
  if (seen(DEEPEST_MM)) return null
  let low = THINNEST_MM
  let high = DEEPEST_MM
  for (let i = 0; i < 40; i++) {
    const middle = Math.sqrt(low * high)
    if (seen(middle)) low = middle
    else high = middle
  }
  return high
}

/** Share of light that `mm` let through, 0..1, against clear resin of the same depth. */
export function lightThrough({ scatterPerMm: s, absorbPerMm: k }: Optics, mm: number): number {
  inRange('depth', mm, 0, 1e6, 'mm')
  return luminanceOf([layerPasses(s[0], k[0], mm), layerPasses(s[1], k[1], mm), layerPasses(s[2], k[2], mm)])
}

/**
 * By what factor the tint must be taken so that `mm` let through the share `wanted` (0.0005..0.9995); null when no tint
 * is there to take.
 */
export function strengthForLight(optics: Optics, mm: number, wanted: number): number | null {
  inRange('light wanted', wanted, 0.0005, 0.9995)
  inRange('depth', mm, 1e-3, 1e6, 'mm')
  const most = 1e6
  if (lightThrough(stronger(optics, most), mm) > wanted) return null
  let low = 1e-6
  let high = most
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high)
    if (lightThrough(stronger(optics, middle), mm) > wanted) low = middle
    else high = middle
  }
  return high
}

function over({ scatterPerMm: s, absorbPerMm: k }: Optics, mm: number, behind: Bands): Bands {
  return [
    laidOn(s[0], k[0], mm, behind[0]),
    laidOn(s[1], k[1], mm, behind[1]),
    laidOn(s[2], k[2], mm, behind[2])
  ]
}
