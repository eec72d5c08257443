import { describe, expect, it } from 'vitest'
import { charHollowMm } from '../../src/timber/char-hollow.ts'
import { flatnessLoss } from '../../src/timber/rough.ts'
import { screwHoldsN } from '../../src/timber/screw.ts'

/** Span of a surface over the unit square, by a grid: what a flat board inside the crooked one loses. */
function span(z: (x: number, y: number) => number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i <= 200; i++)
    for (let j = 0; j <= 200; j++) {
      const at = z(i / 100 - 1, j / 100 - 1)
      low = Math.min(low, at)
      high = Math.max(high, at)
    }
  return high - low
}

describe('planing a crooked board flat', () => {
  it('takes a cup and a bow whole, and half of a twist, by brute force', () => {
    expect(flatnessLoss({ cupMm: 2, bowMm: 0, twistMm: 0 }).allMm).toBeCloseTo(
      span((_, y) => 2 * y * y),
      9
    )
    expect(flatnessLoss({ cupMm: 0, bowMm: 3, twistMm: 0 }).allMm).toBeCloseTo(
      span(x => 3 * x * x),
      9
    )
    // Three corners on the table: the plane through them leaves the fourth 4·c up, where c is z at a corner.
    const c = 1.5
    const z = (x: number, y: number) => c * x * y
    const plane = (x: number, y: number) =>
      z(-1, -1) + ((z(1, -1) - z(-1, -1)) * (x + 1)) / 2 + ((z(-1, 1) - z(-1, -1)) * (y + 1)) / 2
    const twistMm = z(1, 1) - plane(1, 1)
    expect(twistMm).toBeCloseTo(4 * c, 9)
    expect(flatnessLoss({ cupMm: 0, bowMm: 0, twistMm }).allMm).toBeCloseTo(span(z), 9)
  })

  it('is never less than what the three together span', () => {
    const together = (cup: number, bow: number, twist: number) =>
      span((x, y) => cup * y * y + bow * x * x + (twist / 4) * x * y)
    for (const [cup, bow, twist] of [
      [1, 1, 1],
      [2, 0.5, 4],
      [0, 3, 6]
    ] as const)
      expect(together(cup, bow, twist)).toBeLessThanOrEqual(
        flatnessLoss({ cupMm: cup, bowMm: bow, twistMm: twist }).allMm + 1e-9
      )
    expect(() => flatnessLoss({ cupMm: -1, bowMm: 0, twistMm: 0 })).toThrow(/cup is -1 mm/)
  })
})

describe('a charred face', () => {
  const ash = { charredMm: 0.4, thicknessMm: 40, coefficientPerPct: 0.0027, moisturePct: 9, widthMm: 200 }

  // Stoney: κ = 6·ε·t1/t2² for a layer much thinner than what it lies on.
  it('is hollow as the formula for thin layers has it', () => {
    const stoney = (6 * 0.0027 * 9 * 0.4) / (40 - 0.8) ** 2
    const ours = charHollowMm(ash) / (200 ** 2 / 8)
    expect(Math.abs(ours / stoney - 1)).toBeLessThan(0.04)
  })

  it('is flat without char, and without water to lose', () => {
    expect(charHollowMm({ ...ash, charredMm: 0 })).toBe(0)
    expect(charHollowMm({ ...ash, moisturePct: 0 })).toBe(0)
    expect(charHollowMm({ ...ash, charredMm: 2 })).toBeGreaterThan(charHollowMm(ash))
  })
})

describe('screws', () => {
  it('hold with the square of the gravity, and with diameter and length', () => {
    const one = screwHoldsN(0.5, 4, 12)
    expect(screwHoldsN(1, 4, 12) / one).toBeCloseTo(4, 9)
    expect(screwHoldsN(0.5, 5, 24) / one).toBeCloseTo(2.5, 9)
    expect(() => screwHoldsN(0.5, 0, 12)).toThrow(/diameter of the screw is 0 mm/)
  })
})
