import { coverDepthMm } from '../../src/colour/cover-depth.ts'
import { hidingDepth, hidingOpticalDepth, layerOfTint, reflectance } from '../../src/colour/hiding.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const model = 'colour/hiding'

/** K/S and optical depth S·X at contrast ratio 0.98 over black / white of 0.80. */
const OPTICAL_DEPTH = [
  [0, 11.7],
  [0.001, 11.0],
  [0.005, 9.3],
  [0.02, 6.9],
  [0.1, 4.1],
  [1, 1.5]
] as const

const pigment = (massFraction: number, scatterM2PerG: number, absorbM2PerG = 0) =>
  layerOfTint([{ massFraction, scatterM2PerG, absorbM2PerG }], 1100)

/** 0.05 % of K* 5 m²/g in 1100 kg/m³, alike in the three bands. */
const BLACK = 0.0005 * 1100 * 5
const carbonBlack = { scatterPerMm: [0, 0, 0], absorbPerMm: [BLACK, BLACK, BLACK] } as const

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'optical depth that hides (contrast ratio 0.98, ISO 6504-1), K/S 0 to 1',
    source: 'Kubelka-Munk closed forms, solved independently',
    confidence: 'computed',
    unit: '',
    tolerance: 0.051,
    why: 'one decimal',
    cells: OPTICAL_DEPTH.length,
    worst: () => Math.max(...OPTICAL_DEPTH.map(([ratio, sx]) => Math.abs(hidingOpticalDepth(ratio) - sx)))
  }),
  {
    model,
    what: 'reflectance over black, K = 0, SX = 4: SX/(1 + SX)',
    source: 'Kubelka, J. Opt. Soc. Am. 38 (1948) 448',
    confidence: 'memory',
    unit: '',
    published: 0.8,
    tolerance: 1e-12,
    why: 'closed form',
    ours: () => reflectance({ scatterPerMm: 4, absorbPerMm: 0 }, 1, 0)
  },
  {
    model,
    what: 'scattering of 1 % titanium dioxide, S* 0.5 m²/g, in 1100 kg/m³',
    source: 'S = S*·c; S* within a factor of two (memory and estimate)',
    confidence: 'memory',
    unit: '1/mm',
    published: 5.5,
    tolerance: 1e-9,
    why: 'arithmetic',
    ours: () => pigment(0.01, 0.5).scatterPerMm
  },
  {
    model,
    what: 'depth at which that hides',
    source: 'Kubelka-Munk at contrast ratio 0.98, computed independently',
    confidence: 'computed',
    unit: 'mm',
    published: 2.1,
    tolerance: 0.051,
    why: 'one decimal',
    ours: () => hidingDepth(pigment(0.01, 0.5)).centralMm
  },
  {
    model,
    what: 'depth at which 3 % of pearl, S* 0.05 m²/g, hides (1.65 /mm)',
    source: 'S* estimated from flake area; Kubelka-Munk, computed independently',
    confidence: 'computed',
    unit: 'mm',
    published: 7,
    tolerance: 0.51,
    why: 'whole mm',
    ours: () => hidingDepth(pigment(0.03, 0.05)).centralMm
  },
  {
    model,
    what: '0.05 % of carbon black, K* 5 m²/g: depth from which the eye sees no difference',
    source: 'recalled as 1 to 2 mm for K* 5 to 10 m²/g',
    confidence: 'memory',
    unit: 'mm',
    published: 1.5,
    tolerance: 0.75,
    why: 'the factor of two of pigment strength; K* 10 gives half of it',
    ours: () => coverDepthMm(carbonBlack)!
  }
]
