import { difference } from '../../src/shape/combine.ts'
import { area } from '../../src/shape/measure.ts'
import type { Region } from '../../src/shape/region.ts'

/** Area, mm², of what lies in one of two regions and not in the other: 0 for the same region. */
export function symmetricDifference(a: Region, b: Region): number {
  return area(difference(a, b)) + area(difference(b, a))
}
