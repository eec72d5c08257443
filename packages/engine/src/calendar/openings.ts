import type { Shop } from '../piece/shop-schema.ts'
import { dayText } from '../quantity/day.ts'
import { dayNumber, dayOfNumber, zoneClock } from '../quantity/zone-clock.ts'
import type { Opening } from './task.ts'

const NAMES = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const
/** Hours at the bench where the shop gives none, and when it is not night, min of the day: practice. */
const DEFAULT_FROM = 7 * 60
const DEFAULT_TO = 22 * 60

/** The facts of a shop that its hours follow from. */
export type ShopHours = Pick<Shop, 'timeZone' | 'hours'> & {
  /** Days nobody is there (YYYY-MM-DD). */
  readonly away?: readonly string[]
}

/**
 * Hours at the bench over so many weeks from a moment, in true minutes since it. Hours are local clock, so on the
 * day of a change to summer time 1 to 4 o'clock is two hours, and on the way back four. Where the shop gives no
 * hours: 7 to 22, practice. Days away are left out.
 *
 * @param fromMs the origin, ms since 1970, a whole minute
 * @param weeks 1 or more
 * Check: days of change in Europe and America, by hand in the test; the platform's own local clock at both ends.
 */
export function openingsOf(shop: ShopHours, fromMs: number, weeks: number): Opening[] {
  return spans(shop, fromMs, weeks, weekday =>
    shop.hours === undefined ? [[DEFAULT_FROM, DEFAULT_TO]] : shop.hours[weekday].map(minutesOf)
  )
}

/** Odd hours: before 8 and from 20 o'clock, practice: attended work is put elsewhere where that costs nothing. */
export function oddHours(shop: ShopHours, fromMs: number, weeks: number): Opening[] {
  return spans({ ...shop, away: [] }, fromMs, weeks, () => [
    [0, 8 * 60],
    [20 * 60, 24 * 60]
  ])
}

/** Nights, 22 to 7 o'clock: practice; days away or not. */
export function nightHours(shop: ShopHours, fromMs: number, weeks: number): Opening[] {
  return spans({ ...shop, away: [] }, fromMs, weeks, () => [
    [0, DEFAULT_FROM],
    [DEFAULT_TO, 24 * 60]
  ])
}

/** Midnights of the shop's clock, the one before the origin first: a day may last 23 or 25 hours. */
export function midnightsOf(shop: ShopHours, fromMs: number, days: number): number[] {
  const clock = zoneClock(shop.timeZone)
  const first = dayNumber(clock.shown(fromMs))
  return Array.from(
    { length: days + 1 },
    (_, n) => (clock.moment(dayOfNumber(first + n), 0) - fromMs) / 60_000
  )
}

/** Whether the shop's hours never occur: every day of the week is given and empty. */
export function neverOpen(shop: ShopHours): boolean {
  const { hours } = shop
  return hours !== undefined && NAMES.every(n => hours[n].length === 0)
}

function spans(
  shop: ShopHours,
  fromMs: number,
  weeks: number,
  ofDay: (weekday: (typeof NAMES)[number]) => readonly (readonly [number, number])[]
): Opening[] {
  const clock = zoneClock(shop.timeZone)
  const away = new Set(shop.away ?? [])
  const first = dayNumber(clock.shown(fromMs))
  const last = weeks * 7 * 1440
  const out: [number, number][] = []
  for (let n = first; n <= first + weeks * 7; n++) {
    const day = dayOfNumber(n)
    if (away.has(dayText(day))) continue
    // 1970-01-01 was a Thursday.
    for (const [a, b] of ofDay(NAMES[(n + 4) % 7]!)) {
      const lo = Math.max(0, (clock.moment(day, a) - fromMs) / 60_000)
      const hi = Math.min(last, (clock.moment(day, b) - fromMs) / 60_000)
      if (hi > lo) out.push([lo, hi])
    }
  }
  return joined(out)
}

/** Openings in order; those that overlap, or are no farther apart than so many minutes, are one. */
export function joined(list: readonly Opening[], apartMin = 0): Opening[] {
  const out: [number, number][] = []
  for (const [a, b] of [...list].sort((x, y) => x[0] - y[0])) {
    const end = out.at(-1)
    if (end !== undefined && a <= end[1] + apartMin) end[1] = Math.max(end[1], b)
    else out.push([a, b])
  }
  return out
}

function minutesOf(opening: string): readonly [number, number] {
  const [a, b, c, d] = opening.split(/[:-]/).map(Number)
  return [a! * 60 + b!, c! * 60 + d!]
}
