import { inRange } from '../quantity/range.ts'

/**
 * Will a timber set in a mould float when liquid resin rises round it, and what holds it down?
 *
 *   F(d) = ρ_l·[ V(d) − (1 − f)·A_0·d ] − m            in grams, up positive
 *
 *   d    depth of liquid over the underside, mm           V(d)  volume below the level, mm³
 *   f    share of the underside that liquid has crept under, 0..1
 *   A_0  area of the underside, mm²                        m     mass of the timber, g
 *
 * Archimedes' lift is the pressure on the underside less that on the top. Where no liquid gets under, that
 * pressure is missing: F is short of it by the weight of a column as deep as the liquid. A straight-sided
 * timber that nothing creeps under (f = 0) is therefore never lifted and, once covered, is pressed down; one
 * with undercut edges is lifted even then, by its overhang. Nobody can promise f = 0 on a mould floor, so f =
 * 1 is the default.
 *
 * The sides run straight between the outlines of underside and top, so that the area over the height is the
 * parabola through the areas at the bottom, half way and top; V is its integral, exact for lofted outlines.
 *
 * Source: hydrostatics (Archimedes); the prismatoid volume h/6·(A_0 + 4·A_m + A_1) is the check of V.
 * Check: 1 litre of timber of 640 kg/m³ quite under liquid of 1100 kg/m³ lifts with 460 g; half under, with
 * −90 g.
 *
 * Limits: the timber is loose (a bond to an earlier pour or a tacky seal coat holds more); it does not soak;
 * the liquid is at rest (a stream poured against an edge, or a knock, adds to it: one reason for the factor).
 * The lift of an uneven piece does not act in its middle: spread the hold-down. A weight that stands in the
 * liquid loses its own buoyancy.
 */
export interface FloatingTimber {
  /** Heights of underside and top over any one datum, mm. */
  readonly bottomMm: number
  readonly topMm: number
  /** Areas at the underside, half way up and at the top, mm²; alike for straight sides. */
  readonly areasMm2: readonly [bottom: number, middle: number, top: number]
  readonly densityKgM3: number
  readonly liquidKgM3: number
  /** Share of the underside that liquid creeps under, 0..1; 1 (all of it) unless known better. */
  readonly wettedUnderside?: number
}

/** Hold-down over lift. Common practice, no source: covers knocks, streams and a tape that creeps. */
export const HOLD_DOWN_SAFETY_FACTOR = 2

/**
 * Spread of the density of single boards about the species' mean: one coefficient of variation, about 10 %
 * (Wood Handbook ch. 4; memory).
 */
const DENSITY_SPREAD = 0.1

export interface HoldDown {
  /** The level at which it pulls hardest, mm over the same datum. */
  readonly worstLevelMm: number
  /** Net lift then, g; negative: it stays. */
  readonly netLiftG: number
  /** The same for a board heavier and lighter by the spread. */
  readonly netLiftLowG: number
  readonly netLiftHighG: number
  /** What must hold it, g: the factor times the lift, and never less than the lift of the lighter board. */
  readonly holdDownG: number
}

/** A timber with straight sides, from its volume. */
export function straightSided(volumeMm3: number, thicknessMm: number): readonly [number, number, number] {
  inRange('volume', volumeMm3, 1, 1e12, 'mm³')
  inRange('thickness', thicknessMm, 0.1, 10_000, 'mm')
  const area = volumeMm3 / thicknessMm
  return [area, area, area]
}

/** Volume of the whole timber, mm³. */
export function timberVolumeMm3(timber: FloatingTimber): number {
  const { areasMm2, bottomMm, topMm } = checked(timber)
  return ((topMm - bottomMm) * (areasMm2[0] + 4 * areasMm2[1] + areasMm2[2])) / 6
}

/** Volume below `levelMm`, mm³; the whole when it is covered, 0 when the level is below the underside. */
export function volumeBelowMm3(timber: FloatingTimber, levelMm: number): number {
  const { areasMm2, bottomMm, topMm } = checked(timber)
  inRange('level', levelMm, -1e5, 1e5, 'mm')
  const height = topMm - bottomMm
  const s = Math.min(1, Math.max(0, (levelMm - bottomMm) / height))
  const [a, b, c] = profile(areasMm2)
  return height * s * (a + s * (b / 2 + (s * c) / 3))
}

