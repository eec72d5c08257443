import { fixingSpacingForBowMm, tiltRiseMm, wallBowMm, wallLoad } from '../../src/mould/wall.ts'
import type { Evidence } from '../evidence.ts'

const model = 'mould/wall'

export const rows: readonly Evidence[] = [
  {
    model,
    what: 'push per metre of 45 mm of liquid of 1100 kg/m³: 1100 × 9.80665 × 0.045²/2',
    source: 'hydrostatics, worked by hand',
    confidence: 'derived',
    unit: 'N/m',
    published: 10.922,
    tolerance: 0.00051,
    why: 'three decimals',
    ours: () => wallLoad(45, 1100).forceNPerM
  },
  {
    model,
    what: 'bow of a wall 100 × 10 mm, 1 GPa, 10 N/m, fixings 1 m apart: 5 × 10/(384 × 8.333)',
    source: 'Euler-Bernoulli beam, worked by hand',
    confidence: 'derived',
    unit: 'mm',
    published: 15.625,
    tolerance: 1e-9,
    why: 'closed form',
    ours: () => wallBowMm({ heightMm: 100, thicknessMm: 10, modulusGPa: 1 }, 10, 1000)
  },
  {
    model,
    what: 'spacing that gives the same bow',
    source: 'Euler-Bernoulli beam, worked by hand',
    confidence: 'derived',
    unit: 'mm',
    published: 1000,
    tolerance: 1e-6,
    why: 'closed form',
    ours: () => fixingSpacingForBowMm({ heightMm: 100, thicknessMm: 10, modulusGPa: 1 }, 10, 15.625)
  },
  {
    model,
    what: 'rise at the low end of 600 mm tilted by 2°',
    source: 'geometry, worked by hand',
    confidence: 'derived',
    unit: 'mm',
    published: 10.476,
    tolerance: 0.00051,
    why: 'three decimals',
    ours: () => tiltRiseMm(600, 2)
  }
]
