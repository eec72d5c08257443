/**
 * Wood Handbook (FPL-GTR-190/282) Table 4-2: moisture content in balance with air, % of the oven-dry mass, by
 * temperature (rows, °C; 30 to 140 °F in steps of 10) and relative humidity (columns, 5 to 95 % in steps of
 * 5).
 *
 * The rows are from memory and guard the coefficients of the equation against bad copies; the ten cells of
 * {@link READ_CELLS} were read in the source or a transcription of it.
 */
const TABLE_4_2: readonly (readonly [tempC: number, cellsPct: readonly number[]])[] = [
  [
    -1.1,
    [1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3]
  ],
  [
    4.4,
    [1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3]
  ],
  [
    10,
    [1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9, 24.3]
  ],
  [
    15.6,
    [1.3, 2.5, 3.6, 4.6, 5.4, 6.2, 7.0, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2, 20.7, 24.1]
  ],
  [
    21.1,
    [1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5, 23.9]
  ],
  [
    26.7,
    [1.3, 2.4, 3.5, 4.4, 5.3, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2, 23.6]
  ],
  [
    32.2,
    [1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8, 23.3]
  ],
  [
    37.8,
    [1.2, 2.3, 3.3, 4.2, 5.0, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5, 22.9]
  ],
  [
    43.3,
    [1.1, 2.2, 3.2, 4.0, 4.9, 5.6, 6.3, 7.0, 7.7, 8.4, 9.2, 10.0, 11.0, 12.0, 13.2, 14.7, 16.6, 19.1, 22.4]
  ],
  [
    48.9,
    [1.1, 2.1, 3.0, 3.9, 4.7, 5.4, 6.1, 6.8, 7.5, 8.2, 8.9, 9.7, 10.6, 11.7, 12.9, 14.4, 16.2, 18.6, 22.0]
  ],
  [
    54.4,
    [1.0, 2.0, 2.9, 3.7, 4.5, 5.2, 5.9, 6.6, 7.2, 7.9, 8.7, 9.4, 10.3, 11.3, 12.5, 14.0, 15.8, 18.2, 21.5]
  ],
  [60, [0.9, 1.9, 2.8, 3.6, 4.3, 5.0, 5.7, 6.3, 7.0, 7.7, 8.4, 9.1, 10.0, 11.0, 12.1, 13.6, 15.3, 17.7, 21.0]]
]

/** The ten cells read: °C, relative humidity as a fraction, %. */
export const READ_CELLS: readonly (readonly [tempC: number, humidity: number, pct: number])[] = [
  [21.1, 0.3, 6.2],
  [21.1, 0.5, 9.2],
  [21.1, 0.75, 14.4],
  [21.1, 0.85, 17.9],
  [21.1, 0.95, 23.9],
  [21.1, 0.05, 1.3],
  [-1.1, 0.75, 14.9],
  [-1.1, 0.95, 24.3],
  [37.8, 0.5, 8.7],
  [37.8, 0.9, 19.5]
]

/** Every cell of the table: °C, relative humidity as a fraction, %. */
export function cells(): readonly (readonly [tempC: number, humidity: number, pct: number])[] {
  return TABLE_4_2.flatMap(([tempC, row]) => row.map((pct, i) => [tempC, (5 + 5 * i) / 100, pct] as const))
}

/**
 * The same equation in the handbook's Fahrenheit set, kept apart as a twin: its coefficients are rounded on
 * their own, so that a slip in either set shows.
 */
export function fahrenheitSetPct(tempF: number, humidity: number): number {
  const w = 330 + 0.452 * tempF + 0.00415 * tempF ** 2
  const k = 0.791 + 0.000463 * tempF - 0.000000844 * tempF ** 2
  const k1 = 6.34 + 0.000775 * tempF - 0.0000935 * tempF ** 2
  const k2 = 1.09 + 0.0284 * tempF - 0.0000904 * tempF ** 2
  const kh = k * humidity
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2))
}
