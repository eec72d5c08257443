import { describe, expect, it } from 'vitest'
import { CATALOGUE, type CatalogueKind } from '../../src/catalogue/find.ts'
import type { CatalogueRecord, Confidence } from '../../src/catalogue/record.ts'
import { RESIN_ELASTIC } from '../../src/catalogue/resin-elastic.ts'
import { confidenceOf, STRENGTH, weakest } from '../../src/catalogue/tag.ts'
import { ELASTIC } from '../../src/catalogue/timber-elastic.ts'
import { TENSION } from '../../src/catalogue/timber-tension.ts'

const rows: readonly (readonly [kind: string, row: CatalogueRecord])[] = [
  ...(Object.keys(CATALOGUE) as CatalogueKind[]).flatMap(kind =>
    CATALOGUE[kind].map(row => [kind, row] as const)
  ),
  ...ELASTIC.map(row => ['elastic', row] as const),
  ['elastic', RESIN_ELASTIC],
  ...TENSION.map(row => ['tension', row] as const)
]

/**
 * What each number of the catalogue may be, by the name of its field: the unit is in the name. A number whose
 * field is not here fails, so that no field goes in unbounded.
 */
const PLAUSIBLE: Readonly<Record<string, readonly [low: number, high: number]>> = {
  // timber
  shrinkRadialPct: [1, 10],
  shrinkTangentialPct: [2, 14],
  shrinkVolumePct: [5, 20],
  radialPerPct: [0.0005, 0.004],
  tangentialPerPct: [0.001, 0.006],
  shrinkageStartPct: [22, 30],
  gravityGreen: [0.1, 1.1],
  gravity12: [0.1, 1.25],
  density12KgM3: [100, 1400],
  modulus12MPa: [3000, 22_000],
  acrossMPa: [1, 8],
  tangentialRatio: [0.01, 0.1],
  radialRatio: [0.04, 0.2],
  shearLongRadialRatio: [0.05, 0.15],
  shearLongTangentialRatio: [0.03, 0.12],
  shearRadialTangentialRatio: [0.002, 0.03],
  // elastic constants of resin
  modulusMPa: [1000, 5000],
  modulusBandMPa: [1000, 5000],
  poisson: [0.3, 0.45],
  expansionPerK: [40e-6, 100e-6],
  // resin
  massA: [1, 1000],
  massB: [0.5, 1000],
  densityAGMl: [0.8, 1.5],
  densityBGMl: [0.8, 1.5],
  k2At25PerS: [1e-6, 1e-2],
  k1OverK2At25: [0.001, 1],
  e1JPerMol: [40_000, 120_000],
  e2JPerMol: [40_000, 120_000],
  m: [0.3, 2],
  n: [0.5, 3],
  heatJPerKg: [100_000, 600_000],
  gelConversion: [0.3, 0.8],
  tg0C: [-60, 0],
  tgInfC: [30, 200],
  lambda: [0.3, 0.6],
  offsetK: [0, 30],
  widthK: [1, 20],
  eta25PaS: [0.05, 20],
  etaEJPerMol: [20_000, 100_000],
  c1: [0, 6],
  c2: [0, 6],
  liquidKgM3: [900, 1400],
  curedKgM3: [950, 1500],
  kLiquidWmK: [0.1, 0.3],
  kSlopeWmK: [0, 0.2],
  cpJkgK: [800, 2500],
  shrinkagePct: [0, 10],
  shrinkageBandPct: [0, 10],
  time: [0, 1],
  depth: [0, 1],
  peakK: [0, 60],
  // pigment
  pigmentFraction: [0.005, 1],
  scatterM2PerG: [0, 1.3],
  absorbM2PerG: [0, 30],
  absorbBandsM2PerG: [0, 30],
  bandFactor: [1, 3],
  loadingPct: [0, 10],
  capPct: [0, 10],
  srgb: [0, 255],
  densityGMl: [0.7, 9],
  // stone, board
  densityKgM3: [50, 20_000],
  densityBandKgM3: [50, 20_000],
  packing: [0.02, 0.76],
  mohs: [1, 10],
  conductivityWmK: [0.03, 400],
  heatCapacityJkgK: [400, 4200],
  sizeMm: [0.01, 150],
  modulusPa: [1e5, 250e9],
  modulusAcrossPa: [1e8, 250e9],
  creepFactor: [0, 3],
  thicknessMm: [0, 40],
  thicknessesMm: [0.5, 40],
  softeningC: [40, 200],
  readyAfterH: [0, 72],
  // coat
  solidsPct: [5, 100],
  wetFilmUm: [5, 4000],
  dryFilmUm: [0, 4000],
  coats: [1, 20],
  transfer: [0.3, 1],
  spreadM2PerL: [0.2, 110],
  recoatH: [0.1, 72],
  loadAfterDays: [0.1, 60],
  coverAfterDays: [0, 90],
  lastGrit: [60, 5000],
  betweenGrit: [120, 5000],
  gloss60: [0, 100],
  // abrasive
  grit: [12, 5000],
  grainUm: [0.5, 2000],
  toleranceUm: [0.3, 3],
  unletteredUm: [5, 300],
  // cutter
  diameterMm: [0.5, 200],
  toleranceMm: [0.01, 0.5],
  headMm: [3, 30],
  cuttingLengthMm: [1, 150],
  neckMm: [2, 20],
  flutes: [1, 4],
  pointAngleDeg: [10, 180],
  tipPerDiameter: [0, 2],
  radiiMm: [0.1, 20],
  // hardware
  widthMm: [1, 500],
  lengthMm: [1, 2000],
  depthMm: [0.5, 200],
  clearanceMm: [0, 20],
  overDepthMm: [0, 20],
  majorMm: [2, 12],
  pitchMm: [0.4, 1.5],
  threadMm: [3, 40],
  greatestDialMm: [0.5, 30],
  beyondDialMm: [1, 10],
  handReachMm: [30, 500],
  glassGapMm: [0.2, 5],
  hour: [3, 8],
  minute: [2, 5],
  second: [0.5, 2],
  heatLimitC: [40, 120],
  // mixing
  minutes: [1, 15],
  airShare: [0, 0.1],
  bubbleMm: [0.02, 5],
  turnsPerS: [0.5, 20],
  // room
  tempC: [-30, 60],
  humidityPct: [5, 100]
}

