import type { Evidence } from '../../evidence.ts'
import { bound, FIGURES } from './figures.ts'
import { slab, swept } from './slab.ts'

/** Side of a cell, mm: as programs are proved. */
const CELL_MM = 0.2

export const rows: readonly Evidence[] = FIGURES.map(
  (f): Evidence => ({
    model: 'proving/sweep',
    what: `volume swept: ${f.name}`,
    source: 'elementary geometry, closed form beside the figure (test/proving/sweep/figures.ts)',
    confidence: 'exact',
    unit: 'mm³',
    published: f.mm3,
    tolerance: bound(f, CELL_MM),
    why: 'cells of 0.2 mm: four standard deviations of the cells that the edges cross',
    ours: () => swept(slab(CELL_MM), f.cutter, f.way)
  })
)
