import { find } from '../../src/catalogue/find.ts'
import { dragCoefficient, HINDERED, settlingMmS } from '../../src/resin/settling.ts'
import { type Evidence, table } from '../evidence.ts'
import { worst } from './rows.ts'

const model = 'resin/settling'

/** mm/s in 0.5 Pa·s, liquid of 1100 kg/m³, of 0.05, 1 and 5 mm. */
const SINK: readonly (readonly [kgM3: number, mmS: readonly [number, number, number]])[] = [
  [2650, [0.0042, 1.68, 39]],
  [2500, [0.0038, 1.52, 35]],
  [2700, [0.0044, 1.74, 40]]
]

/** Standard drag curve of a sphere. */
const DRAG: readonly (readonly [re: number, cd: number])[] = [
  [0.1, 244],
  [1, 27.2],
  [10, 4.15],
  [100, 1.09]
]

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'quartz, glass and shell of 0.05, 1 and 5 mm in 0.5 Pa·s',
    source: 'drag of Schiller and Naumann, worked out beforehand by another code',
    confidence: 'computed',
    unit: '1',
    tolerance: 0.03,
    why: 'relative; printed to two figures, 0.05 mm to 0.0001 mm/s',
    cells: 9,
    worst: () =>
      worst(
        SINK.flatMap(([densityKgM3, speeds]) =>
          [0.05, 1, 5].map(
            (diameterMm, i) =>
              [settlingMmS({ diameterMm, densityKgM3, liquidKgM3: 1100 }, 0.5), speeds[i]!] as const
          )
        ),
        true
      )
  }),
  table({
    model,
    what: 'drag of a sphere at Re 0.1, 1, 10, 100',
    source: 'standard drag curve (Clift, Grace & Weber, Bubbles, Drops and Particles, 1978)',
    confidence: 'memory',
    unit: '1',
    tolerance: 0.05,
    why: 'relative; Schiller and Naumann lie within 5 % of the curve up to Re 800',
    cells: 4,
    worst: () =>
      worst(
        DRAG.map(([re, cd]) => [dragCoefficient(re), cd]),
        true
      )
  }),
  {
    model,
    what: 'exponent of hindered settling, from speeds at φ 0.1 and 0.4',
    source:
      'review of data for grains not moved by heat, arXiv 1710.09314: 4.48 ± 0.04; Richardson & Zaki 4.65',
    confidence: 'read',
    unit: '1',
    published: 4.48,
    tolerance: 0.04,
    why: 'the review’s own band',
    ours: () => {
      const at = (solidShare: number) =>
        settlingMmS({ diameterMm: 1, densityKgM3: 2650, liquidKgM3: 1100, solidShare }, 5)
      return Math.log(at(0.4) / at(0.1)) / Math.log(0.6 / 0.9)
    }
  },
  {
    model,
    what: 'the same exponent against Richardson and Zaki',
    source: 'Richardson & Zaki 1954, Re under 0.2',
    confidence: 'memory',
    unit: '1',
    published: 4.65,
    tolerance: 0.2,
    why: 'the later review is taken; speeds differ by 9 % at φ 0.4',
    ours: () => HINDERED
  },
  table({
    model: 'catalogue/stone',
    what: 'random packing: spheres 0.55-0.64, rounded gravel 0.58-0.62, crushed 0.50-0.58, graded 0.65-0.75, sand 0.58-0.65, flat shell 0.30-0.45, mica 0.15-0.30',
    source: 'random loose and close packing of equal spheres; handbook ranges of the others',
    confidence: 'memory',
    unit: '1',
    tolerance: 1e-9,
    why: 'as recalled',
    cells: 14,
    worst: () =>
      worst(
        (
          [
            ['glass-beads', 0.55, 0.64],
            ['river-gravel', 0.58, 0.62],
            ['crushed-stone', 0.5, 0.58],
            ['crushed-stone-graded', 0.65, 0.75],
            ['sand', 0.58, 0.65],
            ['shell-pieces', 0.3, 0.45],
            ['mica-flake', 0.15, 0.3]
          ] as const
        ).flatMap(([id, low, high]) => {
          const { packing } = find('stone', id)!
          return [
            [packing[0], low],
            [packing[1], high]
          ] as const
        })
      )
  })
]
