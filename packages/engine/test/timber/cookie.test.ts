import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Cookie, cookieProgress, rimOpeningMm, wedgeAngleDeg } from '../../src/timber/cookie.ts'

// White oak, 24 in across (maker's report): radial 5.6, tangential 10.5 % green to oven-dry.
const oak: Cookie = { radiusMm: 305, radialShrinkagePct: 5.6, tangentialShrinkagePct: 10.5 }

describe('a round that dries', () => {
  // The report: 38 mm open at the bark after a year, 69 mm to come to at 8 %. Verdict: not finished moving.
  it('that has opened 38 mm of 69 has not finished moving, over the whole spread of timber', () => {
    const progress = cookieProgress(oak, 38, 8)
    expect(progress.fraction).toBeCloseTo(0.552, 2)
    expect(progress.stillToComeMm).toBeCloseTo(30.9, 1)
    expect(progress.stillToComeLowMm).toBeGreaterThan(0)
    expect(progress.stillToComeHighMm).toBeGreaterThan(progress.stillToComeMm)
  })

  it('with nothing more to come is done', () => {
    expect(cookieProgress(oak, 70, 8)).toMatchObject({ fraction: 1, stillToComeMm: 0 })
    expect(cookieProgress({ ...oak, tangentialShrinkagePct: 5.6 }, 0, 8).fraction).toBe(1)
  })

  // Independent: shrink the rim and the radius, and see what of the circle the rim still covers.
  it('opens by what the shrunken rim lacks round the shrunken radius, and the wedge has that angle', () => {
    const part = fc.double({ min: 0, max: 12, noNaN: true })
    fc.assert(
      fc.property(part, part, fc.double({ min: 0, max: 29, noNaN: true }), (a, b, m) => {
        const cookie = {
          radiusMm: 200,
          radialShrinkagePct: Math.min(a, b),
          tangentialShrinkagePct: Math.max(a, b)
        }
        const shrink = (s: number): number => 1 - ((s / 100) * (30 - m)) / 30
        const rim = 2 * Math.PI * 200 * shrink(cookie.tangentialShrinkagePct)
        const radius = 200 * shrink(cookie.radialShrinkagePct)
        const gap = 2 * Math.PI * radius - rim
        expect(rimOpeningMm(cookie, m)).toBeCloseTo(gap, 8)
        expect((wedgeAngleDeg(cookie, m) / 360) * 2 * Math.PI * radius).toBeCloseTo(gap, 8)
      }),
      { seed: 20260107, numRuns: 300 }
    )
  })

  it('has not opened before shrinkage starts, and opens more the drier and the larger it is', () => {
    expect(rimOpeningMm(oak, 30)).toBe(0)
    expect(rimOpeningMm(oak, 80)).toBe(0)
    expect(rimOpeningMm(oak, 8)).toBeGreaterThan(rimOpeningMm(oak, 12))
    expect(rimOpeningMm({ ...oak, radiusMm: 610 }, 8)).toBeCloseTo(2 * rimOpeningMm(oak, 8), 9)
  })

  it('is refused when its shrinkages are swapped or its radius is none', () => {
    expect(() => rimOpeningMm({ ...oak, radialShrinkagePct: 12 }, 8)).toThrow(/less than radial 12 %/)
    expect(() => rimOpeningMm({ ...oak, radiusMm: 0 }, 8)).toThrow(/radius is 0 mm/)
    expect(() => cookieProgress(oak, -1, 8)).toThrow(/opening so far/)
  })
})
