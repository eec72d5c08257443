import { chanceOfGood } from '../../src/mould/spoil.ts'
import type { Evidence } from '../evidence.ts'

const row = (blanks: number, published: number): Evidence => ({
  model: 'mould/spoil',
  what: `12 good ones from ${blanks} blanks, 5 % lost`,
  source: 'binomial distribution, worked independently',
  confidence: 'derived',
  unit: '%',
  published,
  tolerance: 0.51,
  why: 'whole per cent',
  ours: () => chanceOfGood(12, blanks, 0.05) * 100
})

export const rows: readonly Evidence[] = [row(12, 54), row(13, 86), row(14, 97)]
