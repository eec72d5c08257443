import { holdDown, netLiftG, straightSided } from '../../src/timber/float.ts'
import type { Evidence } from '../evidence.ts'

const model = 'timber/float'
const source = "Archimedes' principle, worked by hand"
const board = {
  bottomMm: 0,
  topMm: 40,
  areasMm2: straightSided(1e6, 40),
  densityKgM3: 640,
  liquidKgM3: 1100
}

const row = (what: string, published: number, ours: () => number): Evidence => ({
  model,
  what,
  source,
  confidence: 'derived',
  unit: 'g',
  published,
  tolerance: 1e-6,
  why: 'closed form; rounding of doubles only',
  ours
})

export const rows: readonly Evidence[] = [
  row('net lift of 1 l of 640 kg/m³ covered by 1100 kg/m³', 460, () => netLiftG(board, 60)),
  row('the same, half under', -90, () => netLiftG(board, 20)),
  row('the same, covered by 10 mm, nothing creeping under', -915, () =>
    netLiftG({ ...board, wettedUnderside: 0 }, 50)
  ),
  row('hold-down for the first, factor 2', 920, () => holdDown(board, 60).holdDownG)
]
