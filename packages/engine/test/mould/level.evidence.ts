import { cornersFromHeights, levelFromReadings } from '../../src/mould/level.ts'
import type { Evidence } from '../evidence.ts'

const level = () => levelFromReadings(cornersFromHeights(600, 400, [0, 0.4, 0.3, 0]))

const row = (what: string, unit: string, published: number, ours: () => number): Evidence => ({
  model: 'mould/level',
  what: `corners reading 0, 0.4, 0.3, 0 mm on 600 × 400 mm: ${what}`,
  source: 'least squares on a rectangle: means of opposite sides, worked by hand',
  confidence: 'derived',
  unit,
  published,
  tolerance: 1e-9,
  why: 'closed form',
  ours
})

export const rows: readonly Evidence[] = [
  row('tilt along x, (0.35 − 0)/0.6', 'mm/m', 0.35 / 0.6, () => level().tiltXMmPerM),
  row('tilt along y, (0.15 − 0.2)/0.4', 'mm/m', -0.125, () => level().tiltYMmPerM),
  row('twist, half the difference of the diagonals', 'mm', 0.05, () => level().twistMm),
  row('wedge', 'mm', 0.4, () => level().wedgeMm)
]
