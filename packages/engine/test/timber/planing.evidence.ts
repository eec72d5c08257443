import { charHollowMm } from '../../src/timber/char-hollow.ts'
import { planedGradientPctPerMm } from '../../src/timber/planing.ts'
import { screwHoldsN } from '../../src/timber/screw.ts'
import type { Evidence } from '../evidence.ts'

// lbf/in² and inches into newtons and millimetres.
const LBF_N = 4.4482216
const IN_MM = 25.4

export const rows: readonly Evidence[] = [
  {
    model: 'timber/planing',
    what: 'slope of moisture in the upper half of a board, 5 % between core and skin, 50 mm',
    source: 'moment of a half sine about its middle, worked by hand: 12·5/25³·(50/π)²·(π/4 − 1)',
    confidence: 'derived',
    unit: '% a mm',
    published: -0.2087396,
    tolerance: 1e-7,
    why: 'seven figures',
    ours: () =>
      planedGradientPctPerMm({ thicknessMm: 50, belowMm: 25, aboveMm: 0, corePct: 14, surfacePct: 9 })
  },
  {
    model: 'timber/char-hollow',
    what: 'hollow over 200 mm, 0.1 mm charred off 40 mm, 2.43 % of strain',
    source: 'thin layer on a thick one (Stoney): 6·ε·t1/t2²·w²/8',
    confidence: 'memory',
    unit: 'mm',
    published: (6 * 0.0243 * 0.1 * 200 ** 2) / 8 / 39.8 ** 2,
    tolerance: 0.0006,
    why: 'the formula holds for layers of no thickness; 0.1 in 40 is off by a hundredth',
    ours: () =>
      charHollowMm({
        charredMm: 0.1,
        thicknessMm: 40,
        coefficientPerPct: 0.0027,
        moisturePct: 9,
        widthMm: 200
      })
  },
  {
    model: 'timber/screw',
    what: 'a No. 8 screw, 0.164 in, 1 in of thread in G 0.50: a fifth of 15 700·G²·D·L lbf',
    source: 'Wood Handbook FPL-GTR-190/282 chapter 8, the form in pounds and inches',
    confidence: 'memory',
    unit: 'N',
    published: (15_700 * 0.25 * 0.164 * 1 * LBF_N) / 5,
    tolerance: 0.6,
    why: 'the metric form is rounded to 108.25',
    ours: () => screwHoldsN(0.5, 0.164 * IN_MM, IN_MM)
  }
]
