import { describe, expect, it } from 'vitest'
import type { Entry, LengthUnit } from '../../src/draw/units.ts'
import {
  entered,
  readLength,
  readMass,
  readTemperature,
  showLength,
  showMass,
  showStored,
  showTemperature
} from '../../src/draw/units.ts'
import { parseQuantity } from '../../src/quantity/parse.ts'
import { chance } from '../stack/random.ts'

const LENGTHS: readonly LengthUnit[] = ['mm', 'in', 'in fraction']
const valued = (e: unknown) => (e as Entry).value

describe('factors', () => {
  // NIST SP 811, appendix B.8 (memory): inch 25.4 mm, ounce (avoirdupois) 28.349523125 g, both exact;
  // °F to °C: (t − 32)/1.8.
  it('reads an inch, an ounce, a pound and a degree Fahrenheit by their definitions', () => {
    expect(readLength('1', 'in')).toEqual({ value: 25.4, stored: '1 in' })
    expect(readMass('1', 'oz')).toEqual({ value: 28.349523125, stored: '1 oz' })
    expect(readMass('1', 'lb')).toEqual({ value: 453.59237, stored: '1 lb' })
    expect(valued(readTemperature('212', '°F'))).toBe(100)
    expect(valued(readTemperature('-40', '°F'))).toBe(-40)
  })

  it('shows by the same factors, reckoned here apart', () => {
    const c = chance(31)
    for (let k = 0; k < 2000; k++) {
      const mm = c.span(-3000, 3000)
      expect(Number(showLength(mm, { unit: 'in' }).text)).toBeCloseTo(mm / 25.4, 2)
      const t = c.span(-30, 90)
      const f = Number(showTemperature(t, { unit: '°F' }).text)
      expect(Math.abs(f - (t * 9) / 5 - 32)).toBeLessThanOrEqual(0.0500001)
      const g = c.span(0, 60_000)
      const m = showMass(g, { unit: 'oz' })
      const grams = Number(m.text) * (m.unit === 'lb' ? 453.59237 : 28.349523125)
      expect(Math.abs(grams - g)).toBeLessThan(m.unit === 'lb' ? 0.23 : 0.015)
    }
  })
})

describe('no drift', () => {
  it('gives every 1/64 in of 100 in back as the same fraction, reduced', () => {
    for (let n = 0; n <= 6400; n++) {
      const first = showLength((n * 254) / 640, { unit: 'in fraction' })
      const { value, stored } = readLength(first.text, 'in fraction') as Entry
      expect(showLength(value, { unit: 'in fraction' }), `${n}/64`).toEqual({ ...first, exact: true })
      // Twin: reduce by the greatest common divisor (Euclid), not by halving.
      const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))
      const top = n % 64
      const g = gcd(top, 64)
      const whole = Math.floor(n / 64)
      const wanted = top === 0 ? `${whole}` : `${whole === 0 ? '' : `${whole} `}${top / g}/${64 / g}`
      expect(first.text).toBe(wanted)
      expect(stored).toBe(`${wanted} in`)
      expect(parseQuantity(`${stored}`, 'length')!.value).toBe(value)
    }
  })

  it('shows what it read of what it showed, in every unit', () => {
    const c = chance(32)
    for (let k = 0; k < 5000; k++) {
      const v = c.span(-1, 1) * 10 ** c.whole(-3, 4)
      for (const unit of LENGTHS) {
        const first = showLength(v, { unit })
        expect(showLength(valued(readLength(first.text, unit)), { unit }).text, `${v} ${unit}`).toBe(
          first.text
        )
      }
      for (const unit of ['°C', '°F'] as const) {
        const first = showTemperature(v, { unit })
        expect(showTemperature(valued(readTemperature(first.text, unit)), { unit }).text).toBe(first.text)
      }
      for (const unit of ['g', 'oz'] as const) {
        const first = showMass(Math.abs(v), { unit })
        const again = valued(readMass(first.text, first.unit as 'g'))
        expect(showMass(again, { unit }), `${v} ${unit}`).toEqual({ ...first, exact: true })
      }
    }
  })

  it('writes nothing from a field that was not touched, however often the unit is switched', () => {
    let stored: number | string = 123.456789
    for (let k = 0; k < 30; k++) {
      const unit = LENGTHS[k % 3]!
      const field = showStored(stored, 'length', mm => showLength(mm, { unit }))
      const wrote = entered(field, ` ${field.text} `, t => readLength(t, unit))
      expect(wrote).toBeNull()
      if (wrote !== null && 'stored' in wrote) stored = wrote.stored
    }
    expect(stored).toBe(123.456789)
  })

  it('keeps what was typed in inches as it was typed', () => {
    const typed = readLength('1 1/2', 'in fraction') as Entry
    expect(typed).toEqual({ value: 38.1, stored: '1 1/2 in' })
    const inUnit = (unit: LengthUnit) => showStored(typed.stored, 'length', mm => showLength(mm, { unit }))
    expect(inUnit('in fraction')).toEqual({ text: '1 1/2', unit: 'in', exact: true })
    expect(inUnit('mm')).toEqual({ text: '38.1', unit: 'mm', exact: true })
    // A decimal inch typed shows as typed under the fraction switch too: it is no 64th.
    expect(showStored('1.3 in', 'length', mm => showLength(mm, { unit: 'in fraction' })).text).toBe('1.3')
    expect(readLength('40 mm', 'in')).toEqual({ value: 40, stored: '40 mm' })
    expect(readLength('12.5', 'mm')).toEqual({ value: 12.5, stored: 12.5 })
    expect(readTemperature('70', '°F')).toEqual({ value: (38 * 5) / 9, stored: '70 °F' })
  })
})

