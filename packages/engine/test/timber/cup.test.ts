import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  flatSawnCupMm,
  gradientCupMm,
  hollowMm,
  narrowFlatSawnCupMm,
  restrainedStressMPa,
  type TwoLayers,
  twoLayerCupMm,
  twoLayerCurvaturePerMm
} from '../../src/timber/cup.ts'

const seeded = { seed: 20260106, numRuns: 300 }
const walnut = { radialPerPct: 0.0019, tangentialPerPct: 0.00274 }

describe('hollow of an arc', () => {
  it('is within 1 % of the circle while it is under a twelfth of the width', () => {
    for (const angle of [0.01, 0.2, 0.4, 0.66]) {
      const width = 150
      const curvature = angle / width
      const arc = (1 - Math.cos(angle / 2)) / curvature
      expect(arc / width).toBeLessThan(1 / 12)
      expect(Math.abs(hollowMm(curvature, width) / arc - 1)).toBeLessThan(0.01)
    }
  })
})

describe('cup from a gradient', () => {
  it('grows with the square of the width and falls with the thickness', () => {
    const board = { coefficientPerPct: 0.00274, moistureDifferencePct: 3, widthMm: 150, thicknessMm: 20 }
    const one = gradientCupMm(board)
    expect(gradientCupMm({ ...board, widthMm: 300 })).toBeCloseTo(4 * one, 10)
    expect(gradientCupMm({ ...board, thicknessMm: 40 })).toBeCloseTo(one / 2, 10)
    expect(gradientCupMm({ ...board, moistureDifferencePct: -3 })).toBeCloseTo(-one, 10)
  })
})

/**
 * The slow obvious twin: move the points of the flat face in polar coordinates by finite strains, without
 * linearising, and read off how far the edge came relative to the middle.
 */
function bentFace(radial: number, tangential: number, pith: number, width: number): number {
  const radius = Math.hypot(pith, width / 2)
  const angle = Math.atan2(width / 2, pith)
  const moved = radius * (1 + radial) * Math.cos((angle * (1 + tangential)) / (1 + radial))
  return moved - pith * (1 + radial)
}

describe('cup of a flat-sawn board', () => {
  it('equals the face bent point by point without linearising, to first order in the strain', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 500, noNaN: true }),
        fc.double({ min: 20, max: 600, noNaN: true }),
        fc.double({ min: 0.001, max: 0.003, noNaN: true }),
        fc.double({ min: 0.003, max: 0.005, noNaN: true }),
        (pith, width, radialPerPct, tangentialPerPct) => {
          const change = -0.01
          const ours = flatSawnCupMm({
            radialPerPct,
            tangentialPerPct,
            moistureChangePct: change,
            widthMm: width,
            pithDistanceMm: pith
          })
          const theirs = bentFace(radialPerPct * change, tangentialPerPct * change, pith, width)
          // Strains of 5e-5: what is left is their square.
          expect(Math.abs(ours - theirs)).toBeLessThan(2e-4 * Math.abs(ours) + 1e-9)
        }
      ),
      seeded
    )
  })

  it('turns the bark side hollow on drying, the other way on wetting, and not at all without a difference', () => {
    const board = { ...walnut, moistureChangePct: -4, widthMm: 150, pithDistanceMm: 60 }
    expect(flatSawnCupMm(board)).toBeGreaterThan(0)
    expect(flatSawnCupMm({ ...board, moistureChangePct: 4 })).toBeCloseTo(-flatSawnCupMm(board), 12)
    expect(flatSawnCupMm({ ...board, tangentialPerPct: 0.0019 })).toBe(0)
  })

  it('comes to the narrow formula for a board far from the pith, and stays below it near by', () => {
    const board = { ...walnut, moistureChangePct: -4, widthMm: 150 }
    const ratio = (pith: number): number =>
      flatSawnCupMm({ ...board, pithDistanceMm: pith }) /
      narrowFlatSawnCupMm({ ...board, pithDistanceMm: pith })
    expect(ratio(5000)).toBeCloseTo(1, 3)
    expect(ratio(60)).toBeLessThan(0.73)
  })
})

/**
 * Independent: force and moment balance of the two layers about the mid-plane (2 × 2), thin-strip modulus.
 */
function balance(l: TwoLayers): number {
  const h = l.thickness1Mm + l.thickness2Mm
  const layers = [
    { e: l.modulus1MPa, from: -h / 2, to: -h / 2 + l.thickness1Mm, free: 0 },
    { e: l.modulus2MPa, from: -h / 2 + l.thickness1Mm, to: h / 2, free: l.strainMismatch }
  ]
  let a = 0
  let b = 0
  let d = 0
  let n = 0
  let m = 0
  for (const { e, from, to, free } of layers) {
    a += e * (to - from)
    b += (e * (to ** 2 - from ** 2)) / 2
    d += (e * (to ** 3 - from ** 3)) / 3
    n += e * free * (to - from)
    m += (e * free * (to ** 2 - from ** 2)) / 2
  }
  return (a * m - b * n) / (a * d - b * b)
}

describe('two bonded layers', () => {
  it('curve as force and moment balance of the strip asks, whatever their thickness and stiffness', () => {
    const positive = (max: number): fc.Arbitrary<number> => fc.double({ min: 0.1, max, noNaN: true })
    fc.assert(
      fc.property(positive(50), positive(12_000), positive(50), positive(12_000), (t1, e1, t2, e2) => {
        const layers = {
          thickness1Mm: t1,
          modulus1MPa: e1,
          thickness2Mm: t2,
          modulus2MPa: e2,
          strainMismatch: 0.002
        }
        const theirs = balance(layers)
        expect(Math.abs(twoLayerCurvaturePerMm(layers) / theirs - 1)).toBeLessThan(1e-6)
      }),
      seeded
    )
  })

  it('stay flat without a mismatch, and bend the other way when turned over', () => {
    const layers = {
      thickness1Mm: 20,
      modulus1MPa: 800,
      thickness2Mm: 3,
      modulus2MPa: 2800,
      strainMismatch: 0.004
    }
    expect(twoLayerCurvaturePerMm({ ...layers, strainMismatch: 0 })).toBe(0)
    const over = {
      thickness1Mm: 3,
      modulus1MPa: 2800,
      thickness2Mm: 20,
      modulus2MPa: 800,
      strainMismatch: -0.004
    }
    expect(twoLayerCurvaturePerMm(over)).toBeCloseTo(-twoLayerCurvaturePerMm(layers), 12)
    expect(twoLayerCupMm(layers, 300)).toBeCloseTo(hollowMm(twoLayerCurvaturePerMm(layers), 300), 12)
  })
})

describe('held boards', () => {
  it('bound the stress by modulus times strain, growth or shrinkage alike', () => {
    expect(restrainedStressMPa(700, 0.00274, 4)).toBeCloseTo(7.672, 10)
    expect(restrainedStressMPa(700, 0.00274, -4)).toBeCloseTo(7.672, 10)
  })
})

describe('at the door', () => {
  it('refuses what no board is', () => {
    expect(() => flatSawnCupMm({ ...walnut, moistureChangePct: 4, widthMm: 150, pithDistanceMm: 0 })).toThrow(
      /distance from the pith is 0 mm; allowed 1/
    )
    expect(() =>
      gradientCupMm({
        coefficientPerPct: 0.003,
        moistureDifferencePct: Number.NaN,
        widthMm: 1,
        thicknessMm: 1
      })
    ).toThrow(/NaN/)
    expect(() => restrainedStressMPa(0, 0.003, 4)).toThrow(/modulus/)
  })
})
