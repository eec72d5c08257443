import { inRange } from '../quantity/range.ts'

/**
 * What coats take from a hole, and give to a peg.
 *
 *   across    hole: − 2·t        peg: + 2·t             (a wall on either side)
 *   depth     − t on the floor, + t on the face it opens on
 *
 *   t   dry film of all coats together, mm
 *
 * Source: geometry of a film of even thickness (derived). Films: ISO 2808, dry film; solids: ISO 3233 (memory).
 * Check: 3 coats of 25 µm: a hole loses 0.15 mm across, a slot the same, a peg gains 0.15; a depth loses 0.075 by
 * its floor, and nothing when the face it is measured from gets the same coats.
 *
 * Limits: an even film. Brushed coats gather in the corners of a pocket and thin at its rim; wiped oil leaves next
 * to none; a spray held square to the face hardly reaches a deep wall. So the band of a wall runs from nothing.
 */
export function acrossAfterFilmMm(acrossMm: number, filmMm: number, what: 'hole' | 'peg'): number {
  inRange('size across', acrossMm, 0, 10_000, 'mm')
  inRange('film', filmMm, 0, 10, 'mm')
  return acrossMm + (what === 'hole' ? -2 : 2) * filmMm
}

/** Depth of a hole from the face that its coats leave, mm. @throws RangeError */
export function depthAfterFilmMm(depthMm: number, floorFilmMm: number, faceFilmMm: number): number {
  inRange('depth', depthMm, 0, 10_000, 'mm')
  inRange('film on the floor', floorFilmMm, 0, 10, 'mm')
  inRange('film on the face', faceFilmMm, 0, 10, 'mm')
  return depthMm - floorFilmMm + faceFilmMm
}
