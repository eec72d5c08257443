import type { FieldControl, FieldProblem, ResinMaterial } from '../../../src/cast/field/field-problem.ts'
import type { FieldPour, FieldResult } from '../../../src/cast/field/field-result.ts'
import { runField } from '../../../src/cast/field/field-run.ts'
import { rateTable } from '../../../src/resin/cure-table.ts'
import { type Evidence, table } from '../../evidence.ts'
import { once, worst } from '../../resin/rows.ts'
import { altered, CLASSES, FIRST_FIT } from '../../resin/sets.ts'

/** Slabs through the cast in three directions: one column of cells, closed at its sides. */
function slab(
  mm: number,
  cells: number,
  material: ResinMaterial,
  faces: { readonly floor: number; readonly up: number },
  airC: number,
  untilS: number,
  control?: FieldControl
): FieldResult {
  const problem: FieldProblem = {
    nx: 1,
    ny: 1,
    dxM: 0.01,
    dyM: 0.01,
    dzM: Array.from({ length: cells }, () => mm / 1000 / cells),
    cells: new Uint8Array(cells).fill(1),
    materials: [material],
    films: { side: 0, down: 0, sideways: 0, ...faces },
    ambientC: () => airC,
    untilS
  }
  return runField(control ? { ...problem, control } : problem)
}

const WALL = 1e9
/** Constant properties, no diffusion limit: the conditions of the regression cases. */
const plain = (key: keyof typeof FIRST_FIT): ResinMaterial => ({
  kind: 'resin',
  resin: altered(FIRST_FIT[key], { kLiquidWmK: 0.2, kSlopeWmK: 0 }, { diffusion: null }),
  atS: 0,
  startC: 25
})
const CASES = [
  { name: 'R1 slab 20 mm, first fit b, bottom insulated, top h 8', resin: 'b', mm: 20, floor: 0, up: 8 },
  { name: 'R2 slab 50 mm, first fit a, the same faces', resin: 'a', mm: 50, floor: 0, up: 8 },
  { name: 'R3 slab 40 mm, first fit b, both faces at 25 °C', resin: 'b', mm: 40, floor: WALL, up: WALL }
] as const
const FOUND = [
  { peakC: 239, peakH: 1.55, firstH: 1.5, allH: 1.55 },
  { peakC: 187, peakH: 10.68, firstH: 10.11, allH: 10.63 },
  { peakC: 73.9, peakH: 3.13, firstH: 2.83, allH: 9.0 }
]
const source = 'computed beforehand: finite volumes, implicit conduction, Runge-Kutta kinetics, three grids'

function rowsOf(c: (typeof CASES)[number], found: (typeof FOUND)[number]): Evidence[] {
  const pour = once(
    (): FieldPour =>
      slab(c.mm, 80, plain(c.resin), { floor: c.floor, up: c.up }, 25, 3600 * 1.4 * found.allH).pours[0]!
  )
  const common = { model: 'cast/field', source, confidence: 'computed' } as const
  const time = (
    what: string,
    hours: number,
    ours: (p: FieldPour) => number,
    part = 0.01,
    why = 'printed to 0.01 h'
  ): Evidence => ({
    ...common,
    what: `${c.name}: ${what}`,
    unit: 'h',
    published: hours,
    tolerance: part * hours,
    why,
    ours: () => ours(pour())
  })
  return [
    {
      ...common,
      what: `${c.name}: peak`,
      unit: '°C',
      published: found.peakC,
      tolerance: 1,
      why: 'printed to whole degrees; a runaway is asked for within 3 °C',
      ours: () => pour().peakC
    },
    time('time of the peak', found.peakH, p => p.peakAtS / 3600),
    time('first gel', found.firstH, p => p.firstGelS! / 3600),
    c.up === WALL
      ? time('all gelled', found.allH, p => p.allGelS! / 3600, 0.03, 'printed as about: the outermost cell')
      : time('all gelled', found.allH, p => p.allGelS! / 3600)
  ]
}

/** Process-modelling textbook, example 8.5; the same case through the column: resin/column.evidence.ts. */
const BOOK: ResinMaterial = {
  kind: 'resin',
  resin: altered(
    CLASSES.deep,
    { liquidKgM3: 1000, cpJkgK: 1304, kLiquidWmK: 0.3, kSlopeWmK: 0 },
    { heatJPerKg: 0.6 * 1200 * 280_000 * 1e-3 }
  ),
  table: rateTable({
    k1: tempK => Math.exp(-1000 / (tempK + 0.05)),
    k2: () => 0,
    f: a => (1 - a) ** 2,
    g: () => 0,
    p: () => 0,
    q: () => 0
  }),
  atS: 0,
  startC: 20
}
const BOOK_TABLE: readonly (readonly [
  s: number,
  mid: number,
  quarter: number,
  cMid: number,
  cQuarter: number
])[] = [
  [10, 66.48, 69.31, 0.3006, 0.3022],
  [20, 99.14, 108.18, 0.5094, 0.5174],
  [30, 120.67, 130.13, 0.64, 0.6504],
  [50, 145.02, 146.98, 0.7777, 0.7846]
]
const book = once(() =>
  BOOK_TABLE.map(([s, mid, quarter, cMid, cQuarter]) => {
    const control = { errorK: 0.05, change: 0.02, longestS: 0.5 }
    const r = slab(20, 40, BOOK, { floor: WALL, up: WALL }, 120, s, control)
    const between = (iz: number): { readonly t: number; readonly a: number } => {
      const [low, high] = [r.at(0, 0, iz - 1), r.at(0, 0, iz)]
      return { t: (low.tempC + high.tempC) / 2, a: (low.conversion + high.conversion) / 2 }
    }
    const [middle, fourth] = [between(20), between(10)]
    return {
      temps: [
        [middle.t, mid],
        [fourth.t, quarter]
      ] as const,
      cured: [
        [middle.a, cMid],
        [fourth.a, cQuarter]
      ] as const
    }
  })
)
const example = 'process-modelling textbook example 8.5 (inputs read), 21 nodes, explicit, run beforehand'

export const rows: readonly Evidence[] = [
  ...CASES.flatMap((c, i) => rowsOf(c, FOUND[i]!)),
  table({
    model: 'cast/field',
    what: 'textbook slab between walls at 120 °C: T at middle and quarter, 10 to 50 s',
    source: example,
    confidence: 'computed',
    unit: '°C',
    tolerance: 0.5,
    why: 'the published grid is itself within 0.4 K of one twice as fine',
    cells: 8,
    worst: () => worst(book().flatMap(b => [...b.temps]))
  }),
  table({
    model: 'cast/field',
    what: 'textbook slab: conversion at the same places and times',
    source: example,
    confidence: 'computed',
    unit: '1',
    tolerance: 0.002,
    why: 'as above: its conversion shifts with the grid as its temperature does',
    cells: 8,
    worst: () => worst(book().flatMap(b => [...b.cured]))
  })
]
