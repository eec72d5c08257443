import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blanksFor, chanceOfGood } from '../../src/mould/spoil.ts'

/** The slow obvious twin: one blank after the other, the chance of every count so far. */
function byCounting(good: number, blanks: number, loss: number): number {
  let counts = [1]
  for (let i = 0; i < blanks; i++) {
    const next = new Array<number>(counts.length + 1).fill(0)
    counts.forEach((chance, n) => {
      next[n]! += chance * loss
      next[n + 1]! += chance * (1 - loss)
    })
    counts = next
  }
  return counts.slice(good).reduce((a, b) => a + b, 0)
}

const seeded = { seed: 20260112, numRuns: 200 }
const loss = fc.double({ min: 0, max: 1, noNaN: true })

describe('chance of enough good ones', () => {
  it('equals counting blank by blank', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        loss,
        (good, blanks, p) => {
          expect(chanceOfGood(good, blanks, p)).toBeCloseTo(byCounting(good, blanks, p), 10)
        }
      ),
      seeded
    )
  })

  it('rises with every blank, and falls with every good one wanted and with the loss', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: 0, max: 20 }),
        loss,
        (good, spare, p) => {
          const chance = chanceOfGood(good, good + spare, p)
          expect(chanceOfGood(good, good + spare + 1, p)).toBeGreaterThanOrEqual(chance - 1e-12)
          expect(chanceOfGood(good + 1, good + spare, p)).toBeLessThanOrEqual(chance + 1e-12)
          expect(chanceOfGood(good, good + spare, Math.min(1, p + 0.01))).toBeLessThanOrEqual(chance + 1e-12)
        }
      ),
      seeded
    )
  })

  it('keeps its footing where the terms underflow', () => {
    // The mean of 10 000 at a loss of a half is 5000; half the mass and half the middle term (about 0.008)
    // lie at and above.
    expect(chanceOfGood(5000, 10_000, 0.5)).toBeCloseTo(0.503989, 6)
    expect(chanceOfGood(4000, 10_000, 0.5)).toBeCloseTo(1, 12)
  })

  it('is certain or nothing at the ends', () => {
    expect(chanceOfGood(12, 11, 0.05)).toBe(0)
    expect(chanceOfGood(12, 12, 0)).toBe(1)
    expect(chanceOfGood(1, 50, 1)).toBe(0)
    expect(chanceOfGood(0, 5, 1)).toBe(1)
  })
})

describe('blanks for a certainty', () => {
  // Twelve boards at 5 % loss each.
  it('are 12, 13, 14 for 50, 80 and 95 % of twelve good boards', () => {
    expect(blanksFor(12, 0.05, 0.5).blanks).toBe(12)
    expect(blanksFor(12, 0.05, 0.8).blanks).toBe(13)
    expect(blanksFor(12, 0.05, 0.95).blanks).toBe(14)
  })

  it('are just enough: one fewer is not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80 }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (good, p, certainty) => {
          const { blanks, chance } = blanksFor(good, p, certainty)
          expect(chance).toBeGreaterThanOrEqual(certainty)
          if (blanks > good) expect(chanceOfGood(good, blanks - 1, p)).toBeLessThan(certainty)
        }
      ),
      seeded
    )
  })

  it('are refused when nothing comes out good', () => {
    expect(() => blanksFor(1, 1, 0.9)).toThrow(/10000 blanks at a loss of 1 each/)
    expect(() => blanksFor(1.5, 0.1, 0.9)).toThrow(/whole number/)
    expect(() => blanksFor(1, 0.1, 1)).toThrow(/certainty is 1/)
    expect(() => chanceOfGood(1, 2, Number.NaN)).toThrow(/NaN/)
  })
})
