import { difference, intersection } from '../../shape/combine.ts'
import { area } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'
import { castingOf } from '../../stack/waste.ts'
import type { Place } from './bench.ts'
import { cutTo } from './in-position.ts'

/** How far from a cut free ground is looked for, in diameters of its cutter. */
const NEAR_DIAMETERS = 2
/** Between cutter or holder and a place to keep clear, mm (practice). */
const CLEAR_MM = 3
/** Ground that does not come so near to the cut is none of its own, mm. */
const MEETS_MM = 0.1
/** Less than this is no ground, mm². */
const LEAST_MM2 = 1

/**
 * Free ground at a cut that is open at the edge of the material: where no material ever was, down to the bed, and a
 * cutter may come down and move in from. EMPTY where the cut lies in the material all round, as in its waste.
 *
 * Limits: what other cuts have taken is not counted as free: their corners may stand.
 */
export function freeGround(place: Place, region: Region, diameterMm: number): Region {
  const { stack } = place.bench
  const { geometry, piece } = stack
  const casting = place.region(castingOf(piece, geometry))
  const shape = { join: 'round', tolMm: 0.02 } as const
  if (area(difference(offset(region, MEETS_MM, shape), casting)) < MEETS_MM) return EMPTY
  let free = difference(offset(region, NEAR_DIAMETERS * diameterMm, shape), casting)
  // What is clamped there stands beside the holder: its middle keeps off by half of that.
  const off = Math.max(0, place.bench.machine.holder - diameterMm) / 2 + CLEAR_MM
  for (const keep of geometry.keepClear) free = difference(free, offset(place.region(keep), off, shape))
  free = cutTo(place.on.position, free)
  return area(free) < LEAST_MM2 || area(intersection(free, offset(region, MEETS_MM, shape))) < MEETS_MM
    ? EMPTY
    : free
}
