import { airFraction, densityKgM3, greatestMoisturePct, specificGravityAt } from '../../src/timber/density.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { TABULATED_GRAVITY } from './gravity-table.ts'

const model = 'timber/density'
const formula = 'Wood Handbook FPL-GTR-190/282, equations 4-9 to 4-11, worked independently'

/**
 * Basic specific gravity, that at 12 %, density at 12 %: walnut, cherry, sugar maple, white oak, western
 * redcedar.
 */
const CHAIN = [
  [0.51, 0.555, 622],
  [0.47, 0.508, 569],
  [0.56, 0.615, 689],
  [0.6, 0.663, 743],
  [0.31, 0.326, 365]
] as const

/** Specific gravity, air at 8 and 12 %: balsa, western redcedar, walnut, sugar maple, white oak, ipe. */
const AIR = [
  [0.17, 0.87, 0.87],
  [0.32, 0.76, 0.75],
  [0.55, 0.59, 0.57],
  [0.63, 0.53, 0.5],
  [0.68, 0.49, 0.47],
  [1, 0.25, 0.21]
] as const

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'specific gravity at 12 % from the basic one, five species',
    source: formula,
    confidence: 'derived',
    unit: '',
    tolerance: 0.00051,
    why: 'three decimals',
    cells: CHAIN.length,
    worst: () => Math.max(...CHAIN.map(([b, g]) => Math.abs(specificGravityAt(b, 12) - g)))
  }),
  table({
    model,
    what: 'density at 12 %, the same species',
    source: formula,
    confidence: 'derived',
    unit: 'kg/m³',
    tolerance: 0.51,
    why: 'whole kg/m³',
    cells: CHAIN.length,
    worst: () => Math.max(...CHAIN.map(([b, , d]) => Math.abs(densityKgM3(b, 12) - d)))
  }),
  {
    model,
    what: 'specific gravity of oven-dry walnut',
    source: formula,
    confidence: 'derived',
    unit: '',
    published: 0.59,
    tolerance: 0.0051,
    why: 'the value is printed as 0.590; 0.5898 by the formula',
    ours: () => specificGravityAt(0.51, 0)
  },
  table({
    model,
    what: 'specific gravity at 12 % against the tabulated one, all species with both read (worst: black locust)',
    source: 'Wood Handbook FPL-GTR-190/282, Tables 5-3a and 5-3b',
    confidence: 'read',
    unit: '',
    tolerance: 0.048,
    why: 'one average swelling stands for all species: 31 of them within 0.034, black locust 0.047',
    cells: TABULATED_GRAVITY.length,
    worst: () => Math.max(...TABULATED_GRAVITY.map(([, b, g]) => Math.abs(specificGravityAt(b, 12) - g)))
  }),
  {
    model,
    what: 'greatest moisture of walnut',
    source: 'Wood Handbook FPL-GTR-190/282, equation 4-3 (memory), worked independently',
    confidence: 'derived',
    unit: '%',
    published: 131,
    tolerance: 0.51,
    why: 'whole per cent',
    ours: () => greatestMoisturePct(0.51)
  },
  table({
    model,
    what: 'air fraction at 8 and 12 % from tabulated specific gravity, balsa to ipe',
    source: 'Siau, Transport Processes in Wood, 1984 (memory), worked independently',
    confidence: 'derived',
    unit: '',
    tolerance: 0.0055,
    why: 'two decimals; 0.667 stands for 1/1.5',
    cells: 2 * AIR.length,
    worst: () =>
      Math.max(
        ...AIR.flatMap(([g, at8, at12]) => [
          Math.abs(airFraction(g, 8) - at8),
          Math.abs(airFraction(g, 12) - at12)
        ])
      )
  })
]
