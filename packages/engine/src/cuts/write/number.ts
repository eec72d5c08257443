import type { Dialect } from '../../piece/dialect-field.ts'
import { decimals } from '../../quantity/format.ts'

/** An inch, mm: exact by definition (1959). */
const INCH_MM = 25.4

/**
 * Numbers as a program writes them: in its unit, at its decimals, always with a decimal point, never with an exponent
 * (RS274/NGC, NISTIR 6556, 3.3.2.1 knows none) and never "-0".
 */
export interface Numbers {
  readonly unit: 'mm' | 'in'
  /** Length of one unit, mm. */
  readonly unitMm: number
  /** The smallest step of a length as written, in the unit. */
  readonly step: number
  /** A length in the unit, rounded to what is written. */
  rounded(mm: number): number
  /** A length that is in the unit already. */
  length(value: number): string
  /** A length in mm, as written. */
  mm(mm: number): string
  /** mm/min, as the unit a minute. */
  feed(mmMin: number): string
  seconds(s: number): string
}

/** Slowest feed that is written: a thousandth of it would still not read as none, mm/min. */
export const LEAST_FEED = 1
/** Farthest place that is written, mm: ten times the longest piece. */
export const FARTHEST_MM = 100_000

export function decimalsOf(dialect: Dialect): number {
  return dialect.decimals ?? (dialect.units === 'inch' ? 4 : 3)
}

/** How the numbers of a dialect are written. */
export function numbersOf(dialect: Dialect): Numbers {
  const inch = dialect.units === 'inch'
  const unitMm = inch ? INCH_MM : 1
  const places = decimalsOf(dialect)
  const scale = 10 ** places
  const rounded = (mm: number) => Math.round((mm / unitMm) * scale) / scale + 0
  // Whole steps and their digits: what toFixed would say, several times as fast.
  const length = (value: number) => {
    const steps = Math.round(Math.abs(value) * scale)
    const whole = Math.floor(steps / scale)
    let rest = steps - whole * scale
    let digits = places
    while (digits > 1 && rest % 10 === 0) {
      rest /= 10
      digits--
    }
    return `${value < 0 && steps > 0 ? '-' : ''}${whole}.${rest.toString().padStart(digits, '0')}`
  }
  return {
    unit: inch ? 'in' : 'mm',
    unitMm,
    step: 1 / scale,
    rounded,
    length,
    mm: mm => length(rounded(mm)),
    feed: mmMin => decimals(mmMin / unitMm, inch ? 2 : 1, 0),
    seconds: s => decimals(s, 3, 1)
  }
}
