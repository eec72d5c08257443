import type { Carrier } from './carrier.ts'
import type { CatalogueRecord } from './record.ts'
import type { Tags } from './tag.ts'

/** Where it goes: into the wood, on it as a film, or poured so that it levels itself. */
export type CoatKind = 'penetrating' | 'film' | 'flood'
export type CoatWay = 'brush' | 'wipe' | 'pad' | 'spray' | 'pour'
type Range = readonly [low: number, high: number]

/**
 * A generic finish.
 *
 *   dry film = wet film × volume solids/100         spread m²/L = 1000/(wet film µm)
 *
 * Source: ranges of common practice; the relations after ISO 3233 and ISO 2808 (memory).
 *
 * Limits: kinds, not products: the tin's own sheet goes before every figure here. Oils sink in, so their dry
 * film is far less than solids times wet film.
 */
export interface CoatRecord extends CatalogueRecord {
  readonly kind: CoatKind
  readonly way: CoatWay
  /** Volume solids, %. */
  readonly solidsPct: Range | null
  /** Wet film of one coat, µm; null where none is laid. */
  readonly wetFilmUm: Range | null
  /** Dry film of one coat, µm. */
  readonly dryFilmUm: Range
  readonly coats: Range
  /** Share of what leaves the tin that ends on the piece, 0..1. */
  readonly transfer: Range
  /** Area of one litre, one coat, nothing lost, m²/L; from the wet film. */
  readonly spreadM2PerL: Range | null
  /** Density as applied, g/ml. */
  readonly densityGMl: number
  /** Next coat of the same from ... to, h; null: no latest time. */
  readonly recoatH: readonly [from: number, to: number | null]
  /** What a coat later than that needs. */
  readonly late: 'nothing' | 'sand' | 'wash and sand'
  /** Until hardware, weight or hot things may stand on it, days. */
  readonly loadAfterDays: Range
  /** Least age before a finish of another kind goes over it, days. */
  readonly coverAfterDays: number
  /** Last grit under it, FEPA P, and the grit between coats; null: none. */
  readonly lastGrit: Range
  readonly betweenGrit: Range | null
  readonly carrier: Carrier
  /** Gloss it can be had or brought to, units at 60° (practice; what the tin says goes first). */
  readonly gloss60: Range
  /** Keeps ultraviolet from what lies beneath. */
  readonly blocksUv: boolean
  readonly tags?: Tags<CoatRecord>
}

/** What the ways of laying on lose (practice): brush and roller, spray with low pressure, pouring with drips. */
const TRANSFER = { brush: [0.9, 0.95], spray: [0.6, 0.75], pour: [0.9, 0.95] } as const

const SOURCE = 'common practice of wood finishing, no published source: solids, film, coats, grit'

function coat(
  row: Omit<CoatRecord, 'source' | 'confidence' | 'spreadM2PerL' | 'transfer'> & { readonly transfer?: Range }
): CoatRecord {
  const { wetFilmUm: wet, way } = row
  const transfer = way === 'spray' ? TRANSFER.spray : way === 'pour' ? TRANSFER.pour : TRANSFER.brush
  return {
    transfer,
    ...row,
    source: SOURCE,
    confidence: 'practice',
    spreadM2PerL: wet === null ? null : [1000 / wet[1], 1000 / wet[0]],
    note: `${row.note === undefined ? '' : `${row.note}; `}the tin's own sheet goes first`
  }
}

