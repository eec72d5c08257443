import type { CatalogueRecord } from './record.ts'
import type { Tags } from './tag.ts'

/**
 * A grade of abrasive: paper or disc by its FEPA P number, or a paste by its grain.
 *
 * Source: average grain of the P grades after FEPA and ISO 6344 (-2 macrogrits P12 to P220, -3 microgrits P240
 * on); two public tables that agree, read. Tolerances of the microgrits, P3000 and P5000: memory. Grain of the
 * American grades without a letter: a public table, read.
 *
 * Limits: one average stands for a spread of grains. Between grades there are none: a number that is not in the
 * table is not reckoned with. Papers of the same grade cut differently by backing, spacing and wear.
 */
export interface AbrasiveRecord extends CatalogueRecord {
  readonly kind: 'paper' | 'paste'
  /** FEPA P number; null for a paste. */
  readonly grit: number | null
  /** Average grain, µm. */
  readonly grainUm: number
  /** How far the average of a delivery may lie off, µm; null where no figure is known here. */
  readonly toleranceUm: number | null
  /** Average grain of the American grade of the same number without a letter, µm; null where there is none. */
  readonly unletteredUm: number | null
  /** Usually used wet (practice). */
  readonly wet: boolean
  readonly tags?: Tags<AbrasiveRecord>
}

// P number, average grain in µm, tolerance in µm, grain of the unlettered grade in µm.
type Row = readonly [grit: number, grainUm: number, toleranceUm?: number | null, unletteredUm?: number | null]

const GRADES: readonly Row[] = [
  [12, 1815],
  [16, 1324],
  [20, 1000],
  [24, 764],
  [30, 642],
  [36, 538],
  [40, 425],
  [50, 336],
  [60, 269, null, 265],
  [80, 201, null, 190],
  [100, 162, null, 140],
  [120, 125, null, 115],
  [150, 100, null, 92],
  [180, 82, null, 82],
  [220, 68, null, 68],
  [240, 58.5, 2, 53],
  [280, 52.2, 2],
  [320, 46.2, 1.5, 36],
  [360, 40.5, 1.5, 28],
  [400, 35, 1.5, 23],
  [500, 30.2, 1.5, 20],
  [600, 25.8, 1, 16],
  [800, 21.8, 1, 12.6],
  [1000, 18.3, 1, 10.3],
  [1200, 15.3, 1],
  [1500, 12.6, 1],
  [2000, 10.3, 0.8],
  [2500, 8.4, 0.5]
]

/** From this grade on paper is used wet: dry it clogs (practice: the wet start differs from 320 to 800). */
const WET_FROM = 600

const paper = ([grit, grainUm, toleranceUm = null, unletteredUm = null]: Row): AbrasiveRecord => ({
  id: `p${grit}`,
  name: `P${grit} paper`,
  kind: 'paper',
  grit,
  grainUm,
  toleranceUm,
  unletteredUm,
  wet: grit >= WET_FROM,
  source: `FEPA and ISO 6344-${grit <= 220 ? 2 : 3}: average grain of P${grit}`,
  confidence: 'read',
  tags: toleranceUm === null ? {} : { toleranceUm: 'memory' }
})

const recalled = (grit: number, grainUm: number): AbrasiveRecord => ({
  ...paper([grit, grainUm]),
  source: `ISO 6344-3: average grain of P${grit}, recalled`,
  confidence: 'memory',
  note: 'recalled, not looked up: the grain may be a tenth off'
})

const paste = (grainUm: number): AbrasiveRecord => ({
  id: `polish-${grainUm}-um`,
  name: `polishing paste of ${grainUm} µm grain`,
  kind: 'paste',
  grit: null,
  grainUm,
  toleranceUm: null,
  unletteredUm: null,
  wet: false,
  source: 'common practice of polishing plastics, no published source',
  confidence: 'practice',
  note: 'by grain, not by name: what the tin says goes first; no silicone where a coat may follow'
})

export const ABRASIVES: readonly AbrasiveRecord[] = [
  ...GRADES.map(paper),
  recalled(3000, 6.75),
  recalled(5000, 5),
  paste(3),
  paste(1)
]
