import {
  flatSawnCupMm,
  gradientCupMm,
  narrowFlatSawnCupMm,
  twoLayerCurvaturePerMm
} from '../../src/timber/cup.ts'
import type { Evidence } from '../evidence.ts'

const model = 'timber/cup'
const board = {
  radialPerPct: 0.0019,
  tangentialPerPct: 0.00274,
  moistureChangePct: -4,
  widthMm: 150,
  pithDistanceMm: 60
}

export const rows: readonly Evidence[] = [
  {
    model,
    what: 'walnut 150 × 20 mm, 3 % between its faces',
    source: 'strain over thickness, worked independently',
    confidence: 'derived',
    unit: 'mm',
    published: 1.16,
    tolerance: 0.0051,
    why: 'two decimals',
    ours: () =>
      gradientCupMm({ coefficientPerPct: 0.00274, moistureDifferencePct: 3, widthMm: 150, thicknessMm: 20 })
  },
  {
    model,
    what: 'flat-sawn walnut 150 mm wide, 60 mm from the pith, 4 %: exact',
    source: 'compatible polar displacement, worked independently',
    confidence: 'derived',
    unit: 'mm',
    published: 0.226,
    tolerance: 0.00051,
    why: 'three decimals',
    ours: () => flatSawnCupMm(board)
  },
  {
    model,
    what: 'the same by the narrow-board formula',
    source: 'small-angle limit, worked independently',
    confidence: 'derived',
    unit: 'mm',
    published: 0.315,
    tolerance: 0.00051,
    why: 'three decimals',
    ours: () => narrowFlatSawnCupMm(board)
  },
  {
    model,
    what: 'two layers alike in thickness and stiffness: curvature × whole thickness / mismatch',
    source: 'Timoshenko, J. Opt. Soc. Am. 11 (1925) 233: 3/2',
    confidence: 'memory',
    unit: '',
    published: 1.5,
    tolerance: 1e-12,
    why: 'closed form',
    ours: () =>
      (twoLayerCurvaturePerMm({
        thickness1Mm: 2,
        modulus1MPa: 1000,
        thickness2Mm: 2,
        modulus2MPa: 1000,
        strainMismatch: 0.001
      }) *
        4) /
      0.001
  }
]
