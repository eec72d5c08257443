import { inRange } from '../quantity/range.ts'

/**
 * Is the mould level? From readings at its corners: the plane of its base, the twist that is left, the wedge
 * this casts, the shims that mend it and what it costs to plane off.
 *
 *   z = c + a·x + b·y          plane by least squares through the readings (x, y from their middle)
 *   twist  = greatest less least residual
 *   wedge  = greatest less least of the plane over the readings' places
 *
 * Resin finds its own level, so the casting takes the tilt and the twist of the base as a difference of
 * thickness: to face the base side true, everything between its highest and lowest point goes: range of the
 * readings.
 *
 * Source: least squares (normal equations); a rectangle's four residuals are ±(z1 − z2 + z3 − z4)/4
 * (derived).
 * Check: 0, 0.4, 0.3, 0 at the corners of 600 × 400 mm: tilt 0.583 mm/m along x, −0.125 along y; twist 0.05.
 *
 * Limits: between the readings the base is taken as the plane plus twist: sag is another matter (sag.ts). A
 * reading is no better than the level and straightedge it was taken with. Shims by readings take the twist
 * out of a base that gives; a stiff one is only turned (shims by plane) and keeps its twist.
 */
export interface LevelReading {
  readonly xMm: number
  readonly yMm: number
  /** What the base reads high there, mm (negative: low), over any one datum. */
  readonly heightMm: number
}

export interface Level {
  /** Rise of the base per metre along x and y, mm/m. */
  readonly tiltXMmPerM: number
  readonly tiltYMmPerM: number
  /** Reading less plane, in the order of the readings, mm. */
  readonly residualsMm: readonly number[]
  readonly twistMm: number
  readonly wedgeMm: number
  /** Put under each place, mm: brings all readings to the highest (a base that gives). The highest has 0. */
  readonly shimsMm: readonly number[]
  /** The same for a stiff base: brings its plane level and leaves the twist. */
  readonly stiffShimsMm: readonly number[]
  /** Casting thinner than the mean at the highest place, and thicker at the lowest, mm. */
  readonly thinnerMm: number
  readonly thickerMm: number
  /** What facing the base side costs on top of the flattening allowance if nothing is shimmed, mm. */
  readonly flatteningMm: number
}

/**
 * The level of a base from three or more readings that do not stand in a line.
 *
 * @throws RangeError: fewer than 3 or more than 1000 readings, places past ±20 m, heights past ±100 mm, or
 * all in line
 */
export function levelFromReadings(readings: readonly LevelReading[]): Level {
  inRange('number of readings', readings.length, 3, 1000, '')
  let mx = 0
  let my = 0
  let mz = 0
  for (const { xMm, yMm, heightMm } of readings) {
    mx += inRange('place of a reading along x', xMm, -20_000, 20_000, 'mm') / readings.length
    my += inRange('place of a reading along y', yMm, -20_000, 20_000, 'mm') / readings.length
    mz += inRange('reading', heightMm, -100, 100, 'mm') / readings.length
  }
  let xx = 0
  let xy = 0
  let yy = 0
  let xz = 0
  let yz = 0
  for (const { xMm, yMm, heightMm } of readings) {
    const x = xMm - mx
    const y = yMm - my
    const z = heightMm - mz
    xx += x * x
    xy += x * y
    yy += y * y
    xz += x * z
    yz += y * z
  }
  const determinant = xx * yy - xy * xy
  // In a line the determinant is nothing beside its terms; 1e-9 is a tenth of a minute of arc out of line.
  if (!(determinant > 1e-9 * (xx + yy) ** 2)) {
    throw new RangeError('the readings stand in one line; take one off it, best one at each corner')
  }
  const a = (xz * yy - yz * xy) / determinant
  const b = (yz * xx - xz * xy) / determinant
  const plane = readings.map(r => mz + a * (r.xMm - mx) + b * (r.yMm - my))
  const heights = readings.map(r => r.heightMm)
  const residualsMm = heights.map((z, i) => z - plane[i]!)
  const top = Math.max(...heights)
  const planeTop = Math.max(...plane)
  return {
    tiltXMmPerM: a * 1000,
    tiltYMmPerM: b * 1000,
    residualsMm,
    twistMm: range(residualsMm),
    wedgeMm: range(plane),
    shimsMm: heights.map(z => top - z),
    stiffShimsMm: plane.map(z => planeTop - z),
    thinnerMm: top - mz,
    thickerMm: mz - Math.min(...heights),
    flatteningMm: range(heights)
  }
}

/**
 * Readings at the corners of a rectangle from a spirit or digital level laid along both ways, mm/m (positive:
 * rises towards greater x or y). Front left, front right, back right, back left. Shows no twist: that takes
 * four corners.
 */
export function cornersFromTilt(
  lengthMm: number,
  widthMm: number,
  tiltXMmPerM: number,
  tiltYMmPerM: number
): LevelReading[] {
  inRange('tilt along x', tiltXMmPerM, -100, 100, 'mm/m')
  inRange('tilt along y', tiltYMmPerM, -100, 100, 'mm/m')
  const z = (x: number, y: number): number => (x * tiltXMmPerM + y * tiltYMmPerM) / 1000
  return corners(lengthMm, widthMm).map(([xMm, yMm]) => ({ xMm, yMm, heightMm: z(xMm, yMm) }))
}

/** Readings at the corners of a rectangle: front left, front right, back right, back left, mm high. */
export function cornersFromHeights(
  lengthMm: number,
  widthMm: number,
  heightsMm: readonly [number, number, number, number]
): LevelReading[] {
  return corners(lengthMm, widthMm).map(([xMm, yMm], i) => ({ xMm, yMm, heightMm: heightsMm[i]! }))
}

function corners(lengthMm: number, widthMm: number): readonly (readonly [number, number])[] {
  inRange('length', lengthMm, 1, 20_000, 'mm')
  inRange('width', widthMm, 1, 20_000, 'mm')
  return [
    [0, 0],
    [lengthMm, 0],
    [lengthMm, widthMm],
    [0, widthMm]
  ]
}

function range(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values)
}
