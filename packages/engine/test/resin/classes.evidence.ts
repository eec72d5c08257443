import { bodyHistory } from '../../src/resin/cup.ts'
import { greatestDepth } from '../../src/resin/depth.ts'
import type { ResinModel } from '../../src/resin/model.ts'
import { type Bed, BOARD_18, peakHorizonS, runSlab } from '../../src/resin/slab.ts'
import { type Evidence, table } from '../evidence.ts'
import { once, worst } from './rows.ts'
import { AMINES, CLASSES, FIRST_FIT } from './sets.ts'

const independent =
  'computed beforehand by an independent explicit code; classes fitted to practice, no product'

/**
 * The board as the second fit's slabs took it: 18 mm, k 0.12, with the film under it in series, without heat
 * capacity. Found by trial: with heat capacity the published slabs do not come out, without it they do.
 */
export const BOARD_RESISTANCE: Bed = { layers: [], hFloorWm2K: 1 / (1 / 6 + 0.018 / 0.12) }

type ClassName = keyof typeof CLASSES
type FitName = keyof typeof FIRST_FIT

/** Classes at 22 °C: depth, peak, peak with liquid multiplier 3 (null: not given). */
const SLABS: readonly (readonly [ClassName, mm: number, peakC: number, mixedC: number | null])[] = [
  ['deep', 25, 33, 31],
  ['deep', 50, 67, 61],
  ['deep', 75, 97, 92],
  ['medium', 6, 30, 29],
  ['medium', 10, 51, 48],
  ['medium', 15, 127, 121],
  ['thin', 1.6, 27, null],
  ['thin', 3, 44, 43],
  ['thin', 6, 163, null]
]
/** A steep place: 1 mm of depth or 1 K of room moves this peak by 15 K and more. */
const steep = (name: ClassName, mm: number): boolean => name === 'medium' && mm === 15

const slab = (resin: ResinModel, depthMm: number, kLiquidMultiplier: number, bed: Bed, roomC = 22, h = 9) => {
  const pour = { resin, depthMm, bed, roomC, kLiquidMultiplier, hTopWm2K: h }
  return runSlab(pour, peakHorizonS(pour)).resin
}
const slabs = once(() =>
  SLABS.map(([name, mm, peakC, mixedC]) => ({
    steep: steep(name, mm),
    pairs: [
      [slab(CLASSES[name], mm, 1, BOARD_RESISTANCE).peakC, peakC] as const,
      ...(mixedC === null ? [] : [[slab(CLASSES[name], mm, 3, BOARD_RESISTANCE).peakC, mixedC] as const])
    ]
  }))
)
const slabPairs = (wanted: boolean): (readonly [number, number])[] =>
  slabs()
    .filter(s => s.steep === wanted)
    .flatMap(s => s.pairs)

/** Classes in a cup at 25 °C: mass g, first gel h, peak °C. */
const CUPS: readonly (readonly [ClassName, massG: number, gelH: number, peakC: number])[] = [
  ['deep', 100, 12.9, 29],
  ['deep', 1000, 8.7, 39],
  ['deep', 5000, 5.6, 59],
  ['medium', 100, 1.5, 127],
  ['medium', 1000, 1.2, 173],
  ['medium', 5000, 1.1, 185],
  ['thin', 100, 0.3, 196],
  ['thin', 1000, 0.28, 205],
  ['thin', 5000, 0.28, 208]
]
/** V/A, mm, of the ball of that mass at 1100 kg/m³: a third of its radius. */
const ballMm = (massG: number): number => (1000 * Math.cbrt((3 * massG) / 1000 / 1100 / (4 * Math.PI))) / 3
const cups = once(() =>
  CUPS.map(([name, massG, gelH, peakC]) => {
    const body = { resin: CLASSES[name], volumePerAreaMm: ballMm(massG), roomC: 25, hWm2K: 8 }
    const { gelMin, peakC: ours } = bodyHistory({ ...body, mode: 'lumped' })
    return { gel: [gelMin! / 60, gelH] as const, peak: [ours, peakC] as const }
  })
)