/** Fields that hold a range [low, high]; a pair must not fall. */
const RANGES = new Set([
  ...['shrinkageBandPct', 'loadingPct', 'densityBandKgM3', 'packing', 'mohs', 'sizeMm', 'readyAfterH'],
  ...['solidsPct', 'wetFilmUm', 'dryFilmUm', 'coats', 'transfer', 'spreadM2PerL', 'recoatH', 'loadAfterDays'],
  ...[
    'lastGrit',
    'betweenGrit',
    'gloss60',
    'diameterMm',
    'threadMm',
    'beyondDialMm',
    'handReachMm',
    'glassGapMm'
  ],
  ...['hour', 'minute', 'second', 'tempC', 'humidityPct', 'airShare', 'bubbleMm']
])

/** Every number of a value with the name of the field that holds it. */
function numbersOf(value: unknown, field: string): [field: string, number][] {
  if (typeof value === 'number') return [[field, value]]
  if (Array.isArray(value)) return value.flatMap(v => numbersOf(v, field))
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([name, v]) => numbersOf(v, name))
}

/** Every pair of numbers with its field. */
function pairsOf(value: unknown, field: string): [field: string, readonly number[]][] {
  if (Array.isArray(value)) {
    return value.length === 2 && value.every(v => typeof v === 'number')
      ? [[field, value]]
      : value.flatMap(v => pairsOf(v, field))
  }
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([name, v]) => pairsOf(v, name))
}

