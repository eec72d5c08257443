import type { Days } from '../../../engine/src/days-answer.ts'
import { zoneClock } from '../../../engine/src/quantity/zone-clock.ts'
import { capital } from '../../../engine/src/sheets/model.ts'
import type { DaysView } from './days-view.ts'

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/** Name, date and time of minutes of a calendar, on the clock of the place, not of this device. */
export function clockOf(days: Pick<Days, 'timeZone' | 'originMs'>) {
  const clock = zoneClock(days.timeZone)
  return (min: number) => {
    const s = clock.shown(days.originMs + min * 60_000)
    const two = (x: number) => String(x).padStart(2, '0')
    return {
      name: DAYS[new Date(Date.UTC(s.year, s.month - 1, s.day)).getUTCDay()]!,
      date: `${s.day} ${MONTHS[s.month - 1]!}`,
      time: `${two(Math.floor(s.minute / 60))}:${two(Math.floor(s.minute % 60))}`
    }
  }
}

/** What to order, day by day. */
export function orders(days: Days): DaysView['orderBy'] {
  const of = clockOf(days)
  const by = new Map<string, { name: string; days: number }[]>()
  for (const o of [...days.orderBy].sort((a, b) => a.byMin - b.byMin)) {
    const { name, date } = of(o.byMin)
    const day = `${name} ${date}`
    by.set(day, [...(by.get(day) ?? []), { name: capital(o.name), days: o.days }])
  }
  return [...by].map(([day, what]) => ({ by: day, what }))
}
