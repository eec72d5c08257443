import { decimals } from '../quantity/format.ts'
import { parseQuantity } from '../quantity/parse.ts'
import type { Dimension } from '../quantity/unit.ts'
import { toFixedUnit } from '../quantity/unit.ts'
import type { Columns, CupUnit } from './cup-header.ts'
import { columnsOf, headRow, unitIn } from './cup-header.ts'
import { COLDEST_C, HOTTEST_C, LEAST_COURSE_K, LEAST_CUP_READINGS } from './cup-meaning.ts'
import type { Row, Table } from './cup-table.ts'
import { at, cellShown, numberIn, tableOf } from './cup-table.ts'
import type { Refuse, Taken } from './cup-taken.ts'
import { minutesOf } from './cup-taken.ts'
import { clockIn, timeIn } from './cup-time.ts'
import { unitOf } from './cup-unit.ts'
import type { Problem } from './problem.ts'
import { InputProblem } from './problem.ts'
import { MOST_CUP_READINGS } from './shop-schema.ts'

/** What a readings file held, ready for a shop's cup test. */
export interface CupReadings {
  /** Unit of the thermometer, as typed. */
  readonly unit: CupUnit
  /** [minutes since mixing, temperature as typed], in order of time. */
  readonly readings: readonly (readonly [number, number])[]
  /** Mean of a column of the room, °C; null without one. */
  readonly roomC: number | null
  readonly stringsMin: number | null
  readonly gelledMin: number | null
  /** `# key: value` lines in fixed units: g, mm, °C, min; what the file does not say is null. */
  readonly told: CupTold
  /** How the file was taken, where it could be taken otherwise. */
  readonly says: readonly string[]
}

export interface CupTold {
  readonly massG: number | null
  readonly diameterMm: number | null
  readonly roomC: number | null
  readonly startC: number | null
}

export interface CupOptions {
  /** Named in messages. */
  readonly source: string
  /** Unit of the thermometer where the file names none, or names the wrong one. */
  readonly unit?: CupUnit
  /** Clock time of mixing, "14:05"; left out: the first reading, or `# mixed:` of the file. */
  readonly mixed?: string
}

/**
 * Reads the readings of a cup test from a text a person or a logger wrote: time and temperature in columns.
 *
 *   cells between comma, semicolon, tab or blanks; decimal points or commas; # comments; blank lines
 *   header optional: "time (min)", "temp (F)", "room °C", "seen"; units in the header or beside each number
 *   times as minutes, hours, seconds, "h:mm" since mixing, or of the clock ("14:05", "2:05 pm", with a date),
 *   past midnight too
 *   "strings" and "gelled" in a column of what was seen, with or without a temperature
 *   "# mass: 200 g", "# cup: 80 mm", "# room: 70 °F", "# start: 24", "# mixed: 14:05"
 *
 * °F and °C are never guessed where either could be meant: it asks.
 * @throws InputProblem naming line, what was found and what is allowed
 */
