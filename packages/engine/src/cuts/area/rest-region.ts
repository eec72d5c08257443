import { difference, intersection } from '../../shape/combine.ts'
import { offset } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'

/** What a cutter leaves standing in a pocket, and what it clears. */
export interface Rest {
  /** Corners and narrow places it does not get into, with a hair of what it has cleared about them. */
  readonly region: Region
  /** What it has cleared: free ground for the smaller cutter that follows. */
  readonly cleared: Region
}

/** A cutter goes into a slot just as wide as it is, mm. */
const PLAY_MM = 0.01

/**
 * What a round cutter of a diameter cannot clear of a region: the region less all discs of that diameter that lie in
 * it (morphological opening). What is thinner than twice `leastMm` is no rest: the chords of a curve, and what
 * no smaller cutter is fetched for.
 *
 * Check: test/cuts/area/rest-region.test.ts: a square corner keeps (1 − π/4)·r².
 */
export function restRegion(region: Region, diameterMm: number, leastMm = 0.05): Rest {
  const half = diameterMm / 2
  const shape = { join: 'round', tolMm: leastMm / 10 } as const
  const cleared = intersection(offset(offset(region, PLAY_MM - half, shape), half, shape), region)
  const left = difference(region, cleared)
  const core = offset(left, -leastMm, shape)
  if (core.rings.length === 0) return { region: EMPTY, cleared }
  // Grown past its own thickness, so that its tails and a little of the cleared ground come along.
  const near = offset(core, 3 * leastMm, shape)
  return { region: intersection(near, region), cleared }
}
