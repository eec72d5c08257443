import { kept } from './kept.ts'

const DAY_MS = 86_400_000
const MIN_MS = 60_000

/**
 * The clock on the wall of an IANA time zone, right through changes to and from summer time. Rules come from the
 * platform (Intl); UTC where it does not know the zone.
 *
 * Check: changes of Europe/Berlin, America/New_York and Australia/Lord_Howe (half an hour) on their days.
 */
export interface ZoneClock {
  readonly zone: string
  /** What the clock there is ahead of UTC at a moment (ms since 1970), min. */
  offsetMin(ms: number): number
  /** The moment (ms) at which the clock shows this; a time skipped in spring is the change, one shown twice the first. */
  moment(day: LocalDay, minute: number): number
  /** Day and minute of the day that the clock shows. */
  shown(ms: number): LocalDay & { readonly minute: number }
}

export interface LocalDay {
  readonly year: number
  /** 1 to 12. */
  readonly month: number
  readonly day: number
}

export function zoneClock(timeZone: string): ZoneClock {
  return kept(clocks, timeZone, () => made(timeZone))
}

// A clock remembers what it was asked: one for each zone.
const clocks = new Map<string, ZoneClock>()

/** Whether the platform knows a time zone of this name. */
export function isZone(name: string): boolean {
  if (name === 'UTC') return true
  try {
    return new Intl.DateTimeFormat('en-GB', { timeZone: name }).resolvedOptions().timeZone !== ''
  } catch {
    return false
  }
}

/** A clock that is always so many minutes ahead of UTC: a moment that was typed with an offset no zone here has. */
export function fixedClock(aheadMin: number): ZoneClock {
  return { zone: offsetWords(aheadMin), offsetMin: () => aheadMin, ...readings(() => aheadMin) }
}

/** Minutes ahead of UTC as ISO 8601 writes them: "+01:00". */
export function offsetWords(min: number): string {
  const two = (x: number) => String(Math.floor(x)).padStart(2, '0')
  return `${min < 0 ? '-' : '+'}${two(Math.abs(min) / 60)}:${two(Math.abs(min) % 60)}`
}

function made(timeZone: string): ZoneClock {
  let format: Intl.DateTimeFormat | null = null
  try {
    // Nothing is asked of the platform about UTC: the first question costs 30 ms.
    if (timeZone !== 'UTC')
      format = new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName: 'longOffset' })
  } catch {
    format = null
  }
  // The name as the list of zones spells it; an old name that was given stays.
  const listed = format?.resolvedOptions().timeZone ?? 'UTC'
  const zone = format === null || listed.toLowerCase() === timeZone.toLowerCase() ? listed : timeZone
  const known = new Map<number, number>()
  const offsetMin = (ms: number): number => {
    if (format === null) return 0
    // Offsets change on quarters of an hour: one look-up for each.
    const key = Math.floor(ms / (15 * MIN_MS))
    const had = known.get(key)
    if (had !== undefined) return had
    const name = format.formatToParts(key * 15 * MIN_MS).find(p => p.type === 'timeZoneName')?.value ?? ''
    const min = typedOffsetMin(name) ?? 0
    known.set(key, min)
    return min
  }
  return { zone, offsetMin, ...readings(offsetMin) }
}

/** The offset a moment was typed with, "+01:00" at its end, min; null in UTC. */
export function typedOffsetMin(moment: string): number | null {
  const sign = /([+-])(\d\d):(\d\d)$/.exec(moment)
  return sign === null ? null : (sign[1] === '-' ? -1 : 1) * (Number(sign[2]) * 60 + Number(sign[3]))
}

function readings(offsetMin: (ms: number) => number): Pick<ZoneClock, 'moment' | 'shown'> {
  return {
    moment(day, minute) {
      const wall = Date.UTC(day.year, day.month - 1, day.day) + minute * MIN_MS
      // The offset before any change near by, and the one after it.
      const early = offsetMin(wall - DAY_MS)
      const late = offsetMin(wall + DAY_MS)
      const first = wall - early * MIN_MS
      if (offsetMin(first) === early) return first
      const second = wall - late * MIN_MS
      if (offsetMin(second) === late) return second
      // Skipped: the moment of the change itself.
      let lo = Math.min(first, second)
      let hi = Math.max(first, second)
      while (hi - lo > MIN_MS) {
        const mid = lo + Math.floor((hi - lo) / 2 / MIN_MS) * MIN_MS
        if (offsetMin(mid) === early) lo = mid
        else hi = mid
      }
      return hi
    },
    shown(ms) {
      const wall = new Date(ms + offsetMin(ms) * MIN_MS)
      return {
        year: wall.getUTCFullYear(),
        month: wall.getUTCMonth() + 1,
        day: wall.getUTCDate(),
        minute: wall.getUTCHours() * 60 + wall.getUTCMinutes()
      }
    }
  }
}

/** Days since 1970-01-01 of a day of the calendar. */
export function dayNumber(d: LocalDay): number {
  return Math.round(Date.UTC(d.year, d.month - 1, d.day) / DAY_MS)
}

export function dayOfNumber(n: number): LocalDay {
  const d = new Date(n * DAY_MS)
  return { year: d.getUTCFullYear(), month: d.getUTCMonth() + 1, day: d.getUTCDate() }
}
