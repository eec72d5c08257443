import { CHIP_LOAD_MM } from '../../../src/catalogue/chip-load.ts'
import {
  axialThinning,
  ballDiameterMm,
  chipRangeMm,
  radialThinning,
  vDepthMm,
  vWidthMm
} from '../../../src/cuts/run/chip.ts'
import { deflectionMm } from '../../../src/cuts/run/deflection.ts'
import { edgeSpeedMMin, feedMmMin } from '../../../src/cuts/run/edge-speed.ts'
import {
  cuttingEnergyNmm2,
  meanForceN,
  powerW,
  removedMm3Min,
  torqueNm
} from '../../../src/cuts/run/force.ts'
import { knifeMarkMm, planStepMm, ridgeMm, stepForRidgeMm } from '../../../src/cuts/run/scallop.ts'
import type { Evidence } from '../../evidence.ts'
import { table } from '../../evidence.ts'

const worked = (
  model: string,
  what: string,
  unit: string,
  published: number,
  tolerance: number,
  ours: () => number
): Evidence => ({
  model: `cuts/run/${model}`,
  what,
  source: 'textbook equations of milling (memory), worked independently of this code',
  confidence: 'derived',
  unit,
  published,
  tolerance,
  why: 'the digits it is worked to',
  ours
})

export const rows: readonly Evidence[] = [
  worked('edge-speed', 'edge of 6 mm at 18 000 1/min', 'm/min', 339, 0.5, () => edgeSpeedMMin(6, 18_000)),
  worked('edge-speed', 'two edges of 0.15 mm at 18 000 1/min', 'mm/min', 5400, 1e-9, () =>
    feedMmMin(18_000, 2, 0.15)
  ),
  worked('force', 'removed: 6 × 3 mm at 3000 mm/min', 'mm³/min', 54_000, 1e-9, () =>
    removedMm3Min(6, 3, 3000)
  ),
  worked('force', 'power of it at 40 N/mm²', 'W', 36, 1e-9, () => powerW(40, 54_000)),
  // 36 W at 18 000 1/min: 36/(2π·300) = 0.0191 Nm; at 3 mm radius 6.37 N.
  worked('force', 'torque of 36 W at 18 000 1/min', 'Nm', 0.0191, 5e-5, () => torqueNm(36, 18_000)),
  worked('force', 'mean push of it on 6 mm: torque over radius', 'N', 6.366, 5e-4, () =>
    meanForceN(36, edgeSpeedMMin(6, 18_000))
  ),
  worked('deflection', '3 mm carbide, 15 mm out, 20 N, 0.8 for the flutes, 585 GPa', 'mm', 0.023, 0.001, () =>
    deflectionMm(20, 3, 15, 3, 15)
  ),
  worked('scallop', 'ridge of a 3 mm ball at 0.5 mm step', 'mm', 0.0104, 5e-5, () => ridgeMm(3, 0.5)),
  worked('scallop', 'ridge of a 3 mm ball at 1 mm step', 'mm', 0.042, 1.5e-4, () => ridgeMm(3, 1)),
  worked('scallop', 'step that leaves it', 'mm', 1, 1e-12, () => stepForRidgeMm(3, 3 - Math.sqrt(8.75))),
  worked('scallop', 'step on a slope of 60°, on the plan', 'mm', 0.5, 1e-12, () => planStepMm(1, 60)),
  // A circle of 6 mm: height of a chord of 0.3 is 0.00375 to first order.
  worked('scallop', 'knife marks 0.3 apart of 6 mm', 'mm', 0.00375, 1e-6, () => knifeMarkMm(0.3, 6)),
  worked('chip', 'thickest chip at a tenth of the diameter: 2·√0.09', '', 0.6, 1e-12, () =>
    radialThinning(0.6, 6)
  ),
  worked('chip', 'chip of an edge at 30°', '', 0.5, 1e-12, () => axialThinning(30)),
  worked('chip', 'a 6 mm ball 0.5 deep cuts at 2·√2.75', 'mm', 3.3166, 5e-5, () => ballDiameterMm(6, 0.5)),
  worked('chip', '60° V: width per depth', 'mm', 1.155, 5e-4, () => vWidthMm(60, 1)),
  worked('chip', '90° V: width per depth', 'mm', 2, 1e-12, () => vWidthMm(90, 1)),
  worked('chip', '30° V: width per depth', 'mm', 0.536, 5e-4, () => vWidthMm(30, 1)),
  worked('chip', 'depth of 2.31 mm in 60°', 'mm', 2, 0.001, () => vDepthMm(60, 2.31)),
  // (0.05/0.1)^−0.45 = 1.3660; middle of 20 to 45 is 32.5.
  worked(
    'force',
    'energy of hardwood at a chip of 0.05',
    'N/mm²',
    44.4,
    0.05,
    () => cuttingEnergyNmm2('hardwood', 0.05).central
  ),
  table({
    model: 'cuts/run/chip',
    what: 'chip per tooth at the diameters of the table, three materials, both ends',
    source: 'ranges of common workshop practice, no published table',
    confidence: 'practice',
    unit: 'mm',
    tolerance: 1e-12,
    why: 'the interpolation passes through its rows',
    cells: 6 * CHIP_LOAD_MM.length,
    worst: () =>
      Math.max(
        ...PRACTICE_ROWS.flatMap(([d, ...ends]) =>
          (['softwood', 'hardwood', 'resin'] as const).flatMap((m, i) => {
            const [low, high] = chipRangeMm(m, d!)
            return [Math.abs(low - ends[2 * i]!), Math.abs(high - ends[2 * i + 1]!)]
          })
        )
      )
  })
]

/** Typed apart from the catalogue: diameter, softwood, hardwood, resin. */
const PRACTICE_ROWS: readonly (readonly number[])[] = [
  [1, 0.01, 0.02, 0.008, 0.015, 0.008, 0.015],
  [1.5, 0.02, 0.05, 0.015, 0.04, 0.015, 0.03],
  [2, 0.02, 0.05, 0.015, 0.04, 0.015, 0.03],
  [3, 0.05, 0.1, 0.04, 0.08, 0.03, 0.07],
  [4, 0.08, 0.15, 0.06, 0.12, 0.05, 0.1],
  [6, 0.15, 0.3, 0.1, 0.25, 0.08, 0.18],
  [8, 0.2, 0.4, 0.15, 0.3, 0.1, 0.2],
  [12, 0.35, 0.55, 0.3, 0.5, 0.2, 0.3]
]