describe('every row of every catalogue', () => {
  it('is counted', () => {
    const counts = Object.fromEntries(
      (Object.keys(CATALOGUE) as CatalogueKind[]).map(k => [k, CATALOGUE[k].length])
    )
    expect(counts).toEqual({
      timber: 122,
      resin: 6,
      pigment: 49,
      stone: 24,
      coat: 11,
      board: 9,
      liner: 8,
      cutter: 15,
      hardware: 47,
      room: 10,
      mixing: 3,
      abrasive: 32,
      hazard: 24
    })
  })

  it('says where it comes from and how it is known', () => {
    for (const [kind, row] of rows) {
      expect(row.source.trim().length, `${kind} ${row.id}`).toBeGreaterThan(5)
      expect(row.source, row.id).toBe(row.source.trim())
      expect(STRENGTH, row.id).toContain(row.confidence)
      expect(row.name.trim().length, row.id).toBeGreaterThan(2)
      if (row.note !== undefined) expect(row.note.trim().length, row.id).toBeGreaterThan(2)
    }
  })

  it('has an id of its own, lower case with hyphens, and a name of its own', () => {
    for (const kind of new Set(rows.map(([k]) => k))) {
      const these = rows.filter(([k]) => k === kind).map(([, row]) => row)
      expect(new Set(these.map(r => r.id)).size, kind).toBe(these.length)
      expect(new Set(these.map(r => r.name.toLowerCase())).size, kind).toBe(these.length)
      for (const r of these) expect(r.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    }
  })

  it('holds only finite numbers inside what is plausible for their unit', () => {
    let checked = 0
    for (const [kind, row] of rows) {
      for (const [field, value] of numbersOf(row, kind)) {
        const bounds = PLAUSIBLE[field]
        expect(bounds, `${kind} ${row.id}: no bounds for ${field}`).toBeDefined()
        expect(value, `${row.id} ${field}`).toBeGreaterThanOrEqual(bounds![0])
        expect(value, `${row.id} ${field}`).toBeLessThanOrEqual(bounds![1])
        checked++
      }
    }
    expect(checked).toBeGreaterThan(2500)
  })

  it('has ranges that run upwards', () => {
    let checked = 0
    for (const [kind, row] of rows) {
      for (const [field, [low, high]] of pairsOf(row, kind)) {
        if (!RANGES.has(field)) continue
        expect(low!, `${row.id} ${field}`).toBeLessThanOrEqual(high!)
        checked++
      }
    }
    expect(checked).toBeGreaterThan(300)
  })

  it('tags only fields that it has', () => {
    for (const [kind, row] of rows) {
      const tags = (row as { tags?: Record<string, Confidence> }).tags ?? {}
      for (const [field, tag] of Object.entries(tags)) {
        expect(row, `${kind} ${row.id}`).toHaveProperty(field)
        expect(STRENGTH, row.id).toContain(tag)
      }
    }
  })

  it('says "measure yours" where dimensions are of common practice', () => {
    for (const kind of ['hardware', 'cutter', 'room'] as const) {
      for (const row of CATALOGUE[kind]) expect(row.note, row.id).toMatch(/measure yours/)
    }
  })

  it('names no place of this machine, no address and no mark', () => {
    const words = JSON.stringify(rows)
    for (const trace of [/[" ]\/[a-z]+\/[a-z]/, /https?:/, /[®™©]/]) expect(words).not.toMatch(trace)
  })
})

describe('tags', () => {
  it('come down to the weakest', () => {
    expect(weakest('read', 'memory', 'derived')).toBe('memory')
    expect(weakest('read')).toBe('read')
    expect(weakest('practice', 'fitted')).toBe('fitted')
  })

  it('of a field go before that of its row', () => {
    const beads = CATALOGUE.stone.find(s => s.id === 'glass-beads')!
    expect(confidenceOf(beads, 'densityKgM3')).toBe('read')
    expect(confidenceOf(beads, 'mohs')).toBe('memory')
    expect(confidenceOf(beads, 'sizeMm')).toBe('practice')
  })

  it('of a timber’s row are the weakest of its three groups', () => {
    for (const t of CATALOGUE.timber) {
      expect(t.confidence, t.id).toBe(weakest(t.shrinkageKnown, t.coefficientKnown, t.gravityKnown))
    }
  })
})
