import type { Profile } from '../../src/resin/column-grid.ts'

/** A profile read at a position, straight between its points. */
export function profileAt({ positionMm: x, value }: Profile, mm: number): number {
  let i = 1
  while (i < x.length - 1 && x[i]! < mm) i++
  return value[i - 1]! + ((value[i]! - value[i - 1]!) * (mm - x[i - 1]!)) / (x[i]! - x[i - 1]!)
}
