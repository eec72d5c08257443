import { difference, union } from '../../shape/combine.ts'
import { offset } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'

/**
 * A rebate with the room its cutter wants beyond the edge of the piece: the region, and what lies within a diameter of
 * it outside of the piece. So the corners at the edge come out square and the floor reaches it. A region that stays
 * away from the edge by more than a diameter comes back as it was; it must not be one that stops just short of it.
 *
 * Check: test/cuts/area/run-out.test.ts.
 */
export function runOut(region: Region, piece: Region, diameterMm: number, tolMm: number): Region {
  const beyond = difference(offset(region, diameterMm, { join: 'round', tolMm: tolMm / 4 }), piece)
  return beyond.rings.length === 0 ? region : union(region, beyond)
}
