import { type Box, cutList } from '../../src/mould/cutlist.ts'
import type { Evidence } from '../evidence.ts'

const box: Box = {
  innerLengthMm: 600,
  innerWidthMm: 400,
  wallHeightMm: 55,
  baseThicknessMm: 18,
  wallThicknessMm: 18,
  walls: 'on the base',
  runPast: 'along x',
  bearers: 3,
  joints: 'inside'
}

const row = (what: string, unit: string, published: number, ours: () => number): Evidence => ({
  model: 'mould/cutlist',
  what,
  source: 'geometry, worked by hand',
  confidence: 'derived',
  unit,
  published,
  tolerance: 1e-9,
  why: 'arithmetic',
  ours
})

export const rows: readonly Evidence[] = [
  row(
    'volume of all boards of a box 600 × 400 × 55 mm in 18 mm board: 636 × 436 × 73 less the inside',
    'mm³',
    636 * 436 * 73 - 600 * 400 * 55,
    () => cutList(box).boards.reduce((sum, p) => sum + p.count * p.lengthMm * p.widthMm * p.thicknessMm!, 0)
  ),
  row('sealant of its inner joints: 2 × 1.0 + 4 × 0.055', 'm', 2.22, () => cutList(box).sealantLengthM)
]
