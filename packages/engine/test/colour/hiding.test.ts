import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  contrastRatio,
  deepReflectance,
  hidingDepth,
  hidingOpticalDepth,
  type Layer,
  layerOfTint,
  reflectance
} from '../../src/colour/hiding.ts'

const seeded = { seed: 20260113, numRuns: 200 }
const scatter = fc.double({ min: 0.01, max: 10, noNaN: true })
const absorb = fc.double({ min: 0, max: 10, noNaN: true })
const behind = fc.double({ min: 0, max: 1, noNaN: true })
const layers = fc.record({ scatterPerMm: scatter, absorbPerMm: absorb })

/**
 * The slow obvious twin: the two fluxes themselves, by fourth-order Runge-Kutta from the substrate up,
 * di/dx = (K + S)·i − S·j, dj/dx = S·i − (K + S)·j; the reflectance is j/i at the top.
 */
function twoFluxes(
  { scatterPerMm: s, absorbPerMm: k }: Layer,
  depth: number,
  back: number,
  steps: number
): number {
  const h = depth / steps
  const di = (i: number, j: number): number => (k + s) * i - s * j
  const dj = (i: number, j: number): number => s * i - (k + s) * j
  let i = 1
  let j = back
  for (let n = 0; n < steps; n++) {
    const i1 = di(i, j)
    const j1 = dj(i, j)
    const i2 = di(i + (h / 2) * i1, j + (h / 2) * j1)
    const j2 = dj(i + (h / 2) * i1, j + (h / 2) * j1)
    const i3 = di(i + (h / 2) * i2, j + (h / 2) * j2)
    const j3 = dj(i + (h / 2) * i2, j + (h / 2) * j2)
    const i4 = di(i + h * i3, j + h * j3)
    const j4 = dj(i + h * i3, j + h * j3)
    i += (h / 6) * (i1 + 2 * i2 + 2 * i3 + i4)
    j += (h / 6) * (j1 + 2 * j2 + 2 * j3 + j4)
  }
  return j / i
}

describe('reflectance of a layer', () => {
  it('is what the two fluxes give, integrated step by step', () => {
    fc.assert(
      fc.property(layers, fc.double({ min: 0.01, max: 1, noNaN: true }), behind, (layer, depth, back) => {
        expect(reflectance(layer, depth, back)).toBeCloseTo(twoFluxes(layer, depth, back, 2000), 7)
      }),
      seeded
    )
  })

  it('is approached by them at fourth order', () => {
    const layer = { scatterPerMm: 2, absorbPerMm: 0.3 }
    const exact = reflectance(layer, 1.5, 0.8)
    const off = [10, 20, 40].map(n => Math.abs(twoFluxes(layer, 1.5, 0.8, n) - exact))
    expect(off[0]! / off[1]!).toBeGreaterThan(13)
    expect(off[1]! / off[2]!).toBeGreaterThan(13)
  })

  // Kubelka: K = 0 over black gives SX/(1 + SX).
  it('without absorption over black is SX/(1 + SX), and the approach to it has no step', () => {
    for (const x of [1e-3, 0.1, 1, 30, 1e4]) {
      expect(reflectance({ scatterPerMm: 1, absorbPerMm: 0 }, x, 0)).toBeCloseTo(x / (1 + x), 12)
      expect(reflectance({ scatterPerMm: 1, absorbPerMm: 1e-14 }, x, 0)).toBeCloseTo(x / (1 + x), 6)
    }
  })

  it('without scattering is what lies behind, dimmed there and back', () => {
    expect(reflectance({ scatterPerMm: 0, absorbPerMm: 2 }, 0.5, 0.8)).toBeCloseTo(0.8 * Math.exp(-2), 14)
    expect(reflectance({ scatterPerMm: 1e-12, absorbPerMm: 2 }, 0.5, 0.8)).toBeCloseTo(0.8 * Math.exp(-2), 9)
  })

  // Kubelka-Munk function: K/S = (1 − R)²/(2R).
  it('without end obeys the Kubelka-Munk function, whatever lies behind', () => {
    fc.assert(
      fc.property(layers, behind, (layer, back) => {
        const r = deepReflectance(layer)
        expect((1 - r) ** 2 / (2 * r)).toBeCloseTo(layer.absorbPerMm / layer.scatterPerMm, 6)
        if (layer.absorbPerMm > 0.01) expect(reflectance(layer, 1e5, back)).toBeCloseTo(r, 9)
        expect(reflectance(layer, 3, r)).toBeCloseTo(r, 9)
      }),
      seeded
    )
  })

  it('of two layers is that of the upper over what the lower shows', () => {
    fc.assert(
      fc.property(layers, behind, (layer, back) => {
        const lower = reflectance(layer, 0.7, back)
        expect(reflectance(layer, 0.4, lower)).toBeCloseTo(reflectance(layer, 1.1, back), 9)
      }),
      seeded
    )
  })

  it('is what lies behind when there is no depth', () => {
    expect(reflectance({ scatterPerMm: 3, absorbPerMm: 1 }, 0, 0.37)).toBe(0.37)
  })
})