/** Net lift with the liquid standing at `levelMm`, g; negative: the timber stays where it is. */
export function netLiftG(timber: FloatingTimber, levelMm: number): number {
  const depth = Math.max(0, levelMm - timber.bottomMm)
  const dry = 1 - (timber.wettedUnderside ?? 1)
  const carried = volumeBelowMm3(timber, levelMm) - dry * timber.areasMm2[0] * depth
  // mm³ × kg/m³ = 1e-6 g
  return carried * timber.liquidKgM3 * 1e-6 - massG(timber)
}

/**
 * The worst moment while the liquid rises to `finalLevelMm`, and what must hold the timber then. With liquid
 * under it all that is the least of final level and top; with a dry underside it may come sooner.
 */
export function holdDown(
  timber: FloatingTimber,
  finalLevelMm: number,
  safetyFactor: number = HOLD_DOWN_SAFETY_FACTOR,
  densitySpread: number = DENSITY_SPREAD
): HoldDown {
  inRange('safety factor', safetyFactor, 1, 10, '')
  inRange('spread of density', densitySpread, 0, 0.5, '(as a fraction)')
  let worstLevelMm = timber.bottomMm
  let lift = netLiftG(timber, worstLevelMm)
  for (const level of turningLevels(timber, finalLevelMm)) {
    const at = netLiftG(timber, level)
    if (at > lift) {
      lift = at
      worstLevelMm = level
    }
  }
  const slack = massG(timber) * densitySpread
  return {
    worstLevelMm,
    netLiftG: lift,
    netLiftLowG: lift - slack,
    netLiftHighG: lift + slack,
    holdDownG: Math.max(0, lift * safetyFactor, lift + slack)
  }
}

/**
 * How many screws, tapes or weights hold `holdDownG` when each holds `eachG` (the maker's own test, or the
 * scale).
 */
export function fixingsFor(holdDownG: number, eachG: number): number {
  inRange('hold-down', holdDownG, 0, 1e9, 'g')
  inRange('what one holds', eachG, 1, 1e9, 'g')
  return Math.ceil(holdDownG / eachG)
}

/**
 * Levels at which the lift can be greatest: the end of the rise, the top, and where dF/dd = A(d) − (1 −
 * f)·A_0 = 0.
 */
function turningLevels(timber: FloatingTimber, finalLevelMm: number): number[] {
  const { bottomMm, topMm, areasMm2 } = timber
  const end = Math.min(finalLevelMm, topMm)
  const levels = [end]
  const [a, b, c] = profile(areasMm2)
  const target = (1 - (timber.wettedUnderside ?? 1)) * areasMm2[0]
  const roots: number[] = []
  if (Math.abs(c) < 1e-12 * areasMm2[0]) {
    if (b !== 0) roots.push((target - a) / b)
  } else {
    const discriminant = b * b - 4 * c * (a - target)
    if (discriminant >= 0) {
      const root = Math.sqrt(discriminant)
      roots.push((-b + root) / (2 * c), (-b - root) / (2 * c))
    }
  }
  for (const s of roots) {
    const level = bottomMm + s * (topMm - bottomMm)
    if (s > 0 && level < end) levels.push(level)
  }
  return levels
}

/** A(s) = a + b·s + c·s² through the three areas, s from 0 (underside) to 1 (top). */
function profile([bottom, middle, top]: readonly [number, number, number]): [number, number, number] {
  return [bottom, 4 * middle - 3 * bottom - top, 2 * (bottom - 2 * middle + top)]
}

function massG(timber: FloatingTimber): number {
  return timberVolumeMm3(timber) * timber.densityKgM3 * 1e-6
}

function checked(timber: FloatingTimber): FloatingTimber {
  inRange('height of the underside', timber.bottomMm, -1e5, 1e5, 'mm')
  inRange('height of the top', timber.topMm, timber.bottomMm + 0.01, 1e5, 'mm')
  inRange('density of the timber', timber.densityKgM3, 50, 2000, 'kg/m³')
  inRange('density of the liquid', timber.liquidKgM3, 500, 3000, 'kg/m³')
  inRange('wetted share of the underside', timber.wettedUnderside ?? 1, 0, 1, '')
  for (const area of timber.areasMm2) inRange('area', area, 0, 1e9, 'mm²')
  const [a, b, c] = profile(timber.areasMm2)
  const turn = c > 0 ? -b / (2 * c) : -1
  const least = turn > 0 && turn < 1 ? a + turn * (b + turn * c) : Math.min(a, a + b + c)
  if (least < -1e-9 * Math.max(...timber.areasMm2)) {
    throw new RangeError(
      `areas ${timber.areasMm2.join(', ')} mm² give a negative area between them; ` +
        'sides that run straight between two outlines cannot'
    )
  }
  return timber
}
