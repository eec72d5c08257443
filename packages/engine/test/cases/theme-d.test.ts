import { describe, expect, it } from 'vitest'
import type { Given } from '../findings/harness.ts'
import { mended } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// How much resin, running out.

const SQUARE_FOOT_MM2 = 304.8 ** 2
const GALLON_ML = (231 * 25.4 ** 3) / 1000
const POUND_G = 453.59237

describe('theme D: how much resin', () => {
  // Given: a cavity never measured; the first batch filled about a third, the jug ran dry in the second.
  // Assumed: 1.5 l, batches in a vessel of 1 l, 900 g in the jugs.
  const cavity = (pack: string): Given => ({
    piece: {
      castwright: 1,
      name: 'an end cavity',
      outline: { rectangle: [250, 200] },
      mould: { margin: 0 },
      pours: [{ id: 'cavity', resin: 'deep', depth: 30, batches: 3, vessel: '1 l', pack }]
    }
  })

  it('C31 stock that covers one batch and a bit of three: do not start', () => {
    const found = theOne(cavity('900 g'), 'resin-short')
    expect(found.severity).toBe('stop')
    const { mixedG } = worked(cavity('900 g')).batches[0]!
    expect(found.limit).toBeCloseTo(mixedG, 1)
    expect((900 / mixedG) * 3).toBeGreaterThan(1)
    expect((900 / mixedG) * 3).toBeLessThan(2)
    expect(found.says).toMatch(
      /do not start: cavity takes \d+ g of resin in 3 batches.* enough for 1\.\d of them/
    )
    expect(asked(mended(cavity('900 g'), found.fix!), 'resin-short')).toEqual([])
    expect(asked(cavity('2 kg'), 'resin-short')).toEqual([])
  })

  it('C31 the shelf of the shop is counted before the first mix', () => {
    const shelf = (stock: string): Given => ({
      piece: {
        castwright: 1,
        name: 'an end cavity',
        outline: { rectangle: [250, 200] },
        mould: { margin: 0 },
        pours: [{ id: 'cavity', resin: 'own', depth: 30 }]
      },
      shop: { castwright: 1, resins: [{ id: 'own', like: 'deep', stock }] }
    })
    expect(theOne(shelf('900 g'), 'resin-short').severity).toBe('stop')
    expect(asked(shelf('2 kg'), 'resin-short')).toEqual([])
  })

  // Given: a gap of about 1/16 in at one edge, three batches, almost 18 fl oz, none came out.
  // Assumed: the gap 12 mm deep along 600 mm: 12 ml.
  const gap = (...ounces: readonly number[]): Given => ({
    piece: {
      castwright: 1,
      name: 'a gap',
      outline: { rectangle: [600, '1/16 in'] },
      mould: { margin: 0 },
      pours: [{ id: 'gap', resin: 'deep', depth: 12 }]
    },
    readings: ounces.map((oz, i) => ({
      id: `batch-000${i}`,
      kind: 'poured',
      pour: 'gap',
      at: `2026-03-02T0${i + 1}:00+01:00`,
      mass: (oz * GALLON_ML * 1.1) / 128
    }))
  })

  it('C34 a running total over the estimate by half: stop and look for a leak or a hollow', () => {
    const { liquidMl } = worked(gap()).stack.pours[0]!
    const found = theOne(gap(6, 6, 5.9), 'poured-more')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/in 3 batches/)
    expect(found.says).toMatch(/Stop and look for a leak or a hollow/)
    // 17.9 fl oz are 0.53 l.
    expect((17.9 * GALLON_ML) / 128 / 1000).toBeCloseTo(0.53, 2)
    expect(found.value).toBeCloseTo(((17.9 * GALLON_ML) / 128 / liquidMl - 1) * 100, 0)
    // Nothing is said while it is near the estimate.
    const near = (liquidMl / GALLON_ML) * 128
    expect(asked(gap(near / 2, near / 2), 'poured-more')).toEqual([])
    expect(theOne(gap(near * 0.6, near * 0.6), 'poured-more').severity).toBe('caution')
    expect(theOne(gap(near * 0.8, near * 0.8), 'poured-more').severity).toBe('stop')
  })

  // Given: 231 in³ a US gallon; no loss, no shrinkage.
  const gallonOver = (squareFeet: number): Given => {
    const side = Math.sqrt(squareFeet * SQUARE_FOOT_MM2)
    return {
      piece: {
        castwright: 1,
        name: 'a top',
        outline: { rectangle: [side, side] },
        mould: { margin: 0 },
        pours: [{ id: 'top', resin: 'deep', mass: GALLON_ML * 1.1, shrinkage: 0 }]
      }
    }
  }

  it('C35 a gallon covers 6.42, 3.21 and 1.60 square feet at 1/4, 1/2 and 1 in', () => {
    for (const [squareFeet, inches] of [
      [6.42, 1 / 4],
      [3.21, 1 / 2],
      [1.6, 1]
    ] as const) {
      const { liquidDepth, liquidMl } = worked(gallonOver(squareFeet)).stack.pours[0]!
      expect(liquidMl).toBeCloseTo(GALLON_ML, 1)
      expect(Math.abs(liquidDepth / (inches * 25.4) - 1)).toBeLessThan(0.01)
    }
  })

  it('C35 a litre covers a square metre 1 mm deep, and 1/8 in weighs 0.72 lb a square foot', () => {
    const over = (depth: number | string): Given => ({
      piece: {
        castwright: 1,
        name: 'a top',
        outline: { rectangle: [1000, 1000] },
        mould: { margin: 0 },
        pours: [{ id: 'top', resin: 'deep', depth, shrinkage: 0 }]
      }
    })
    expect(worked(over(1)).stack.pours[0]!.liquidMl).toBeCloseTo(1000, 3)
    const { massG } = worked(over('1/8 in')).stack.pours[0]!
    expect(Math.abs(massG / 1000 / 3.5 - 1)).toBeLessThan(0.01)
    const poundsPerSquareFoot = ((massG / POUND_G) * SQUARE_FOOT_MM2) / 1e6
    expect(Math.abs(poundsPerSquareFoot / 0.72 - 1)).toBeLessThan(0.01)
    expect(0.75 / poundsPerSquareFoot - 1).toBeCloseTo(0.04, 1)
  })
})
