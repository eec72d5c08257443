import { numberIn } from './cup-table.ts'

/** How the times of a table are written. */
export type TimeForm = 'clock' | 'elapsed' | 'number'

/** One time as written: minutes of its own scale, and its form. */
export interface Time {
  readonly min: number
  readonly form: TimeForm
  /** Days since 1970 where the cell has a date. */
  readonly day: number | null
}

const CLOCK =
  /^(?:(\d{4})-(\d{2})-(\d{2})[T ]\s*)?(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,]\d{1,6})?)?\s*(am|pm|a\.m\.|p\.m\.)?(?:Z|[+-]\d{2}:?\d{2})?$/i
const WITH_UNIT = /^([0-9.,]+)\s*(s|sec|secs|seconds|min|mins|minutes|m|h|hr|hrs|hours)$/i
const LONG = /^(\d{1,3})\s*h\s*(\d{1,2})\s*(?:m|min)?$/i

/** Minutes in a unit word of time; null for no such word. */
export function minutesIn(unit: string): number | null {
  if (/^(?:s|sec|secs|second|seconds)$/i.test(unit)) return 1 / 60
  if (/^(?:m|min|mins|minute|minutes)$/i.test(unit)) return 1
  return /^(?:h|hr|hrs|hour|hours)$/i.test(unit) ? 60 : null
}

/** Reads a time: "14:05", "2:05 pm", "2026-11-27 14:05", "0:35", "1 h 20", "90 min", "90". null: none. */
export function timeIn(cell: string, decimalComma: boolean): Time | null {
  const clock = CLOCK.exec(cell)
  if (clock) {
    const [, y, mo, d, h, m, s, half] = clock
    let hours = Number(h)
    if (Number(m) > 59 || Number(s ?? 0) > 59) return null
    if (half !== undefined) {
      if (hours < 1 || hours > 12) return null
      hours = (hours % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0)
    }
    const day = y === undefined ? null : Date.UTC(Number(y), Number(mo) - 1, Number(d)) / 86_400_000
    if (day !== null && hours > 23) return null
    return {
      min: hours * 60 + Number(m) + Number(s ?? 0) / 60,
      form: half === undefined && day === null ? 'elapsed' : 'clock',
      day
    }
  }
  const long = LONG.exec(cell)
  if (long) return { min: Number(long[1]) * 60 + Number(long[2]), form: 'number', day: null }
  const united = WITH_UNIT.exec(cell)
  if (united) {
    const value = numberIn(united[1]!, true)
    return value === null ? null : { min: value * minutesIn(united[2]!)!, form: 'number', day: null }
  }
  const plain = numberIn(cell, decimalComma)
  return plain === null ? null : { min: plain, form: 'number', day: null }
}

/** A clock of the day as minutes, "14:05" or "2:05 pm"; null for none. */
export function clockIn(text: string): number | null {
  const time = timeIn(text, false)
  return time === null || time.form === 'number' || time.min >= 24 * 60 ? null : time.min
}
