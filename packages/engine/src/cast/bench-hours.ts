import type { Shop } from '../piece/shop-schema.ts'
import { dayNumber, dayOfNumber } from '../quantity/zone-clock.ts'
import type { LocalTime } from './local-time.ts'
import { minuteOfDay, weekday, weekdayOf } from './local-time.ts'

/** Night where the shop gives no hours at the bench, from and to, min after midnight: practice. */
const NIGHT_FROM = 22 * 60
const NIGHT_TO = 7 * 60

/** A span in minutes after a moment. */
export type Span = readonly [from: number, to: number]

/** Why nobody is there at a time: night or no hours at the bench; null when someone is. */
export function nobodyThere(shop: Shop, at: LocalTime, laterMin: number): 'night' | 'away' | null {
  const min = minuteOfDay(at, laterMin)
  const night = min >= NIGHT_FROM || min < NIGHT_TO
  if (shop.hours === undefined) return night ? 'night' : null
  const open = shop.hours[weekday(at, laterMin)].some(o => {
    const [from, to] = minutesOf(o)
    return min >= from && min < to
  })
  return open ? null : night ? 'night' : 'away'
}

/**
 * The parts of a span in which someone is there, in minutes after the moment: hours at the bench, or the day
 * from 7 to 22 where the shop gives none.
 */
export function attended(shop: Shop, at: LocalTime, span: Span): Span[] {
  const [from, to] = span
  const { ms, clock } = at
  const later = (day: number, minute: number) => (clock.moment(dayOfNumber(day), minute) - ms) / 60_000
  const out: Span[] = []
  const first = dayNumber(clock.shown(ms + from * 60_000))
  // Ninety days at the most: a span without end is asked for its beginning.
  for (let day = first; day <= first + 90 && later(day, 0) < to; day++) {
    const hours =
      shop.hours === undefined ? [[NIGHT_TO, NIGHT_FROM] as Span] : shop.hours[weekdayOf(day)].map(minutesOf)
    for (const [a, b] of hours) {
      const lo = Math.max(from, later(day, a))
      const hi = Math.min(to, later(day, b))
      if (hi > lo) out.push([lo, hi])
    }
  }
  return out
}

function minutesOf(opening: string): Span {
  const [a, b, c, d] = opening.split(/[:-]/).map(Number)
  return [a! * 60 + b!, c! * 60 + d!]
}
