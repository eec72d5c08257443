import { timberDensity } from '../cast/floating.ts'
import type { Place } from '../plate/tip.ts'
import type { Material } from '../stack/event.ts'
import type { Cell, Cells } from './bow-cells.ts'
import { CELLS } from './bow-cells.ts'
import type { BowInput } from './bow-plies.ts'

/**
 * Mass of a piece over its plan, from cores: by column and by row, in all, and where its middle of mass lies.
 * Check: within a few per cent of the mass by volumes (test).
 *
 * Limits: stones in a pour count as its resin; bought-in parts are not in it.
 */
export interface CellMasses {
  readonly byGroup: { readonly x: readonly number[]; readonly y: readonly number[] }
  readonly totalG: number
  readonly middle: Place
}

/** Density of the filling of a marking, g/ml (resin; memory). */
const FILLING_G_ML = 1.1

export function cellMasses(input: BowInput, cells: Cells, cellMm2: number): CellMasses {
  const density = ({ kind, index }: Material): number => {
    if (kind === 'timber')
      return timberDensity(input.materials.timbers[index]!, input.seasons[index]!.moisturePct) / 1000
    if (kind !== 'pour') return kind === 'marking' ? FILLING_G_ML : 0
    const { record, densityGMl } = input.materials.resins[index]!
    return record.model === null ? densityGMl : record.model.bulk.curedKgM3 / 1000
  }
  const of = (group: readonly Cell[]) =>
    group.reduce(
      (sum, cell) =>
        sum +
        (cell.count *
          cellMm2 *
          cell.cores[0]!.reduce((m, p) => m + (p.to - p.from) * density(p.material), 0)) /
          1000,
      0
    )
  const [x, y] = [cells.columns.map(of), cells.rows.map(of)]
  const totalG = x.reduce((a, b) => a + b, 0)
  const { minX, maxX, minY, maxY } = cells.box
  const middle = (masses: readonly number[], low: number, high: number) =>
    totalG > 0
      ? low + ((high - low) / CELLS / totalG) * masses.reduce((sum, m, i) => sum + m * (i + 0.5), 0)
      : (low + high) / 2
  return { byGroup: { x, y }, totalG, middle: [middle(x, minX, maxX), middle(y, minY, maxY)] }
}
