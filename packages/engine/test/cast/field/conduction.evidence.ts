import type { FieldProblem } from '../../../src/cast/field/field-problem.ts'
import { runField } from '../../../src/cast/field/field-run.ts'
import { type Evidence, table } from '../../evidence.ts'
import { once, worst } from '../../resin/rows.ts'

/**
 * Conduction alone through the cast in three directions: k = 1 W/(m·K), ρ·cp = 1e6 J/(m³·K), from 100 °C into 0 °C,
 * so θ = T/100; with L = 100 mm, Fo = t/10 000 s and Bi = h/10.
 */
const L_M = 0.1
const PER_FO_S = 1e4
const still = { kind: 'inert', kWmK: 1, rhoCpJm3K: 1e6, startC: 100 } as const
const control = { errorK: 0.002, change: 1, longestS: 1e9 }
const CLOSED = { floor: 0, side: 0, up: 0, down: 0, sideways: 0 }

/** Slab on an insulated floor: one column of cells. Centre and surface by Bi and Fo. */
function slab(biot: number, fourier: number): { readonly centre: number; readonly surface: number } {
  const n = 80
  const up = biot === Number.POSITIVE_INFINITY ? 1e9 : biot * 10
  const result = runField({
    nx: 1,
    ny: 1,
    dxM: 0.01,
    dyM: 0.01,
    dzM: Array.from({ length: n }, () => L_M / n),
    cells: new Uint8Array(n).fill(1),
    materials: [still],
    films: { ...CLOSED, up },
    ambientC: () => 0,
    untilS: fourier * PER_FO_S,
    control
  })
  const [a, b] = [result.at(0, 0, 0).tempC, result.at(0, 0, 1).tempC]
  // the centre lies on a face; the surface is half a cell beyond the last centre
  const last = result.at(0, 0, n - 1).tempC
  return { centre: (a + (a - b) / 8) / 100, surface: last / (1 + (up * L_M) / n / 2) / 100 }
}

const SERIES: readonly (readonly [biot: number, fourier: number, centre: number, surface: number | null])[] =
  [
    [1, 0.1, 0.99311, 0.72358],
    [1, 0.5, 0.77253, 0.50452],
    [1, 1, 0.53386, 0.34818],
    [1, 2, 0.25467, 0.16609],
    [0.1, 1, 0.92239, 0.87813],
    [10, 0.2, 0.82925, 0.12248],
    [10, 1, 0.16382, 0.02317],
    [Number.POSITIVE_INFINITY, 0.2, 0.77231, null],
    [Number.POSITIVE_INFINITY, 0.5, 0.37078, null]
  ]

/** θ of a slab of half thickness `half` cooled on both faces, at x from its middle: the full series. */
function seriesTheta(half: number, h: number, x: number, t: number): number {
  const biot = h * half
  const fourier = t / (1e6 * half * half)
  let sum = 0
  for (let n = 0; n < 60; n++) {
    // root of ζ·tan ζ = Bi in (nπ, nπ + π/2), by bisection
    let low = n * Math.PI
    let high = low + Math.PI / 2
    for (let i = 0; i < 60; i++) {
      const z = (low + high) / 2
      if (z * Math.tan(z) < biot) low = z
      else high = z
    }
    const z = (low + high) / 2
    const c = (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z))
    sum += c * Math.exp(-z * z * fourier) * Math.cos((z * x) / half)
  }
  return sum
}

/** A brick of 120 by 80 by 50 mm cooled on all six faces, at every cell centre and two times. */
const brick = once(() => {
  const [nx, ny, nz] = [24, 16, 20]
  const [dxM, dyM, dzM] = [0.005, 0.005, 0.0025]
  const film = 20
  const films: FieldProblem['films'] = { floor: film, side: film, up: film, down: film, sideways: film }
  const pairs: (readonly [number, number])[] = []
  for (const untilS of [200, 900]) {
    const result = runField({
      nx,
      ny,
      dxM,
      dyM,
      dzM: Array.from({ length: nz }, () => dzM),
      cells: new Uint8Array(nx * ny * nz).fill(1),
      materials: [still],
      films,
      ambientC: () => 0,
      untilS,
      control
    })
    const along = (n: number, d: number): number[] =>
      Array.from({ length: n }, (_, i) => seriesTheta((n * d) / 2, film, (i + 0.5 - n / 2) * d, untilS))
    const [x, y, z] = [along(nx, dxM), along(ny, dyM), along(nz, dzM)]
    for (let iy = 0; iy < ny; iy++)
      for (let ix = 0; ix < nx; ix++)
        for (let iz = 0; iz < nz; iz++)
          pairs.push([result.at(ix, iy, iz).tempC / 100, x[ix]! * y[iy]! * z[iz]!])
  }
  return pairs
})

export const rows: readonly Evidence[] = [
  table({
    model: 'cast/field',
    what: 'conduction in a slab: θ at centre and surface for Bi 0.1, 1, 10, ∞ and Fo 0.1 to 2',
    source: 'full series, Carslaw & Jaeger / Incropera & DeWitt section 5.5, summed beforehand',
    confidence: 'computed',
    unit: '1',
    tolerance: 2e-4,
    why: '80 cells, step error 0.002 K of 100 K',
    cells: 16,
    worst: () =>
      worst(
        SERIES.flatMap(([biot, fourier, centre, surface]) => {
          const ours = slab(biot, fourier)
          const middle = [ours.centre, centre] as const
          return surface === null ? [middle] : [middle, [ours.surface, surface] as const]
        })
      )
  }),
  table({
    model: 'cast/field',
    what: 'a brick cooled on six faces: θ in every cell at two times',
    source: 'product of the full series of three slabs (Carslaw & Jaeger section 1.15), summed in the test',
    confidence: 'exact',
    unit: '1',
    tolerance: 1.5e-3,
    why: 'cells of 5 by 5 by 2.5 mm; corners are the worst',
    cells: 2 * 24 * 16 * 20,
    worst: () => worst(brick())
  })
]
