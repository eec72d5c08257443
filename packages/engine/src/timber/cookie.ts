import { inRange } from '../quantity/range.ts'
import { SHRINKAGE_START_PCT, shrinkageToMoisturePct } from './movement.ts'

/**
 * A round sawn across the stem (cookie): how far its rim opens when one crack takes all of the difference
 * between shrinkage around and across the rings.
 *
 *   gap(M) = (S_T − S_R)/100·(n − M)/n·2π·R            along the rim, mm
 *   wedge  = 360°·(s_T − s_R)/(1 − s_R)                 s = shrinkage to M as a fraction
 *
 *   S_T, S_R  tangential and radial shrinkage, green to oven-dry, %    n  start of shrinkage, %
 *   R  radius green, mm
 *
 * The rings shorten by s_T, the radius by s_R: what is missing from the closed ring is the gap. Exact for a
 * round cut through to the pith, whose rest stays free of stress.
 *
 * Source: geometry with Wood Handbook equation 4-7 (memory).
 * Check: white oak 5.6/10.5 %, radius 305 mm: 94 mm oven-dry, 69 mm at 8 %.
 *
 * Limits: several cracks share the gap; creep while drying very slowly, or a species with S_T near S_R, opens
 * less. A round that has opened less than the gap of its room has more to come; a round with no crack is
 * under stress, not settled.
 */
export interface Cookie {
  readonly radiusMm: number
  readonly radialShrinkagePct: number
  readonly tangentialShrinkagePct: number
  readonly shrinkageStartPct?: number
}

/** Gap at the rim, mm along the rim, once the whole round has `moisturePct` (0..200 %). */
export function rimOpeningMm(cookie: Cookie, moisturePct: number): number {
  inRange('radius', cookie.radiusMm, 1, 5000, 'mm')
  const { radial, tangential } = shrunk(cookie, moisturePct)
  return (tangential - radial) * 2 * Math.PI * cookie.radiusMm
}

/** Angle of the wedge that closes that gap, degrees. */
export function wedgeAngleDeg(cookie: Cookie, moisturePct: number): number {
  const { radial, tangential } = shrunk(cookie, moisturePct)
  return (360 * (tangential - radial)) / (1 - radial)
}

/**
 * How far along a round is: the openings measured so far (mm, all cracks added) against the gap its room will
 * ask for. `stillToComeMm` has the spread of timber in it when the band is used: shrinkages ± `spread`.
 */
export function cookieProgress(
  cookie: Cookie,
  openMm: number,
  roomMoisturePct: number,
  spread = 0.25
): {
  readonly expectedMm: number
  readonly fraction: number
  readonly stillToComeMm: number
  readonly stillToComeLowMm: number
  readonly stillToComeHighMm: number
} {
  inRange('opening so far', openMm, 0, 2 * Math.PI * cookie.radiusMm, 'mm')
  inRange('spread', spread, 0, 0.9, '(as a fraction)')
  const expectedMm = rimOpeningMm(cookie, roomMoisturePct)
  return {
    expectedMm,
    fraction: expectedMm > 0 ? Math.min(1, openMm / expectedMm) : 1,
    stillToComeMm: Math.max(0, expectedMm - openMm),
    stillToComeLowMm: Math.max(0, expectedMm * (1 - spread) - openMm),
    stillToComeHighMm: Math.max(0, expectedMm * (1 + spread) - openMm)
  }
}

function shrunk(cookie: Cookie, moisturePct: number): { radial: number; tangential: number } {
  const start = cookie.shrinkageStartPct ?? SHRINKAGE_START_PCT
  const radial = shrinkageToMoisturePct(cookie.radialShrinkagePct, moisturePct, start) / 100
  const tangential = shrinkageToMoisturePct(cookie.tangentialShrinkagePct, moisturePct, start) / 100
  if (cookie.tangentialShrinkagePct < cookie.radialShrinkagePct) {
    throw new RangeError(
      `tangential shrinkage ${cookie.tangentialShrinkagePct} % is less than radial ` +
        `${cookie.radialShrinkagePct} %; timber shrinks at least as much around as across its rings`
    )
  }
  return { radial, tangential }
}
