import type { CatalogueRecord } from './record.ts'

/**
 * Elastic constants of timber across the grain and in shear, as fractions of the modulus along the grain E_L,
 * at about 12 % moisture: E_T/E_L, E_R/E_L, G_LR/E_L, G_LT/E_L, G_RT/E_L. `id` is that of the timber.
 *
 * E_L is the tabulated bending modulus × 1.10 (`LONGITUDINAL_OVER_BENDING` in timber.ts).
 *
 * Source: Wood Handbook (FPL-GTR-190/282) Table 5-1. Douglas-fir read, the rest from memory.
 *
 * Limits: straight-grained mature wood, small strain, short time. The plane across the grain (G_RT) is so soft
 * that few species were measured.
 */
export interface ElasticRecord extends CatalogueRecord {
  readonly tangentialRatio: number
  readonly radialRatio: number
  readonly shearLongRadialRatio: number | null
  readonly shearLongTangentialRatio: number | null
  readonly shearRadialTangentialRatio: number | null
}

const SOURCE = 'Wood Handbook FPL-GTR-190/282 Table 5-1'

type Row = readonly [
  id: string,
  name: string,
  t: number,
  r: number,
  lr: number,
  lt: number | null,
  rt: number | null
]

const ROWS: readonly Row[] = [
  ['ash-white', 'ash, white', 0.08, 0.125, 0.109, 0.077, null],
  ['basswood-american', 'basswood', 0.027, 0.066, 0.056, 0.046, null],
  ['birch-yellow', 'birch, yellow', 0.05, 0.078, 0.074, 0.068, 0.017],
  ['cherry-black', 'cherry, black', 0.086, 0.197, 0.147, 0.097, null],
  ['mahogany-african', 'khaya', 0.05, 0.111, 0.088, 0.059, 0.021],
  ['mahogany-true', 'mahogany, Honduras', 0.064, 0.107, 0.066, 0.086, 0.028],
  ['maple-sugar', 'maple, sugar', 0.065, 0.132, 0.111, 0.063, null],
  ['maple-red', 'maple, red', 0.067, 0.14, 0.133, 0.074, null],
  ['oak-northern-red', 'oak, red', 0.082, 0.154, 0.089, 0.081, null],
  ['oak-white', 'oak, white', 0.072, 0.163, 0.086, null, null],
  ['sweetgum', 'sweetgum', 0.05, 0.115, 0.089, 0.061, 0.021],
  ['walnut-black', 'walnut, black', 0.056, 0.106, 0.085, 0.062, 0.021],
  ['yellow-poplar', 'yellow-poplar', 0.043, 0.092, 0.075, 0.069, 0.011],
  ['balsa', 'balsa', 0.015, 0.046, 0.054, 0.037, 0.005],
  ['douglas-fir-coast', 'Douglas-fir', 0.05, 0.068, 0.064, 0.078, 0.007],
  ['redcedar-western', 'redcedar, western', 0.055, 0.081, 0.087, 0.086, 0.005],
  ['pine-loblolly', 'pine, loblolly', 0.078, 0.113, 0.082, 0.081, 0.013],
  ['pine-ponderosa', 'pine, ponderosa', 0.083, 0.122, 0.138, 0.115, 0.017],
  ['pine-sugar', 'pine, sugar', 0.087, 0.131, 0.124, 0.113, 0.019],
  ['redwood-old-growth', 'redwood', 0.089, 0.087, 0.066, 0.077, 0.011],
  ['spruce-sitka', 'spruce, Sitka', 0.043, 0.078, 0.064, 0.061, 0.003],
  ['spruce-engelmann', 'spruce, Engelmann', 0.059, 0.128, 0.124, 0.12, 0.01]
]

export const ELASTIC: readonly ElasticRecord[] = ROWS.map(([id, name, t, r, lr, lt, rt]) => ({
  id,
  name,
  source: SOURCE,
  confidence: id === 'douglas-fir-coast' ? 'read' : 'memory',
  tangentialRatio: t,
  radialRatio: r,
  shearLongRadialRatio: lr,
  shearLongTangentialRatio: lt,
  shearRadialTangentialRatio: rt
}))

/** For every species not listed: E_R = 0.10 E_L, E_T = 0.06 E_L; shear across species is not offered. */
export const ELASTIC_GENERIC: ElasticRecord = {
  id: 'any-timber',
  name: 'any timber',
  source: 'round middle of Wood Handbook FPL-GTR-190/282 Table 5-1',
  confidence: 'memory',
  note: 'of no species in particular: listed species have 0.25 to 1.5 times its E_T and 0.46 to 2 times its E_R',
  tangentialRatio: 0.06,
  radialRatio: 0.1,
  shearLongRadialRatio: null,
  shearLongTangentialRatio: null,
  shearRadialTangentialRatio: null
}

/** Poisson's ratios of Douglas-fir (read, Wood Handbook Table 5-2): strain along the second letter per strain along the first. */
export const POISSON_DOUGLAS_FIR = {
  lr: 0.292,
  lt: 0.449,
  rl: 0.036,
  rt: 0.39,
  tl: 0.029,
  tr: 0.374
} as const

/** Ratios of the species, else the generic ones. */
export function elasticOf(timberId: string): ElasticRecord {
  return ELASTIC.find(row => row.id === timberId) ?? ELASTIC_GENERIC
}
