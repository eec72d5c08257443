import type { Shop } from '../piece/shop-schema.ts'

const DAY = 24 * 60

/** A moment of a document on the clock on the wall where the piece is made. */
export interface LocalTime {
  /** Milliseconds since 1970, UTC. */
  readonly ms: number
  /** What the clock there is ahead of UTC, min. */
  readonly offsetMin: number
}

/**
 * A moment (ISO 8601 with offset) as the shop's clock shows it: the offset it was typed with, or that of the
 * shop's time zone where it was typed in UTC.
 *
 * Limits: the offset of that moment holds for the days that follow; a change to or from summer time within
 * them is an hour that is not seen.
 */
export function localTime(moment: string, shop: Pick<Shop, 'timeZone'>): LocalTime {
  const ms = Date.parse(moment)
  const sign = /([+-])(\d\d):(\d\d)$/.exec(moment)
  if (sign !== null)
    return { ms, offsetMin: (sign[1] === '-' ? -1 : 1) * (Number(sign[2]) * 60 + Number(sign[3])) }
  return { ms, offsetMin: zoneOffsetMin(shop.timeZone, ms) }
}

function zoneOffsetMin(timeZone: string, ms: number): number {
  let name: string
  try {
    const parts = new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName: 'longOffset' }).formatToParts(ms)
    name = parts.find(p => p.type === 'timeZoneName')?.value ?? ''
  } catch {
    return 0
  }
  const sign = /GMT([+-])(\d\d):(\d\d)/.exec(name)
  return sign === null ? 0 : (sign[1] === '-' ? -1 : 1) * (Number(sign[2]) * 60 + Number(sign[3]))
}

/** Minutes since midnight there, 0 to 1440, `laterMin` after the moment. */
export function minuteOfDay(at: LocalTime, laterMin = 0): number {
  const min = at.ms / 60_000 + at.offsetMin + laterMin
  return ((min % DAY) + DAY) % DAY
}

const DAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const
export type Weekday = (typeof DAYS)[number]

/** The day of the week there, `laterMin` after the moment. */
export function weekday(at: LocalTime, laterMin = 0): Weekday {
  return DAYS[new Date(at.ms + (at.offsetMin + laterMin) * 60_000).getUTCDay()]!
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
