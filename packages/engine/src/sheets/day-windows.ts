import type { Window } from '../cast/window.ts'
import type { Plan } from '../plan.ts'
import type { DayTimes, PourTime } from './day-times.ts'
import { momentOf, spanOf, timeOf } from './moment.ts'
import { windowsAsked } from './page-card.ts'
import type { RunTable } from './run-part.ts'
import type { WindowRow } from './window-rows.ts'
import { windowRows } from './window-rows.ts'

/**
 * Both ends of a window on the calendar, ms: what opens counts from the last batch, what closes from the first stir, so
 * that it holds for every batch. null: not reached, or without an end.
 */
export function endsOf(
  time: PourTime,
  window: Window | undefined
): readonly [from: number | null, to: number | null] {
  if (window === undefined || !window.reached) return [null, null]
  return [
    time.pouredMs + window.open * 60_000,
    window.close === null ? null : time.mixMs + window.close * 60_000
  ]
}

/** The windows of a pour with a column by the clock of the calendar, as it cures when it is poured at that hour. */
export function byTheClock(table: RunTable, plan: Plan, pour: number, days: DayTimes): RunTable {
  const time = days.pours[pour] ?? null
  if (time === null || time.cast === null) return table
  const said = new Map(
    windowRows(time.cast, windowsAsked(plan.pours, pour)).map(r => [r.label, words(time, r, days)])
  )
  const withClock = (cells: readonly string[], clock: string) => [cells[0]!, clock, ...cells.slice(1)]
  return {
    title: table.title,
    head: withClock(table.head, 'By the clock'),
    rows: table.rows.map(r => withClock(r, said.get(r[0]!) ?? '–'))
  }
}

// "Sat 28 Nov 09:40 to 10:15".
function words(time: PourTime, { window, kind }: WindowRow, { clock }: DayTimes): string {
  if (kind === 'moments') {
    const moments = time.cast?.windows.passes.moments ?? []
    return moments.map(m => timeOf(time.pouredMs + m * 60_000, clock)).join(', ')
  }
  const [from, to] = endsOf(time, window)
  if (from === null) return '–'
  if (to === null) return `from ${momentOf(from, clock)}`
  return kind === 'until' ? `until ${momentOf(to, clock)}` : spanOf(from, Math.max(from, to), clock)
}
