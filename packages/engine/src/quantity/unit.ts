/**
 * Units at the edge of the engine: what each accepted unit word is worth in the document's fixed unit.
 *
 * Lengths are millimetres, masses grams, volumes millilitres, temperatures degrees Celsius, times minutes.
 * Every factor is exact by definition, written as a whole number over a whole number, so that a value typed with
 * few digits comes out as the double nearest to it: 1.5 in is 38.1 mm, not 38.099999999999994. The definitions:
 * - inch 25.4 mm; international foot 12 in (international yard and pound agreement, 1959)
 * - avoirdupois pound 453.59237 g; ounce 1/16 lb (same agreement)
 * - US liquid gallon 231 in³; quart 1/4, pint 1/8, fluid ounce 1/128 of it (NIST Handbook 44, appendix C)
 * - °C = (°F − 32) × 5/9; K = °C + 273.15 (SI brochure)
 */
export type Dimension = 'length' | 'mass' | 'volume' | 'temperature' | 'time' | 'percent'

/** value in the fixed unit = (typed + before) × times / per + after; only temperatures use the offsets. */
export interface Unit {
  readonly dimension: Dimension
  /** Fixed units per typed unit: `times` / `per`; `per` is 1 when left out. */
  readonly times: number
  readonly per?: number
  readonly before?: number
  readonly after?: number
}

/** 231 in³ of 25.4³ mm³, in millionths of a millilitre: 231 × 254³. */
const GALLON_MILLIONTHS = 231 * 254 ** 3
/** 453.59237 g in hundred-thousandths of a gram. */
const POUND_100_THOUSANDTHS = 45_359_237

/** Every unit word a document may use, by dimension. The first of each dimension is the fixed unit. */
export const UNITS: Readonly<Record<string, Unit>> = {
  mm: { dimension: 'length', times: 1 },
  cm: { dimension: 'length', times: 10 },
  m: { dimension: 'length', times: 1000 },
  in: { dimension: 'length', times: 254, per: 10 },
  ft: { dimension: 'length', times: 12 * 254, per: 10 },
  g: { dimension: 'mass', times: 1 },
  kg: { dimension: 'mass', times: 1000 },
  oz: { dimension: 'mass', times: POUND_100_THOUSANDTHS, per: 16 * 100_000 },
  lb: { dimension: 'mass', times: POUND_100_THOUSANDTHS, per: 100_000 },
  ml: { dimension: 'volume', times: 1 },
  l: { dimension: 'volume', times: 1000 },
  'fl oz': { dimension: 'volume', times: GALLON_MILLIONTHS, per: 128 * 1_000_000 },
  pt: { dimension: 'volume', times: GALLON_MILLIONTHS, per: 8 * 1_000_000 },
  qt: { dimension: 'volume', times: GALLON_MILLIONTHS, per: 4 * 1_000_000 },
  gal: { dimension: 'volume', times: GALLON_MILLIONTHS, per: 1_000_000 },
  '°C': { dimension: 'temperature', times: 1 },
  '°F': { dimension: 'temperature', times: 5, per: 9, before: -32 },
  K: { dimension: 'temperature', times: 1, after: -273.15 },
  min: { dimension: 'time', times: 1 },
  s: { dimension: 'time', times: 1, per: 60 },
  h: { dimension: 'time', times: 60 },
  d: { dimension: 'time', times: 24 * 60 },
  '%': { dimension: 'percent', times: 1 }
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
  return ((value + (u.before ?? 0)) * u.times) / (u.per ?? 1) + (u.after ?? 0)
}

/** From the fixed unit to `unit`; the inverse of {@link toFixedUnit}. Throws on an unknown unit word. */
export function fromFixedUnit(value: number, unit: string): number {
  const u = known(unit)
  return ((value - (u.after ?? 0)) * (u.per ?? 1)) / u.times - (u.before ?? 0)
}

function known(unit: string): Unit {
  const u = Object.hasOwn(UNITS, unit) ? UNITS[unit] : undefined
  if (!u) throw new Error(`unknown unit "${unit}"; known: ${Object.keys(UNITS).join(', ')}`)
  return u
}
