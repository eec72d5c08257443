import { inRange } from '../../quantity/range.ts'

/**
 * Speeds of a turning cutter.
 *
 *   n   turns a minute           1/min
 *   vc  speed of the edge        m/min
 *   vf  feed                     mm/min
 *   z   edges, fz way per edge   mm
 *
 *   vc = π·D·n/1000      vf = n·z·fz
 *
 * Source: definitions. Check: 18 000 1/min at 6 mm, 339 m/min; with two edges of 0.15 mm, 5400 mm/min.
 */
export function edgeSpeedMMin(diameterMm: number, rpm: number): number {
  return (Math.PI * inRange('diameter', diameterMm, 0, 1000, 'mm') * rpm) / 1000
}

/** Feed, mm/min. */
export function feedMmMin(rpm: number, flutes: number, perToothMm: number): number {
  return rpm * flutes * perToothMm
}

/** Way of the work per tooth, mm. */
export function perToothMm(feed: number, rpm: number, flutes: number): number {
  return feed / (inRange('turns a minute', rpm, 1, 1e6) * inRange('flutes', flutes, 1, 100))
}
