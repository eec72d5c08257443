import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  airFraction,
  basicSpecificGravityFromDensity,
  densityKgM3,
  greatestMoisturePct,
  resinUptakeBoundGPerM2,
  specificGravityAt
} from '../../src/timber/density.ts'
import { TABULATED_GRAVITY } from './gravity-table.ts'

const seeded = { seed: 20260103, numRuns: 300 }
const basic = fc.double({ min: 0.1, max: 1.05, noNaN: true })

describe('specific gravity', () => {
  it('is the basic one from fibre saturation up, and grows on drying as the volume shrinks', () => {
    expect(specificGravityAt(0.51, 30)).toBe(0.51)
    expect(specificGravityAt(0.51, 80)).toBe(0.51)
    expect(specificGravityAt(0.51, 0)).toBeGreaterThan(specificGravityAt(0.51, 12))
  })

  // Wood Handbook Table 5-3: one average swelling against a species' own.
  it('comes within 0.034 of the tabulated value at 12 % for every species but black locust', () => {
    for (const [name, green, at12] of TABULATED_GRAVITY) {
      const off = specificGravityAt(green, 12) - at12
      // Known miss: locust swells less than its weight suggests. Reported here so that a change shows.
      if (name.startsWith('locust')) expect(off).toBeCloseTo(0.047, 3)
      else expect(Math.abs(off), name).toBeLessThanOrEqual(0.034)
    }
  })

  it('is found back from a density at any moisture', () => {
    fc.assert(
      fc.property(basic, fc.double({ min: 0, max: 60, noNaN: true }), (g, x) => {
        expect(basicSpecificGravityFromDensity(densityKgM3(g, x), x)).toBeCloseTo(g, 10)
      }),
      seeded
    )
  })
})

describe('air and water', () => {
  // Independent bookkeeping of a cubic centimetre: dry wood at 1.5, bound water at 1, air the rest.
  it('leaves as air what wood substance and water do not fill', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.95, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (g, x) => {
          const dryG = specificGravityAt(g, x)
          const filled = dryG / 1.5 + (dryG * x) / 100
          // 0.667 stands for 1/1.5 in the source: 3e-4 of the specific gravity.
          expect(Math.abs(airFraction(dryG, x) - Math.max(0, 1 - filled))).toBeLessThan(5e-4)
        }
      ),
      seeded
    )
  })

  it('holds most water when light, and its cells are then full', () => {
    expect(greatestMoisturePct(0.17)).toBeGreaterThan(greatestMoisturePct(0.51))
    // Full: green volume 1 = dry substance at 1.54 and water.
    const g = 0.51
    expect(g / 1.54 + (g * greatestMoisturePct(g)) / 100).toBeCloseTo(1, 12)
  })

  it('never gives less than no air, even for the heaviest timbers', () => {
    expect(airFraction(specificGravityAt(1.05, 30), 30)).toBe(0)
  })

  it('bounds the resin a face can drink by the air in the depth that is open', () => {
    expect(resinUptakeBoundGPerM2(0.59, 0.5, 1100)).toBeCloseTo(324.5, 10)
    expect(resinUptakeBoundGPerM2(0, 5, 1100)).toBe(0)
  })
})

describe('at the door', () => {
  it('refuses what is no timber', () => {
    expect(() => specificGravityAt(1.6, 12)).toThrow(/basic specific gravity is 1\.6/)
    expect(() => densityKgM3(0.5, -1)).toThrow(/moisture content is -1 %/)
    expect(() => basicSpecificGravityFromDensity(1900, 12)).toThrow(/from 1900 kg/)
    expect(() => resinUptakeBoundGPerM2(1.2, 1, 1100)).toThrow(/air fraction/)
  })
})