export function readCupTest(text: string, options: CupOptions): CupReadings {
  const { source } = options
  const table = tableOf(text, source)
  const refuse = (problem: Problem): never => {
    throw new InputProblem(source, [problem])
  }
  const head = headRow(table.rows, table.decimalComma)
  const first = table.rows[head]
  if (first === undefined)
    return refuse({
      path: '',
      found: 'an empty file',
      allowed: 'lines of time and temperature',
      example: EXAMPLE
    })
  const columns = columnsOf(first, table.decimalComma)
  const rows = table.rows.slice(head + columns.head)
  const says: string[] = []
  if (head > 0) says.push(`The header is line ${first.line}; what stands before it is left out.`)
  if (columns.leftOut !== null)
    says.push(
      `"${first.cells[columns.temperature]}" is taken as the resin, "${columns.leftOut}" is left out; call a column "room" if it is the room.`
    )
  const taken = rows.map(row => takenOf(row, columns, table, refuse))
  const times = minutesOf(taken, columns, mixedOf(options, table, refuse), says, refuse)
  const moments = momentsOf(taken, times, refuse)
  const typed = taken.flatMap((t, i) =>
    t.temperature === null ? [] : [{ ...t, min: times[i]!, value: t.temperature }]
  )
  if (typed.length < LEAST_CUP_READINGS)
    refuse({
      path: '',
      found:
        typed.length === 0 ? 'no reading' : typed.length === 1 ? 'one reading' : `${typed.length} readings`,
      allowed: `at least ${LEAST_CUP_READINGS} of one course`,
      example: EXAMPLE
    })
  const unit = unitOf(typed, columns, options.unit, says, refuse)
  const distinct = merged(typed, says)
  if (distinct.length === 1)
    refuse({
      path: '',
      found: `all ${typed.length} readings at ${decimals(distinct[0]![0], 1)} min`,
      allowed: 'times that go on from reading to reading',
      example: EXAMPLE
    })
  if (distinct.length < LEAST_CUP_READINGS)
    refuse({
      path: '',
      found: `readings at ${distinct.length} times`,
      allowed: `at least ${LEAST_CUP_READINGS} times of one course`,
      example: EXAMPLE
    })
  const readings = thinned(distinct, says)
  for (const t of typed) {
    const c = toFixedUnit(t.value, unit)
    if (!(c >= COLDEST_C && c <= HOTTEST_C))
      refuse(at(t.line, `${t.value} ${unit}`, `${COLDEST_C} to ${HOTTEST_C} °C`))
  }
  const values = readings.map(r => r[1])
  const [least, most] = [minimum(values), -minimum(values.map(v => -v))]
  if (toFixedUnit(most, unit) - toFixedUnit(least, unit) < LEAST_COURSE_K)
    refuse({
      path: '',
      found: `the same temperature throughout, ${decimals(most, 1)} ${unit}`,
      allowed: 'a course that moves: resin that cures warms',
      example: EXAMPLE
    })
  const rooms = taken.flatMap(t => (t.room === null ? [] : [toFixedUnit(t.room, columns.roomUnit ?? unit)]))
  return {
    unit,
    readings,
    roomC: rooms.length === 0 ? null : rooms.reduce((a, b) => a + b, 0) / rooms.length,
    ...moments,
    told: toldOf(table, unit, refuse),
    says
  }
}

const EXAMPLE = '"0, 22.4" and "10, 23.1" under "min, temp (C)"'

function takenOf({ line, cells }: Row, columns: Columns, table: Table, refuse: Refuse): Taken {
  const { decimalComma } = table
  const cell = (i: number | null): string => (i === null ? '' : (cells[i] ?? ''))
  const date = cell(columns.date)
  const time = timeIn(`${date}${date === '' ? '' : ' '}${cell(columns.time)}`, decimalComma)
  if (time === null)
    return refuse(
      at(
        line,
        `${cellShown(`${date} ${cell(columns.time)}`.trim())} as the time`,
        columns.date === null
          ? 'minutes, "1:20" or a time of the clock'
          : 'a date as year-month-day and a time of the clock',
        columns.date === null ? '"14:05"' : '"2026-11-27" and "14:05"'
      )
    )
  if (time.form === 'number' && time.min < 0)
    return refuse(at(line, `${time.min} as the time`, 'no time before mixing'))
  // A word may stand where the temperature would: nothing but the moment was noted.
  const words = cells
    .filter((_, i) => i !== columns.time && i !== columns.date && i !== columns.room)
    .join(' ')
  const seen = seenIn(columns.event === null ? words : `${cell(columns.event)} ${cell(columns.temperature)}`)
  const typed = cell(columns.temperature)
  const reading = temperatureIn(typed, decimalComma)
  if (reading === null && seen === null && !/^(?:-*|n\/?a|nan|null|)$/i.test(typed))
    return refuse(
      at(line, `${cellShown(typed)} as the temperature`, 'a number, with or without °C or °F', '23.4')
    )
  if (
    !decimalComma &&
    cells.length === 4 &&
    columns.head === 1 &&
    cells.every(c => /^\d+$/.test(c)) &&
    columns.event === null &&
    columns.room === null
  )
    return refuse(
      at(
        line,
        'decimal commas between commas',
        'semicolons or tabs between the columns, or decimal points',
        '"10;23,1"'
      )
    )
  const room = columns.room === null ? null : temperatureIn(cell(columns.room), decimalComma)
  return {
    line,
    time,
    temperature: reading?.value ?? null,
    unit: reading?.unit ?? null,
    room: room?.value ?? null,
    seen
  }
}

