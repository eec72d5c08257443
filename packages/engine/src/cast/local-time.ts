import type { Shop } from '../piece/shop-schema.ts'
import type { ZoneClock } from '../quantity/zone-clock.ts'
import { dayNumber, fixedClock, typedOffsetMin, zoneClock } from '../quantity/zone-clock.ts'

/** A moment of a document on the clock on the wall where the piece is made. */
export interface LocalTime {
  /** Milliseconds since 1970, UTC. */
  readonly ms: number
  readonly clock: ZoneClock
}

/**
 * A moment (ISO 8601 with offset) on the shop's clock, right through changes to and from summer time. Typed with an
 * offset that the shop's zone does not have then, it is on a clock of that offset: the maker's word for where it is
 * made.
 *
 * Check: days of change in Berlin by hand (bench-hours.test.ts).
 */
export function localTime(moment: string, shop: Pick<Shop, 'timeZone'>): LocalTime {
  const ms = Date.parse(moment)
  const clock = zoneClock(shop.timeZone)
  const typed = typedOffsetMin(moment)
  return { ms, clock: typed === null || typed === clock.offsetMin(ms) ? clock : fixedClock(typed) }
}

/** Minutes since midnight there, 0 to 1440, `laterMin` after the moment. */
export function minuteOfDay({ ms, clock }: LocalTime, laterMin = 0): number {
  const at = ms + laterMin * 60_000
  // Parts of a minute too.
  return clock.shown(at).minute + (at / 60_000 - Math.floor(at / 60_000))
}

const DAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const
export type Weekday = (typeof DAYS)[number]

/** The day of the week there, `laterMin` after the moment. */
export function weekday({ ms, clock }: LocalTime, laterMin = 0): Weekday {
  return weekdayOf(dayNumber(clock.shown(ms + laterMin * 60_000)))
}

/** The weekday of a day counted from 1970-01-01, a Thursday. */
export function weekdayOf(day: number): Weekday {
  return DAYS[(((day + 4) % 7) + 7) % 7]!
}

const NAMES = {
  sun: 'Sunday',
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday'
} as const

/** "23:50 on Saturday". */
export function timeWords(at: LocalTime, laterMin = 0): string {
  const min = Math.floor(minuteOfDay(at, laterMin) + 1e-6)
  const two = (x: number) => String(x).padStart(2, '0')
  return `${two(Math.floor(min / 60))}:${two(min % 60)} on ${NAMES[weekday(at, laterMin)]}`
}
