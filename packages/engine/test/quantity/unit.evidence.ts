import { parseQuantity } from '../../src/quantity/parse.ts'
import type { Dimension } from '../../src/quantity/unit.ts'
import type { Evidence } from '../evidence.ts'

const YARD =
  'international yard and pound agreement, 1 July 1959 (24 FR 5348): 1 yd = 0.9144 m, 1 lb = 0.45359237 kg'
const HANDBOOK =
  'NIST Handbook 44, appendix C: a US gallon is 231 cubic inches; 4 quarts, 8 pints, 128 fluid ounces'
const BROCHURE = 'SI brochure, 9th edition: t/°C = T/K − 273.15; table 8 for min, h, d and litre'
const FAHRENHEIT = 'NIST SP 811, appendix B.8: t/°C = (t/°F − 32)/1.8'

function exact(
  text: string,
  dimension: Dimension,
  published: number,
  unit: string,
  source: string
): Evidence {
  return {
    model: 'quantity/unit',
    what: text,
    source,
    confidence: 'exact',
    unit,
    published,
    tolerance: dimension === 'temperature' ? 1e-12 : 0,
    why: 'exact by definition; an offset may cost the last digit of a double',
    ours: () => parseQuantity(text, dimension)!.value
  }
}

/** Units a document may use, against the digits of their definitions. */
export const rows: readonly Evidence[] = [
  exact('1 in', 'length', 25.4, 'mm', YARD),
  exact('1 ft', 'length', 304.8, 'mm', YARD),
  exact('1 1/2 in', 'length', 38.1, 'mm', YARD),
  exact('23/32 in', 'length', 18.25625, 'mm', YARD),
  exact('1 cm', 'length', 10, 'mm', BROCHURE),
  exact('1 m', 'length', 1000, 'mm', BROCHURE),
  exact('1 lb', 'mass', 453.59237, 'g', YARD),
  exact('1 oz', 'mass', 28.349523125, 'g', YARD),
  exact('16 oz', 'mass', 453.59237, 'g', YARD),
  exact('1 kg', 'mass', 1000, 'g', BROCHURE),
  exact('1 gal', 'volume', 3785.411784, 'ml', HANDBOOK),
  exact('1 qt', 'volume', 946.352946, 'ml', HANDBOOK),
  exact('1 pt', 'volume', 473.176473, 'ml', HANDBOOK),
  exact('1 fl oz', 'volume', 29.5735295625, 'ml', HANDBOOK),
  exact('1 l', 'volume', 1000, 'ml', BROCHURE),
  exact('32 °F', 'temperature', 0, '°C', FAHRENHEIT),
  exact('212 °F', 'temperature', 100, '°C', FAHRENHEIT),
  exact('-40 °F', 'temperature', -40, '°C', FAHRENHEIT),
  exact('273.15 K', 'temperature', 0, '°C', BROCHURE),
  exact('1 h', 'time', 60, 'min', BROCHURE),
  exact('1 d', 'time', 1440, 'min', BROCHURE),
  exact('90 s', 'time', 1.5, 'min', BROCHURE)
]
