import type { ZoneClock } from '../quantity/zone-clock.ts'
import { stampOf } from './content-line.ts'

const MIN_MS = 60_000
const DAY_MS = 86_400_000
/** Changes of a clock lie further apart than this: the nearest are those about Ramadan in Morocco, over four weeks. */
const STRIDE_MS = 7 * DAY_MS
/** How far the definition reaches beyond the events, so that one moved by hand is still shown right. */
const BEYOND_MS = 400 * DAY_MS

/** A change of the clock: from `ms` on it is `toMin` ahead of UTC, before it was `fromMin`. */
interface Change {
  readonly ms: number
  readonly fromMin: number
  readonly toMin: number
}

/**
 * The definition of a time zone that goes with the events of a file: a VTIMEZONE (RFC 5545, 3.6.5), with one part for
 * each change of the clock from the last before the first event to a year after the last one. Each says its own
 * moment, on the clock before the change, so that no rule has to be guessed; offsets are those of the zone's clock.
 *
 * Check: ical.js places every event by this definition alone where Intl.DateTimeFormat does (ics.test.ts).
 * Limits: which of two offsets is summer time is told by the larger one; the law of Ireland names them the other way.
 */
export function timeZoneOf(clock: ZoneClock, firstMs: number, lastMs: number): string[] {
  const changes = changesOf(clock, firstMs - BEYOND_MS, lastMs + BEYOND_MS)
  const before = changes.findLastIndex(c => c.ms <= firstMs)
  const from = clock.offsetMin(firstMs - BEYOND_MS)
  const told =
    before < 0 ? [{ ms: firstMs - BEYOND_MS, fromMin: from, toMin: from }, ...changes] : changes.slice(before)
  const least = Math.min(...told.flatMap(c => [c.fromMin, c.toMin]))
  return [
    'BEGIN:VTIMEZONE',
    `TZID:${clock.zone}`,
    ...told.flatMap(c => {
      const kind = c.toMin > least ? 'DAYLIGHT' : 'STANDARD'
      return [
        `BEGIN:${kind}`,
        `DTSTART:${stampOf(c.ms + c.fromMin * MIN_MS)}`,
        `TZOFFSETFROM:${offset(c.fromMin)}`,
        `TZOFFSETTO:${offset(c.toMin)}`,
        `END:${kind}`
      ]
    }),
    'END:VTIMEZONE'
  ]
}

/**
 * Whether the clock of a zone shows this minute only once, so that local time says which is meant. The hour before it is
 * set back comes twice: the first is meant (RFC 5545, 3.3.5), but not every reader holds to that.
 */
export function shownOnce(clock: ZoneClock, ms: number): boolean {
  const wall = ms + clock.offsetMin(ms) * MIN_MS
  return [ms - DAY_MS, ms + DAY_MS].every(near => {
    const other = wall - clock.offsetMin(near) * MIN_MS
    return other === ms || clock.offsetMin(other) !== clock.offsetMin(near)
  })
}

/** Whether a name can stand as a TZID as it is; "+02:00" could not. */
export function isZoneName(zone: string): boolean {
  return /^[A-Za-z][A-Za-z0-9_+/-]*$/.test(zone)
}

function changesOf(clock: ZoneClock, fromMs: number, toMs: number): Change[] {
  const out: Change[] = []
  for (let a = fromMs; a < toMs; a += STRIDE_MS) {
    const [was, is] = [clock.offsetMin(a), clock.offsetMin(a + STRIDE_MS)]
    if (was === is) continue
    let [lo, hi] = [a, a + STRIDE_MS]
    while (hi - lo > MIN_MS) {
      const mid = lo + Math.floor((hi - lo) / 2 / MIN_MS) * MIN_MS
      if (clock.offsetMin(mid) === was) lo = mid
      else hi = mid
    }
    out.push({ ms: hi, fromMin: was, toMin: is })
  }
  return out
}

function offset(min: number): string {
  const two = (x: number) => String(Math.floor(x)).padStart(2, '0')
  return `${min < 0 ? '-' : '+'}${two(Math.abs(min) / 60)}${two(Math.abs(min) % 60)}`
}
