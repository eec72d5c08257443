import type { Complaints } from './complaint.ts'

/** Functions of the standard (NISTIR 6556, 3.3.2.4). */
export const FUNCTIONS = [
  'ABS',
  'ACOS',
  'ASIN',
  'ATAN',
  'COS',
  'EXP',
  'FIX',
  'FUP',
  'LN',
  'ROUND',
  'SIN',
  'SQRT',
  'TAN'
] as const
type FunctionName = (typeof FUNCTIONS)[number]

export const PER_DEGREE = Math.PI / 180

/**
 * Value of a function, angles in degrees. ROUND goes away from 0 at a half (memory).
 * A function with no value there leaves the line.
 */
export function functionValue(
  name: Exclude<FunctionName, 'ATAN'>,
  a: number,
  column: number,
  complaints: Complaints
): number {
  const within = (ok: boolean, allowed: string): void => {
    if (!ok) complaints.fail(column, `${name} has no value there.`, `${name}[${a}]`, allowed)
  }
  switch (name) {
    case 'ABS':
      return Math.abs(a)
    case 'ACOS':
      within(a >= -1 && a <= 1, 'from -1 to 1')
      return Math.acos(a) / PER_DEGREE
    case 'ASIN':
      within(a >= -1 && a <= 1, 'from -1 to 1')
      return Math.asin(a) / PER_DEGREE
    case 'COS':
      return Math.cos(a * PER_DEGREE)
    case 'EXP':
      return Math.exp(a)
    case 'FIX':
      return Math.floor(a)
    case 'FUP':
      return Math.ceil(a)
    case 'LN':
      within(a > 0, 'above 0')
      return Math.log(a)
    case 'ROUND':
      return a < 0 ? -Math.floor(0.5 - a) : Math.floor(a + 0.5)
    case 'SIN':
      return Math.sin(a * PER_DEGREE)
    case 'SQRT':
      within(a >= 0, '0 or more')
      return Math.sqrt(a)
    default:
      return Math.tan(a * PER_DEGREE)
  }
}
