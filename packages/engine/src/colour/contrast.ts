import { type Bands, luminanceOf } from '../catalogue/pigment-optics.ts'
import { inRange } from '../quantity/range.ts'

/**
 * Whether lines and figures stand out from their ground, and from how far they are read.
 *
 *   ratio    = (Y₁ + 0.05)/(Y₂ + 0.05)         Y₁ ≥ Y₂ relative luminances, 0..1
 *   distance = stroke/tan(1′)                  1′ one minute of arc: 3438 times the stroke
 *
 * At least 3 : 1 for graphics, 4.5 : 1 for figures that are not large.
 *
 * Source: WCAG 2.x, success criteria 1.4.11 and 1.4.3 (memory; an open standard for screens, taken over); one minute of
 * arc is what visual acuity 1.0 tells apart (ISO 8596; memory), and a stroke of it only just (practice).
 * Check: black on white is 21 : 1; #767676 on white is 4.54 : 1 (published example; memory); 1 mm at 3.44 m.
 *
 * Limits: luminance only: red on green of one brightness counts as nothing, as it does for an eye that does not tell
 * them apart. Good light, a good eye; for reading at ease take half the distance.
 */
export const GRAPHICS_RATIO = 3
export const FIGURES_RATIO = 4.5

/** Contrast of two colours, linear in light: 1 for alike to 21. */
export function contrastOf(one: Bands, other: Bands): number {
  const a = luminanceOf(one)
  const b = luminanceOf(other)
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

/** Distance at which a stroke is one minute of arc, mm. */
export function strokeReadAtMm(strokeMm: number): number {
  inRange('stroke', strokeMm, 0, 1000, 'mm')
  return strokeMm / Math.tan(Math.PI / 180 / 60)
}
