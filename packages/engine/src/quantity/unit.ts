/**
 * Units at the edge of the engine: what each accepted unit word is worth in the document's fixed unit.
 *
 * Lengths are millimetres, masses grams, volumes millilitres, temperatures degrees Celsius, times minutes.
 * Every factor is exact by definition, written as the expression that defines it:
 * - inch 25.4 mm; international foot 12 in (international yard and pound agreement, 1959)
 * - avoirdupois pound 453.59237 g; ounce 1/16 lb (same agreement)
 * - US liquid gallon 231 in³; quart 1/4, pint 1/8, fluid ounce 1/128 of it (NIST Handbook 44, appendix C)
 * - °C = (°F − 32) × 5/9; K = °C + 273.15 (SI brochure)
 */
export type Dimension = 'length' | 'mass' | 'volume' | 'temperature' | 'time' | 'percent'

/** value in the fixed unit = (typed + before) × factor + after; only temperatures use the offsets. */
export interface Unit {
  readonly dimension: Dimension
  /** Fixed units per typed unit. */
  readonly factor: number
  readonly before?: number
  readonly after?: number
}

const INCH_ML = 25.4 ** 3 / 1000
const GALLON_ML = 231 * INCH_ML
const POUND_G = 453.59237

/** Every unit word a document may use, by dimension. The first of each dimension is the fixed unit. */
export const UNITS: Readonly<Record<string, Unit>> = {
  mm: { dimension: 'length', factor: 1 },
  cm: { dimension: 'length', factor: 10 },
  m: { dimension: 'length', factor: 1000 },
  in: { dimension: 'length', factor: 25.4 },
  ft: { dimension: 'length', factor: 12 * 25.4 },
  g: { dimension: 'mass', factor: 1 },
  kg: { dimension: 'mass', factor: 1000 },
  oz: { dimension: 'mass', factor: POUND_G / 16 },
  lb: { dimension: 'mass', factor: POUND_G },
  ml: { dimension: 'volume', factor: 1 },
  l: { dimension: 'volume', factor: 1000 },
  'fl oz': { dimension: 'volume', factor: GALLON_ML / 128 },
  pt: { dimension: 'volume', factor: GALLON_ML / 8 },
  qt: { dimension: 'volume', factor: GALLON_ML / 4 },
  gal: { dimension: 'volume', factor: GALLON_ML },
  '°C': { dimension: 'temperature', factor: 1 },
  '°F': { dimension: 'temperature', factor: 5 / 9, before: -32 },
  K: { dimension: 'temperature', factor: 1, after: -273.15 },
  min: { dimension: 'time', factor: 1 },
  s: { dimension: 'time', factor: 1 / 60 },
  h: { dimension: 'time', factor: 60 },
  d: { dimension: 'time', factor: 24 * 60 },
  '%': { dimension: 'percent', factor: 1 }
}

/** The unit in which a document's bare numbers of a dimension are read. */
export const FIXED_UNIT: Readonly<Record<Dimension, string>> = {
  length: 'mm',
  mass: 'g',
  volume: 'ml',
  temperature: '°C',
  time: 'min',
  percent: '%'
}

/** Unit words of one dimension, as they are offered in messages. */
export function unitsOf(dimension: Dimension): string[] {
  return Object.keys(UNITS).filter(word => UNITS[word]!.dimension === dimension)
}

/** From a number in `unit` to the fixed unit of its dimension. Throws on an unknown unit word. */
export function toFixedUnit(value: number, unit: string): number {
  const u = known(unit)
  return (value + (u.before ?? 0)) * u.factor + (u.after ?? 0)
}

/** From the fixed unit to `unit`; the inverse of {@link toFixedUnit}. Throws on an unknown unit word. */
export function fromFixedUnit(value: number, unit: string): number {
  const u = known(unit)
  return (value - (u.after ?? 0)) / u.factor - (u.before ?? 0)
}

function known(unit: string): Unit {
  const u = UNITS[unit]
  if (!u) throw new Error(`unknown unit "${unit}"; known: ${Object.keys(UNITS).join(', ')}`)
  return u
}