describe('contrast ratio', () => {
  it('rises with depth and with pigment, from nothing towards one', () => {
    fc.assert(
      fc.property(layers, fc.double({ min: 0.01, max: 20, noNaN: true }), (layer, depth) => {
        const ratio = contrastRatio(layer, depth)
        expect(ratio).toBeGreaterThan(0)
        expect(ratio).toBeLessThanOrEqual(1 + 1e-12)
        expect(contrastRatio(layer, depth * 1.1)).toBeGreaterThanOrEqual(ratio - 1e-12)
        const more = { ...layer, absorbPerMm: layer.absorbPerMm * 1.1 }
        const most = { ...more, scatterPerMm: layer.scatterPerMm * 1.1 }
        expect(contrastRatio(most, depth)).toBeGreaterThanOrEqual(ratio - 1e-12)
      }),
      seeded
    )
    expect(contrastRatio({ scatterPerMm: 1, absorbPerMm: 0.1 }, 0)).toBe(0)
  })
})

describe('hiding depth', () => {
  it('is the depth at which the contrast ratio is 0.98', () => {
    fc.assert(
      fc.property(layers, layer => {
        expect(contrastRatio(layer, hidingDepth(layer).centralMm)).toBeCloseTo(0.98, 9)
      }),
      seeded
    )
  })

  it('scales inversely with the pigment at fixed K/S: a half, a third, a tenth', () => {
    fc.assert(
      fc.property(layers, layer => {
        const whole = hidingDepth(layer).centralMm
        for (const part of [2, 3, 10]) {
          const less = { scatterPerMm: layer.scatterPerMm / part, absorbPerMm: layer.absorbPerMm / part }
          expect(hidingDepth(less).centralMm / whole).toBeCloseTo(part, 8)
        }
      }),
      seeded
    )
  })

  it('shrinks with more scattering and with more absorption, so that the ends of its band are the worst corners', () => {
    fc.assert(
      fc.property(
        fc.record({ scatterPerMm: fc.double({ min: 0.05, max: 10, noNaN: true }), absorbPerMm: absorb }),
        layer => {
          const depth = hidingDepth(layer)
          for (const s of [0.5, 1, 2]) {
            for (const k of [0.5, 1, 2]) {
              const other = { scatterPerMm: layer.scatterPerMm * s, absorbPerMm: layer.absorbPerMm * k }
              const mm = hidingDepth(other).centralMm
              expect(mm).toBeLessThanOrEqual(depth.highMm * (1 + 1e-9))
              expect(mm).toBeGreaterThanOrEqual(depth.lowMm * (1 - 1e-9))
            }
          }
        }
      ),
      seeded
    )
  })

  it('of what does not scatter has no meaning by contrast ratio', () => {
    const black = layerOfTint([{ massFraction: 0.0005, scatterM2PerG: 0, absorbM2PerG: 5 }], 1100)
    expect(() => hidingDepth(black)).toThrow(/does not scatter/)
  })
})

describe('a cover', () => {
  // 1 % of white, hides at 2.1 mm: 13.0 mm of opaque layer over a channel 10.6 deep from the back leave 2.4,
  // but
  // 1.4 once the back is flattened by 1.0.
  const white = layerOfTint([{ massFraction: 0.01, scatterM2PerG: 0.5, absorbM2PerG: 0 }], 1100)

  it('of 1.4 mm falls short of the 0.98 that 2.4 mm reach', () => {
    expect(contrastRatio(white, 13.0 - 10.6)).toBeGreaterThan(0.98)
    expect(contrastRatio(white, 13.0 - 1.0 - 10.6)).toBeLessThan(0.98)
  })
})

describe('at the door', () => {
  it('refuses what no layer is, and layers that hide nothing', () => {
    expect(() => reflectance({ scatterPerMm: -1, absorbPerMm: 0 }, 1, 0)).toThrow(/scattering is -1 1\/mm/)
    expect(() => reflectance({ scatterPerMm: 1, absorbPerMm: 0 }, 1, 80)).toThrow(/reflectance behind is 80/)
    expect(() => hidingDepth({ scatterPerMm: 1, absorbPerMm: Number.NaN })).toThrow(/NaN/)
    expect(() => hidingOpticalDepth(1e6)).toThrow(/K\/S is 1000000/)
    expect(() => layerOfTint([{ massFraction: 5, scatterM2PerG: 0.5, absorbM2PerG: 0 }], 1100)).toThrow(
      /mass fraction of a pigment is 5/
    )
  })
})
