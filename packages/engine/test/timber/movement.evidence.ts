import {
  coefficientAtRingAnglePerPct,
  coefficientFromShrinkagePerPct,
  movementByCoefficientMm,
  RING_ANGLE_DEG
} from '../../src/timber/movement.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { COEFFICIENT_TABLE, type Row } from './coefficient-table.ts'

const model = 'timber/movement'

const linkOff = (list: readonly Row[]): number =>
  Math.max(
    ...list.flatMap(([, sR, sT, cR, cT, start]) => [
      Math.abs(coefficientFromShrinkagePerPct(sR, start) - cR),
      Math.abs(coefficientFromShrinkagePerPct(sT, start) - cT)
    ])
  )
const read = COEFFICIENT_TABLE.filter(row => row[6] === 'read')
const recalled = COEFFICIENT_TABLE.filter(row => row[6] === 'memory')

const worked = (what: string, published: number, ours: () => number): Evidence => ({
  model,
  what,
  source: 'Wood Handbook FPL-GTR-190/282, equation 13-2 with Table 13-5, worked independently',
  confidence: 'derived',
  unit: 'mm',
  published,
  tolerance: 0.0051,
  why: 'two decimals',
  ours
})

export const rows: readonly Evidence[] = [
  worked('flat-sawn black walnut, 200 mm, 8 to 12 %', 2.19, () => {
    const c = coefficientAtRingAnglePerPct(0.0019, 0.00274, RING_ANGLE_DEG.flat)
    return movementByCoefficientMm(200, c, 8, 12)
  }),
  worked('quartersawn black walnut, the same', 1.52, () => {
    const c = coefficientAtRingAnglePerPct(0.0019, 0.00274, RING_ANGLE_DEG.quarter)
    return movementByCoefficientMm(200, c, 8, 12)
  }),
  worked('flat-sawn commercial red oak, the same', 2.95, () => {
    const c = coefficientAtRingAnglePerPct(0.00158, 0.00369, RING_ANGLE_DEG.flat)
    return movementByCoefficientMm(200, c, 8, 12)
  }),
  table({
    model,
    what: 'coefficients of dimensional change from total shrinkage, species with both columns read',
    source: 'Wood Handbook FPL-GTR-190/282, Tables 4-3 and 13-5',
    confidence: 'read',
    unit: 'per %',
    tolerance: 7e-6,
    why: 'the table prints five decimals (5e-6), from shrinkage rounded to a tenth',
    cells: 2 * read.length,
    worst: () => linkOff(read)
  }),
  table({
    model,
    what: 'the same, species of which a column is recalled (the 22 % species among them)',
    source: 'Wood Handbook FPL-GTR-190/282, Tables 4-3, 4-4 and 13-5',
    confidence: 'memory',
    unit: 'per %',
    tolerance: 7e-6,
    why: 'as above; group values and imported timbers from other data are left out',
    cells: 2 * recalled.length,
    worst: () => linkOff(recalled)
  })
]
