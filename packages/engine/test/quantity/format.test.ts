import { describe, expect, it } from 'vitest'
import { daysInMonth, noSuchDay } from '../../src/quantity/day.ts'
import {
  decimals,
  formatC,
  formatInchFraction,
  formatMass,
  formatMinutes,
  formatMm,
  formatVolume
} from '../../src/quantity/format.ts'
import { inRange, wholeInRange } from '../../src/quantity/range.ts'
import { chance } from '../stack/random.ts'

describe('numbers as they are read', () => {
  it.each([
    [1.5, 3, 0, '1.5'],
    [1.5, 3, 2, '1.50'],
    [2, 3, 0, '2'],
    [-0.0004, 2, 0, '0'],
    [-0, 0, 0, '0'],
    [-0.0004, 3, 1, '0.0'],
    [100, 0, 0, '100'],
    [1e-9, 2, 1, '0.0'],
    [-1.25, 2, 0, '-1.25']
  ])('%d with at most %d and at least %d decimals is "%s"', (value, most, least, text) => {
    expect(decimals(value, most, least)).toBe(text)
  })

  it.each([
    [formatMm(14), '14.0 mm'],
    [formatMm(0.126), '0.13 mm'],
    [formatMm(-0.001), '0.0 mm'],
    [formatMass(12.34), '12.3 g'],
    [formatMass(310.4), '310 g'],
    [formatMass(12_340), '12.3 kg'],
    [formatVolume(9_999), '9999 ml'],
    [formatVolume(10_000), '10 l'],
    [formatC(21.6), '22 °C'],
    [formatMinutes(45), '45 min'],
    [formatMinutes(120), '2 h'],
    [formatMinutes(200), '3 h 20'],
    [formatMinutes(125), '2 h 05'],
    [formatMinutes(48 * 60), '2 d'],
    [formatMinutes(52 * 60), '2 d 4 h'],
    [formatInchFraction(38.1), '1 1/2 in'],
    [formatInchFraction(19.05), '3/4 in'],
    [formatInchFraction(25.4), '1 in'],
    [formatInchFraction(0), '0 in'],
    [formatInchFraction(-19.05), '-3/4 in'],
    [formatInchFraction(-0.1), '0 in'],
    [formatInchFraction(25.39), '1 in'],
    [formatInchFraction(18.25625, 32), '23/32 in']
  ])('writes %s', (got, wanted) => {
    expect(got).toBe(wanted)
  })

  it('never writes a minus before nothing', () => {
    const c = chance(3)
    for (let k = 0; k < 500; k++) {
      const x = c.span(-1, 1) * 10 ** c.whole(-6, 1)
      for (const text of [formatMm(x), formatMass(x), formatVolume(x), formatC(x), formatInchFraction(x)]) {
        expect(text, `${x}`).not.toMatch(/^-0(\.0*)? /)
      }
    }
  })
})

describe('days of the calendar', () => {
  it('has months as long as the clock of the machine says, from 1900 to 2400', () => {
    for (let year = 1900; year <= 2400; year++) {
      for (let month = 1; month <= 12; month++) {
        // Day 0 of the next month is the last of this one (ECMAScript, Date.UTC).
        expect(daysInMonth(year, month)).toBe(new Date(Date.UTC(year, month, 0)).getUTCDate())
      }
    }
  })

  it('names the length of the month and its last day', () => {
    expect(noSuchDay('2026-02-31')).toEqual({
      allowed: 'a day of the calendar: February 2026 has 28 days',
      last: '2026-02-28'
    })
    expect(noSuchDay('2026-04-31T09:00Z')!.last).toBe('2026-04-30T09:00Z')
    expect(noSuchDay('2024-02-29')).toBeNull()
    expect(noSuchDay('soon')).toBeNull()
  })
})

describe('the door check of the models', () => {
  it('lets through what is in range, ends included', () => {
    expect(inRange('depth', 5, 5, 10, 'mm')).toBe(5)
    expect(inRange('depth', 10, 5, 10, 'mm')).toBe(10)
    expect(wholeInRange('count', 3, 1, 3)).toBe(3)
  })

  it('says what it was given and what is allowed', () => {
    expect(() => inRange('depth', 4, 5, 10, 'mm')).toThrow(
      new RangeError('depth is 4 mm; allowed 5 to 10 mm')
    )
    expect(() => inRange('share', 2, 0, 1)).toThrow(new RangeError('share is 2; allowed 0 to 1'))
    for (const x of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => inRange('depth', x, 5, 10, 'mm'), `${x}`).toThrow(RangeError)
      expect(() => wholeInRange('count', x, 1, 3), `${x}`).toThrow(RangeError)
    }
    expect(() => wholeInRange('count', 1.5, 1, 3)).toThrow('count is 1.5; a whole number is asked for')
  })
})
