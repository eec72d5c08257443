import { partsAcrossMPa } from '../../src/catalogue/timber-tension.ts'
import { dryingLog } from '../../src/timber/drying-log.ts'
import { ONE_SIDED_SLOPE } from '../../src/timber/one-sided.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

/** Tension across the grain as the metric edition of the handbook prints it, kPa. */
const METRIC = [
  ['ash-white', 6500],
  ['beech-american', 7000],
  ['cherry-black', 3900],
  ['elm-american', 4600],
  ['oak-northern-red', 5500],
  ['oak-white', 5500],
  ['walnut-black', 4800],
  ['douglas-fir-coast', 2300],
  ['spruce-sitka', 2600]
] as const

const middle = (id: string): number => {
  const { mPa } = partsAcrossMPa(id)
  return (mPa[0] + mPa[1]) / 2
}

export const rows: readonly Evidence[] = [
  {
    model: 'timber/one-sided',
    what: 'greatest mean slope of moisture in a slab open on one face',
    source: 'explicit diffusion on 400 cells, computed independently',
    confidence: 'computed',
    unit: 'of the change over the thickness',
    published: 0.9601,
    tolerance: 0.0005,
    why: 'four decimals of the explicit scheme',
    ours: () => ONE_SIDED_SLOPE.share
  },
  {
    model: 'timber/drying-log',
    what: 'day on which the core of exact weights, 16 to 9 % at 0.02 a day, comes to 11 %',
    source: 'one mode: ln(7·(π/2)/2)/0.02',
    confidence: 'derived',
    unit: 'days',
    published: Math.log((7 * Math.PI) / 4) / 0.02,
    tolerance: 6,
    why: 'what is believed of the air and of diffusion beforehand pulls a little; 14 weights to a gram',
    ours: () => {
      const log = dryingLog({
        weighings: Array.from({ length: 14 }, (_, i) => ({
          day: 7 * i,
          massG: 3000 * (1 + (9 + 7 * Math.exp(-0.14 * i)) / 100)
        })),
        known: [{ day: 0, pct: 16, doubtPct: 0.3 }],
        thicknessMm: 40,
        airPct: 9,
        airLowPct: 7,
        airHighPct: 11,
        wantedPct: 11,
        scaleG: 1
      })
      return 'refused' in log ? Number.NaN : (log.readyDay ?? Number.NaN)
    }
  },
  table({
    model: 'catalogue/timber-tension',
    what: 'tension across the grain, pounds an inch² beside the metric edition',
    source: 'Wood Handbook FPL-GTR-190/282 Tables 5-3a and 5-3b',
    confidence: 'memory',
    unit: 'MPa',
    tolerance: 0.06,
    why: 'the metric table prints two figures',
    cells: METRIC.length,
    worst: () => Math.max(...METRIC.map(([id, kPa]) => Math.abs(middle(id) - kPa / 1000)))
  })
]
