import type { ICalEventData } from 'ical-generator'
import { ICalAlarmType, ICalCalendar, ICalEventStatus, ICalEventTransparency } from 'ical-generator'
import { zoneClock } from '../quantity/zone-clock.ts'
import type { Placed } from './solve/problem.ts'
import type { Task } from './task.ts'
import { isZoneName, shownOnce, timeZoneOf } from './time-zone.ts'
import { WallTime } from './wall-time.ts'

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
  const calendar = new ICalCalendar({
    // The library writes the name as it is: a line break in it would begin a property of its own.
    name: plain(input.name)
      .replaceAll('\n', ' ')
      .replace(/[\\;,]/g, c => `\\${c}`),
    prodId: { company: 'Castwright', product: 'Days', language: 'EN' }
  })
  const clock = zoneClock(input.timeZone)
  const ms = (min: number) => input.originMs + Math.round(min) * 60_000
  const byClock = isZoneName(clock.zone) && clock.zone !== 'UTC'
  const all = [...input.entries.map(e => e.placed), ...input.cancelled]
  if (byClock && all.length > 0) {
    const [first, last] = [Math.min(...all.map(p => p.startMin)), Math.max(...all.map(p => p.endMin))]
    // By its generator alone: a name would be written as properties that no standard has.
    calendar.timezone({ name: null, generator: () => timeZoneOf(clock, ms(first), ms(last)) })
  }
  const event = (id: string, piece: string, startMin: number, endMin: number): ICalEventData => {
    const span = [ms(startMin), ms(Math.max(endMin, startMin))] as const
    const local = byClock && span.every(at => shownOnce(clock, at))
    const [start, end] = local ? span.map(at => new WallTime(clock, at)) : span.map(at => new Date(at))
    return {
      id: uid(piece, id),
      stamp: new Date(input.stampMs),
      sequence: input.revision,
      timezone: local ? clock.zone : null,
      start: start!,
      end: end!
    }
  }
  for (const { task, placed, lines, alarmMin } of input.entries) {
    if (!task.attended) continue
    const made = calendar.createEvent({
      ...event(task.id, task.piece, placed.startMin, placed.endMin),
      summary: plain(task.says),
      description: [...lines, ...task.safety].map(plain).join('\n'),
      transparency: ICalEventTransparency.OPAQUE,
      status: ICalEventStatus.CONFIRMED
    })
    if (alarmMin !== null)
      made.createAlarm({
        type: ICalAlarmType.display,
        triggerBefore: Math.round(alarmMin * 60),
        description: plain(task.says)
      })
  }
  for (const c of input.cancelled)
    calendar.createEvent({
      ...event(c.id, c.piece, c.startMin, c.endMin),
      summary: plain(c.says),
      status: ICalEventStatus.CANCELLED
    })
  return calendar.toString()
}

// Control characters have no place in a calendar file; a line break is kept where lines are.
function plain(text: string): string {
  return [...text.replace(/\r\n?/g, '\n')]
    .filter(c => c === '\n' || c >= ' ')
    .join('')
    .replaceAll('\u007f', '')
}

/** Stable and unique: every octet that is not plain is spelled out, so that two names never meet. */
function uid(piece: string, id: string): string {
  const spell = (text: string) =>
    [...text]
      .map(c => (/[A-Za-z0-9]/.test(c) ? c : c === ' ' ? '-' : `_${c.codePointAt(0)!.toString(16)}_`))
      .join('')
  return `${spell(piece)}.${spell(id)}@castwright`
}
