import { inRange } from '../../quantity/range.ts'
import { offset, stroke } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'

/**
 * A guide bush that follows the edge of a template while the bit in it cuts.
 *
 *   o  = (B − b)/2              B  outer diameter of the bush, b  diameter of the bit, mm
 *   opening = region moved outward by o                                  what the bush follows
 *   slot    = w + B − b         w  width of a groove
 *   r_least = b/2               least inside radius in the work
 *   r_open  = B/2               the corner of the opening that the bush just fills: r_least + o
 *
 * Source: plane geometry. Check: what the bit sweeps when the middle of the bush runs everywhere it can in the
 * opening is the region itself, but for corners sharper than b/2 (test, by offsetting back); 60 × 36 with bush 14 and
 * bit 8 opens 66 × 42.
 *
 * Limits: the bit stands in the middle of the bush; centre it with a cone first. A bush that is loose in its plate
 * adds its play.
 */
export function bushOffsetMm(bushMm: number, bitMm: number): number {
  inRange('bit', bitMm, 0.01, 500, 'mm')
  inRange('guide bush', bushMm, bitMm, 500, 'mm')
  return (bushMm - bitMm) / 2
}

/** What a template for a region is cut out to; `offsetMm` 0 with a bearing of the bit's own diameter. */
export function openingOf(region: Region, offsetMm: number, tolMm: number): Region {
  return offset(region, offsetMm, { join: 'round', tolMm })
}

/** The slots of a template for grooves along lines, round at both ends as the bush is. */
export function slotsOf(
  lines: readonly Float64Array[],
  widthMm: number,
  offsetMm: number,
  tolMm: number
): readonly Region[] {
  return lines.map(line => stroke(line, widthMm + 2 * offsetMm, { ends: 'round', tolMm }))
}

/** Least room between bit and bush: the wall of the bush and air for chips on either side, mm (practice). */
const BUSH_WALL_MM = 1.5

/** The smallest bush a bit goes through with room; null: none does. */
export function bushFor(bitMm: number, bushesMm: readonly number[]): number | null {
  const wide = bushesMm.filter(b => b >= bitMm + 2 * BUSH_WALL_MM - 1e-9)
  return wide.length === 0 ? null : Math.min(...wide)
}
