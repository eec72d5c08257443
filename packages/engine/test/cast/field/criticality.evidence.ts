import type { FieldProblem } from '../../../src/cast/field/field-problem.ts'
import { fieldRun } from '../../../src/cast/field/field-run.ts'
import { rateTable } from '../../../src/resin/cure-table.ts'
import type { Evidence } from '../../evidence.ts'
import { once } from '../../resin/rows.ts'
import { altered, CLASSES } from '../../resin/sets.ts'

/**
 * Bodies with the exponential source of the theory and no consumption, R·T0²/E = 10 K, walls held at 20 °C:
 * k = 1 W/(m·K), ρ·cp = 1e6 J/(m³·K), the heat of reaction carries δ.
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
const WALL = 1e9

interface Body {
  readonly size: readonly [nx: number, ny: number, nz: number]
  readonly cellM: number
  readonly films: FieldProblem['films']
  readonly holds: (ix: number, iy: number, iz: number) => boolean
  /** Half thickness or radius. */
  readonly lengthM: number
  readonly untilS: number
}

/** Whether a body of Frank-Kamenetskii number `delta` runs away. */
function runsAway(body: Body, delta: number): boolean {
  const [nx, ny, nz] = body.size
  const cells = new Uint8Array(nx * ny * nz)
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < nx; ix++)
      for (let iz = 0; iz < nz; iz++) cells[(iy * nx + ix) * nz + iz] = body.holds(ix, iy, iz) ? 1 : 0
  const heatJPerKg = (delta * SCALE_K) / (body.lengthM ** 2 * 1000 * K0)
  const resin = altered(
    CLASSES.deep,
    { liquidKgM3: 1000, cpJkgK: 1000, kLiquidWmK: 1, kSlopeWmK: 0 },
    { heatJPerKg }
  )
  const run = fieldRun({
    nx,
    ny,
    dxM: body.cellM,
    dyM: body.cellM,
    dzM: Array.from({ length: nz }, () => body.cellM),
    cells,
    materials: [{ kind: 'resin', resin, table: EXPONENTIAL, atS: 0, startC: 20 }],
    films: body.films,
    ambientC: () => 20,
    untilS: body.untilS,
    control: { errorK: 0.1, change: 1, longestS: 1e4 }
  })
  const middle = [nx, ny, nz].map(n => Math.floor(n / 2)) as [number, number, number]
  const limit = 20 + 4 * SCALE_K
  while (!run.advance(40)) if (run.result().at(...middle).tempC > limit) return true
  return run.result().at(...middle).tempC > limit
}

/** The edge by bisection between 0.9 and 1.1 of the expected value, to 0.4 %. */
function edge(expected: number, body: Body): number {
  let low = 0.9 * expected
  let high = 1.1 * expected
  if (runsAway(body, low) || !runsAway(body, high)) return Number.NaN
  while (high - low > 4e-3 * expected) {
    const middle = (low + high) / 2
    if (runsAway(body, middle)) high = middle
    else low = middle
  }
  return (low + high) / 2
}

const CLOSED = { floor: 0, side: 0, up: 0, down: 0, sideways: 0 }
const SLAB: Body = {
  size: [1, 1, 40],
  cellM: 0.005,
  films: { ...CLOSED, floor: WALL, up: WALL },
  holds: () => true,
  lengthM: 0.1,
  untilS: 8e5
}

/** Cells whose centres lie within a ball (or a circle) of radius r around the middle. */
function round(n: number, r: number, ball: boolean): Body['holds'] {
  const off = (i: number): number => (i + 0.5 - n / 2) ** 2
  return (ix, iy, iz) => off(ix) + off(iy) + (ball ? off(iz) : 0) < r * r
}

const cylinder = ((): Body => {
  const n = 24
  const holds = round(n, n / 2, false)
  let area = 0
  for (let ix = 0; ix < n; ix++) for (let iy = 0; iy < n; iy++) if (holds(ix, iy, 0)) area++
  // the staircase stands for the circle of its own area
  const cellM = 0.1 / Math.sqrt(area / Math.PI)
  const films = { ...CLOSED, side: WALL }
  return { size: [n, n, 1], cellM, films, holds, lengthM: 0.1, untilS: 8e5 }
})()

const sphere = ((): Body => {
  const n = 16
  const holds = round(n, n / 2, true)
  let volume = 0
  for (let ix = 0; ix < n; ix++)
    for (let iy = 0; iy < n; iy++) for (let iz = 0; iz < n; iz++) if (holds(ix, iy, iz)) volume++
  const cellM = 0.1 / Math.cbrt((3 * volume) / (4 * Math.PI))
  const films = { floor: WALL, side: WALL, up: WALL, down: WALL, sideways: WALL }
  return { size: [n, n, n], cellM, films, holds, lengthM: 0.1, untilS: 8e5 }
})()

const row = (name: string, delta: number, body: Body, tolerance: number, why: string): Evidence => ({
  model: 'cast/field',
  what: `critical δ of a ${name}, exponential source, no consumption, found on the solver`,
  source: 'Frank-Kamenetskii: 0.88, 2, 3.32 (read); 0.8785, 2.0000, 3.3220 computed',
  confidence: 'computed',
  unit: '1',
  published: delta,
  tolerance: tolerance * delta,
  why,
  ours: once(() => edge(delta, body))
})

export const rows: readonly Evidence[] = [
  row('slab', 0.8785, SLAB, 0.01, '40 cells; the run ends before the slowest passage above the edge does'),
  row('cylinder', 2, cylinder, 0.02, 'a circle of 24 cells in staircases, of the same area'),
  row('sphere', 3.322, sphere, 0.02, 'a ball of 16 cells in staircases, of the same volume')
]
