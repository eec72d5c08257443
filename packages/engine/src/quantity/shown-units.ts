import { decimals, formatInchFraction } from './format.ts'
import { fromFixedUnit } from './unit.ts'

/** The units a drawing or a list is written in. What is stored keeps its own. */
export interface ShownUnits {
  readonly length: 'mm' | 'in' | 'in fraction'
  readonly temperature: '°C' | '°F'
  readonly mass: 'g' | 'oz'
}

export const METRIC: ShownUnits = { length: 'mm', temperature: '°C', mass: 'g' }

/** Fractions of an inch in drawings: as fine as 0.1 mm asks for, and as coarse as whole mm do. */
const FINE = 64
const COARSE = 16
/** Below four of the finest lines a fraction says too little, mm: half a line is an eighth of it and more (practice). */
const LEAST_FRACTION_MM = (4 * 25.4) / FINE
/** More decimals of an inch than of a mm, so that what is shown is as sure: 0.001 in for 0.1 mm. */
const INCH_DECIMALS = 2

/**
 * A length without its unit: mm with at most `most` and at least `least` decimals; inches as sure as that, in fractions
 * but for the smallest. Figures of a chain are rounded one by one, as in mm.
 */
export function lengthIn(units: ShownUnits, mm: number, most: number, least = 0): string {
  if (units.length === 'mm') return decimals(mm, most, least)
  const small = most > 0 && Math.abs(mm) < LEAST_FRACTION_MM
  if (units.length === 'in' || small) return decimals(fromFixedUnit(mm, 'in'), most + INCH_DECIMALS)
  return formatInchFraction(mm, most === 0 ? COARSE : FINE).replace(/ in$/, '')
}

export function lengthUnit(units: ShownUnits): 'mm' | 'in' {
  return units.length === 'mm' ? 'mm' : 'in'
}

/** A temperature without its unit, whole degrees. */
export function degreesIn(units: ShownUnits, celsius: number): string {
  return decimals(fromFixedUnit(celsius, units.temperature), 0)
}

/** From this many ounces a mass is said in pounds. */
const MOST_OZ = 48
const OZ_PER_LB = 16

/** A mass with its unit: `metric` writes grams and kilograms; ounces to 0.1, pounds to 0.1. */
export function massIn(units: ShownUnits, g: number, metric: (g: number) => string): string {
  if (units.mass === 'g') return metric(g)
  const oz = fromFixedUnit(g, 'oz')
  return oz < MOST_OZ ? `${decimals(oz, 1)} oz` : `${decimals(oz / OZ_PER_LB, 1)} lb`
}
