import { type ColumnControl, runColumn } from '../../src/resin/column.ts'
import { SHAPE_EXPONENT, type Shape } from '../../src/resin/column-grid.ts'
import { resinOf } from '../../src/resin/column-result.ts'
import { type Evidence, table } from '../evidence.ts'
import { once, worst } from './rows.ts'
import { altered, CLASSES } from './sets.ts'

/**
 * Conduction alone, in dimensionless form: half thickness or radius L = 100 mm, k = 1 W/(m·K),
 * ρ·cp = 1e6 J/(m³·K), from 100 °C into 0 °C, so θ = T/100, Fo = t/10 000 s, Bi = h/10.
 */
const L_MM = 100
const PER_FO_S = 1e4
const FINE: ColumnControl = { errorK: 0.002, errorConversion: 1, change: 1, longestS: 1e9 }
const still = altered(
  CLASSES.deep,
  { liquidKgM3: 1000, cpJkgK: 1000, kLiquidWmK: 1, kSlopeWmK: 0 },
  { heatJPerKg: 0 }
)

/** θ at the centre and at the surface. */
function theta(
  shape: Shape,
  biot: number,
  fourier: number,
  errorK = FINE.errorK
): { centre: number; surface: number } {
  const result = runColumn({
    shape,
    layers: [{ kind: 'resin', thicknessMm: L_MM, cells: 120, resin: still, startC: 100 }],
    floor: { kind: 'insulated' },
    top:
      biot === Number.POSITIVE_INFINITY
        ? { kind: 'fixed', tempC: 0 }
        : { kind: 'convective', hWm2K: biot * 10, ambientC: 0 },
    untilS: fourier * PER_FO_S,
    control: { ...FINE, errorK }
  })
  const { history, final } = resinOf(result)
  // the centre lies on a face: the parabola with level tangent through the two innermost cells
  const [a, b] = [final.temp.value[0]!, final.temp.value[1]!]
  return { centre: (a + (a - b) / 8) / 100, surface: history.outerC.at(-1)! / 100 }
}

const SERIES: readonly (readonly [biot: number, fourier: number, centre: number, surface: number | null])[] =
  [
    [1, 0.1, 0.99311, 0.72358],
    [1, 0.2, 0.95064, 0.64339],
    [1, 0.5, 0.77253, 0.50452],
    [1, 1, 0.53386, 0.34818],
    [1, 2, 0.25467, 0.16609],
    [0.1, 1, 0.92239, 0.87813],
    [10, 0.2, 0.82925, 0.12248],
    [10, 1, 0.16382, 0.02317],
    [Number.POSITIVE_INFINITY, 0.1, 0.94931, null],
    [Number.POSITIVE_INFINITY, 0.2, 0.77231, null],
    [Number.POSITIVE_INFINITY, 0.5, 0.37078, null]
  ]

/** One-term coefficients ζ1, C1 by Biot number. */
const ONE_TERM: readonly (readonly [biot: number, Readonly<Record<Shape, readonly [number, number]>>])[] = [
  [0.1, { slab: [0.3111, 1.0161], cylinder: [0.4417, 1.0246], sphere: [0.5423, 1.0298] }],
  [1, { slab: [0.8603, 1.1191], cylinder: [1.2558, 1.2071], sphere: [1.5708, 1.2732] }],
  [10, { slab: [1.4289, 1.262], cylinder: [2.1795, 1.5677], sphere: [2.8363, 1.9249] }],
  [100, { slab: [1.5552, 1.2731], cylinder: [2.3809, 1.6015], sphere: [3.1102, 1.999] }]
]

/** Late on, θ is down to 0.002: the step error must be small against that. */
const LATE_K = 2e-4

/** ζ1 and C1 as the solver shows them: from θ at the centre at two late times. */
function oneTerm(shape: Shape, biot: number): [zeta: number, c1: number] {
  // late enough that the second term is gone, early enough that θ is not
  const fo1 = shape === 'sphere' ? 0.5 : 0.8
  const fo2 = 1.5 * fo1
  const a = theta(shape, biot, fo1, LATE_K).centre
  const b = theta(shape, biot, fo2, LATE_K).centre
  const zeta2 = Math.log(a / b) / (fo2 - fo1)
  return [Math.sqrt(zeta2), a * Math.exp(zeta2 * fo1)]
}
const terms = once(() =>
  ONE_TERM.flatMap(([biot, shapes]) =>
    (Object.keys(SHAPE_EXPONENT) as Shape[]).map(shape => ({
      ours: oneTerm(shape, biot),
      published: shapes[shape]
    }))
  )
)

export const rows: readonly Evidence[] = [
  table({
    model: 'resin/column',
    what: 'conduction in a slab: θ at centre and surface for Bi 0.1, 1, 10, ∞ and Fo 0.1 to 2',
    source: 'full series, Carslaw & Jaeger / Incropera & DeWitt section 5.5, summed beforehand',
    confidence: 'computed',
    unit: '1',
    tolerance: 1e-4,
    why: '120 cells, step error 0.002 K of 100 K',
    cells: 19,
    worst: () =>
      worst(
        SERIES.flatMap(([biot, fourier, centre, surface]) => {
          const ours = theta('slab', biot, fourier)
          const middle = [ours.centre, centre] as const
          return surface === null ? [middle] : [middle, [ours.surface, surface] as const]
        })
      )
  }),
  table({
    model: 'resin/column',
    what: 'one-term root ζ1 of slab, cylinder, sphere for Bi 0.1, 1, 10, 100',
    source: 'Incropera & DeWitt table 5.1 (slab 0.3111 at Bi 0.1), roots computed beforehand',
    confidence: 'computed',
    unit: 'relative',
    tolerance: 5e-4,
    why: 'four printed digits, and the grid at Bi 100 where the film is a hundredth of the body',
    cells: 12,
    worst: () =>
      worst(
        terms().map(({ ours, published }) => [ours[0], published[0]]),
        true
      )
  }),
  table({
    model: 'resin/column',
    what: 'one-term coefficient C1 of slab, cylinder, sphere for Bi 0.1, 1, 10, 100',
    source: 'Incropera & DeWitt table 5.1 (slab 1.0161 at Bi 0.1), computed beforehand',
    confidence: 'computed',
    unit: 'relative',
    tolerance: 1e-3,
    why: 'extrapolated back to Fo = 0 from two late times, which magnifies the error of ζ1',
    cells: 12,
    worst: () =>
      worst(
        terms().map(({ ours, published }) => [ours[1], published[1]]),
        true
      )
  })
]