/** First fit in a cup at 25 °C as a sphere of R mm, h 8: first gel h, and peak where it is below 60 °C. */
const FIRST_CUPS: readonly (readonly [FitName, radiusMm: number, gelH: number, peakC: number | null])[] = [
  ['a', 23.3, 36.6, 28],
  ['a', 41, 27.4, 34],
  ['a', 52, 19.9, 44],
  ['b', 23.3, 2.05, null],
  ['b', 41, 1.47, null],
  ['b', 52, 1.37, null],
  ['c', 23.3, 0.33, null],
  ['c', 41, 0.32, null],
  ['c', 52, 0.32, null]
]
const firstCups = once(() =>
  FIRST_CUPS.map(([name, radiusMm, gelH, peakC]) => {
    const { gelMin, peakC: ours } = bodyHistory({
      resin: FIRST_FIT[name],
      volumePerAreaMm: radiusMm / 3,
      roomC: 25,
      hWm2K: 8
    })
    return { gel: [gelMin! / 60, gelH] as const, peak: peakC === null ? null : ([ours, peakC] as const) }
  })
)
const AMINE_CUPS: readonly (readonly [keyof typeof AMINES, gelMin: number])[] = [
  ['polyetheramine', 7.8 * 60],
  ['isophoronediamine', 65],
  ['triethylenetetramine', 26]
]

/** First fit on the board with its heat capacity, h 8 above: room °C, depth, peak, with multiplier 3. */
const FIRST_SLABS: readonly (readonly [
  FitName,
  roomC: number,
  mm: number,
  peakC: number,
  mixedC: number | null
])[] = [
  ['a', 22, 25, 28, 27],
  ['a', 22, 50, 78, 60],
  ['b', 22, 5, 27, 27],
  ['b', 22, 10, 40, 39],
  ['b', 25, 10, 57, 55],
  ['c', 22, 1.6, 26, null],
  ['c', 22, 3, 32, null],
  ['c', 22, 6, 72, 71]
]
const HOT_FIRST_SLABS: typeof FIRST_SLABS = [
  ['a', 22, 75, 151, 137],
  ['a', 22, 100, 179, 160],
  ['a', 25, 50, 113, 96],
  ['b', 22, 15, 112, 105],
  ['b', 22, 20, 161, 156]
]
const firstSlabPairs = (list: typeof FIRST_SLABS): (readonly [number, number])[] =>
  list.flatMap(([name, roomC, mm, peakC, mixedC]) => [
    [slab(FIRST_FIT[name], mm, 1, BOARD_18, roomC, 8).peakC, peakC] as const,
    ...(mixedC === null ? [] : [[slab(FIRST_FIT[name], mm, 3, BOARD_18, roomC, 8).peakC, mixedC] as const])
  ])

/** Practice: greatest depth at 22 °C, and pot life of a mass at 25 °C in minutes with its range. */
const DEPTHS: readonly (readonly [ClassName, mm: number])[] = [
  ['deep', 50],
  ['medium', 10],
  ['thin', 3.5]
]
const POT_LIVES: readonly (readonly [ClassName, massG: number, min: number, range: number, why: string])[] = [
  ['deep', 1000, 540, 180, 'told as 6 to 12 h'],
  ['medium', 100, 90, 30, 'told as 60 to 120 min'],
  ['thin', 100, 22.5, 6.75, 'told as 20 to 25 min; the class is early by up to its band of 30 %']
]