export const COATS: readonly CoatRecord[] = [
  coat({
    id: 'flood-coat',
    name: 'flood coat of thin epoxy, self-levelling',
    note: '2-3 mm stand by themselves up to a sharp edge, more needs a dam; below about 1 mm it may crater unless spread; runs into open pockets; the recoat window of its own cure goes before these hours',
    kind: 'flood',
    way: 'pour',
    solidsPct: [95, 100],
    wetFilmUm: [2000, 3200],
    dryFilmUm: [1900, 3200],
    coats: [1, 2],
    densityGMl: 1.1,
    recoatH: [3, 6],
    late: 'wash and sand',
    loadAfterDays: [3, 7],
    coverAfterDays: 7,
    lastGrit: [180, 220],
    betweenGrit: [220, 320],
    carrier: 'none',
    gloss60: [80, 98],
    blocksUv: false,
    tags: { densityGMl: 'memory' }
  }),
  coat({
    id: 'epoxy-seal',
    name: 'epoxy seal coat, brushed thin',
    note: 'the main pour goes on while it is tacky; hard, it must be sanded first',
    kind: 'film',
    way: 'brush',
    solidsPct: [95, 100],
    wetFilmUm: [100, 300],
    dryFilmUm: [100, 300],
    coats: [1, 2],
    densityGMl: 1.1,
    recoatH: [3, 18],
    late: 'wash and sand',
    loadAfterDays: [3, 7],
    coverAfterDays: 7,
    lastGrit: [120, 180],
    betweenGrit: [180, 220],
    carrier: 'none',
    gloss60: [60, 95],
    blocksUv: false,
    tags: { densityGMl: 'memory' }
  }),
  coat({
    id: 'hardwax-oil',
    name: 'hardwax oil',
    note: 'wipe off all that stays wet; rags heat by themselves',
    kind: 'penetrating',
    way: 'wipe',
    solidsPct: [30, 98],
    wetFilmUm: [15, 30],
    dryFilmUm: [5, 20],
    coats: [2, 2],
    densityGMl: 0.92,
    recoatH: [12, 24],
    late: 'sand',
    loadAfterDays: [7, 14],
    coverAfterDays: 30,
    lastGrit: [180, 240],
    betweenGrit: null,
    carrier: 'mineral spirit',
    gloss60: [8, 40],
    blocksUv: false
  }),
  coat({
    id: 'drying-oil',
    name: 'drying oil (tung, linseed), wiped',
    note: '15-60 g/m² in the first coat by the wood; dry is not cured: a month and more before anything else goes over it; does not dry on resin; rags heat by themselves',
    kind: 'penetrating',
    way: 'wipe',
    solidsPct: [100, 100],
    wetFilmUm: [20, 50],
    dryFilmUm: [0, 10],
    coats: [3, 6],
    densityGMl: 0.93,
    recoatH: [24, 72],
    late: 'sand',
    loadAfterDays: [14, 30],
    coverAfterDays: 30,
    lastGrit: [180, 240],
    betweenGrit: null,
    carrier: 'mineral spirit',
    gloss60: [8, 40],
    blocksUv: false
  }),
  coat({
    id: 'oil-varnish',
    name: 'oil varnish (oil-modified polyurethane), brushed',
    note: 'rags heat by themselves',
    kind: 'film',
    way: 'brush',
    solidsPct: [40, 50],
    wetFilmUm: [60, 100],
    dryFilmUm: [25, 50],
    coats: [2, 4],
    densityGMl: 0.92,
    recoatH: [8, 24],
    late: 'sand',
    loadAfterDays: [7, 14],
    coverAfterDays: 30,
    lastGrit: [220, 320],
    betweenGrit: [320, 400],
    carrier: 'mineral spirit',
    gloss60: [10, 88],
    blocksUv: false
  }),
  coat({
    id: 'water-lacquer',
    name: 'water-based lacquer (acrylic, polyurethane)',
    note: 'raises the grain once: damp, dry and sand before the first coat',
    kind: 'film',
    way: 'brush',
    solidsPct: [28, 35],
    wetFilmUm: [80, 125],
    dryFilmUm: [25, 40],
    coats: [2, 4],
    densityGMl: 1.03,
    recoatH: [2, 4],
    late: 'sand',
    loadAfterDays: [7, 14],
    coverAfterDays: 14,
    lastGrit: [220, 320],
    betweenGrit: [320, 400],
    carrier: 'water',
    gloss60: [8, 85],
    blocksUv: false
  }),
  coat({
    id: 'two-part-polyurethane',
    name: 'two-part polyurethane, sprayed',
    note: 'holds isocyanates: its safety data sheet says whether you may spray it at all, and with what air',
    kind: 'film',
    way: 'spray',
    solidsPct: [40, 55],
    wetFilmUm: [80, 120],
    dryFilmUm: [35, 60],
    coats: [1, 3],
    densityGMl: 1,
    recoatH: [2, 12],
    late: 'sand',
    loadAfterDays: [3, 7],
    coverAfterDays: 7,
    lastGrit: [220, 320],
    betweenGrit: [320, 400],
    carrier: 'lacquer thinner',
    gloss60: [8, 92],
    blocksUv: false
  }),
  coat({
    id: 'shellac',
    name: 'shellac, padded',
    note: 'melts into the coat before; heat, alcohol and alkalis mark it; not under epoxy outdoors',
    kind: 'film',
    way: 'pad',
    solidsPct: [10, 20],
    wetFilmUm: [10, 25],
    dryFilmUm: [2, 4],
    coats: [10, 20],
    densityGMl: 0.87,
    recoatH: [0.5, null],
    late: 'nothing',
    loadAfterDays: [2, 7],
    coverAfterDays: 1,
    lastGrit: [220, 320],
    betweenGrit: [320, 400],
    carrier: 'alcohol',
    gloss60: [40, 90],
    blocksUv: false
  }),
  coat({
    id: 'nitro-lacquer',
    name: 'nitrocellulose lacquer, sprayed',
    note: 'melts into the coat before; burns easily, wet and dry; yellows',
    kind: 'film',
    way: 'spray',
    solidsPct: [18, 25],
    wetFilmUm: [75, 125],
    dryFilmUm: [15, 30],
    coats: [3, 5],
    densityGMl: 0.93,
    recoatH: [0.5, null],
    late: 'nothing',
    loadAfterDays: [3, 14],
    coverAfterDays: 14,
    lastGrit: [220, 320],
    betweenGrit: [320, 400],
    carrier: 'lacquer thinner',
    gloss60: [8, 88],
    blocksUv: false
  }),
  coat({
    id: 'wax',
    name: 'wax, over another finish or on polished resin',
    note: 'nothing sticks to it: it comes last, and off before any repair',
    kind: 'film',
    way: 'wipe',
    solidsPct: null,
    wetFilmUm: null,
    dryFilmUm: [1, 5],
    coats: [1, 1],
    densityGMl: 0.85,
    recoatH: [1, null],
    late: 'nothing',
    loadAfterDays: [0.5, 1],
    coverAfterDays: 0,
    lastGrit: [240, 2500],
    betweenGrit: null,
    carrier: 'mineral spirit',
    gloss60: [8, 40],
    blocksUv: false
  }),
  coat({
    id: 'uv-clear',
    name: 'clear coat with ultraviolet absorber, sprayed',
    note: 'slows yellowing, does not end it: renew it; needs resin that is fully cured and sanded',
    kind: 'film',
    way: 'spray',
    solidsPct: [40, 55],
    wetFilmUm: [80, 120],
    dryFilmUm: [35, 60],
    coats: [2, 3],
    densityGMl: 1,
    recoatH: [0.5, 12],
    late: 'sand',
    loadAfterDays: [7, 14],
    coverAfterDays: 7,
    lastGrit: [320, 600],
    betweenGrit: [400, 600],
    carrier: 'lacquer thinner',
    gloss60: [60, 90],
    blocksUv: true
  })
]
