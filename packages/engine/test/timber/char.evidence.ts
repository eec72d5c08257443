import { charDepthMm, charringRateMmPerMin, weakLayerMm } from '../../src/timber/char.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const model = 'timber/char'

/** Row, density, one-dimensional and notional rate, mm/min. */
const RATES = [
  ['softwood', 450, 0.65, 0.8],
  ['glulam', 450, 0.65, 0.7],
  ['hardwood', 290, 0.65, 0.7],
  ['hardwood', 450, 0.5, 0.55]
] as const

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'charring rates of solid timber and glulam',
    source: 'EN 1995-1-2:2004, Table 3.1',
    confidence: 'memory',
    unit: 'mm/min',
    tolerance: 1e-12,
    why: 'tabulated',
    cells: 2 * RATES.length,
    worst: () =>
      Math.max(
        ...RATES.flatMap(([kind, density, one, notional]) => [
          Math.abs(charringRateMmPerMin(kind, density) - one),
          Math.abs(charringRateMmPerMin(kind, density, 20, 'notional') - notional)
        ])
      )
  }),
  {
    model,
    what: 'notional rate of laminated veneer lumber of 480 kg/m³',
    source: 'EN 1995-1-2:2004, Table 3.1, in a worked example',
    confidence: 'read',
    unit: 'mm/min',
    published: 0.7,
    tolerance: 1e-12,
    why: 'tabulated',
    ours: () => charringRateMmPerMin('laminated veneer', 480, 20, 'notional')
  },
  {
    model,
    what: 'layer without strength after 30 minutes',
    source: 'EN 1995-1-2:2004, 4.2.2, in a worked example',
    confidence: 'read',
    unit: 'mm',
    published: 7,
    tolerance: 1e-12,
    why: 'tabulated',
    ours: () => weakLayerMm(30)
  },
  {
    model,
    what: '30 s of flame on softwood at full fire intensity',
    source: 'EN 1995-1-2:2004, Table 3.1, worked independently',
    confidence: 'derived',
    unit: 'mm',
    published: 0.3,
    tolerance: 0.051,
    why: 'one figure',
    ours: () => charDepthMm(charringRateMmPerMin('softwood', 450), 0.5)
  }
]
