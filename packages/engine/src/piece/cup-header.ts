import type { Row } from './cup-table.ts'
import { minutesIn, timeIn } from './cup-time.ts'

export type CupUnit = '°C' | '°F' | 'K'

/** Which column holds what, and the units that a header names. */
export interface Columns {
  readonly time: number
  /** A column of the date beside that of the time. */
  readonly date: number | null
  readonly temperature: number
  readonly room: number | null
  readonly event: number | null
  /** Minutes in the unit of the times; null where no header names one. */
  readonly timeUnit: number | null
  /** Whether the header says that times are of the clock, or since the start. */
  readonly timeIs: 'clock' | 'elapsed' | null
  readonly unit: CupUnit | null
  readonly roomUnit: CupUnit | null
  /** A second column of temperatures that no header explains: left out, and told. */
  readonly leftOut: string | null
  /** Rows of the header: 0 or 1. */
  readonly head: 0 | 1
}

const TIME = /^(?:time|t|min|mins|minutes?|hours?|h|s|sec|seconds?|clock|elapsed|when|at|h:mm|hh:mm)\b/i
const TEMPERATURE =
  /temp|^(?:resin|cup|probe|middle|cent(?:re|er)|mix|thermometer|reading|t1)\b|°\s*[CF]|celsius|fahrenheit|^[CFK]$/i
/** A logger's columns: "Channel 1", "Ch1", "Probe 2". */
const CHANNEL = /^(?:channel|chan|ch|probe|sensor|t)\.?\s*\d+\b/i
const DATE = /^(?:date|day)$/i
const ROOM = /\b(?:room|ambient|air)\b/i
const EVENT = /event|note|remark|comment|state|seen|what|looks?/i

/** A temperature unit in a header or beside a number; null for none. */
export function unitIn(text: string): CupUnit | null {
  const found =
    /(?:°|º|deg\.?\s*)\s*([CFK])\b|[([_ ]\s*([CFK])\s*[)\]]?$|^([CFK])$|(celsius|centigrade)|(fahrenheit)|(kelvin)/i.exec(
      text.trim()
    )
  if (!found) return null
  if (found[4]) return '°C'
  if (found[5]) return '°F'
  if (found[6]) return 'K'
  const letter = (found[1] ?? found[2] ?? found[3])!.toUpperCase()
  return letter === 'C' ? '°C' : letter === 'F' ? '°F' : 'K'
}

/**
 * The row of the header: a logger writes a title or its own data before it. The first of the few first rows that
 * names a time or a date and is followed by a row that begins with a time; the first row where none does.
 */
export function headRow(rows: readonly Row[], decimalComma: boolean): number {
  for (let i = 0; i < Math.min(MOST_TITLE, rows.length - 1); i++) {
    const { cells } = rows[i]!
    if (cells.some(c => timeIn(c, decimalComma) !== null && !/^\d+$/.test(c))) return 0
    const next = rows[i + 1]!.cells
    if (cells.length > 1 && cells.some(c => TIME.test(c)) && next.length >= cells.length - 1) return i
  }
  return 0
}

const MOST_TITLE = 12

/** Reads the columns off the first row; without a header: time, temperature, what was seen. */
export function columnsOf(first: Row, decimalComma: boolean): Columns {
  const { cells } = first
  if (timeIn(cells[0]!, decimalComma) !== null)
    return {
      time: 0,
      date: null,
      temperature: 1,
      room: null,
      event: 2,
      timeUnit: null,
      timeIs: null,
      unit: null,
      roomUnit: null,
      leftOut: null,
      head: 0
    }
  const find = (is: (cell: string, i: number) => boolean): number | null => {
    const i = cells.findIndex(is)
    return i < 0 ? null : i
  }
  const room = find(c => ROOM.test(c))
  const time = find((c, i) => TIME.test(c) && i !== room) ?? 0
  const date = find((c, i) => DATE.test(c) && i !== time)
  const isTemperature = (c: string, i: number): boolean =>
    (TEMPERATURE.test(c) || CHANNEL.test(c)) && i !== room && i !== time && i !== date
  const temperature = find(isTemperature) ?? find((_, i) => i !== room && i !== time && i !== date) ?? 1
  const head = cells[time]!
  const words = head.split(/[^A-Za-z]+/).filter(w => w !== '')
  const units = words.map(minutesIn).filter(u => u !== null)
  return {
    time,
    date,
    temperature,
    room,
    leftOut: cells.find((c, i) => i > temperature && isTemperature(c, i)) ?? null,
    event: find((c, i) => EVENT.test(c) && i !== room && i !== time && i !== temperature),
    timeUnit: /h+:mm/i.test(head) ? null : (units[units.length - 1] ?? null),
    timeIs: /clock|of day/i.test(head) ? 'clock' : /elapsed|since|after|h+:mm/i.test(head) ? 'elapsed' : null,
    unit: unitIn(cells[temperature] ?? ''),
    roomUnit: room === null ? null : unitIn(cells[room]!),
    head: 1
  }
}
