import { decimals, formatInchFraction } from '../quantity/format.ts'
import { parseQuantity } from '../quantity/parse.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import type { Dimension } from '../quantity/unit.ts'
import { FIXED_UNIT, fromFixedUnit } from '../quantity/unit.ts'

/**
 * Quantities on a screen whose units can be switched: shown in the chosen unit, read back from what was typed.
 *
 * Nothing drifts, because showing never stores: the document keeps its number (mm, g, °C) or its string as
 * typed. A field that was not touched writes nothing ({@link entered} returns null). What is typed in another
 * unit than the document's is stored as a string with that unit, so that it reads back exactly as typed.
 *
 * Factors are those of quantity/unit.ts, exact by definition: 25.4 mm an inch, 28.349523125 g an ounce.
 */
export type LengthUnit = ShownUnits['length']
export type TemperatureUnit = ShownUnits['temperature']
/** Chosen is `g` or `oz`; a large mass is shown in `kg` or `lb`, and a bare number typed there is read so. */
export type MassUnit = 'g' | 'kg' | 'oz' | 'lb'

/** A quantity as a screen shows it. `exact`: reading `text` in `unit` gives the very number shown. */
export interface Shown {
  readonly text: string
  /** The unit word beside the field: mm, in, °C, °F, g, kg, oz, lb. */
  readonly unit: string
  readonly exact: boolean
}

/** What was typed: its value in the fixed unit, and what the document should store. */
export interface Entry {
  readonly value: number
  readonly stored: number | string
}

/** Words for the person who typed what cannot be read: what was found, what is allowed. */
export interface Refused {
  readonly problem: string
}

/** What a field allows, in the fixed unit of its dimension. */
export interface Range {
  readonly min: number
  readonly max: number
}

/** Least fraction of an inch shown: 1/64, the finest line of a common inch rule (practice). */
const DENOMINATOR = 64

/** A length for a screen: mm to 0.01 (0.001 below 1 mm), inches to 0.001 (0.0001 below 0.1), or to 1/64 in. */
export function showLength(mm: number, options: { readonly unit: LengthUnit }): Shown {
  if (options.unit === 'in fraction') {
    const text = Number.isFinite(mm) ? formatInchFraction(mm, DENOMINATOR).replace(/ in$/, '') : ''
    return shown(text, 'in', 'length', mm)
  }
  const typed = fromFixedUnit(mm, options.unit)
  const most = options.unit === 'mm' ? (Math.abs(typed) < 1 ? 3 : 2) : Math.abs(typed) < 0.1 ? 4 : 3
  return shown(digits(typed, most), options.unit, 'length', mm)
}

/** A temperature for a screen, to 0.1 degree. */
export function showTemperature(celsius: number, options: { readonly unit: TemperatureUnit }): Shown {
  return shown(digits(fromFixedUnit(celsius, options.unit), 1), options.unit, 'temperature', celsius)
}

/** A mass for a screen: g (kg from 10 kg on), or ounces (pounds from 10 lb on). */
export function showMass(grams: number, options: { readonly unit: 'g' | 'oz' }): Shown {
  const small = digits(fromFixedUnit(grams, options.unit), smallDigits(grams, options.unit))
  // Decided by what would be shown, so that 9999.99 g does not read as 10000 g.
  const large = Math.abs(Number(small)) >= (options.unit === 'g' ? 10_000 : 160)
  const unit: MassUnit = !large ? options.unit : options.unit === 'g' ? 'kg' : 'lb'
  return shown(large ? digits(fromFixedUnit(grams, unit), 3) : small, unit, 'mass', grams)
}

function smallDigits(grams: number, unit: 'g' | 'oz'): number {
  if (unit === 'g') return Math.abs(grams) < 100 ? 2 : 1
  return 3
}

/** A length as typed: "38", "1 1/2", "1-1/2 in", "3 cm"; a bare number counts in the unit shown. */
export function readLength(text: string, unit: LengthUnit, range?: Range): Entry | Refused {
  return readQuantity(text, 'length', unit === 'in fraction' ? 'in' : unit, range)
}

/** A temperature as typed; a bare number counts in the unit shown. */
export function readTemperature(text: string, unit: TemperatureUnit, range?: Range): Entry | Refused {
  return readQuantity(text, 'temperature', unit, range)
}

