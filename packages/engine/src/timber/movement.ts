import { inRange } from '../quantity/range.ts'

/**
 * Dimensional change of timber with moisture, across and along the grain.
 *
 *   eq. 13-2   ΔD = D·C·(M_F − M_I)                            between 6 and 14 %
 *   eq. 13-3   ΔD = D·(M_F − M_I)/(100·n/S − n + M_I)          from total shrinkage, any moisture below n
 *   link       C  = S/(100·n − S·(n − 10))                      (derived: 13-3 as a coefficient at M_I 10 %)
 *   angle      C(θ) = C_R·cos²θ + C_T·sin²θ                     (derived: rotation of the strain tensor)
 *
 *   D    dimension at the start, mm           M_I, M_F  moisture at start and end, %
 *   C    change per dimension and % moisture  S   shrinkage from green to oven-dry, %
 *   n    moisture at which shrinkage starts, 30 %; 22 % for western redcedar, northern white-cedar, redwood,
 *        teak and mahogany
 *   θ    angle between the face and the quartersawn face: 0° quartersawn, 90° flat-sawn
 *
 * Source: Wood Handbook (FPL-GTR-190/282), chapter 13, equations 13-2 and 13-3 with the footnote on 22 %
 * (equation numbers from memory; the heading "6 % to 14 %" read); equation 4-7 for shrinkage to a moisture
 * (memory).
 * Check: flat-sawn black walnut, 200 mm, 8 to 12 %: 2.19 mm; quartersawn 1.52 mm; commercial red oak 2.95 mm.
 *
 * Limits: single boards of one species differ by a quarter (see {@link MOVEMENT_SPREAD}); reaction and
 * juvenile wood move along the grain up to ten times as much. The timber is taken free to move and evenly
 * moist: a board held by resin or steel builds up stress instead. Above n there is no change.
 */

/** Unfavourable end of the biological spread of C, ±20 to 25 % (Wood Handbook; memory). */
const MOVEMENT_SPREAD = 0.25

/** Moisture at which most species start to shrink, % (Wood Handbook ch. 13). The exceptions have 22. */
export const SHRINKAGE_START_PCT = 30

/** Largest part of the movement a taut table gives: the handbook's coefficients hold between these, %. */
const COEFFICIENT_RANGE_PCT: readonly [low: number, high: number] = [6, 14]

/**
 * Along the grain: total shrinkage 0.1 to 0.2 %, so about 0.00005 per % (memory, Wood Handbook ch. 4);
 * juvenile and reaction wood up to 2 % total.
 */
const LONGITUDINAL_PER_PCT = {
  low: 0.001 / 30,
  central: 0.00005,
  high: 0.002 / 30,
  reaction: 0.02 / 30
}

/**
 * Angle of the year rings to the face, degrees, for the three ways of sawing; rift spans 30 to 60 (trade
 * usage).
 */
export const RING_ANGLE_DEG = { quarter: 0, rift: 45, flat: 90 } as const

/** A change of dimension in mm, growth positive, with its band. */
export interface Movement {
  readonly centralMm: number
  readonly lowMm: number
  readonly highMm: number
  /** True when the moisture leaves 6 to 14 %, where equation 13-3 took over from the table's coefficient. */
  readonly beyondTable: boolean
}

/**
 * Equation 13-2: change in mm, growth positive. The caller minds that it holds between 6 and 14 %.
 *
 * @throws RangeError: dimension 0..100 000 mm, coefficient 0..0.01 per %, moisture 0..200 %
 */
export function movementByCoefficientMm(
  dimensionMm: number,
  coefficientPerPct: number,
  fromPct: number,
  toPct: number
): number {
  inRange('coefficient of movement', coefficientPerPct, 0, 0.01, 'per %')
  checkChange(dimensionMm, fromPct, toPct)
  return dimensionMm * coefficientPerPct * (toPct - fromPct)
}

/**
 * Equation 13-3: change in mm from the total shrinkage (green to oven-dry, %), growth positive. Moisture
 * above the start of shrinkage counts as that start.
 *
 * @throws RangeError: total shrinkage 0..25 %, start 15..40 %, else as {@link movementByCoefficientMm}
 */
export function movementByShrinkageMm(
  dimensionMm: number,
  totalShrinkagePct: number,
  fromPct: number,
  toPct: number,
  shrinkageStartPct: number = SHRINKAGE_START_PCT
): number {
  checkShrinkage(totalShrinkagePct, shrinkageStartPct)
  checkChange(dimensionMm, fromPct, toPct)
  if (totalShrinkagePct === 0) return 0
  const start = Math.min(fromPct, shrinkageStartPct)
  const end = Math.min(toPct, shrinkageStartPct)
  return (
    (dimensionMm * (end - start)) /
    ((shrinkageStartPct * 100) / totalShrinkagePct - shrinkageStartPct + start)
  )
}

/** The link: coefficient per % of a species of which only the total shrinkage is known. */
export function coefficientFromShrinkagePerPct(
  totalShrinkagePct: number,
  shrinkageStartPct: number = SHRINKAGE_START_PCT
): number {
  checkShrinkage(totalShrinkagePct, shrinkageStartPct)
  return totalShrinkagePct / (100 * shrinkageStartPct - totalShrinkagePct * (shrinkageStartPct - 10))
}

