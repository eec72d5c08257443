import { conductivityWPerMK, heatCapacityKJPerKgK, thermalExpansionPerK } from '../../src/timber/heat.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const model = 'timber/heat'

/** Specific gravity, conductivity at 0 and 12 %, W/(m·K). */
const CONDUCTIVITY = [
  [0.32, 0.0808, 0.0964],
  [0.5, 0.1157, 0.1401],
  [0.55, 0.1254, 0.1522],
  [0.63, 0.1409, 0.1716],
  [0.68, 0.1506, 0.1838]
] as const

/** Temperature in K, heat capacity at 0, 5, 12 and 20 %, J/(kg·K). */
const CAPACITY = [
  [280, 1186, 1346, 1538, 1715],
  [293.15, 1237, 1410, 1620, 1820],
  [300, 1263, 1443, 1663, 1874],
  [320, 1341, 1540, 1789, 2033],
  [340, 1418, 1638, 1915, 2192]
] as const

const capacityOff = (): number =>
  Math.max(
    ...CAPACITY.flatMap(([tempK, ...cells]) =>
      cells.map((c, i) => Math.abs(heatCapacityKJPerKgK(tempK, [0, 5, 12, 20][i]!) * 1000 - c))
    )
  )

const expansion = (direction: 'radial' | 'tangential', published: number): Evidence => ({
  model,
  what: `thermal expansion, ${direction}, oven-dry specific gravity 0.6`,
  source: 'Wood Handbook FPL-GTR-190/282, equations 4-18 and 4-19 (memory), worked independently',
  confidence: 'derived',
  unit: '1e-6/K',
  published,
  tolerance: 0.51,
  why: 'whole 1e-6',
  ours: () => thermalExpansionPerK(0.6, direction) * 1e6
})

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'conductivity across the grain, 0 and 12 %, specific gravity 0.32 to 0.68',
    source: 'Wood Handbook FPL-GTR-190/282, equation 4-15 (read), worked independently',
    confidence: 'derived',
    unit: 'W/(m·K)',
    tolerance: 0.000051,
    why: 'four decimals',
    cells: 2 * CONDUCTIVITY.length,
    worst: () =>
      Math.max(
        ...CONDUCTIVITY.flatMap(([g, dry, moist]) => [
          Math.abs(conductivityWPerMK(g, 0) - dry),
          Math.abs(conductivityWPerMK(g, 12) - moist)
        ])
      )
  }),
  table({
    model,
    what: 'heat capacity, 280 to 340 K, 0 to 20 %',
    source: 'Wood Handbook FPL-GTR-190/282, equations 4-16 and 4-17 (memory), worked independently',
    confidence: 'derived',
    unit: 'J/(kg·K)',
    tolerance: 0.51,
    why: 'whole J/(kg·K)',
    cells: 4 * CAPACITY.length,
    worst: capacityOff
  }),
  expansion('radial', 29),
  expansion('tangential', 38)
]
