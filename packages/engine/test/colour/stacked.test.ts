import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  INTERNAL_REFLECTION,
  insideReflectance,
  SURFACE_REFLECTION
} from '../../src/catalogue/pigment-optics.ts'
import { reflectance } from '../../src/colour/hiding.ts'
import { laidOn, mixOptics, seenOutside, stronger } from '../../src/colour/stacked.ts'
import { passage, together } from './passage.ts'

const seeded = { seed: 20260115, numRuns: 300 }
const scatter = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 10, noNaN: true }))
const absorb = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 10, noNaN: true }))
const depth = fc.double({ min: 0.001, max: 5, noNaN: true })
const share = fc.double({ min: 0, max: 1, noNaN: true })

/**
 * The slow obvious twin: two fluxes through a free layer by Runge-Kutta of the fourth order, with light from above
 * and nothing from below; what comes up at the top and what goes out below.
 */
function fluxes(s: number, k: number, x: number, steps: number): { reflects: number; passes: number } {
  const h = x / steps
  let [down, up] = [1, 0]
  for (let n = 0; n < steps; n++) {
    const slope = (i: number, j: number) => [(k + s) * i - s * j, s * i - (k + s) * j] as const
    const a = slope(down, up)
    const b = slope(down + (h / 2) * a[0], up + (h / 2) * a[1])
    const c = slope(down + (h / 2) * b[0], up + (h / 2) * b[1])
    const d = slope(down + h * c[0], up + h * c[1])
    down += (h / 6) * (a[0] + 2 * b[0] + 2 * c[0] + d[0])
    up += (h / 6) * (a[1] + 2 * b[1] + 2 * c[1] + d[1])
  }
  // From the lower face, where the flux down is 1 and none comes up, to the upper one.
  return { reflects: up / down, passes: 1 / down }
}

describe('one layer', () => {
  it('is what the two fluxes give, integrated step by step', () => {
    fc.assert(
      fc.property(scatter, absorb, fc.double({ min: 0.01, max: 1, noNaN: true }), (s, k, x) => {
        const twin = fluxes(s, k, x, 2000)
        const ours = passage(s, k, x)
        expect(ours.reflects).toBeCloseTo(twin.reflects, 7)
        expect(ours.passes).toBeCloseTo(twin.passes, 7)
      }),
      seeded
    )
  })

  // Kubelka 1948: K = 0 gives SX/(1 + SX); Beer-Lambert: S = 0 gives exp(−KX).
  it('keeps its limits, and reaches them without a step', () => {
    for (const x of [1e-3, 0.2, 3, 50]) {
      expect(passage(2, 0, x).reflects).toBeCloseTo((2 * x) / (1 + 2 * x), 12)
      expect(passage(2, 1e-13, x).reflects).toBeCloseTo((2 * x) / (1 + 2 * x), 5)
      expect(passage(0, 0.3, x).passes).toBeCloseTo(Math.exp(-0.3 * x), 14)
      expect(passage(1e-12, 0.3, x).passes).toBeCloseTo(Math.exp(-0.3 * x), 10)
      expect(passage(0, 0, x)).toEqual({ reflects: 0, reflectsBehind: 0, passes: 1 })
    }
    expect(passage(3, 1, 0)).toEqual({ reflects: 0, reflectsBehind: 0, passes: 1 })
  })

  it('makes no light: what it turns back and lets through is 1 without absorption, less with it', () => {
    fc.assert(
      fc.property(scatter, absorb, depth, (s, k, x) => {
        const { reflects, passes } = passage(s, k, x)
        expect(reflects + passes).toBeLessThanOrEqual(1 + 1e-12)
        if (k === 0) expect(reflects + passes).toBeCloseTo(1, 12)
        else expect(reflects + passes).toBeLessThan(1)
        expect(Math.min(reflects, passes)).toBeGreaterThanOrEqual(0)
      }),
      seeded
    )
  })

  it('deep enough obeys the Kubelka-Munk function, and is what lies behind when there is none', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 10, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        share,
        (s, k, g) => {
          const r = laidOn(s, k, 1e5, g)
          expect((1 - r) ** 2 / (2 * r)).toBeCloseTo(k / s, 6)
          expect(laidOn(s, k, 0, g)).toBeCloseTo(g, 12)
        }
      ),
      seeded
    )
  })
})

