import { describe, expect, it } from 'vitest'
import { dryingByDiffusion, dryingByRule } from '../../src/timber/drying.ts'
import { settledCoreFraction } from '../../src/timber/settle.ts'

describe('the rule of thumb', () => {
  // Maker's report: 2.5 in dried for one year, cracked in a warm flat within three weeks. Practice: a year
  // per inch.
  it('says that 2.5 inches dried for twelve months are not ready', () => {
    expect(dryingByRule(63.5, 365)).toMatchObject({ neededYears: 2.5, ready: 'no' })
    expect(dryingByRule(64, 365).ready).toBe('no')
  })

  // Against: "2 in: 3 years".
  it('is in doubt between the rule and the makers who count three years for two inches', () => {
    expect(dryingByRule(50.8, 2.5 * 365.25)).toMatchObject({
      neededYears: 2,
      slowYears: 3,
      ready: 'doubtful'
    })
    expect(dryingByRule(50.8, 1.99 * 365.25).ready).toBe('no')
    expect(dryingByRule(50.8, 3 * 365.25).ready).toBe('yes')
  })
})

describe('by diffusion', () => {
  const slab = { thicknessMm: 64, coreMoisturePct: 14, roomMoisturePct: 6 }

  it('asks until the core is within a point of the room', () => {
    const days = dryingByDiffusion({ ...slab, diffusionM2PerS: 2e-10 }).centralDays
    const done = settledCoreFraction({ thicknessMm: 64, openFaces: 2, diffusionM2PerS: 2e-10 }, days)
    expect(14 - 8 * done).toBeCloseTo(7, 9)
  })

  it('gives weeks to months for a thick slab, well short of the rule, with a band', () => {
    const days = dryingByDiffusion(slab)
    expect(days.lowDays).toBeGreaterThan(14)
    expect(days.highDays).toBeLessThan(365)
    expect(days.highDays / days.lowDays).toBeCloseTo(5, 9)
  })

  it('asks nothing of a core that is there, and longer with one face sealed or a closer tolerance', () => {
    expect(dryingByDiffusion({ ...slab, coreMoisturePct: 6.8 }).highDays).toBe(0)
    const open = dryingByDiffusion(slab).centralDays
    expect(dryingByDiffusion({ ...slab, openFaces: 1 }).centralDays).toBeCloseTo(4 * open, 9)
    expect(dryingByDiffusion({ ...slab, tolerancePct: 0.5 }).centralDays).toBeGreaterThan(open)
  })

  it('counts free water above fibre saturation as 30 %', () => {
    const at30 = dryingByDiffusion({ ...slab, coreMoisturePct: 30 }).centralDays
    expect(dryingByDiffusion({ ...slab, coreMoisturePct: 80 }).centralDays).toBe(at30)
  })

  it('refuses what cannot be', () => {
    expect(() => dryingByRule(0, 10)).toThrow(/thickness is 0 mm/)
    expect(() => dryingByRule(20, Number.NaN)).toThrow(/NaN/)
    expect(() => dryingByDiffusion({ ...slab, roomMoisturePct: 40 })).toThrow(/balance of the room/)
  })
})
