import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  coreFraction,
  DIFFUSION_M2_PER_S,
  daysToFraction,
  diffusionAtTempM2PerS,
  meanFraction,
  settledCoreFraction,
  settledFraction
} from '../../src/timber/settle.ts'

const board = { thicknessMm: 20, openFaces: 2, diffusionM2PerS: 2e-10 } as const

/**
 * The slow obvious twin: explicit diffusion across the slab, surfaces held, from 0 to 1; mean and mid-plane
 * at `fo`.
 */
function explicit(cells: number, fo: number): { mean: number; core: number } {
  let u = new Float64Array(cells + 1)
  let next = new Float64Array(cells + 1)
  u[0] = u[cells] = next[0] = next[cells] = 1
  const steps = Math.ceil(fo * cells * cells * 4)
  const r = (fo * cells * cells) / steps
  for (let k = 0; k < steps; k++) {
    for (let i = 1; i < cells; i++) next[i] = u[i]! + r * (u[i - 1]! - 2 * u[i]! + u[i + 1]!)
    const swap = u
    u = next
    next = swap
  }
  let sum = 0
  for (let i = 0; i < cells; i++) sum += (u[i]! + u[i + 1]!) / 2
  return { mean: sum / cells, core: u[cells / 2]! }
}

/**
 * Crank's short-time series with the complementary error function by its own integral: independent of the
 * sines.
 */
function shortTimeMean(fo: number): number {
  const ierfc = (x: number): number => Math.exp(-x * x) / Math.sqrt(Math.PI) - x * erfc(x)
  let sum = 0
  for (let n = 1; n < 20; n++) sum += (n % 2 === 0 ? 1 : -1) * ierfc(n / (2 * Math.sqrt(fo)))
  return 2 * Math.sqrt(fo) * (2 / Math.sqrt(Math.PI) + 4 * sum)
}
function erfc(x: number): number {
  // Simpson over [x, x + 7]: the rest is below 1e-21.
  const n = 2000
  const h = 7 / n
  let s = Math.exp(-x * x) + Math.exp(-((x + 7) ** 2))
  for (let i = 1; i < n; i++) s += (i % 2 === 1 ? 4 : 2) * Math.exp(-((x + i * h) ** 2))
  return ((2 / Math.sqrt(Math.PI)) * s * h) / 3
}

describe('fraction of the change', () => {
  // Crank: 4·√(Fo/π) at first; exact series for long times. Both are the same function.
  it('by the sine series equals the series for short times where both converge', () => {
    for (const fo of [1e-4, 5e-4, 0.002, 0.01, 0.05, 0.1, 0.3]) {
      expect(meanFraction(fo), `Fo ${fo}`).toBeCloseTo(shortTimeMean(fo), 10)
    }
    expect(meanFraction(0.99e-4)).toBeCloseTo(4 * Math.sqrt(0.99e-4 / Math.PI), 12)
  })

  // Incropera-type series for the slab between held surfaces, mid-plane, half-thickness Fourier number 0.1,
  // 0.2, 0.5 and
  // Biot without end: 0.94931, 0.77231, 0.37078 still to go. On the full thickness those are Fo/4.
  it('at the mid-plane equals the tabulated conduction series, whose equation is the same', () => {
    expect(1 - coreFraction(0.1 / 4)).toBeCloseTo(0.94931, 4)
    expect(1 - coreFraction(0.2 / 4)).toBeCloseTo(0.77231, 4)
    expect(1 - coreFraction(0.5 / 4)).toBeCloseTo(0.37078, 4)
  })

  it('is approached by explicit diffusion at second order', () => {
    const fo = 0.08
    const off = [20, 40, 80].map(cells => Math.abs(explicit(cells, fo).mean - meanFraction(fo)))
    expect(off[0]! / off[1]!).toBeGreaterThan(3.3)
    expect(off[1]! / off[2]!).toBeGreaterThan(3.3)
    expect(off[2]!).toBeLessThan(1.2e-4)
    expect(Math.abs(explicit(80, fo).core - coreFraction(fo))).toBeLessThan(5e-4)
  })

  it('rises from 0 to 1, the core always behind the mean', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 3, noNaN: true }), fo => {
        const mean = meanFraction(fo)
        const core = coreFraction(fo)
        expect(core).toBeLessThanOrEqual(mean + 1e-12)
        expect(core).toBeGreaterThan(-1e-9)
        expect(mean).toBeLessThanOrEqual(1)
        expect(meanFraction(fo * 1.01)).toBeGreaterThanOrEqual(mean)
        expect(coreFraction(fo * 1.01)).toBeGreaterThanOrEqual(core - 1e-12)
      }),
      { seed: 20260105, numRuns: 300 }
    )
  })
})

describe('days', () => {
  it('is found back from the fraction it gives', () => {
    for (const fraction of [0.02, 0.2, 0.5, 0.9, 0.99]) {
      for (const openFaces of [1, 2] as const) {
        const slab = { ...board, openFaces }
        expect(settledFraction(slab, daysToFraction(slab, fraction).centralDays)).toBeCloseTo(fraction, 10)
        expect(settledCoreFraction(slab, daysToFraction(slab, fraction, 'core').centralDays)).toBeCloseTo(
          fraction,
          10
        )
      }
    }
  })

  it('goes with the square of the thickness, and four times as long with one face sealed', () => {
    const once = daysToFraction(board, 0.7).centralDays
    expect(daysToFraction({ ...board, thicknessMm: 60 }, 0.7).centralDays).toBeCloseTo(9 * once, 9)
    expect(daysToFraction({ ...board, openFaces: 1 }, 0.7).centralDays).toBeCloseTo(4 * once, 9)
  })

  it('carries the range of the coefficient as its band when none is given', () => {
    const days = daysToFraction({ thicknessMm: 20, openFaces: 2 }, 0.9)
    const { low, central, high } = DIFFUSION_M2_PER_S
    expect(days.highDays / days.centralDays).toBeCloseTo(central / low, 9)
    expect(days.centralDays / days.lowDays).toBeCloseTo(high / central, 9)
  })

  it('is nothing for no change', () => {
    expect(daysToFraction(board, 0).centralDays).toBe(0)
    expect(settledFraction(board, 0)).toBe(0)
  })

  // Siau, Skaar (memory): doubles per 15 to 20 K.
  it('shortens when it is warmer', () => {
    expect(diffusionAtTempM2PerS(2e-10, 20)).toBe(2e-10)
    expect(diffusionAtTempM2PerS(2e-10, 37.5)).toBeCloseTo(4e-10, 20)
  })
})

describe('at the door', () => {
  it('refuses slabs and times that cannot be', () => {
    expect(() => daysToFraction(board, 1)).toThrow(/fraction of the change is 1/)
    expect(() => settledFraction({ thicknessMm: 0, openFaces: 2 }, 1)).toThrow(/thickness is 0 mm/)
    expect(() => settledFraction({ ...board, diffusionM2PerS: 2 }, 1)).toThrow(/diffusion coefficient is 2/)
    expect(() => meanFraction(Number.NaN)).toThrow(/NaN/)
  })
})
