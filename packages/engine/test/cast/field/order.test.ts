import { describe, expect, it } from 'vitest'
import type { FieldMaterial, FieldProblem } from '../../../src/cast/field/field-problem.ts'
import { runField } from '../../../src/cast/field/field-run.ts'
import { rateTable } from '../../../src/resin/cure-table.ts'
import { altered, CLASSES } from '../../resin/sets.ts'

/**
 * Manufactured solution with films on all six faces of a block:
 *
 *   T = Ta(t) + g(t)·Φ(x)·Φ(y)·Φ(z)      Φ(s) = cos(ζ·(2s/L − 1)), ζ·tan ζ = h·L/2k
 *
 * so that every film is heeded exactly; the heat that this T needs is brought in from outside. At t = 0 it is
 * uniform. Grid and step are halved together. Method: Roache, J Fluids Eng 124 (2002) 4 (memory).
 */
const [K, RHO_CP, SIDE, BIOT] = [50, 1e6, 0.1, 0.5]
const FILM = (BIOT * K) / (SIDE / 2)
const ZETA = ((): number => {
  let z = 0.6
  for (let i = 0; i < 50; i++) z -= (z * Math.tan(z) - BIOT) / (Math.tan(z) + z / Math.cos(z) ** 2)
  return z
})()
const UNTIL_S = 24
const W = 0.2
const air = (t: number): number => 20 + 3 * Math.sin(0.15 * t)
const airSlope = (t: number): number => 0.45 * Math.cos(0.15 * t)
const g = (t: number): number => 6 * (1 - Math.cos(W * t))
const gSlope = (t: number): number => 6 * W * Math.sin(W * t)
/** Of ∇²Φ = −λ·Φ in all three directions. */
const LAMBDA = 3 * ((2 * ZETA) / SIDE) ** 2
const phi = (s: number): number => Math.cos(ZETA * ((2 * s) / SIDE - 1))

/** Cure at rate c·(T − T0)·(1 − α), whose tables are exact and whose α is a closed form of ∫(T − T0) dt. */
const [C, T0, RHO_H] = [1.2e-3, 0, 2e7]
const LINEAR = rateTable({
  k1: tempK => C * (tempK - 273.15 - T0),
  k2: () => 0,
  f: a => 1 - a,
  g: () => 0,
  p: () => 0,
  q: () => 0
})
const airSum = (t: number): number => (20 - T0) * t + (3 / 0.15) * (1 - Math.cos(0.15 * t))
const gSum = (t: number): number => 6 * (t - Math.sin(W * t) / W)
const alpha = (t: number, shape: number): number => 1 - Math.exp(-C * (airSum(t) + gSum(t) * shape))

interface Run {
  readonly tempK: number
  readonly conversion: number
  /** In the cell behind the middle. */
  readonly middleC: number
  readonly middleConversion: number
}

/** What a run of n cells a side leaves at the end, and how far (root mean square) it is off. */
function manufactured(n: number, dt: number, cures: boolean): Run {
  const shapes = new Float64Array(n ** 3)
  const h = SIDE / n
  for (let iy = 0; iy < n; iy++)
    for (let ix = 0; ix < n; ix++)
      for (let iz = 0; iz < n; iz++)
        shapes[(iy * n + ix) * n + iz] = phi((ix + 0.5) * h) * phi((iy + 0.5) * h) * phi((iz + 0.5) * h)
  const material: FieldMaterial = cures
    ? {
        kind: 'resin',
        resin: altered(
          CLASSES.deep,
          { liquidKgM3: 1000, cpJkgK: 1000, kLiquidWmK: K, kSlopeWmK: 0 },
          { heatJPerKg: RHO_H / 1000 }
        ),
        table: LINEAR,
        atS: 0,
        startC: 20
      }
    : { kind: 'inert', kWmK: K, rhoCpJm3K: RHO_CP, startC: 20 }
  // n is a multiple of four: the padded grid of the kernel is this one, after its first cell
  const plane = 4 * Math.ceil((n * n + 4) / 4)
  const problem: FieldProblem = {
    nx: n,
    ny: n,
    dxM: h,
    dyM: h,
    dzM: Array.from({ length: n }, () => h),
    cells: new Uint8Array(n ** 3).fill(1),
    materials: [material],
    films: { floor: FILM, side: FILM, up: FILM, down: 0, sideways: 0 },
    ambientC: air,
    untilS: UNTIL_S,
    control: { errorK: 1e6, change: 1e6, longestS: dt },
    source: (t, wm3) => {
      for (let i = 0; i < shapes.length; i++) {
        const shape = shapes[i]!
        const warms = RHO_CP * (airSlope(t) + gSlope(t) * shape)
        const cure = cures ? RHO_H * C * (air(t) + g(t) * shape - T0) * (1 - alpha(t, shape)) : 0
        wm3[plane + i] = warms + K * LAMBDA * g(t) * shape - cure
      }
    }
  }
  const result = runField(problem)
  expect(result.steps).toBe(UNTIL_S / dt)
  let temps = 0
  let conversions = 0
  for (let iy = 0; iy < n; iy++)
    for (let ix = 0; ix < n; ix++)
      for (let iz = 0; iz < n; iz++) {
        const shape = shapes[(iy * n + ix) * n + iz]!
        const cell = result.at(ix, iy, iz)
        temps += (cell.tempC - air(UNTIL_S) - g(UNTIL_S) * shape) ** 2
        if (cures) conversions += (cell.conversion - alpha(UNTIL_S, shape)) ** 2
      }
  const middle = result.at(n / 2, n / 2, n / 2)
  return {
    tempK: Math.sqrt(temps / n ** 3),
    conversion: Math.sqrt(conversions / n ** 3),
    middleC: middle.tempC,
    middleConversion: middle.conversion
  }
}

/** Observed order from three values, each of half the size of the one before. */
const observed = ([a, b, c]: readonly number[]): number => Math.log2((a! - b!) / (b! - c!))

const GRIDS = [
  [8, 0.25],
  [16, 0.125],
  [32, 0.0625]
] as const

describe('order of the scheme', () => {
  it('grid and step halved together: heat alone, 1.8 and more', () => {
    const off = GRIDS.map(([n, dt]) => manufactured(n, dt, false).tempK)
    expect(off[2], off.join(' ')).toBeLessThan(2e-3)
    expect(Math.log2(off[1]! / off[2]!), off.join(' ')).toBeGreaterThan(1.8)
  })

  it('grid and step halved together: heat and cure, 1.8 and more in both', () => {
    // it must have cured, or there is nothing to err in
    expect(alpha(UNTIL_S, 1)).toBeGreaterThan(0.4)
    const runs = GRIDS.map(([n, dt]) => manufactured(n, dt, true))
    for (const key of ['tempK', 'conversion'] as const) {
      const off = runs.map(r => r[key])
      expect(Math.log2(off[1]! / off[2]!), `${key}: ${off.join(' ')}`).toBeGreaterThan(1.8)
    }
  })

  it('step halved alone: 1.8 and more in both', () => {
    const runs = [0.125, 0.0625, 0.03125].map(dt => manufactured(8, dt, true))
    for (const key of ['middleC', 'middleConversion'] as const) {
      const values = runs.map(r => r[key])
      expect(observed(values), `${key}: ${values.join(' ')}`).toBeGreaterThan(1.8)
    }
  })
})
