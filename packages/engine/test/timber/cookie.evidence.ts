import { rimOpeningMm } from '../../src/timber/cookie.ts'
import type { Evidence } from '../evidence.ts'

const oak = { radiusMm: 305, radialShrinkagePct: 5.6, tangentialShrinkagePct: 10.5 }

const row = (moisturePct: number, published: number, what: string): Evidence => ({
  model: 'timber/cookie',
  what,
  source: 'geometry with shrinkage of Wood Handbook Table 4-3 (read), worked independently',
  confidence: 'derived',
  unit: 'mm',
  published,
  tolerance: 0.51,
  why: 'whole mm',
  ours: () => rimOpeningMm(oak, moisturePct)
})

export const rows: readonly Evidence[] = [
  row(0, 94, 'rim opening of a white oak round of 610 mm, oven-dry'),
  row(8, 69, 'the same at 8 %')
]
