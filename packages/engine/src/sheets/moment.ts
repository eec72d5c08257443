import type { LocalTime } from '../cast/local-time.ts'
import { localTime } from '../cast/local-time.ts'
import { beginsOf } from '../cast/starts.ts'
import type { Work } from '../findings/work.ts'
import type { ZoneClock } from '../quantity/zone-clock.ts'

/** When the clock of a plan stands at nothing, if the document gives the moment of any step; else null. */
export function firstMoment(work: Work): LocalTime | null {
  for (const [i, step] of work.steps.entries()) {
    const begins = beginsOf(step)
    if (begins === undefined) continue
    const { ms, clock } = localTime(begins, work.shop)
    return { ms: ms - work.clock[i]!.startMin * 60_000, clock }
  }
  return null
}

/** The number of the day, from 1, on which a moment falls that lies so many minutes after the first pour. */
export function dayNumber(startMin: number): number {
  return Math.floor(startMin / 1440 + 1e-9) + 1
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/** "Sat 28 Nov", on a clock. */
export function dateOf(ms: number, clock: ZoneClock): string {
  const { year, month, day } = clock.shown(ms)
  return `${WEEKDAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]} ${day} ${MONTHS[month - 1]}`
}

/** "09:05", on a clock. */
export function timeOf(ms: number, clock: ZoneClock): string {
  const { minute } = clock.shown(ms)
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(Math.floor(minute % 60)).padStart(2, '0')}`
}

/** "Sat 28 Nov 09:05", on a clock. */
export function momentOf(ms: number, clock: ZoneClock): string {
  return `${dateOf(ms, clock)} ${timeOf(ms, clock)}`
}

/** "Sat 28 Nov 09:05 to 17:30", or with both days; no second end where both are the same minute. */
export function spanOf(fromMs: number, toMs: number, clock: ZoneClock): string {
  const from = momentOf(fromMs, clock)
  const to = endOf(fromMs, toMs, clock)
  return to === '' ? from : `${from} to ${to}`
}

/** The end of a span whose beginning is written: the day is said once. */
export function endOf(fromMs: number, toMs: number, clock: ZoneClock): string {
  if (momentOf(fromMs, clock) === momentOf(toMs, clock)) return ''
  return dateOf(fromMs, clock) === dateOf(toMs, clock) ? timeOf(toMs, clock) : momentOf(toMs, clock)
}
