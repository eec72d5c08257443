import { decimals } from '../quantity/format.ts'
import type { Columns, CupUnit } from './cup-header.ts'
import { at } from './cup-table.ts'
import type { Time } from './cup-time.ts'
import type { Problem } from './problem.ts'

/** Ends the reading of a file with one problem. */
export type Refuse = (problem: Problem) => never

/** What one line of a readings file holds. */
export interface Taken {
  readonly line: number
  readonly time: Time
  readonly temperature: number | null
  readonly unit: CupUnit | null
  readonly room: number | null
  readonly seen: 'strings' | 'gelled' | null
}

/** Minutes since mixing of every row. */
export function minutesOf(
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
      : `Times are counted from mixing at ${clockShown(mixed)}.`
  )
  const back = out.findIndex((m, i) => i > 0 && m < out[i - 1]!)
  if (back > 0)
    refuse(
      at(
        taken[back]!.line,
        `${clockShown(taken[back]!.time.min)} after ${clockShown(taken[back - 1]!.time.min)}`,
        'readings in order of time; past midnight only where a time falls back by more than 12 h, or with a date'
      )
    )
  const early = out.findIndex(m => m < 0)
  if (early >= 0)
    refuse(at(taken[early]!.line, 'a reading before the time of mixing', 'times from mixing on'))
  return rising(taken, out, refuse)
}

function clockShown(min: number): string {
  const two = (x: number): string => String(x).padStart(2, '0')
  return `${two(Math.floor(min / 60))}:${two(Math.floor(min % 60))}`
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
