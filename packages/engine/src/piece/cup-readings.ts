import { decimals } from '../quantity/format.ts'
import { parseQuantity } from '../quantity/parse.ts'
import type { Dimension } from '../quantity/unit.ts'
import { toFixedUnit } from '../quantity/unit.ts'
import type { Columns, CupUnit } from './cup-header.ts'
import { columnsOf, unitIn } from './cup-header.ts'
import { COLDEST_C, HOTTEST_C, LEAST_COURSE_K, LEAST_CUP_READINGS } from './cup-meaning.ts'
import type { Row, Table } from './cup-table.ts'
import { at, cellShown, numberIn, tableOf } from './cup-table.ts'
import { clockIn, type Time, timeIn } from './cup-time.ts'
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

/** Fresh resin warmer than this was warmed, or is °F taken for °C; °F below the other is °C taken for °F. */
const WARM_FRESH_C = 48
const COLD_FRESH_C = 4
/** Resin is read from the start or nearly so, min: only then does the first reading tell its unit. */
const FRESH_MIN = 10

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
  const first = table.rows[0]
  if (first === undefined)
    return refuse({
      path: '',
      found: 'an empty file',
      allowed: 'lines of time and temperature',
      example: EXAMPLE
    })
  const columns = columnsOf(first, table.decimalComma)
  const rows = table.rows.slice(columns.head)
  const says: string[] = []
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
  const unit = unitOf(typed, columns, options, says, refuse)
  const readings = merged(typed, says)
  if (readings.length > MOST_CUP_READINGS)
    refuse({
      path: '',
      found: `${readings.length} readings`,
      allowed: `at most ${MOST_CUP_READINGS}`,
      example: ''
    })
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

type Refuse = (problem: Problem) => never

interface Taken {
  readonly line: number
  readonly time: Time
  readonly temperature: number | null
  readonly unit: CupUnit | null
  readonly room: number | null
  readonly seen: 'strings' | 'gelled' | null
}

function takenOf({ line, cells }: Row, columns: Columns, table: Table, refuse: Refuse): Taken {
  const { decimalComma } = table
  const cell = (i: number | null): string => (i === null ? '' : (cells[i] ?? ''))
  const time = timeIn(cell(columns.time), decimalComma)
  if (time === null)
    return refuse(
      at(
        line,
        `${cellShown(cell(columns.time))} as the time`,
        'minutes, "1:20" or a time of the clock',
        '"14:05"'
      )
    )
  if (time.form === 'number' && time.min < 0)
    return refuse(at(line, `${time.min} as the time`, 'no time before mixing'))
  // A word may stand where the temperature would: nothing but the moment was noted.
  const words = cells.filter((_, i) => i !== columns.time && i !== columns.room).join(' ')
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

/** Minutes since mixing of every row. */
function minutesOf(
  taken: readonly Taken[],
  columns: Columns,
  mixed: number | null,
  says: string[],
  refuse: Refuse
): number[] {
  if (taken.length === 0) return []
  const first = taken[0]!.time
  const other = taken.find(t => (t.time.form === 'number') !== (first.form === 'number'))
  if (other)
    refuse(at(other.line, 'a time written another way than the first', 'all of the clock, or all counted'))
  if (first.form === 'number') {
    const unit = columns.timeUnit ?? 1
    if (columns.timeUnit === null) says.push('Times are taken as minutes since mixing.')
    const out = taken.map(t => t.time.min * unit)
    return rising(taken, out, refuse)
  }
  // "0:35" without a date or am/pm: since mixing when it begins in the first hour or the header says so.
  const elapsed =
    columns.timeIs !== 'clock' &&
    mixed === null &&
    taken.every(t => t.time.form === 'elapsed') &&
    (columns.timeIs === 'elapsed' || first.min < 60)
  if (elapsed) {
    says.push('Times are taken as hours and minutes since mixing.')
    return rising(
      taken,
      taken.map(t => t.time.min),
      refuse
    )
  }
  const start = mixed ?? first.min
  let days = 0
  let before = start
  const out = taken.map(({ time, line }, i) => {
    if (time.min >= 24 * 60) refuse(at(line, 'a time of the clock beyond 24 hours', '0:00 to 23:59'))
    if (time.day !== null && first.day !== null) days = time.day - first.day + (first.min < start ? 1 : 0)
    // Back by more than half a day: past midnight.
    else if (time.min < before - 12 * 60 || (i === 0 && time.min < start - 60)) days++
    before = time.min
    return days * 24 * 60 + time.min - start
  })
  says.push(
    mixed === null
      ? 'The first reading is taken as the time of mixing; say --mixed when it was earlier.'
      : `Times are counted from mixing at ${String(Math.floor(mixed / 60)).padStart(2, '0')}:${String(Math.round(mixed % 60)).padStart(2, '0')}.`
  )
  const early = out.findIndex(m => m < 0)
  if (early >= 0)
    refuse(at(taken[early]!.line, 'a reading before the time of mixing', 'times from mixing on'))
  return rising(taken, out, refuse)
}

function rising(taken: readonly Taken[], minutes: number[], refuse: Refuse): number[] {
  for (let i = 1; i < minutes.length; i++)
    if (minutes[i]! < minutes[i - 1]!)
      refuse(
        at(
          taken[i]!.line,
          `${decimals(minutes[i]!, 1)} min after ${decimals(minutes[i - 1]!, 1)} min`,
          'readings in order of time'
        )
      )
  const last = minutes[minutes.length - 1]!
  if (last > MOST_MIN)
    refuse(at(taken[taken.length - 1]!.line, `${decimals(last, 0)} min`, `at most ${MOST_MIN} min, 30 days`))
  return minutes
}

const MOST_MIN = 43_200

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

/** The unit of the thermometer: named by header, numbers or asked for; else only where it can be no other. */
function unitOf(
  typed: readonly { line: number; value: number; unit: CupUnit | null; min: number }[],
  columns: Columns,
  options: CupOptions,
  says: string[],
  refuse: Refuse
): CupUnit {
  const named = typed.find(t => t.unit !== null)
  const odd = typed.find(t => t.unit !== null && t.unit !== (named!.unit ?? t.unit))
  if (odd) refuse(at(odd.line, `${odd.unit} after ${named!.unit}`, 'one unit throughout'))
  const inFile = named?.unit ?? columns.unit
  if (options.unit !== undefined) {
    if (inFile !== null && inFile !== options.unit)
      says.push(`The file says ${inFile}; taken as ${options.unit}, as asked for.`)
    return options.unit
  }
  const { value, line, min } = typed[0]!
  const ask = (taken: CupUnit, other: CupUnit): never =>
    refuse(
      at(
        line,
        `${value} ${inFile ?? 'without a unit'} in fresh resin`,
        `resin is mixed at 10 to 40 °C: if these are ${other}, say --unit ${other.slice(-1)}; if they are ${taken} all the same, say --unit ${taken.slice(-1)}`
      )
    )
  const fresh = min <= FRESH_MIN
  if (inFile === '°C' && fresh && value > WARM_FRESH_C) return ask('°C', '°F')
  if (inFile === '°F' && fresh && toFixedUnit(value, '°F') < COLD_FRESH_C) return ask('°F', '°C')
  if (inFile !== null) return inFile
  // Without a unit: 5 to 48 in fresh resin can only be °C; beyond, or later in the course, either may be meant.
  if (fresh && value >= COLD_FRESH_C && value <= WARM_FRESH_C) {
    says.push('Temperatures are taken as °C.')
    return '°C'
  }
  return ask('°C', '°F')
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
