import { icsOf } from './calendar/ics.ts'
import type { Days, DayTask } from './days-answer.ts'
import { formatMinutes } from './quantity/format.ts'
import { offsetWords, zoneClock } from './quantity/zone-clock.ts'

/** One task as files and other programs take it: clock times with the offset of the place. */
export interface DayData {
  readonly id: string
  readonly piece: string
  readonly step: string | null
  readonly kind: string
  readonly says: string
  readonly begins: string
  readonly ends: string
  readonly minutes: number
  readonly basis: string
  readonly attended: boolean
  readonly slackMin: number
  readonly alarmMin: number | null
  readonly safety: readonly string[]
}

/** A moment on the clock of the place, ISO 8601 with its offset: "2026-12-03T09:26+01:00". */
export function localMoment(ms: number, timeZone: string): string {
  const offset = zoneClock(timeZone).offsetMin(ms)
  return `${new Date(ms + offset * 60_000).toISOString().slice(0, 16)}${offsetWords(offset)}`
}

/** The days as plain data. */
export function daysData(days: Days) {
  const at = (min: number) => localMoment(days.originMs + min * 60_000, days.timeZone)
  const moment = (ms: number) => localMoment(ms, days.timeZone)
  return {
    castwright: 1,
    asOf: days.asOf,
    timeZone: days.timeZone,
    names: days.names,
    ready: days.readyMs?.map(moment) ?? null,
    begins: days.firstMs === null ? null : moment(days.firstMs),
    handsOnMin: Math.round(days.handsOnMin),
    calendarDays: days.calendarDays,
    visits: days.visits,
    lateMin: days.lateMin,
    orderBy: days.orderBy.map(o => ({ item: o.item, says: o.says, by: at(o.byMin), days: o.days })),
    clash: days.clash,
    waysOut: days.waysOut,
    settled: days.settled,
    tasks: days.tasks.map(
      ({ task, startMin, endMin, slackMin, alarmMin }): DayData => ({
        id: task.id,
        piece: task.piece,
        step: task.step,
        kind: task.kind,
        says: task.says,
        begins: at(startMin),
        ends: at(endMin),
        minutes: Math.round(task.minutes * 10) / 10,
        basis: task.basis.says,
        attended: task.attended,
        slackMin,
        alarmMin,
        safety: task.safety
      })
    )
  }
}

/** Numbers of plans count from here, minutes since 1970: 2020-01-01. */
const FIRST_REVISION = 26_297_280

/**
 * The days as an iCalendar file. `revision` grows with every plan made anew, so that a calendar takes the later one for
 * the same task (RFC 5545, 3.8.7.4); left out: the minute the plan was asked at.
 */
export function daysIcs(
  days: Days,
  revision = Math.max(0, Math.floor(Date.parse(days.asOf) / 60_000) - FIRST_REVISION)
): string {
  return icsOf({
    name: days.names.join(', '),
    originMs: days.originMs,
    timeZone: days.timeZone,
    stampMs: Date.parse(days.asOf),
    revision,
    cancelled: [],
    entries: days.tasks.map(t => ({
      task: owned(t.task, days.names),
      placed: t,
      lines: linesOf(t),
      alarmMin: t.alarmMin
    }))
  })
}

// An event is that of its piece by name, planned alone or among others: calendars of two pieces never meet in one UID.
function owned(task: DayTask['task'], names: readonly string[]): DayTask['task'] {
  const index = task.piece === '' ? 0 : Number(task.piece) - 1
  const name = names[index]!
  const alike = names.slice(0, index).filter(n => n === name).length
  return {
    ...task,
    piece: alike === 0 ? name : `${name} ${alike + 1}`,
    id: task.piece === '' ? task.id : task.id.slice(task.piece.length + 1)
  }
}

function linesOf({ task, slackMin }: DayTask): string[] {
  return [
    `Takes ${formatMinutes(Math.max(1, task.minutes))} (${task.basis.says})`,
    ...(slackMin >= 60 ? [`May begin up to ${formatMinutes(slackMin)} later`] : [])
  ]
}

/** When the last of the pieces is ready, on the clock of the place; null where there is no calendar. */
export function readyMoment({ readyMs, timeZone }: Pick<Days, 'readyMs' | 'timeZone'>): string | null {
  return readyMs === null ? null : localMoment(Math.max(...readyMs), timeZone)
}
