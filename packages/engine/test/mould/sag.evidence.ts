import { framedSagMm, sagCoefficient, sagMm } from '../../src/mould/sag.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const model = 'mould/sag'
const board = { thicknessMm: 18, modulusGPa: 2.5, loadNPerM2: 510 }

/** Spans, k printed in tables of continuous beams. */
const CONTINUOUS = [
  [1, 0.013],
  [2, 0.0054],
  [3, 0.0069],
  [4, 0.0065]
] as const

/** Long over short side, α in α·q·a⁴/D at ν 0.3. */
const PLATES = [
  [1, 0.00406],
  [1.2, 0.00564],
  [1.5, 0.00772],
  [2, 0.01013],
  [3, 0.01223]
] as const

/**
 * α of a plate from its sag in mm: 1 m short side, E·t³/(12·(1 − ν²)) with t 10 mm, E 1 GPa, ν 0.3; q 1 N/m².
 */
const alpha = (ratio: number): number => {
  const plate = { thicknessMm: 10, modulusGPa: 1, loadNPerM2: 1 }
  const rigidity = (1e9 * 0.01 ** 3) / 12 / (1 - 0.3 ** 2)
  return ((framedSagMm(plate, 1000 * ratio, 1000) / 1000) * rigidity) / 1
}

export const rows: readonly Evidence[] = [
  {
    model,
    what: '18 mm board, E 2.5 GPa, 510 N/m², bearers 1.2 m apart, one span',
    source: 'Euler-Bernoulli beam, 5·q·L⁴/(384·E·I), worked independently',
    confidence: 'derived',
    unit: 'mm',
    published: 11,
    tolerance: 0.51,
    why: 'whole mm',
    ours: () => sagMm(board, 1200)
  },
  {
    model,
    what: 'the same, 0.4 m apart',
    source: 'Euler-Bernoulli beam, 5·q·L⁴/(384·E·I), worked independently',
    confidence: 'derived',
    unit: 'mm',
    published: 0.14,
    tolerance: 0.0051,
    why: 'two decimals',
    ours: () => sagMm(board, 400)
  },
  {
    model,
    what: 'two equal spans: (39 + 55·√33)/65536, the propped cantilever',
    source: 'closed form (textbook)',
    confidence: 'exact',
    unit: 'q·L⁴/(E·I)',
    published: (39 + 55 * Math.sqrt(33)) / 65536,
    tolerance: 1e-14,
    why: 'closed form',
    ours: () => sagCoefficient(2)
  },
  table({
    model,
    what: 'largest sag of one to four equal spans, evenly loaded',
    source: 'tables of continuous beams in structural handbooks',
    confidence: 'memory',
    unit: 'q·L⁴/(E·I)',
    tolerance: 0.00006,
    why: 'four decimals',
    cells: CONTINUOUS.length,
    worst: () => Math.max(...CONTINUOUS.map(([spans, k]) => Math.abs(sagCoefficient(spans) - k)))
  }),
  table({
    model,
    what: 'rectangular plate simply supported all round, sides 1:1 to 3:1',
    source: 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, table of α',
    confidence: 'memory',
    unit: 'q·a⁴/D',
    tolerance: 0.000011,
    why: 'five decimals; 1:1.2 is recalled as 0.00564 where the series gives 0.005651, the others are within 5e-6',
    cells: PLATES.length,
    worst: () => Math.max(...PLATES.map(([ratio, a]) => Math.abs(alpha(ratio) - a)))
  })
]
