import { bounds } from '../../src/shape/measure.ts'
import type { Region } from '../../src/shape/region.ts'

/** An SVG text of 200 × 100 mm, one unit a millimetre, its content from line 2 on. */
export function page(inner: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">\n${inner}\n</svg>`
}

/** Least x, least y, greatest x, greatest y. */
export function boxOf(region: Region): number[] {
  const b = bounds(region)
  return [b.minX, b.minY, b.maxX, b.maxY]
}