const list: readonly Evidence[] = [
  table({
    model: 'resin/slab',
    what: 'peak of pours of three classes at 22 °C, alone and with liquid multiplier 3',
    source: `${independent}; the board as a resistance without heat capacity`,
    confidence: 'computed',
    unit: '°C',
    tolerance: 3,
    why: 'printed to whole degrees; 3 °C asked for',
    cells: 14,
    worst: () => worst(slabPairs(false))
  }),
  table({
    model: 'resin/slab',
    what: 'the same for 15 mm of the medium class, at the edge of a runaway',
    source: independent,
    confidence: 'computed',
    unit: '°C',
    tolerance: 4.5,
    why: 'does not meet the 3 °C: here 0.1 mm of depth or 0.1 K of room is worth 2 K, and the other code ran explicitly',
    cells: 2,
    worst: () => worst(slabPairs(true))
  }),
  table({
    model: 'resin/cup',
    what: 'first gel of 100 g, 1 kg, 5 kg of three classes at 25 °C',
    source: `${independent}; reproduced by one lumped temperature, the ball of equal volume, h 8`,
    confidence: 'computed',
    unit: 'relative',
    tolerance: 0.05,
    why: 'two printed digits; 5 % asked for',
    cells: CUPS.length,
    worst: () =>
      worst(
        cups().map(c => c.gel),
        true
      )
  }),
  table({
    model: 'resin/cup',
    what: 'peak of the same',
    source: 'the same',
    confidence: 'computed',
    unit: '°C',
    tolerance: 1,
    why: 'printed to whole degrees; 3 °C asked for',
    cells: CUPS.length,
    worst: () => worst(cups().map(c => c.peak))
  }),
  table({
    model: 'resin/cup',
    what: 'first gel in a sphere of 23.3, 41, 52 mm at 25 °C, h 8, first fit',
    source: 'computed beforehand by an independent code with heat capacity rising with temperature',
    confidence: 'computed',
    unit: 'relative',
    tolerance: 0.05,
    why: 'ours takes 1800 J/(kg·K) throughout',
    cells: FIRST_CUPS.length,
    worst: () =>
      worst(
        firstCups().map(c => c.gel),
        true
      )
  }),
  table({
    model: 'resin/cup',
    what: 'peak of the same where it stays below 60 °C',
    source: 'the same',
    confidence: 'computed',
    unit: '°C',
    tolerance: 1.5,
    why: 'whole degrees and the heat capacity, as above',
    cells: 3,
    worst: () => worst(firstCups().flatMap(c => (c.peak ? [c.peak] : [])))
  }),
  table({
    model: 'resin/cup',
    what: 'first gel of 100 g (sphere of 23.3 mm, h 8, 25 °C) of three reconstructed amine sets',
    source: 'computed beforehand by an independent code; sets reconstructed, not literature',
    confidence: 'computed',
    unit: 'relative',
    tolerance: 0.05,
    why: 'two printed digits, heat capacity as above',
    cells: 3,
    worst: () =>
      worst(
        AMINE_CUPS.map(([name, min]) => [
          bodyHistory({ resin: AMINES[name], volumePerAreaMm: 23.3 / 3, roomC: 25, hWm2K: 8 }).gelMin!,
          min
        ]),
        true
      )
  }),
  table({
    model: 'resin/slab',
    what: 'peak of pours on 18 mm of board with its heat capacity, first fit, below 80 °C',
    source: 'computed beforehand by an independent code with heat capacity rising with temperature',
    confidence: 'computed',
    unit: '°C',
    tolerance: 3,
    why: 'whole degrees; ours takes 1800 J/(kg·K) throughout',
    cells: 14,
    worst: () => worst(firstSlabPairs(FIRST_SLABS))
  }),
  table({
    model: 'resin/slab',
    what: 'the same at the edge and beyond it, 96-179 °C',
    source: 'the same',
    confidence: 'computed',
    unit: '°C',
    tolerance: 22,
    why: 'the other code lets the heat capacity rise by a tenth and more on the way; ours is constant and runs hotter, on the safe side',
    cells: 10,
    worst: () => worst(firstSlabPairs(HOT_FIRST_SLABS))
  }),
  ...DEPTHS.map(
    ([name, mm]): Evidence => ({
      model: 'resin/depth',
      what: `greatest depth of the ${name} class at 22 °C for a peak of 60 °C, board as a resistance`,
      source: 'common practice figure of such resins, no source',
      confidence: 'practice',
      unit: 'mm',
      published: mm,
      tolerance: 0.25 * mm,
      why: 'the class states its depth to ±25 %',
      ours: once(() => greatestDepth({ resin: CLASSES[name], bed: BOARD_RESISTANCE, roomC: 22 }, 60).depthMm)
    })
  ),
  ...POT_LIVES.map(
    ([name, massG, min, range, why]): Evidence => ({
      model: 'resin/cup',
      what: `pot life of ${massG} g of the ${name} class at 25 °C, first gel, lumped ball, h 8`,
      source: 'common practice figure of such resins, no source',
      confidence: 'practice',
      unit: 'min',
      published: min,
      tolerance: range,
      why,
      ours: () =>
        bodyHistory({
          resin: CLASSES[name],
          volumePerAreaMm: ballMm(massG),
          roomC: 25,
          hWm2K: 8,
          mode: 'lumped'
        }).gelMin!
    })
  )
]

/** Grouped by model, as the page prints them. */
export const rows: readonly Evidence[] = list.toSorted((a, b) => a.model.localeCompare(b.model))