describe('reading', () => {
  it.each([
    ['1-1/2', 38.1, '1 1/2 in'],
    ['1-1/2"', 38.1, '1 1/2"'],
    [' 1   1/2 in ', 38.1, '1 1/2 in'],
    ['−2', -50.8, '-2 in'],
    ['+2', 50.8, '2 in'],
    ['2 ft', 609.6, '2 ft'],
    ['.5', 12.7, '.5 in']
  ])('takes %s', (text, value, stored) => {
    expect(readLength(text, 'in')).toEqual({ value, stored })
  })

  it.each(['', 'abc', '1/0', '1e3', 'NaN', '1 2 3', '70 °F', '--1', '1'.repeat(500)])('refuses %s', text => {
    const got = readLength(text, 'in') as { problem: string }
    expect(got.problem).toMatch(/^found .{1,50}; allowed: a number in inches such as 1.5 or 1 1\/2/)
  })

  it('names the comma, and a range in the unit shown', () => {
    expect(readLength('1,5', 'mm')).toEqual({
      problem: 'found "1,5"; allowed: a point before the decimals, no comma'
    })
    expect(readLength('600', 'in', { min: 0, max: 10_000 })).toEqual({
      problem: 'found "600"; allowed: 0 to 393.7008 in'
    })
    expect(readLength('25.4', 'mm', { min: 0, max: 25.4 })).toEqual({ value: 25.4, stored: 25.4 })
  })

  it('says which texts stand for the very number', () => {
    expect(showLength(38.1, { unit: 'in fraction' }).exact).toBe(true)
    expect(showLength(38, { unit: 'in fraction' })).toEqual({ text: '1 1/2', unit: 'in', exact: false })
    expect(showLength(Number.NaN, { unit: 'mm' })).toEqual({ text: '', unit: 'mm', exact: false })
  })

  it.each([
    [9999.94, 'g', '9999.9', 'g'],
    [9999.96, 'g', '10', 'kg'],
    [12_345, 'g', '12.345', 'kg'],
    [4535.9237, 'oz', '10', 'lb'],
    [28.349523125, 'oz', '1', 'oz']
  ] as const)('shows %d g at the switch %s as %s %s', (grams, unit, text, word) => {
    expect(showMass(grams, { unit })).toMatchObject({ text, unit: word })
  })
})
