import { DrawingError, quote } from './drawing-error.ts'
import { Scanner } from './scanner.ts'

/**
 * Lengths of an SVG text.
 *
 *   1 in = 25.4 mm exactly; 1 px = 1/96 in, 1 pt = 1/72 in, 1 pc = 1/6 in, 1 Q = 1/4 mm
 *
 * Source: CSS Values and Units Module Level 3, section 6.2 "Absolute lengths" (W3C; memory), which SVG 2
 * refers to. Units are read in capitals and small letters alike. Kept as fractions of whole numbers, so that
 * 8.5 in is the double nearest to 215.9 mm.
 */
const MM_PER_UNIT: Readonly<Record<string, readonly [over: number, under: number]>> = {
  mm: [1, 1],
  cm: [10, 1],
  q: [1, 4],
  in: [254, 10],
  pt: [254, 720],
  pc: [254, 60],
  px: [254, 960]
}

/** One CSS pixel, mm. */
export const MM_PER_PX = 25.4 / 96

/** A length as written; a plain number has the unit ''. */
export interface Length {
  readonly value: number
  readonly unit: '' | '%' | 'mm' | 'cm' | 'q' | 'in' | 'pt' | 'pc' | 'px'
}

/**
 * @param what the attribute, for messages
 * @throws DrawingError for what is no length, has another unit (em and ex depend on a font), or is too large
 */
export function readLength(text: string, what: string): Length {
  const s = new Scanner(text)
  s.skipBlanks()
  const value = s.number()
  const unit = s.take('%') ? '%' : s.word().toLowerCase()
  s.skipBlanks()
  if (value === null || !s.done || !(unit === '' || unit === '%' || Object.hasOwn(MM_PER_UNIT, unit))) {
    throw new DrawingError(
      `${what}=${quote(text)}; allowed: a number, with a unit out of mm, cm, in, pt, pc, px, Q, % or none`
    )
  }
  return { value, unit: unit as Length['unit'] }
}

/** In millimetres, a plain number taken as px; null for a share of something unknown (%). */
export function lengthMm({ value, unit }: Length): number | null {
  if (unit === '%') return null
  const [over, under] = MM_PER_UNIT[unit === '' ? 'px' : unit]!
  return (value * over) / under
}

/** In user units (px before any transform); a percentage is of `whole`. */
export function userLength({ value, unit }: Length, whole: number): number {
  if (unit === '' || unit === 'px') return value
  if (unit === '%') return (value / 100) * whole
  const [over, under] = MM_PER_UNIT[unit]!
  const [overPx, underPx] = MM_PER_UNIT['px']!
  return (value * over * underPx) / (under * overPx)
}