function temperatureIn(cell: string, decimalComma: boolean): { value: number; unit: CupUnit | null } | null {
  const found = /^([-+]?[0-9.,]+)\s*((?:°|º|deg\s?)?\s?[CFK])?$/i.exec(cell)
  if (!found) return null
  const value = numberIn(found[1]!, decimalComma)
  return value === null ? null : { value, unit: found[2] === undefined ? null : unitIn(found[2]) }
}

function seenIn(words: string): Taken['seen'] {
  if (/\b(?:not|no|before|nearly|almost)\b/i.test(words)) return null
  if (/string|rope|thread|honey/i.test(words)) return 'strings'
  return /\bgel/i.test(words) ? 'gelled' : null
}

function mixedOf(options: CupOptions, table: Table, refuse: Refuse): number | null {
  const told = table.told.get('mixed')
  const text = options.mixed ?? told?.value
  if (text === undefined) return null
  const clock = clockIn(text)
  if (clock !== null) return clock
  return refuse({
    path: '',
    found: `"${text}" as the time of mixing`,
    allowed: 'a time of the clock',
    example: '"14:05"'
  })
}

function momentsOf(taken: readonly Taken[], times: readonly number[], refuse: Refuse) {
  const first = (what: Taken['seen']): number | null => {
    const i = taken.findIndex(t => t.seen === what)
    return i < 0 ? null : times[i]!
  }
  const [stringsMin, gelledMin] = [first('strings'), first('gelled')]
  if (stringsMin !== null && gelledMin !== null && !(gelledMin > stringsMin))
    refuse(at(taken.find(t => t.seen === 'gelled')!.line, 'gelled before it pulled strings', 'strings first'))
  return { stringsMin, gelledMin }
}

/** Readings of one minute, as a logger writes them, as one: their mean. */
function merged(
  typed: readonly { min: number; value: number }[],
  says: string[]
): (readonly [number, number])[] {
  const out: { min: number; sum: number; count: number }[] = []
  for (const { min, value } of typed) {
    const last = out[out.length - 1]
    if (last && last.min === min) {
      last.sum += value
      last.count++
    } else out.push({ min, sum: value, count: 1 })
  }
  if (out.length < typed.length)
    says.push(`${typed.length} readings at ${out.length} times: those of one time are averaged.`)
  return out.map(o => [round(o.min, 4), round(o.sum / o.count, 3)] as const)
}

/** As many readings as a shop holds well, by the means of as many neighbours each. */
function thinned(
  all: readonly (readonly [number, number])[],
  says: string[]
): readonly (readonly [number, number])[] {
  if (all.length <= MOST_CUP_READINGS) return all
  const group = Math.ceil(all.length / THINNED_TO)
  const out: (readonly [number, number])[] = []
  for (let i = 0; i < all.length; i += group) {
    const some = all.slice(i, i + group)
    const mean = (k: 0 | 1): number => some.reduce((sum, r) => sum + r[k], 0) / some.length
    out.push([round(mean(0), 4), round(mean(1), 3)])
  }
  says.push(`${all.length} readings are thinned to ${out.length}, each the mean of ${group}.`)
  return out
}

const THINNED_TO = 1000

function toldOf(table: Table, unit: CupUnit, refuse: Refuse): CupTold {
  const value = (keys: readonly string[], dimension: Dimension): number | null => {
    for (const key of keys) {
      const told = table.told.get(key)
      if (told === undefined) continue
      const plain = numberIn(told.value, true)
      if (plain !== null) return dimension === 'temperature' ? toFixedUnit(plain, unit) : plain
      const got = parseQuantity(told.value.replace(',', '.'), dimension)
      if (got !== null) return got.value
      refuse(
        at(
          told.line,
          `"${told.value}" as ${key}`,
          `a number with its unit`,
          dimension === 'mass' ? '"200 g"' : dimension === 'length' ? '"80 mm"' : '"21 °C"'
        )
      )
    }
    return null
  }
  return {
    massG: value(['mass', 'weight'], 'mass'),
    diameterMm: value(['cup', 'diameter', 'cup diameter'], 'length'),
    roomC: value(['room', 'air', 'ambient'], 'temperature'),
    startC: value(['start'], 'temperature')
  }
}

const round = (x: number, digits: number): number => Number(x.toFixed(digits))
const minimum = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
