/**
 * Cells of ISO 286-1 and -2 as handbooks print them (memory): nominal size mm, class, lower and upper deviation µm.
 * Kept apart from the model's own tables: whole limits, as a reader looks them up, not grades and deviations.
 */
export const LIMITS: readonly (readonly [sizeMm: number, name: string, lower: number, upper: number])[] = [
  [3, 'H7', 0, 10],
  [6, 'H7', 0, 12],
  [8, 'H7', 0, 15],
  [10, 'H7', 0, 15],
  [12, 'H7', 0, 18],
  [16, 'H7', 0, 18],
  [25, 'H7', 0, 21],
  [40, 'H7', 0, 25],
  [60, 'H7', 0, 30],
  [6, 'H8', 0, 18],
  [25, 'H8', 0, 33],
  [25, 'H9', 0, 52],
  [50, 'H9', 0, 62],
  [25, 'H11', 0, 130],
  [3, 'h6', -6, 0],
  [8, 'h6', -9, 0],
  [25, 'h6', -13, 0],
  [40, 'h7', -25, 0],
  [10, 'h8', -22, 0],
  [25, 'h9', -52, 0],
  [50, 'h11', -160, 0],
  [3, 'm6', 2, 8],
  [6, 'm6', 4, 12],
  [8, 'm6', 6, 15],
  [12, 'm6', 7, 18],
  [25, 'm6', 8, 21],
  [6, 'g6', -12, -4],
  [25, 'g6', -20, -7],
  [40, 'g6', -25, -9],
  [10, 'f7', -28, -13],
  [25, 'f7', -41, -20],
  [25, 'f8', -53, -20],
  [25, 'k6', 2, 15],
  [25, 'n6', 15, 28],
  [25, 'p6', 22, 35],
  [25, 'e8', -73, -40],
  [25, 'd9', -117, -65],
  [25, 'G7', 7, 28],
  [25, 'F8', 20, 53],
  [25, 'E9', 40, 92],
  [25, 'D10', 65, 149]
]

/** ISO 286-1: i = 0.45·∛D + 0.001·D in µm, D the geometric mean of the band in mm; grades are these times i. */
export const TIMES_I: Readonly<Record<number, number>> = {
  5: 7,
  6: 10,
  7: 16,
  8: 25,
  9: 40,
  10: 64,
  11: 100,
  12: 160,
  13: 250
}

/** Bands "above ... up to", mm. Up to 3 mm the standard's own cells stand well above its formula: left out. */
export const BANDS: readonly (readonly [above: number, to: number])[] = [
  [3, 6],
  [6, 10],
  [10, 18],
  [18, 30],
  [30, 50],
  [50, 80]
]

export function unitUm([above, to]: readonly [number, number]): number {
  const d = Math.sqrt(above * to)
  return 0.45 * Math.cbrt(d) + 0.001 * d
}
