import { zoneClock } from '../quantity/zone-clock.ts'
import { contentLines, stampOf, textValue } from './content-line.ts'
import type { Placed } from './solve/problem.ts'
import type { Task } from './task.ts'
import { isZoneName, shownOnce, timeZoneOf } from './time-zone.ts'

/** What the calendar file says of one task beside what the task says itself. */
export interface IcsEntry {
  readonly task: Pick<Task, 'id' | 'piece' | 'says' | 'safety' | 'attended'>
  readonly placed: Pick<Placed, 'startMin' | 'endMin'>
  /** Amounts and the window, one line each. */
  readonly lines: readonly string[]
  /** How long before the start to be called, min; null: not. */
  readonly alarmMin: number | null
}

export interface IcsInput {
  readonly name: string
  /** The origin of the minutes, ms since 1970. */
  readonly originMs: number
  /** IANA name of the zone whose clock the events are written by. */
  readonly timeZone: string
  /** When the file is written, ms: given, since nothing here has a clock. */
  readonly stampMs: number
  /** Number of the plan: grows when it is made anew, so that a calendar takes the later one. */
  readonly revision: number
  readonly entries: readonly IcsEntry[]
  /** What an earlier file held and this one does not: told to be cancelled. */
  readonly cancelled: readonly {
    readonly piece: string
    readonly id: string
    readonly says: string
    readonly startMin: number
    readonly endMin: number
  }[]
}

/**
 * A calendar file (iCalendar, RFC 5545): one event for each attended task, an alarm before it where one is asked.
 * The same input gives the same bytes. An event keeps its UID from plan to plan: made of piece and task.
 *
 * Events stand on the clock of the shop, with the definition of its zone beside them (VTIMEZONE), so that a calendar
 * shows the hour at the bench wherever it is opened, and one moved by hand stays on that clock. In UTC are the events of
 * a shop in UTC, and those that touch the hour a clock shows twice, which no local time can tell.
 *
 * Check: an independent strict parser (ical.js) reads back every instant, alarm and text, over changes of the clock and
 * in zones without; no line over 75 octets.
 */
export function icsOf(input: IcsInput): string {
  const clock = zoneClock(input.timeZone)
  const ms = (min: number) => input.originMs + Math.round(min) * 60_000
  const byClock = isZoneName(clock.zone) && clock.zone !== 'UTC'
  const all = [...input.entries.map(e => e.placed), ...input.cancelled]
  const [first, last] = [Math.min(...all.map(p => p.startMin)), Math.max(...all.map(p => p.endMin))]
  const event = (
    own: { readonly piece: string; readonly id: string; readonly says: string },
    { startMin, endMin }: IcsEntry['placed'],
    more: readonly string[]
  ): string[] => {
    const [start, end] = [ms(startMin), ms(Math.max(endMin, startMin))]
    const local = byClock && [start, end].every(at => shownOnce(clock, at))
    const moment = (name: string, at: number) =>
      local
        ? `${name};TZID=${clock.zone}:${stampOf(at + clock.offsetMin(at) * 60_000)}`
        : `${name}:${stampOf(at)}Z`
    return [
      'BEGIN:VEVENT',
      `UID:${uid(own.piece, own.id)}`,
      `SEQUENCE:${input.revision}`,
      `DTSTAMP:${stampOf(input.stampMs)}Z`,
      moment('DTSTART', start),
      // An end has to be later than the start (RFC 5545, 3.8.2.2): what takes no time has none.
      ...(end > start ? [moment('DTEND', end)] : []),
      `SUMMARY:${textValue(own.says)}`,
      ...more,
      'END:VEVENT'
    ]
  }
  // A line break in the name of a calendar is a blank.
  const name = textValue(input.name.replace(/[\r\n]+/g, ' '))
  return contentLines([
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Castwright//Days//EN',
    // The name by RFC 7986, and as older programs know it.
    `NAME:${name}`,
    `X-WR-CALNAME:${name}`,
    ...(byClock && all.length > 0 ? timeZoneOf(clock, ms(first), ms(last)) : []),
    ...input.entries.flatMap(({ task, placed, lines, alarmMin }) =>
      !task.attended
        ? []
        : event(task, placed, [
            `DESCRIPTION:${textValue([...lines, ...task.safety].join('\n'))}`,
            'STATUS:CONFIRMED',
            'TRANSP:OPAQUE',
            ...(alarmMin === null ? [] : alarm(alarmMin, task.says))
          ])
    ),
    ...input.cancelled.flatMap(c => event(c, c, ['STATUS:CANCELLED'])),
    'END:VCALENDAR'
  ])
}

function alarm(beforeMin: number, says: string): string[] {
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:-PT${Math.round(beforeMin)}M`,
    `DESCRIPTION:${textValue(says)}`,
    'END:VALARM'
  ]
}

/** Stable and unique: every octet that is not plain is spelled out, so that two names never meet. */
function uid(piece: string, id: string): string {
  const spell = (text: string) =>
    [...text]
      .map(c => (/[A-Za-z0-9]/.test(c) ? c : c === ' ' ? '-' : `_${c.codePointAt(0)!.toString(16)}_`))
      .join('')
  return `${spell(piece)}.${spell(id)}@castwright`
}
