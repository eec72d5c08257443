import { offset } from '../shape/offset.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'

/** A pocket and the plug that goes into it. */
export interface InlayPair {
  readonly pocket: Region
  /** Outline of the plug, as it lies in the pocket; EMPTY where the gap leaves nothing. */
  readonly plug: Region
}

/**
 * A pocket and its plug, both cut with a round cutter of radius R, so that the gap g between them is the same all round:
 *
 *   pocket = (P ⊖ R ⊕ R) ⊕ r ⊖ r,  r = max(0, R − g)        P the shape as drawn; ⊖ ⊕ inward and outward offsets
 *   plug   = pocket ⊖ g
 *
 * The first pair rounds the corners that the cutter cannot reach into from within, to radius R: the plug has R − g
 * there, which any cutter makes from outside. The second rounds the corners that point into the pocket, to R − g: the
 * plug is hollow there, with radius R. Where the shape is narrower than the cutter it falls away.
 *
 * Check: gap from each side, and that cutter and corners agree, on seeded shapes; the area of a rectangle by closed form.
 *
 * @throws Error for a diameter not above 0, a negative gap or a tolerance not above 0
 */
export function inlayPair(region: Region, cutterDiameterMm: number, gapMm: number, tolMm: number): InlayPair {
  if (!(cutterDiameterMm > 0)) throw new Error(`a cutter of ${cutterDiameterMm} mm; it must be above 0`)
  if (!(gapMm >= 0)) throw new Error(`a gap of ${gapMm} mm; it must be 0 or more`)
  const options = { join: 'round', tolMm: tolMm / 4 } as const
  const radius = cutterDiameterMm / 2
  const hollow = Math.max(0, radius - gapMm)
  const opened = offset(offset(region, -radius, options), radius, options)
  if (opened.rings.length === 0) return { pocket: EMPTY, plug: EMPTY }
  const pocket = offset(offset(opened, hollow, options), -hollow, options)
  return { pocket, plug: gapMm === 0 ? pocket : offset(pocket, -gapMm, options) }
}

/** Outline of the plug for a pocket drawn as `region`, see {@link inlayPair}. */
export function plugOf(region: Region, cutterDiameterMm: number, gapMm: number, tolMm = 0.01): Region {
  return inlayPair(region, cutterDiameterMm, gapMm, tolMm).plug
}
