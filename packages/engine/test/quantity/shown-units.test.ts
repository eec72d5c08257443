import { describe, expect, it } from 'vitest'
import { decimals } from '../../src/quantity/format.ts'
import type { ShownUnits } from '../../src/quantity/shown-units.ts'
import { degreesIn, lengthIn, lengthUnit, METRIC, massIn } from '../../src/quantity/shown-units.ts'

const INCH: ShownUnits = { length: 'in', temperature: '°F', mass: 'oz' }
const FRACTION: ShownUnits = { ...INCH, length: 'in fraction' }
const grams = (g: number) => `${decimals(g, 0)} g`

describe('units a drawing is written in', () => {
  // 25.4 mm an inch, exact (international yard and pound agreement 1959; NIST SP 811, appendix B.8).
  it('writes lengths as sure as in mm', () => {
    expect(lengthIn(METRIC, 15.4, 1, 1)).toBe('15.4')
    expect(lengthIn(METRIC, 14, 1, 1)).toBe('14.0')
    expect(lengthIn(INCH, 25.4, 1, 1)).toBe('1')
    expect(lengthIn(INCH, 15.4, 1)).toBe('0.606')
    expect(lengthIn(INCH, 620, 0)).toBe('24.41')
    expect([lengthUnit(METRIC), lengthUnit(INCH), lengthUnit(FRACTION)]).toEqual(['mm', 'in', 'in'])
  })

  it('writes fractions as a rule has them: 64ths for tenths of a mm, 16ths for whole mm', () => {
    expect(lengthIn(FRACTION, 520, 1)).toBe('20 15/32')
    expect(lengthIn(FRACTION, 12.7, 1)).toBe('1/2')
    expect(lengthIn(FRACTION, 163, 0)).toBe('6 7/16')
    // Under four of the finest lines a fraction says too little: 0.3 mm are 0.0118 in.
    expect(lengthIn(FRACTION, 0.3, 1)).toBe('0.012')
    expect(lengthIn(FRACTION, 0.3, 1, 1)).not.toContain('/')
    // Never farther off than half the finest line of the rule.
    for (let mm = 1.6; mm < 900; mm += 7.3) {
      const [, whole, top, bottom] = /^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(lengthIn(FRACTION, mm, 1))!
      const read = Number(whole ?? 0) + (top === undefined ? 0 : Number(top) / Number(bottom))
      expect(Math.abs(read * 25.4 - mm)).toBeLessThanOrEqual(25.4 / 128 + 1e-9)
    }
  })

  // 32 °F and 212 °F at 0 °C and 100 °C (NIST SP 811, appendix B.8).
  it('writes temperatures and masses', () => {
    expect(degreesIn(METRIC, 60)).toBe('60')
    expect([0, 60, 100].map(c => degreesIn(INCH, c))).toEqual(['32', '140', '212'])
    // 28.349523125 g an ounce, 16 an avoirdupois pound (the same).
    expect(massIn(METRIC, 500, grams)).toBe('500 g')
    expect(massIn(INCH, 500, grams)).toBe('17.6 oz')
    expect(massIn(INCH, 3905, grams)).toBe('8.6 lb')
  })
})