/** A mass as typed; a bare number counts in the unit shown. */
export function readMass(text: string, unit: MassUnit, range?: Range): Entry | Refused {
  return readQuantity(text, 'mass', unit, range)
}

/**
 * What a document stores, as a screen shows it: a string typed in the unit chosen comes back as it was typed,
 * anything else is shown by its value. A stored string that cannot be read is shown as it is, not exact.
 */
export function showStored(
  stored: number | string,
  dimension: Dimension,
  show: (value: number) => Shown
): Shown {
  if (typeof stored === 'number') return show(stored)
  const quantity = parseQuantity(stored, dimension)
  if (quantity === null) return { text: stored, unit: '', exact: false }
  const byValue = show(quantity.value)
  const typed = /^[-0-9./ ]*[0-9]/.exec(stored)
  if (quantity.unit !== byValue.unit || typed === null) return byValue
  return { text: typed[0], unit: byValue.unit, exact: true }
}

/**
 * What leaving a field should write: null when the text is still the one shown, else what was read.
 * `reader` is one of the read functions with its unit given.
 */
export function entered(
  before: Shown,
  text: string,
  reader: (text: string) => Entry | Refused
): Entry | Refused | null {
  return text.trim() === before.text.trim() ? null : reader(text)
}

/** Longest quantity a document takes, characters. */
const LONGEST = 40

/** What was typed of any dimension: a bare number counts in `unit`, another unit may stand with it. */
export function readQuantity(
  text: string,
  dimension: Dimension,
  unit: string,
  range?: Range
): Entry | Refused {
  const tidy = tidied(text)
  const found = tidy === '' ? 'nothing' : `"${tidy.length > LONGEST ? `${tidy.slice(0, LONGEST)}...` : tidy}"`
  const refuse = (allowed: string): Refused => ({ problem: `found ${found}; allowed: ${allowed}` })
  if (tidy.length <= LONGEST) {
    const bare = parseQuantity(`${tidy} ${unit}`, dimension)
    const quantity = bare ?? parseQuantity(tidy, dimension)
    if (quantity !== null) {
      const { value } = quantity
      if (range && !(value >= range.min && value <= range.max)) return refuse(rangeWords(range, unit))
      if (bare === null) return { value, stored: tidy }
      return { value, stored: unit === FIXED_UNIT[dimension] ? value : `${tidy} ${unit}` }
    }
    if (/^-?[0-9]+,[0-9]+/.test(tidy)) return refuse('a point before the decimals, no comma')
  }
  return refuse(
    `a number in ${unit === 'in' ? 'inches' : unit} such as ${SAMPLE[unit] ?? '12'}, or with its unit such as ${WITH_UNIT[dimension]}`
  )
}

// Blanks as one, the true minus as a hyphen, "1-1/2" (as inches are often written) as "1 1/2".
function tidied(text: string): string {
  return text
    .slice(0, 400)
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^−/, '-')
    .replace(/^(-?[0-9]+)-([0-9]+\/[0-9])/, '$1 $2')
    .replace(/^\+(?=[0-9.])/, '')
}

const SAMPLE: Readonly<Record<string, string>> = { in: '1.5 or 1 1/2', '°C': '21', '°F': '70' }
const WITH_UNIT: Readonly<Record<Dimension, string>> = {
  length: '38 mm or 1 1/2 in',
  mass: '310 g or 2 lb',
  volume: '250 ml or 8 fl oz',
  temperature: '21 °C or 70 °F',
  time: '90 min or 24 h',
  percent: '12 %'
}

function rangeWords({ min, max }: Range, unit: string): string {
  const words = (value: number) => digits(fromFixedUnit(value, unit), unit === 'mm' || unit === 'g' ? 3 : 4)
  return `${words(min)} to ${words(max)} ${unit}`
}

function digits(value: number, most: number): string {
  return Number.isFinite(value) ? decimals(value, most) : ''
}

function shown(text: string, unit: string, dimension: Dimension, value: number): Shown {
  return { text, unit, exact: text !== '' && parseQuantity(`${text} ${unit}`, dimension)?.value === value }
}
