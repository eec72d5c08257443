import { coreFraction, daysToFraction, meanFraction } from '../../src/timber/settle.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const model = 'timber/settle'
const crank = 'Crank, The Mathematics of Diffusion, plane sheet'
const slab = { thicknessMm: 20, openFaces: 2, diffusionM2PerS: 2e-10 } as const

/**
 * Fourier number of the half thickness, share still to go at the middle: surfaces held (Biot without end).
 */
const MIDDLE = [
  [0.1, 0.94931],
  [0.2, 0.77231],
  [0.5, 0.37078]
] as const

export const rows: readonly Evidence[] = [
  {
    model,
    what: 'share of the change done at 0.049·L²/D',
    source: crank,
    confidence: 'memory',
    unit: '',
    published: 0.5,
    tolerance: 0.002,
    why: 'the time is given to two figures (exactly 0.04919)',
    ours: () => meanFraction(0.049)
  },
  {
    model,
    what: 'share of the change done at 0.21·L²/D',
    source: crank,
    confidence: 'memory',
    unit: '',
    published: 0.9,
    tolerance: 0.003,
    why: 'the time is given to two figures (exactly 0.2120)',
    ours: () => meanFraction(0.21)
  },
  {
    model,
    what: 'half the change, 20 mm, 2e-10 m²/s',
    source: crank,
    confidence: 'derived',
    unit: 'h',
    published: 27,
    tolerance: 0.51,
    why: 'whole hours',
    ours: () => daysToFraction(slab, 0.5).centralDays * 24
  },
  {
    model,
    what: '90 % of the change, 20 mm, 2e-10 m²/s',
    source: crank,
    confidence: 'derived',
    unit: 'days',
    published: 4.9,
    tolerance: 0.051,
    why: 'one decimal',
    ours: () => daysToFraction(slab, 0.9).centralDays
  },
  table({
    model,
    what: 'share still to go at the mid-plane, surfaces held',
    source: 'slab series of heat conduction (the same equation), Biot without end, computed independently',
    confidence: 'computed',
    unit: '',
    tolerance: 1e-5,
    why: 'five decimals',
    cells: MIDDLE.length,
    worst: () => Math.max(...MIDDLE.map(([fo, left]) => Math.abs(1 - coreFraction(fo / 4) - left)))
  })
]
