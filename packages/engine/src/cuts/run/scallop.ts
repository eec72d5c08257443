import { inRange } from '../../quantity/range.ts'

/**
 * Ridges that a round cutter leaves between its passes on a flat.
 *
 *   c = R − √(R² − s²/4)          s = 2·√(2·R·c − c²)
 *
 *   c  height of the ridge, R radius of the ball, s step between passes, mm
 *
 * Source: circle geometry. Check: R 3: s 0.5 leaves 0.0104, s 1 leaves 0.0420.
 * Limits: 0 ≤ s ≤ 2R; on a slope the step is measured along the surface.
 */
export function ridgeMm(radiusMm: number, stepMm: number): number {
  inRange('step', stepMm, 0, 2 * radiusMm, 'mm')
  return radiusMm - Math.sqrt(radiusMm ** 2 - stepMm ** 2 / 4)
}

/** Step between passes that leaves ridges of this height. @param ridge 0 to R */
export function stepForRidgeMm(radiusMm: number, ridge: number): number {
  inRange('ridge', ridge, 0, radiusMm, 'mm')
  return 2 * Math.sqrt(2 * radiusMm * ridge - ridge ** 2)
}

/** Step seen on the plan for a step along a slope. @param slopeDeg 0 to below 90 */
export function planStepMm(stepMm: number, slopeDeg: number): number {
  return stepMm * Math.cos((inRange('slope', slopeDeg, 0, 89.9, 'degrees') * Math.PI) / 180)
}

/**
 * Ridges of the teeth along the feed of a cutter that cuts with its side: p²/(4D), p way per knife mark.
 * Source: two arcs of diameter D, to first order. Limits: p well below D.
 */
export function knifeMarkMm(perMarkMm: number, diameterMm: number): number {
  return perMarkMm ** 2 / (4 * inRange('diameter', diameterMm, 0.1, 1000, 'mm'))
}
