import { equilibriumMoisturePct } from '../../src/timber/moisture.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { cells, fahrenheitSetPct, READ_CELLS } from './emc-table.ts'

const model = 'timber/moisture'
const off = (list: readonly (readonly [number, number, number])[]): number =>
  Math.max(...list.map(([tempC, humidity, pct]) => Math.abs(equilibriumMoisturePct(tempC, humidity) - pct)))

/** Two decimals at 20 °C: the printed equation worked by hand elsewhere. */
const AT_20: readonly (readonly [number, number, number])[] = [
  [20, 0.3, 6.19],
  [20, 0.4, 7.72],
  [20, 0.5, 9.27],
  [20, 0.6, 11.0],
  [20, 0.65, 12.0],
  [20, 0.7, 13.13],
  [20, 0.8, 16.04],
  [20, 0.9, 20.53],
  [20, 0.95, 23.94],
  [20, 1, 28.84]
]

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'equilibrium moisture, −1.1 to 60 °C, 5 to 95 % humidity',
    source: 'Wood Handbook FPL-GTR-190/282, Table 4-2',
    confidence: 'memory',
    unit: '%',
    tolerance: 0.07,
    why: 'the table prints one decimal (0.05), one recalled cell is 0.06 off',
    cells: cells().length,
    worst: () => off(cells())
  }),
  table({
    model,
    what: 'the ten of those cells that were read',
    source: 'Wood Handbook FPL-GTR-190/282, Table 4-2',
    confidence: 'read',
    unit: '%',
    tolerance: 0.055,
    why: 'the table prints one decimal; the fit is 0.002 past half a digit in one cell',
    cells: READ_CELLS.length,
    worst: () => off(READ_CELLS)
  }),
  table({
    model,
    what: 'Celsius against Fahrenheit coefficients over the table',
    source: 'Wood Handbook FPL-GTR-282, equation 4-5, both unit sets',
    confidence: 'read',
    unit: '%',
    tolerance: 0.015,
    why: 'each set is rounded on its own to three figures',
    cells: cells().length,
    worst: () =>
      Math.max(
        ...cells().map(([tempC, humidity]) =>
          Math.abs(equilibriumMoisturePct(tempC, humidity) - fahrenheitSetPct(tempC * 1.8 + 32, humidity))
        )
      )
  }),
  table({
    model,
    what: 'equilibrium moisture at 20 °C, two decimals',
    source: 'Wood Handbook equation 4-5, evaluated independently',
    confidence: 'derived',
    unit: '%',
    tolerance: 0.0051,
    why: 'two decimals',
    cells: AT_20.length,
    worst: () => off(AT_20)
  })
]
