import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange } from '../quantity/range.ts'

/**
 * What liquid resin does to the walls of a mould, and how high they must stand.
 *
 *   p(z) = ρ·g·(h − z)         pressure at height z over the base
 *   F    = ρ·g·h²/2            push per metre of wall, at h/3 over the base
 *   M    = ρ·g·h³/6            moment about the foot per metre of wall
 *   w    = 5·F·L⁴/(384·E·I)    bow between fixings L apart, I = H·t³/12 of the wall as a beam lying down
 *
 *   h  depth of liquid, m    H  height of the wall, m    t  its thickness, m    E  its modulus, Pa
 *
 * Source: hydrostatics; Euler-Bernoulli beam, simply supported (textbook).
 * Check: 45 mm of 1100 kg/m³ push with 10.9 N per metre, 15 mm over the base.
 *
 * Limits: the bow is that of the whole wall as one beam that nothing holds along its foot; screwed or well
 * sealed along the foot it is less. It does not say how the wall tilts. Timber that is tight against a wall and
 * swells or is wedged pushes far harder than any liquid: leave a gap. Sealant is taken to seal, not to hold.
 */
export interface WallLoad {
  readonly pressureAtFootPa: number
  readonly forceNPerM: number
  readonly forceHeightMm: number
  readonly momentNmPerM: number
}

/** Load on a wall per metre of its length, with liquid `depthMm` (0..1000) deep. */
export function wallLoad(depthMm: number, liquidKgM3: number): WallLoad {
  inRange('depth of liquid', depthMm, 0, 1000, 'mm')
  inRange('density of the liquid', liquidKgM3, 500, 3000, 'kg/m³')
  const h = depthMm / 1000
  const weight = liquidKgM3 * GRAVITY_M_PER_S2
  return {
    pressureAtFootPa: weight * h,
    forceNPerM: (weight * h ** 2) / 2,
    forceHeightMm: depthMm / 3,
    momentNmPerM: (weight * h ** 3) / 6
  }
}

export interface WallBoard {
  readonly heightMm: number
  readonly thicknessMm: number
  readonly modulusGPa: number
}

/** Outward bow midway between two fixings, mm; see Limits for what it leaves out. */
export function wallBowMm(wall: WallBoard, forceNPerM: number, fixingSpacingMm: number): number {
  inRange('distance between fixings', fixingSpacingMm, 1, 10_000, 'mm')
  return ((5 * forceNPerM * (fixingSpacingMm / 1000) ** 4) / (384 * stiffnessNm2(wall, forceNPerM))) * 1000
}

/** Distance between fixings at which the wall bows by `limitMm`; the inverse of {@link wallBowMm}. */
export function fixingSpacingForBowMm(wall: WallBoard, forceNPerM: number, limitMm: number): number {
  inRange('bow allowed', limitMm, 1e-3, 100, 'mm')
  inRange('push', forceNPerM, 1e-6, 1e5, 'N/m')
  return ((384 * stiffnessNm2(wall, forceNPerM) * (limitMm / 1000)) / (5 * forceNPerM)) ** 0.25 * 1000
}

/**
 * What one fixing holds when they stand `fixingSpacingMm` apart, N: the push on half a span to either side.
 */
export function fixingForceN(forceNPerM: number, fixingSpacingMm: number): number {
  inRange('push', forceNPerM, 0, 1e5, 'N/m')
  inRange('distance between fixings', fixingSpacingMm, 1, 10_000, 'mm')
  return (forceNPerM * fixingSpacingMm) / 1000
}

/**
 * Wall over the liquid, mm, that a mould needs when it is moved while the resin is liquid. Common practice,
 * no source; carrying a mould 600 mm long 2° out of level already takes it all ({@link tiltRiseMm}).
 */
export const FREEBOARD_MM = 10

/**
 * Rise of the liquid at the low end of a mould tilted by `tiltDeg` (0..45), mm: half its length times the
 * slope.
 */
export function tiltRiseMm(lengthMm: number, tiltDeg: number): number {
  inRange('length of the mould', lengthMm, 1, 10_000, 'mm')
  inRange('tilt', tiltDeg, 0, 45, '°')
  return (lengthMm / 2) * Math.tan((tiltDeg * Math.PI) / 180)
}

/** Least height of wall over the base, mm: the level, how far the base is out of level, and the freeboard. */
export function leastWallHeightMm(
  levelMm: number,
  outOfLevelMm = 0,
  freeboardMm: number = FREEBOARD_MM
): number {
  inRange('level', levelMm, 0, 100_000, 'mm')
  inRange('out of level', outOfLevelMm, 0, 200, 'mm')
  inRange('freeboard', freeboardMm, 0, 500, 'mm')
  return levelMm + outOfLevelMm + freeboardMm
}

/**
 * What a wall leaves over the liquid. `fillInPlace`: under the freeboard, so the mould may not be moved while
 * liquid. `overflows`: nothing is left at the low corner.
 */
export function freeboard(
  wallHeightMm: number,
  levelMm: number,
  outOfLevelMm = 0,
  neededMm: number = FREEBOARD_MM
): { readonly freeboardMm: number; readonly fillInPlace: boolean; readonly overflows: boolean } {
  inRange('height of the wall', wallHeightMm, 0, 2000, 'mm')
  const freeboardMm = wallHeightMm - leastWallHeightMm(levelMm, outOfLevelMm, 0)
  inRange('freeboard needed', neededMm, 0, 500, 'mm')
  return { freeboardMm, fillInPlace: freeboardMm < neededMm, overflows: freeboardMm <= 0 }
}

function stiffnessNm2(wall: WallBoard, forceNPerM: number): number {
  inRange('push', forceNPerM, 0, 1e5, 'N/m')
  inRange('height of the wall', wall.heightMm, 1, 2000, 'mm')
  inRange('thickness of the wall', wall.thicknessMm, 0.5, 200, 'mm')
  inRange('modulus of the wall', wall.modulusGPa, 0.001, 250, 'GPa')
  return (wall.modulusGPa * 1e9 * (wall.heightMm / 1000) * (wall.thicknessMm / 1000) ** 3) / 12
}
