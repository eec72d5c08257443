import { describe, expect, it } from 'vitest'
import { formatInchFraction } from '../../src/quantity/format.ts'
import { parseQuantity, quantityHint, quantityPattern } from '../../src/quantity/parse.ts'
import type { Dimension } from '../../src/quantity/unit.ts'
import { FIXED_UNIT, fromFixedUnit, toFixedUnit, UNITS, unitsOf } from '../../src/quantity/unit.ts'
import { chance } from '../stack/random.ts'
import { rows } from './unit.evidence.ts'

const DIMENSIONS: readonly Dimension[] = ['length', 'mass', 'volume', 'temperature', 'time', 'percent']

describe('a quantity as a maker writes it', () => {
  it.each(rows.map(r => [r.what, r] as const))('%s is what its definition says', (_, r) => {
    expect(Math.abs(r.ours() - r.published)).toBeLessThanOrEqual(r.tolerance)
  })

  it.each([
    ['38 mm', 38, 'mm', 38],
    ['38mm', 38, 'mm', 38],
    ['.5 in', 0.5, 'in', 12.7],
    ['1.5 in', 1.5, 'in', 38.1],
    ['3/4 in', 0.75, 'in', 19.05],
    ['1 1/2 in', 1.5, 'in', 38.1],
    ['1 1/2"', 1.5, 'in', 38.1],
    ['1 1/2″', 1.5, 'in', 38.1],
    ['2 inches', 2, 'in', 50.8],
    ['1 inch', 1, 'in', 25.4],
    ['-1 1/2 in', -1.5, 'in', -38.1],
    ['-2 mm', -2, 'mm', -2]
  ])('reads the length "%s"', (text, typed, unit, value) => {
    const got = parseQuantity(text, 'length')
    expect(got).toEqual({ typed, unit, value })
  })

  it.each([
    ['-5 °C', 'temperature', '°C', -5],
    ['-5 degC', 'temperature', '°C', -5],
    ['50 F', 'temperature', '°F', 10],
    ['1 L', 'volume', 'l', 1000],
    ['5 mL', 'volume', 'ml', 5],
    ['2 days', 'time', 'd', 2880],
    ['1 day', 'time', 'd', 1440],
    ['3 hours', 'time', 'h', 180],
    ['1/2 hour', 'time', 'h', 30],
    ['5 minutes', 'time', 'min', 5],
    ['12 %', 'percent', '%', 12]
  ] as const)('reads "%s" as a %s', (text, dimension, unit, value) => {
    expect(parseQuantity(text, dimension)).toMatchObject({ unit })
    expect(parseQuantity(text, dimension)!.value).toBeCloseTo(value, 10)
  })

  it.each([
    '',
    ' ',
    '5',
    'mm',
    '5 furlongs',
    '5 kg',
    '1,5 mm',
    '1 000 mm',
    '1e3 mm',
    '+5 mm',
    '--5 mm',
    '- 5 mm',
    '5  mm',
    ' 5 mm',
    '5 mm ',
    '5 mm\n',
    '1/0 in',
    '1/00 in',
    '1 /2 in',
    '1 1 1/2 in',
    '1.5/2 in',
    '1/2/3 in',
    '0x10 mm',
    'NaN mm',
    'Infinity mm',
    '٣ mm',
    '5 MM',
    '5 In',
    '5 mm 3 in',
    `${'9'.repeat(400)} mm`,
    '5 __proto__',
    '5 constructor'
  ])('does not read "%s" as a length', text => {
    expect(parseQuantity(text, 'length')).toBeNull()
    expect(new RegExp(quantityPattern('length', 'any')).test(text)).toBe(false)
  })

  it('knows each unit word in its own dimension alone', () => {
    for (const [word, unit] of Object.entries(UNITS)) {
      for (const d of DIMENSIONS) {
        expect(parseQuantity(`2 ${word}`, d) !== null, `2 ${word} as ${d}`).toBe(d === unit.dimension)
      }
    }
  })

  it('has a fixed unit for each dimension in which a number is its own value', () => {
    for (const d of DIMENSIONS) {
      expect(unitsOf(d)).toContain(FIXED_UNIT[d])
      expect(parseQuantity(`2.5 ${FIXED_UNIT[d]}`, d)!.value).toBe(2.5)
      const offered = quantityHint(d).match(/"([^"]+)"/g)!
      for (const sample of offered) {
        expect(parseQuantity(sample.slice(1, -1), d), `the hint offers ${sample}`).not.toBeNull()
      }
    }
  })

  it('goes to the fixed unit and back within rounding, for 2000 numbers of every unit', () => {
    const c = chance(1)
    for (let k = 0; k < 2000; k++) {
      const word = c.pick(Object.keys(UNITS))
      const typed = c.span(-1000, 1000)
      const back = fromFixedUnit(toFixedUnit(typed, word), word)
      expect(Math.abs(back - typed), `${typed} ${word}`).toBeLessThan(1e-9)
    }
  })

  it('reads what it wrote as an inch fraction, to the nearest 1/64 in', () => {
    const c = chance(2)
    for (let k = 0; k < 2000; k++) {
      const mm = c.span(-2000, 2000)
      const text = formatInchFraction(mm, 64)
      const read = parseQuantity(text, 'length')
      expect(read, `${mm} mm as ${text}`).not.toBeNull()
      expect(Math.abs(read!.value - mm), `${mm} mm as ${text}`).toBeLessThanOrEqual(25.4 / 128 + 1e-9)
      // And a fraction read is written as it was.
      expect(formatInchFraction(read!.value, 64)).toBe(text)
    }
  })

  it('refuses a unit word it does not know, and says which it knows', () => {
    expect(() => toFixedUnit(1, 'furlong')).toThrow('unknown unit "furlong"; known: mm, cm, m, in')
    for (const word of ['__proto__', 'constructor', 'toString']) {
      expect(() => toFixedUnit(1, word), word).toThrow(/unknown unit/)
      expect(() => fromFixedUnit(1, word), word).toThrow(/unknown unit/)
    }
  })
})
