import { gradeOf, likeUnlettered } from '../../src/coat/grain.ts'
import { scratchUm } from '../../src/coat/scratch.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

// Written out here a second time, from the tables and not from the catalogue.
const FEPA = new Map<number, number>(
  [
    ...[
      '12 1815',
      '16 1324',
      '20 1000',
      '24 764',
      '30 642',
      '36 538',
      '40 425',
      '50 336',
      '60 269',
      '80 201'
    ],
    ...['100 162', '120 125', '150 100', '180 82', '220 68', '240 58.5', '280 52.2', '320 46.2', '360 40.5'],
    ...['400 35.0', '500 30.2', '600 25.8', '800 21.8', '1000 18.3', '1200 15.3', '1500 12.6', '2000 10.3'],
    '2500 8.4'
  ].map(cell => cell.split(' ').map(Number) as [number, number])
)
const UNLETTERED: readonly (readonly [number, number])[] = [
  ...([[60, 265], [80, 190], [100, 140], [120, 115], [150, 92], [180, 82], [220, 68], [240, 53]] as const),
  ...([[320, 36], [360, 28], [400, 23], [500, 20], [600, 16], [800, 12.6], [1000, 10.3]] as const)
] // biome-ignore format: two rows of a table
const SCRATCHES: readonly (readonly [number, number, number])[] = [
  [80, 30, 60],
  [180, 12, 25],
  [320, 7, 14],
  [600, 4, 8],
  [2000, 1, 3]
]

export const rows: readonly Evidence[] = [
  table({
    model: 'coat/grain',
    what: 'average grain of every P grade from P12 to P2500',
    source: 'FEPA and ISO 6344-2 and -3, two public tables that agree',
    confidence: 'read',
    unit: 'µm',
    tolerance: 1e-9,
    why: 'a table is a table',
    cells: FEPA.size,
    worst: () => Math.max(...[...FEPA].map(([grit, um]) => Math.abs(gradeOf(grit).grainUm - um)))
  }),
  table({
    model: 'coat/grain',
    what: 'average grain of the American grades without a letter, 60 to 1000',
    source: 'a public table of CAMI grades',
    confidence: 'read',
    unit: 'µm',
    tolerance: 1e-9,
    why: 'a table is a table',
    cells: UNLETTERED.length,
    worst: () => Math.max(...UNLETTERED.map(([grit, um]) => Math.abs((gradeOf(grit).unletteredUm ?? 0) - um)))
  }),
  {
    model: 'coat/grain',
    what: 'P grade that an unlettered 320 is like',
    source: 'the two tables: 36 µm stands next to P400 (35.0), not to P320 (46.2)',
    confidence: 'derived',
    unit: 'P',
    published: 400,
    tolerance: 0,
    why: 'a grade',
    ours: () => likeUnlettered(320)?.grit ?? 0
  },
  table({
    model: 'coat/scratch',
    what: 'peak to valley that P80, P180, P320, P600 and P2000 leave in timber, both ends',
    source: 'common practice of sanding, as tabled',
    confidence: 'practice',
    unit: 'µm',
    tolerance: 0.6,
    why: 'whole micrometres in the table, half of one rounds',
    cells: 2 * SCRATCHES.length,
    worst: () =>
      Math.max(
        ...SCRATCHES.flatMap(([grit, low, high]) => {
          const [least, , most] = scratchUm(gradeOf(grit).grainUm, 'timber')
          return [Math.abs(least - low), Math.abs(most - high)]
        })
      )
  })
]
