import { ringArea } from '../shape/measure.ts'
import type { Ring } from '../shape/region.ts'

/**
 * A part of an outline over which the top is one polynomial. Parted once, a top is measured at any height by the
 * few parts the height passes through. Holes are rings of negative area.
 */
export interface TopPart {
  readonly ring: Ring
  /** Bounds of the top over the part, mm as cast. */
  readonly low: number
  readonly high: number
  readonly areaMm2: number
  /** ∫ top over the part, mm³ over height 0. */
  readonly volumeMm3: number
  /** The part of the ring where the top lies above z. */
  above(z: number): Ring
  /** ∫ top over any ring inside the part, mm³. */
  integral(ring: Ring): number
}

/** Area where the top lies above z, mm². */
export function areaAboveOf(parts: readonly TopPart[], z: number): number {
  let sum = 0
  for (const p of parts) {
    if (p.high <= z) continue
    sum += p.low >= z ? p.areaMm2 : ringArea(p.above(z))
  }
  return sum
}

/** ∫ min(top, z), mm³ over height 0: what lies under both the top and the level z. */
export function volumeUnderOf(parts: readonly TopPart[], z: number): number {
  let sum = 0
  for (const p of parts) {
    if (p.high <= z) sum += p.volumeMm3
    else if (p.low >= z) sum += z * p.areaMm2
    else {
      const above = p.above(z)
      sum += p.volumeMm3 - (p.integral(above) - z * ringArea(above))
    }
  }
  return sum
}
