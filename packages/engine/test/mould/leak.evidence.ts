import { standingHeightMm, waterTestMassG } from '../../src/mould/leak.ts'
import type { Evidence } from '../evidence.ts'

export const rows: readonly Evidence[] = [
  {
    model: 'mould/leak',
    what: 'water for 1 mm over 600 × 400 mm at 20 °C',
    source: 'density of water 998.2 kg/m³ (CIPM tables; memory), worked by hand',
    confidence: 'memory',
    unit: 'g',
    published: 239.6,
    tolerance: 0.051,
    why: 'one decimal',
    ours: () => waterTestMassG(240_000, 1)
  },
  {
    model: 'mould/leak',
    what: 'height of 251 ml over 19 000 mm²',
    source: 'geometry, worked by hand',
    confidence: 'derived',
    unit: 'mm',
    published: 13.2,
    tolerance: 0.051,
    why: 'one decimal',
    ours: () => standingHeightMm(251, 19_000)
  }
]