describe('layers on one another', () => {
  const layer = fc.tuple(scatter, absorb, depth).map(([s, k, x]) => passage(s, k, x))

  it('let through the same from either side, and make no light', () => {
    fc.assert(
      fc.property(layer, layer, layer, (a, b, c) => {
        const up = together(a, together(b, c))
        const down = together(together(c, b), a)
        expect(up.passes).toBeCloseTo(down.passes, 12)
        expect(up.reflects).toBeCloseTo(down.reflectsBehind, 9)
        expect(up.reflects + up.passes).toBeLessThanOrEqual(1 + 1e-9)
        expect(up.reflectsBehind + up.passes).toBeLessThanOrEqual(1 + 1e-9)
      }),
      seeded
    )
  })

  it('of one stuff are that stuff as deep as both', () => {
    fc.assert(
      fc.property(scatter, absorb, depth, depth, (s, k, x, y) => {
        const both = together(passage(s, k, x), passage(s, k, y))
        const one = passage(s, k, x + y)
        expect(both.reflects).toBeCloseTo(one.reflects, 9)
        expect(both.passes).toBeCloseTo(one.passes, 9)
      }),
      seeded
    )
  })

  // Two ways to one answer: reflectance laid over reflectance, and Kubelka's sum with an opaque end.
  it('over a body are each laid on what the one before shows', () => {
    fc.assert(
      fc.property(layer, scatter, absorb, depth, share, (below, s, k, x, g) => {
        const body = { reflects: g, reflectsBehind: g, passes: 0 }
        const rest = together(below, body)
        expect(together(passage(s, k, x), rest).reflects).toBeCloseTo(laidOn(s, k, x, rest.reflects), 9)
      }),
      seeded
    )
  })

  it('agree band by band with the closed form over a body', () => {
    const optics = { scatterPerMm: [1, 2, 0], absorbPerMm: [0.1, 0, 0.4] } as const
    const behind = [0.2, 0.5, 0.8]
    const seen = behind.map((g, b) => laidOn(optics.scatterPerMm[b]!, optics.absorbPerMm[b]!, 0.7, g))
    const closed = behind.map((g, b) =>
      reflectance({ scatterPerMm: optics.scatterPerMm[b]!, absorbPerMm: optics.absorbPerMm[b]! }, 0.7, g)
    )
    seen.forEach((r, b) => {
      expect(r).toBeCloseTo(closed[b]!, 12)
    })
  })
})

describe('the front face', () => {
  // Saunderson 1942, worked by hand at R 0.5: 0.953479·0.4·0.5/(1 − 0.3) = 0.272422.
  it('takes from a reflectance inside what Saunderson gives, and back', () => {
    expect(seenOutside(0.5)).toBeCloseTo(0.272422, 5)
    expect(seenOutside(1)).toBeCloseTo(1 - SURFACE_REFLECTION, 12)
    expect(INTERNAL_REFLECTION).toBe(0.6)
    for (const r of [0, 0.1, 0.62, 0.93]) expect(seenOutside(insideReflectance(r))).toBeCloseTo(r, 12)
  })
})

describe('a mix', () => {
  // 1 % of S* 0.5 m²/g in 1100 kg/m³ scatters 5.5 /mm (reference table; see hiding.evidence.ts).
  it('adds its pigments by mass, and scales with their strength', () => {
    const white = { massFraction: 0.01, scatterM2PerG: [0.5, 0.5, 0.5], absorbM2PerG: [0, 0.1, 0.2] } as const
    const mix = mixOptics([white, white], 1100)
    expect(mix.scatterPerMm[0]).toBeCloseTo(11, 9)
    expect(mix.absorbPerMm[2]).toBeCloseTo(4.4, 9)
    expect(stronger(mix, 0.5).scatterPerMm[1]).toBeCloseTo(5.5, 9)
    expect(mixOptics([], 1100)).toEqual({ scatterPerMm: [0, 0, 0], absorbPerMm: [0, 0, 0] })
    expect(() => mixOptics([{ ...white, massFraction: 3 }], 1100)).toThrow(/mass fraction of a pigment is 3/)
  })
})
