import { rectangle } from '../../shape/build.ts'
import { intersection } from '../../shape/combine.ts'
import { bounds } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'

/** A part of a long piece that is worked at one place of the bed. */
export interface Strip {
  /** What is cut there, in the coordinates of the whole setting. */
  readonly region: Region
  readonly fromX: number
  readonly toX: number
  /** How far the piece has been moved along towards −x since the first strip, mm. */
  readonly shift: number
}

/**
 * A piece longer than the machine travels along x, moved along on pins: strips of equal length that overlap by
 * `overlapMm`, as few as do. All moves are by the same pitch, so that a row of equally spaced pins serves them.
 * One strip where all of it is within the travel.
 *
 * n = ⌈(L − o) / (T − o)⌉ strips of length (L + (n − 1)·o) / n.
 *
 * @throws Error for a travel that is not larger than the overlap
 */
export function strips(region: Region, travelMm: number, overlapMm: number): Strip[] {
  if (!(travelMm > overlapMm && overlapMm >= 0))
    throw new Error(`strips of ${travelMm} mm that overlap by ${overlapMm} mm; the overlap must be shorter`)
  if (region.rings.length === 0) return []
  const { minX, maxX, minY, maxY } = bounds(region)
  const long = maxX - minX
  const count = Math.max(1, Math.ceil((long - overlapMm) / (travelMm - overlapMm) - 1e-9))
  const each = (long + (count - 1) * overlapMm) / count
  const pitch = each - overlapMm
  return Array.from({ length: count }, (_, i) => {
    const fromX = minX + i * pitch
    const toX = i === count - 1 ? maxX : fromX + each
    const high = maxY - minY + 2
    const band = rectangle(toX - fromX, high, 0, 0.01, (fromX + toX) / 2, (minY + maxY) / 2)
    return { region: count === 1 ? region : intersection(region, band), fromX, toX, shift: i * pitch }
  })
}
