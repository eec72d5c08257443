import type { Row } from './cup-table.ts'
import { minutesIn, timeIn } from './cup-time.ts'

export type CupUnit = '°C' | '°F' | 'K'

/** Which column holds what, and the units that a header names. */
export interface Columns {
  readonly time: number
  readonly temperature: number
  readonly room: number | null
  readonly event: number | null
  /** Minutes in the unit of the times; null where no header names one. */
  readonly timeUnit: number | null
  /** Whether the header says that times are of the clock, or since the start. */
  readonly timeIs: 'clock' | 'elapsed' | null
  readonly unit: CupUnit | null
  readonly roomUnit: CupUnit | null
  /** Rows of the header: 0 or 1. */
  readonly head: 0 | 1
}

const TIME = /^(?:time|t|min|mins|minutes?|hours?|h|s|sec|seconds?|clock|elapsed|when|at|h:mm|hh:mm)\b/i
const TEMPERATURE =
  /temp|^(?:resin|cup|probe|middle|cent(?:re|er)|mix|thermometer|reading|t1)\b|°\s*[CF]|celsius|fahrenheit|^[CFK]$/i
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

/** Reads the columns off the first row; without a header: time, temperature, what was seen. */
export function columnsOf(first: Row, decimalComma: boolean): Columns {
  const { cells } = first
  if (timeIn(cells[0]!, decimalComma) !== null)
    return {
      time: 0,
      temperature: 1,
      room: null,
      event: 2,
      timeUnit: null,
      timeIs: null,
      unit: null,
      roomUnit: null,
      head: 0
    }
  const find = (is: (cell: string, i: number) => boolean): number | null => {
    const i = cells.findIndex(is)
    return i < 0 ? null : i
  }
  const room = find(c => ROOM.test(c))
  const time = find((c, i) => TIME.test(c) && i !== room) ?? 0
  const temperature =
    find((c, i) => TEMPERATURE.test(c) && i !== room && i !== time) ??
    find((_, i) => i !== room && i !== time) ??
    1
  const head = cells[time]!
  const words = head.split(/[^A-Za-z]+/).filter(w => w !== '')
  const units = words.map(minutesIn).filter(u => u !== null)
  return {
    time,
    temperature,
    room,
    event: find((c, i) => EVENT.test(c) && i !== room && i !== time && i !== temperature),
    timeUnit: /h+:mm/i.test(head) ? null : (units[units.length - 1] ?? null),
    timeIs: /clock|of day/i.test(head) ? 'clock' : /elapsed|since|after|h+:mm/i.test(head) ? 'elapsed' : null,
    unit: unitIn(cells[temperature] ?? ''),
    roomUnit: room === null ? null : unitIn(cells[room]!),
    head: 1
  }
}
