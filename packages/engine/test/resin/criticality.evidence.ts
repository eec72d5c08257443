import { runColumn } from '../../src/resin/column.ts'
import type { Shape } from '../../src/resin/column-grid.ts'
import { resinOf } from '../../src/resin/column-result.ts'
import { rateTable } from '../../src/resin/cure-table.ts'
import { criticalDelta } from '../../src/resin/frank-kamenetskii.ts'
import { type Evidence, table } from '../evidence.ts'
import { once, worst } from './rows.ts'
import { altered, CLASSES } from './sets.ts'

/**
 * A body with the exponential source of the theory and no consumption: rate k0·exp((T − 20 °C)/10 K) of
 * order zero, so R·T0²/E is 10 K. L = 100 mm, k = 1 W/(m·K), ρ·cp = 1e6 J/(m³·K); the heat of reaction
 * carries δ. Conversion stays below 1e-3 by choice of k0, and the rate does not look at it.
 */
const SCALE_K = 10
const K0 = 1e-9
const zero = (): number => 0
const EXPONENTIAL = rateTable({
  k1: tempK => K0 * Math.exp((tempK - 293.15) / SCALE_K),
  k2: zero,
  f: () => 1,
  g: zero,
  p: zero,
  q: zero
})
const DIFFUSION_S = 1e4
/** Runs this long near the edge tell within 1 %: the passage slows as 1/√(δ/δc − 1). */
const UNTIL_S = 80 * DIFFUSION_S

/** Whether a body of Frank-Kamenetskii number `delta` runs away. */
export function runsAway(shape: Shape, delta: number): boolean {
  // δ = q·L²/(k·10 K) with q = ρ·H·k0
  const heatJPerKg = (delta * SCALE_K) / (0.1 ** 2 * 1000 * K0)
  const resin = altered(
    CLASSES.deep,
    { liquidKgM3: 1000, cpJkgK: 1000, kLiquidWmK: 1, kSlopeWmK: 0 },
    { heatJPerKg }
  )
  const result = runColumn({
    shape,
    layers: [{ kind: 'resin', thicknessMm: 100, cells: 40, resin, table: EXPONENTIAL, startC: 20 }],
    floor: { kind: 'insulated' },
    top: { kind: 'fixed', tempC: 20 },
    untilS: UNTIL_S,
    stopAboveC: 20 + 4 * SCALE_K,
    control: { errorK: 0.1, errorConversion: 1, change: 1, longestS: DIFFUSION_S }
  })
  return resinOf(result).peakC > 20 + 4 * SCALE_K
}

/** ψ = q·(V/A)/(h·10 K): a lumped body, one cell without resistance inside. */
export function lumpedRunsAway(psi: number): boolean {
  const [h, depthM] = [10, 0.1]
  const heatJPerKg = (psi * h * SCALE_K) / (depthM * 1000 * K0)
  const resin = altered(
    CLASSES.deep,
    { liquidKgM3: 1000, cpJkgK: 1000, kLiquidWmK: 1e6, kSlopeWmK: 0 },
    { heatJPerKg }
  )
  const result = runColumn({
    shape: 'slab',
    layers: [{ kind: 'resin', thicknessMm: 100, cells: 1, resin, table: EXPONENTIAL, startC: 20 }],
    floor: { kind: 'insulated' },
    top: { kind: 'convective', hWm2K: h, ambientC: 20 },
    untilS: UNTIL_S * 10,
    stopAboveC: 20 + 4 * SCALE_K,
    control: { errorK: 0.1, errorConversion: 1, change: 1, longestS: DIFFUSION_S }
  })
  return resinOf(result).peakC > 20 + 4 * SCALE_K
}

/** The edge by bisection between 0.9 and 1.1 of the expected value, to 0.1 %. */
function edge(expected: number, above: (x: number) => boolean): number {
  let low = 0.9 * expected
  let high = 1.1 * expected
  if (above(low) || !above(high)) return Number.NaN
  while (high - low > 1e-3 * expected) {
    const middle = (low + high) / 2
    if (above(middle)) high = middle
    else low = middle
  }
  return (low + high) / 2
}

const SOLVED: readonly (readonly [Shape, number])[] = [
  ['slab', 0.8785],
  ['cylinder', 2.0],
  ['sphere', 3.322]
]
const edges = SOLVED.map(([shape, delta]) => ({
  shape,
  delta,
  found: once(() => edge(delta, d => runsAway(shape, d)))
}))
const semenovEdge = once(() => edge(1 / Math.E, lumpedRunsAway))

/** Critical δ by Biot number. */
const FINITE: readonly (readonly [Shape, readonly (readonly [biot: number, delta: number])[]])[] = [
  [
    'slab',
    [
      [10, 0.729],
      [1, 0.2707],
      [0.1, 0.03559]
    ]
  ],
  [
    'cylinder',
    [
      [10, 1.654],
      [1, 0.5758],
      [0.1, 0.07176]
    ]
  ],
  [
    'sphere',
    [
      [10, 2.739],
      [1, 0.901],
      [0.1, 0.1082]
    ]
  ]
]

export const rows: readonly Evidence[] = [
  ...edges.map(
    ({ shape, delta, found }): Evidence => ({
      model: 'resin/column',
      what: `critical δ of a ${shape}, exponential source, no consumption, found on the solver`,
      source: 'Frank-Kamenetskii: 0.88, 2, 3.32 (read); 0.8785, 2.0000, 3.3220 computed',
      confidence: 'computed',
      unit: '1',
      published: delta,
      tolerance: 0.01 * delta,
      why: '40 cells, and the run ends before the slowest passage just above the edge does',
      ours: found
    })
  ),
  {
    model: 'resin/column',
    what: 'critical Semenov number of a lumped body, found on the solver',
    source: 'Semenov: 1/e',
    confidence: 'exact',
    unit: '1',
    published: 1 / Math.E,
    tolerance: 0.01 / Math.E,
    why: 'bisection to 0.1 % on a finite run',
    ours: semenovEdge
  },
  table({
    model: 'resin/frank-kamenetskii',
    what: 'critical δ of slab, cylinder, sphere, fixed wall',
    source: '0.8785, 2.0000, 3.3220, computed beforehand; 0.88, 2, 3.32 read',
    confidence: 'computed',
    unit: 'relative',
    tolerance: 1e-4,
    why: 'four printed digits',
    cells: 3,
    worst: () =>
      worst(
        SOLVED.map(([shape, delta]) => [criticalDelta(shape), delta]),
        true
      )
  }),
  table({
    model: 'resin/frank-kamenetskii',
    what: 'critical δ at Bi 10, 1, 0.1 for slab, cylinder, sphere',
    source: 'computed beforehand by an independent code',
    confidence: 'computed',
    unit: 'relative',
    tolerance: 3e-4,
    why: 'three or four printed digits',
    cells: 9,
    worst: () =>
      worst(
        FINITE.flatMap(([shape, list]) =>
          list.map(([biot, delta]) => [criticalDelta(shape, biot), delta] as const)
        ),
        true
      )
  })
]
