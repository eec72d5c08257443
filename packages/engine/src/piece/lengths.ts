import { decimals, formatInchFraction } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { degreesIn, lengthUnit } from '../quantity/shown-units.ts'
import { fromFixedUnit } from '../quantity/unit.ts'
import type { Shop } from './shop-schema.ts'

/** Decimals of an inch beyond those of a mm that are as sure, and the most a reader has use for. */
const INCH_DECIMALS = 2
const MOST_DECIMALS = 4
/** A fraction is as fine as the finest line of a common rule; below a quarter of an inch it says too little (practice). */
const FRACTION = 64
const LEAST_FRACTION_MM = 25.4 / 4

/**
 * Lengths and temperatures as the sheets of a shop write them. Grams stay: resin is weighed on the shop's scale.
 *
 * Inches are decimal, as sure as the mm they stand for; or fractions with the decimals beside them where a mm would have
 * a decimal, and decimals alone where a fraction says too little. 25.4 mm an inch, 12 in a foot: exact (1959).
 */
export interface Lengths {
  readonly unit: 'mm' | 'in'
  readonly degree: '°C' | '°F'
  readonly shown: ShownUnits
  /** A length without its unit: at most so many decimals of a mm, at least so many. */
  of(mm: number, most: number, least?: number): string
  /** The same with the sign of a minus, not of a hyphen. */
  signed(mm: number, most: number): string
  /** A temperature without its unit, whole degrees. */
  degrees(celsius: number): string
  /** A length along a run of something bought or laid, with its unit: m or ft. */
  run(metres: number): string
  /** An area with its unit: m² or ft². */
  area(m2: number, most: number): string
  /** A feed without its unit, which is a minute's: whole mm, or tenths of an inch. */
  feed(mmMin: number): string
  /** A slope with its unit: mm/m or in/ft. */
  slope(mmPerM: number): readonly [words: string, unit: string]
  /** A sentence that is written in mm, m² and °C: each of them with the shop's unit beside it, once. */
  beside(text: string): string
}

const FOOT_M = 0.3048

/** As a shop has its sheets written. */
export function lengthsOf({ units }: Pick<Shop, 'units'>): Lengths {
  return lengthsIn({ ...units, mass: 'g' })
}

export function lengthsIn(shown: ShownUnits): Lengths {
  const metric = shown.length === 'mm'
  const inches = (mm: number, most: number) =>
    decimals(fromFixedUnit(mm, 'in'), Math.min(MOST_DECIMALS, most + INCH_DECIMALS))
  const of = (mm: number, most: number, least = 0): string => {
    if (metric) return decimals(mm, most, least)
    if (shown.length === 'in' || most > 1 || Math.abs(mm) < LEAST_FRACTION_MM) return inches(mm, most)
    const fraction = formatInchFraction(mm, most === 0 ? FRACTION / 2 : FRACTION).replace(/ in$/, '')
    return most === 0 || !fraction.includes('/') ? fraction : `${fraction} (${inches(mm, most)})`
  }
  return {
    unit: lengthUnit(shown),
    degree: shown.temperature,
    shown,
    of,
    signed: (mm, most) => of(mm, most).replace('-', '\u2212'),
    degrees: c => degreesIn(shown, c),
    run: m => (metric ? `${decimals(m, 1)} m` : `${decimals(m / FOOT_M, 1)} ft`),
    area: (m2, most) => (metric ? `${decimals(m2, most)} m²` : `${decimals(m2 / FOOT_M ** 2, 1)} ft²`),
    feed: x => (metric ? decimals(x, 0) : decimals(fromFixedUnit(x, 'in'), 1)),
    slope: x => (metric ? [decimals(x, 1), 'mm/m'] : [decimals((x * 12) / 1000, 3), 'in/ft']),
    beside: text => {
      const inches = metric
        ? text
        : text.replace(PLACE, withUnit).replace(IN_MM, withInches).replace(IN_M2, withFeet)
      return shown.temperature === '°C'
        ? inches
        : inches.replace(IN_C, withFahrenheit).replace(STEPS, withSteps)
    }
  }
}

/** Steps of 1 °F in 1 K: exact (9/5, NIST SP 811). */
const F_PER_K = 9 / 5

const FIGURE = String.raw`[−-]?\d+(?:\.\d+)?`
const joined = (by: string) => String.raw`(${FIGURE}(?:(?: × | to |–|-| and | or ${by})${FIGURE})*)[\s\u00a0]`
const IN_MM = new RegExp(String.raw`${joined('')}mm(?![/\w²³]| \([^)]* in\))`, 'g')
const IN_M2 = new RegExp(String.raw`(${FIGURE})[\s\u00a0]m²(?! \([^)]* ft²\))`, 'g')
// What one is warmer than another by: steps, which have no zero.
const MORE = '(?:cooler|colder|lower|warmer|hotter|higher)\\b'
const STEPS = new RegExp(String.raw`(${FIGURE})[\s\u00a0](?:°C|K)(?= ${MORE})`, 'g')

// Limits are told in a row: "60, 100, 150 °C". Of lengths a comma ends what goes before.
const IN_C = new RegExp(String.raw`${joined('|, ')}°C(?! \([^)]* °F\)| ${MORE})`, 'g')

/** Where on the plan something is found: two figures in mm without a unit. */
const PLACE = new RegExp(String.raw`\bnear (${FIGURE}), (${FIGURE})(?!\.?\d| ?mm)`, 'g')

function withUnit(whole: string, x: string, y: string): string {
  const inches = (mm: string) => decimals(fromFixedUnit(Number(mm.replace('−', '-')), 'in'), INCH_DECIMALS)
  return `${whole} mm (${inches(x)}, ${inches(y)} in)`
}

function withSteps(whole: string, k: string): string {
  return `${whole} (${decimals(Number(k.replace('−', '-')) * F_PER_K, 1)} °F)`
}

// "12.5 mm" as "12.5 mm (0.492 in)"; spans and sizes with all their figures.
function withInches(whole: string, figures: string): string {
  const inches = figures.replace(/\d+(?:\.\d+)?/g, mm => {
    const places = /\.(\d+)/.exec(mm)?.[1]?.length ?? 0
    return decimals(fromFixedUnit(Number(mm), 'in'), Math.min(MOST_DECIMALS, places + INCH_DECIMALS))
  })
  return `${whole} (${inches} in)`
}

function withFeet(whole: string, m2: string): string {
  return `${whole} (${decimals(Number(m2) / FOOT_M ** 2, 1)} ft²)`
}

function withFahrenheit(whole: string, figures: string): string {
  const degrees = figures.replace(/[−-]?\d+(?:\.\d+)?/g, c =>
    decimals(fromFixedUnit(Number(c.replace('−', '-')), '°F'), 0)
  )
  return `${whole} (${degrees} °F)`
}
