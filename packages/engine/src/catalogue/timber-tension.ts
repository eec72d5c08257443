import type { CatalogueRecord } from './record.ts'

/**
 * Stress at which timber parts across its grain, MPa, at 12 % moisture: tension perpendicular to the grain, mean of small
 * clear samples. `id` is that of the timber.
 *
 * Source: Wood Handbook (FPL-GTR-190/282) Table 5-3a, values in lbf/in² × 0.0068948 (memory).
 *
 * Limits: means; single samples differ by a quarter (coefficient of variation 25 %, memory), wide boards part at less
 * than small samples, checks and pith at next to nothing. Beside a movement it tells how near a joint comes, never what a
 * piece bears.
 */
export interface TensionRecord extends CatalogueRecord {
  readonly acrossMPa: number
}

const PSI_MPA = 0.006894757

const ROWS: readonly (readonly [id: string, name: string, psi: number])[] = [
  ['ash-white', 'ash, white', 940],
  ['beech-american', 'beech, American', 1010],
  ['birch-yellow', 'birch, yellow', 920],
  ['cherry-black', 'cherry, black', 560],
  ['elm-american', 'elm, American', 660],
  ['basswood-american', 'basswood', 350],
  ['oak-northern-red', 'oak, northern red', 800],
  ['oak-white', 'oak, white', 800],
  ['sweetgum', 'sweetgum', 760],
  ['sycamore-american', 'sycamore', 720],
  ['walnut-black', 'walnut, black', 690],
  ['yellow-poplar', 'yellow-poplar', 540],
  ['douglas-fir-coast', 'Douglas-fir', 340],
  ['redcedar-western', 'redcedar, western', 220],
  ['pine-loblolly', 'pine, loblolly', 470],
  ['pine-ponderosa', 'pine, ponderosa', 420],
  ['redwood-old-growth', 'redwood', 240],
  ['spruce-sitka', 'spruce, Sitka', 370]
]

export const TENSION: readonly TensionRecord[] = ROWS.map(([id, name, psi]) => ({
  id,
  name,
  source: 'Wood Handbook FPL-GTR-190/282 Table 5-3a',
  confidence: 'memory',
  acrossMPa: psi * PSI_MPA
}))

/** Range for a timber that is not listed: the middle half of the rows, MPa. */
const ELSE_MPA = [2.6, 5.5] as const

/** Stress across the grain at which a timber parts, with the spread of single samples, MPa. */
export function partsAcrossMPa(timberId: string): {
  readonly listed: boolean
  readonly mPa: readonly [low: number, high: number]
} {
  const row = TENSION.find(r => r.id === timberId)
  if (row === undefined) return { listed: false, mPa: ELSE_MPA }
  return { listed: true, mPa: [row.acrossMPa * 0.75, row.acrossMPa * 1.25] }
}
