import type { Dimension } from './unit.ts'
import { FIXED_UNIT, toFixedUnit, UNITS, unitsOf } from './unit.ts'

/**
 * Reads a quantity as a maker writes it: a number, then a unit.
 *
 *   "38 mm"   "1.5 in"   "1 1/2 in"   "3/4 in"   "-5 °C"   "70 °F"   "1 gal"   "2 h"   "12 %"
 *
 * The number is a decimal (point, no exponent, no thousands mark), a fraction, or a whole number and a
 * fraction with a blank between. `"` and `″` stand for inches. "1/0 in" and the like are refused.
 */
const NUMBER = '(?:[0-9]{1,9}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9}|(?:[0-9]{1,6} )?[0-9]{1,4}/[1-9][0-9]{0,3})'

const ALIASES: Readonly<Record<string, string>> = {
  '"': 'in',
  '″': 'in',
  inch: 'in',
  inches: 'in',
  degC: '°C',
  degF: '°F',
  C: '°C',
  F: '°F',
  L: 'l',
  mL: 'ml',
  hours: 'h',
  hour: 'h',
  days: 'd',
  day: 'd',
  minutes: 'min'
}

/** The regular expression (no slashes) that a quantity string of a dimension must match as a whole. */
export function quantityPattern(dimension: Dimension, sign: 'any' | 'positive'): string {
  const words = [
    ...unitsOf(dimension),
    ...Object.entries(ALIASES)
      .filter(([, unit]) => UNITS[unit]!.dimension === dimension)
      .map(([alias]) => alias)
  ]
  const units = words.sort((a, b) => b.length - a.length).join('|')
  return `^${sign === 'any' ? '-?' : ''}${NUMBER} ?(?:${units})$`
}

/** A quantity taken apart: the number as typed, the unit word, and the value in the dimension's fixed unit. */
export interface Quantity {
  readonly typed: number
  readonly unit: string
  readonly value: number
}

/**
 * Reads `text` as a quantity of `dimension`. Returns null when it is not one; never throws, never gives NaN.
 * A bare number in a string is not a quantity: write the unit, or a JSON number in the fixed unit.
 */
export function parseQuantity(text: string, dimension: Dimension): Quantity | null {
  const found = pattern(dimension).exec(text)
  if (!found) return null
  const word = text.slice(found[0].length - found[1]!.length)
  const unit = ALIASES[word] ?? word
  const typed = parseNumber(text.slice(0, text.length - word.length).trim())
  return { typed, unit, value: toFixedUnit(typed, unit) }
}

const cache = new Map<Dimension, RegExp>()
function pattern(dimension: Dimension): RegExp {
  let p = cache.get(dimension)
  if (!p) {
    p = new RegExp(quantityPattern(dimension, 'any').replace(/\(\?:(?=[^()]*\)\$$)/, '('))
    cache.set(dimension, p)
  }
  return p
}

function parseNumber(text: string): number {
  const sign = text.startsWith('-') ? -1 : 1
  const parts = (sign < 0 ? text.slice(1) : text).split(' ')
  let sum = 0
  for (const part of parts) {
    const slash = part.indexOf('/')
    sum += slash < 0 ? Number(part) : Number(part.slice(0, slash)) / Number(part.slice(slash + 1))
  }
  return sign * sum
}

/** Words for a message: "a number in mm, or text with a unit such as "38 mm" or "1 1/2 in"". */
export function quantityHint(dimension: Dimension): string {
  const sample: Record<Dimension, string> = {
    length: '"38 mm" or "1 1/2 in"',
    mass: '"310 g" or "2 lb"',
    volume: '"250 ml" or "8 fl oz"',
    temperature: '"21 °C" or "70 °F"',
    time: '"90 min" or "24 h"',
    percent: '"12 %"'
  }
  return `a number in ${FIXED_UNIT[dimension]}, or text with a unit such as ${sample[dimension]}`
}