/** The link the other way: total shrinkage, %, that goes with a coefficient. */
export function shrinkageFromCoefficientPct(
  coefficientPerPct: number,
  shrinkageStartPct: number = SHRINKAGE_START_PCT
): number {
  inRange('coefficient of movement', coefficientPerPct, 0, 0.01, 'per %')
  inRange('start of shrinkage', shrinkageStartPct, 15, 40, '%')
  return (100 * shrinkageStartPct * coefficientPerPct) / (1 + coefficientPerPct * (shrinkageStartPct - 10))
}

/** Equation 4-7: shrinkage from green down to `moisturePct`, %; nothing above the start of shrinkage. */
export function shrinkageToMoisturePct(
  totalShrinkagePct: number,
  moisturePct: number,
  shrinkageStartPct: number = SHRINKAGE_START_PCT
): number {
  checkShrinkage(totalShrinkagePct, shrinkageStartPct)
  inRange('moisture content', moisturePct, 0, 200, '%')
  return (totalShrinkagePct * Math.max(0, shrinkageStartPct - moisturePct)) / shrinkageStartPct
}

/**
 * Coefficient across a face whose rings stand at `ringAngleDeg` to the quartersawn face (0 to 90).
 * Check: 0° gives C_R, 90° gives C_T, 45° their mean.
 */
export function coefficientAtRingAnglePerPct(
  radialPerPct: number,
  tangentialPerPct: number,
  ringAngleDeg: number
): number {
  inRange('radial coefficient', radialPerPct, 0, 0.01, 'per %')
  inRange('tangential coefficient', tangentialPerPct, 0, 0.01, 'per %')
  inRange('ring angle', ringAngleDeg, 0, 90, '°')
  const sine = Math.sin((ringAngleDeg * Math.PI) / 180) ** 2
  return radialPerPct * (1 - sine) + tangentialPerPct * sine
}

/**
 * Change across the grain with its band: equation 13-2 between 6 and 14 %; where the moisture leaves that
 * range, equation 13-3 with the total shrinkage that belongs to the coefficient.
 */
export function crossGrainMovement(input: {
  readonly dimensionMm: number
  readonly coefficientPerPct: number
  readonly fromPct: number
  readonly toPct: number
  readonly shrinkageStartPct?: number
}): Movement {
  const { dimensionMm, coefficientPerPct, fromPct, toPct, shrinkageStartPct = SHRINKAGE_START_PCT } = input
  const [low, high] = COEFFICIENT_RANGE_PCT
  const beyondTable = Math.min(fromPct, toPct) < low || Math.max(fromPct, toPct) > high
  const centralMm = beyondTable
    ? movementByShrinkageMm(
        dimensionMm,
        shrinkageFromCoefficientPct(coefficientPerPct, shrinkageStartPct),
        fromPct,
        toPct,
        shrinkageStartPct
      )
    : movementByCoefficientMm(dimensionMm, coefficientPerPct, fromPct, toPct)
  return { ...spread(centralMm, MOVEMENT_SPREAD, MOVEMENT_SPREAD), beyondTable }
}

/**
 * Change along the grain, straight-grained mature wood, with the band of its total shrinkage (0.1 to 0.2 %).
 */
export function longitudinalMovement(lengthMm: number, fromPct: number, toPct: number): Movement {
  checkChange(lengthMm, fromPct, toPct)
  const { low, central, high } = LONGITUDINAL_PER_PCT
  const change = Math.min(toPct, SHRINKAGE_START_PCT) - Math.min(fromPct, SHRINKAGE_START_PCT)
  const [minimum, maximum] = COEFFICIENT_RANGE_PCT
  const beyondTable = Math.min(fromPct, toPct) < minimum || Math.max(fromPct, toPct) > maximum
  return { ...spread(lengthMm * central * change, 1 - low / central, high / central - 1), beyondTable }
}

/** Change of moisture, %, that explains a measured change of dimension (13-2 solved for moisture). */
export function moistureChangeForMovementPct(
  dimensionMm: number,
  movementMm: number,
  coefficientPerPct: number
): number {
  inRange('dimension', dimensionMm, Number.MIN_VALUE, 100_000, 'mm')
  inRange('coefficient of movement', coefficientPerPct, 1e-6, 0.01, 'per %')
  inRange('movement', movementMm, -dimensionMm, dimensionMm, 'mm')
  return movementMm / (dimensionMm * coefficientPerPct)
}

function spread(centralMm: number, less: number, more: number): Omit<Movement, 'beyondTable'> {
  const a = centralMm * (1 - less)
  const b = centralMm * (1 + more)
  return { centralMm, lowMm: Math.min(a, b), highMm: Math.max(a, b) }
}

function checkChange(dimensionMm: number, fromPct: number, toPct: number): void {
  inRange('dimension', dimensionMm, 0, 100_000, 'mm')
  inRange('moisture before', fromPct, 0, 200, '%')
  inRange('moisture after', toPct, 0, 200, '%')
}

function checkShrinkage(totalShrinkagePct: number, shrinkageStartPct: number): void {
  inRange('total shrinkage', totalShrinkagePct, 0, 25, '%')
  inRange('start of shrinkage', shrinkageStartPct, 15, 40, '%')
}
