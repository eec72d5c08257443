import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanedBoard } from '../../src/timber/planing.ts'
import { planedGradientPctPerMm, planedHollowMm } from '../../src/timber/planing.ts'

const board: PlanedBoard = { thicknessMm: 50, belowMm: 2, aboveMm: 8, corePct: 14, surfacePct: 9 }

/** The slow obvious twin: the straight line through the profile by least squares over many layers. */
function slope({ thicknessMm, belowMm, aboveMm, corePct, surfacePct }: PlanedBoard): number {
  const n = 20_000
  const left = thicknessMm - belowMm - aboveMm
  let [xy, xx] = [0, 0]
  for (let i = 0; i < n; i++) {
    const x = ((i + 0.5) / n - 0.5) * left
    const z = belowMm + left / 2 + x
    xy += x * (surfacePct + (corePct - surfacePct) * Math.sin((Math.PI * z) / thicknessMm))
    xx += x * x
  }
  return xy / xx
}

describe('what planing leaves of a gradient', () => {
  it('is the straight line through the profile, by least squares over thin layers', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 4, max: 25, noNaN: true }),
        (belowMm, aboveMm, corePct) => {
          const b = { ...board, belowMm, aboveMm, corePct }
          expect(planedGradientPctPerMm(b)).toBeCloseTo(slope(b), 6)
        }
      ),
      { seed: 20260107, numRuns: 60 }
    )
  })

  it('is none when both faces lose the same, and turns with the face', () => {
    expect(planedGradientPctPerMm({ ...board, belowMm: 5, aboveMm: 5 })).toBeCloseTo(0, 12)
    const turned = planedGradientPctPerMm({ ...board, belowMm: 8, aboveMm: 2 })
    expect(turned).toBeCloseTo(-planedGradientPctPerMm(board), 12)
  })

  // A wet core lies nearer to the face that lost more: that face dries more, shrinks more and goes concave.
  it('makes the face concave that lost more, when the core is wetter', () => {
    expect(planedHollowMm(board, 0.0027, 300)).toBeGreaterThan(0)
    expect(planedHollowMm({ ...board, corePct: 5 }, 0.0027, 300)).toBeLessThan(0)
    expect(planedHollowMm({ ...board, corePct: 9 }, 0.0027, 300)).toBeCloseTo(0, 12)
  })

  /** A stack of strips, each with its own free strain, bent until its moment is nothing: elastic, no formula. */
  it('bends a stack of strips by as much', () => {
    const n = 400
    const left = 40
    const c = 0.0027
    const strips = Array.from({ length: n }, (_, i) => {
      const x = ((i + 0.5) / n - 0.5) * left
      // Free strain of a strip that goes from its moisture to 9 %.
      return { x, free: -c * 5 * Math.sin((Math.PI * (2 + left / 2 + x)) / 50) }
    })
    // e(x) = a + k·x balances force and moment of E·(e − free).
    const a = strips.reduce((s, t) => s + t.free, 0) / n
    const k = strips.reduce((s, t) => s + (t.free - a) * t.x, 0) / strips.reduce((s, t) => s + t.x * t.x, 0)
    expect(planedHollowMm(board, c, 300)).toBeCloseTo((-k * 300 ** 2) / 8, 3)
  })

  it('refuses more off than there is', () => {
    expect(() => planedGradientPctPerMm({ ...board, belowMm: 45, aboveMm: 8 })).toThrow(
      /what is left is -3 mm/
    )
    expect(() => planedGradientPctPerMm({ ...board, aboveMm: 60 })).toThrow(/taken off the top is 60 mm/)
  })
})
