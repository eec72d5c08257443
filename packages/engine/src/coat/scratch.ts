import { inRange } from '../quantity/range.ts'

/**
 * Scratches that a grain leaves, and the film that hides them.
 *
 *   depth = c·d        peak to valley, µm; d: grain, µm
 *   c     0.15 to 0.30 in timber (across the grain at the high end), 0.10 to 0.15 in hard resin
 *   hidden by a clear film while depth ≤ film/3
 *
 * Source: common practice, no published source (both). Surfaces that tools leave: closed forms below.
 * Check: in timber P80 30 to 60 µm, P180 12 to 25, P320 7 to 14, P600 4 to 8, P2000 1.5 to 3.
 *
 * Limits: by hand or with an orbital sander at light pressure; worn paper scratches less, a grain that came
 * loose from a coarser disc much more. Soft and green resin scratches deeper.
 */
export type Sanded = 'timber' | 'resin'

/** Least, middle and greatest, µm. */
export type Depth = readonly [low: number, middle: number, high: number]

const SHARE: Readonly<Record<Sanded, readonly [low: number, high: number]>> = {
  timber: [0.15, 0.3],
  resin: [0.1, 0.15]
}

/** Part of a dry film that a scratch may be deep and still not show (practice). */
const HIDDEN_SHARE = 1 / 3

/** Peak to valley of the scratches of a grain, µm. @throws RangeError outside 0.1 to 2000 µm */
export function scratchUm(grainUm: number, sanded: Sanded): Depth {
  inRange('grain', grainUm, 0.1, 2000, 'µm')
  const [low, high] = SHARE[sanded]
  return [low * grainUm, ((low + high) / 2) * grainUm, high * grainUm]
}

/** Deepest scratch that a dry film hides, µm. */
export function hiddenUm(filmUm: number): number {
  return HIDDEN_SHARE * inRange('dry film', filmUm, 0, 20_000, 'µm')
}

/**
 * Cusps between cuts of a round edge, µm: R − √(R² − (p/2)²), R radius and p pitch of the cuts, mm. Of a planer
 * the radius is that of the cutting circle and the pitch the feed a knife.
 * Check: 2 mm on a radius of 30: 16.7 µm; p²/(8R) for small p.
 * @throws RangeError when the pitch is wider than the cutter
 */
export function scallopUm(radiusMm: number, pitchMm: number): number {
  inRange('radius', radiusMm, 0.05, 500, 'mm')
  inRange('pitch', pitchMm, 0, 2 * radiusMm, 'mm')
  return 1000 * (radiusMm - Math.sqrt(radiusMm * radiusMm - (pitchMm * pitchMm) / 4))
}

/**
 * Ridges between the passes of a flat cutter that does not stand square, µm: pass × tilt.
 * Check: passes of 15 mm at 2 mm/m: 30 µm.
 */
export function ridgeUm(passMm: number, tiltMmPerM: number): number {
  // Millimetres times mm/m are µm.
  return inRange('pass', passMm, 0, 500, 'mm') * inRange('tilt', tiltMmPerM, 0, 100, 'mm/m')
}
