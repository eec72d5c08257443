import { inRange } from '../quantity/range.ts'

/**
 * Limits and fits of plain sizes: what "6 H7" or "6 m6" means in µm, and the clearance of a hole and a shaft.
 *
 *   H7, H8 ...  hole: from EI = 0 up to EI + IT
 *   d ... h     shaft: from es (at or below 0) down to es − IT
 *   k, m, n, p  shaft: from ei (at or above 0) up to ei + IT
 *   D ... G     hole: the mirror of the shaft, EI = −es
 *   least clearance = EI − es, greatest = ES − ei (negative: interference)
 *
 *   IT      standard tolerance of the grade, µm        es, ei  upper and lower deviation of a shaft, µm
 *   ES, EI  upper and lower deviation of a hole, µm
 *
 * Source: ISO 286-1:2010, Tables 1 (grades) and 4, 5 (deviations of shafts), in its bands up to 80 mm; the cells
 * are from memory, so they are held against the formulas from which the standard's tables were rounded
 * (i = 0.45·∛D + 0.001·D; IT6 = 10·i, IT7 = 16·i, IT8 = 25·i, IT9 = 40·i ...; D the geometric mean of the band).
 * Check: 6 H7 +12/0; 6 m6 +12/+4; 8 h6 0/−9; 25 H7 +21/0; 25 g6 −7/−20; 25 f7 −20/−41.
 *
 * Limits: above 0 to 80 mm, the classes of pins, shafts and bores of fittings. k is of grades 4 to 7 alone. The
 * standard speaks of metal at 20 °C: timber moves by tenths of a millimetre where a grade asks for hundredths, and
 * a reamed hole in resin springs back. A class says what a metal part is, not what a hole in timber stays at.
 */

/** Upper ends of the size bands, mm; a size on an end belongs to the lower band ("above ... up to and including"). */
const BANDS_MM = [3, 6, 10, 18, 30, 50, 80] as const

type Cells = readonly [number, number, number, number, number, number, number]

/** Table 1: standard tolerance by grade and band, µm. */
const GRADES: Readonly<Record<number, Cells>> = {
  5: [4, 5, 6, 8, 9, 11, 13],
  6: [6, 8, 9, 11, 13, 16, 19],
  7: [10, 12, 15, 18, 21, 25, 30],
  8: [14, 18, 22, 27, 33, 39, 46],
  9: [25, 30, 36, 43, 52, 62, 74],
  10: [40, 48, 58, 70, 84, 100, 120],
  11: [60, 75, 90, 110, 130, 160, 190],
  12: [100, 120, 150, 180, 210, 250, 300],
  13: [140, 180, 220, 270, 330, 390, 460]
}

/** Upper deviation es of shafts below the line, and lower deviation ei of those above it, µm. */
const UPPER: Readonly<Record<string, Cells>> = {
  d: [-20, -30, -40, -50, -65, -80, -100],
  e: [-14, -20, -25, -32, -40, -50, -60],
  f: [-6, -10, -13, -16, -20, -25, -30],
  g: [-2, -4, -5, -6, -7, -9, -10],
  h: [0, 0, 0, 0, 0, 0, 0]
}
const LOWER: Readonly<Record<string, Cells>> = {
  k: [0, 1, 1, 1, 2, 2, 2],
  m: [2, 4, 6, 7, 8, 9, 11],
  n: [4, 8, 10, 12, 15, 17, 20],
  p: [6, 12, 15, 18, 22, 26, 32]
}
const K_GRADES = { least: 4, most: 7 }

/** Sizes the tables hold, mm. */
export const TOLERANCE_RANGE_MM: readonly [above: number, to: number] = [0, 80]

/** Classes that are known, for messages and for the form of a field: a letter and a grade. */
const TOLERANCE_CLASS = /^([DEFGHdefghkmnp])(5|6|7|8|9|10|11|12|13)$/

/** How far a size may be off, mm. */
export interface Deviations {
  readonly lowerMm: number
  readonly upperMm: number
}

/**
 * Deviations of a size of a tolerance class ("H7": a hole, capital; "m6": a shaft).
 *
 * @throws RangeError: a class that is not known; a size not above 0 to 80 mm
 */
export function deviationsMm(sizeMm: number, toleranceClass: string): Deviations {
  const found = TOLERANCE_CLASS.exec(toleranceClass)
  if (found === null)
    throw new RangeError(
      `tolerance class is "${toleranceClass}"; allowed: D E F G H for holes, d e f g h k m n p for shafts, with a grade from 5 to 13, as "H7"`
    )
  const letter = found[1]!
  const gradeNumber = Number(found[2])
  const band = bandOf(sizeMm)
  const grade = GRADES[gradeNumber]![band]!
  const shaft = letter.toLowerCase()
  if (shaft === 'k' && gradeNumber > K_GRADES.most)
    throw new RangeError(
      `tolerance class is "${toleranceClass}"; allowed: k of grades 5 to ${K_GRADES.most}, as "k6"`
    )
  const upper = UPPER[shaft]?.[band]
  const [lowerUm, upperUm] =
    letter !== shaft
      ? [0 - upper!, 0 - upper! + grade]
      : upper !== undefined
        ? [upper - grade, upper]
        : [LOWER[shaft]![band]!, LOWER[shaft]![band]! + grade]
  return { lowerMm: lowerUm / 1000, upperMm: upperUm / 1000 }
}

/** Standard tolerance of a grade (5 to 13), mm. @throws RangeError */
export function standardToleranceMm(sizeMm: number, grade: number): number {
  const cells = GRADES[grade]
  if (cells === undefined) throw new RangeError(`grade is ${grade}; allowed 5 to 13`)
  return cells[bandOf(sizeMm)]! / 1000
}

/** Least and greatest clearance of a hole and a shaft of one nominal size, on the diameter, mm; negative: tight. */
export function fitMm(
  sizeMm: number,
  hole: string,
  shaft: string
): { readonly leastMm: number; readonly greatestMm: number } {
  const h = deviationsMm(sizeMm, hole)
  const s = deviationsMm(sizeMm, shaft)
  return { leastMm: h.lowerMm - s.upperMm, greatestMm: h.upperMm - s.lowerMm }
}

function bandOf(sizeMm: number): number {
  const [above, to] = TOLERANCE_RANGE_MM
  inRange('nominal size', sizeMm, above, to, 'mm')
  if (sizeMm === 0) throw new RangeError('nominal size is 0 mm; allowed above 0 to 80 mm')
  return BANDS_MM.findIndex(end => sizeMm <= end)
}
