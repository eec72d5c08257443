import type { DayTaskView, DayView } from '../worker/days-view.ts'

/** Days that are drawn in one row, the scale of the row, px for a unit of width. */
export interface LaneRow {
  readonly days: readonly DayView[]
  readonly scale: number
}

/** A row is no longer than this in units of width (an open minute is 1), nor than so many days. Practice. */
const MOST_WIDTH = 4200
const MOST_DAYS = 9

/** Parts days into rows that are drawn over the same width. Quiet days before the first busy one are kept. */
export function rowsOf(days: readonly DayView[], widthPx: number): LaneRow[] {
  const rows: DayView[][] = []
  let sum = 0
  for (const day of days) {
    const row = rows.at(-1)
    if (row === undefined || row.length >= MOST_DAYS || sum + day.width > MOST_WIDTH) {
      rows.push([day])
      sum = day.width
    } else {
      row.push(day)
      sum += day.width
    }
  }
  return rows.map(list => {
    const total = list.reduce((s, day) => s + day.width, 0)
    return { days: list, scale: widthPx / Math.max(total, MOST_WIDTH / 2) }
  })
}

/** Where a moment is drawn on its day, px. */
export function pxOn(day: DayView, atMin: number, scale: number): number {
  for (const s of day.stretches)
    if (atMin <= s.toMin)
      return scale * (s.at + (Math.max(0, atMin - s.fromMin) / (s.toMin - s.fromMin)) * s.width)
  return scale * day.width
}

/** The moment that is drawn so far from the left edge of a day. */
export function minAt(day: DayView, px: number, scale: number): number {
  const at = px / scale
  for (const s of day.stretches)
    if (at <= s.at + s.width) return s.fromMin + (Math.max(0, at - s.at) / s.width) * (s.toMin - s.fromMin)
  return day.toMin
}

/** Words under bars: those that would run into others go a line lower. */
export interface LaneLabel {
  readonly id: string
  readonly says: string
  readonly when: string
  readonly atPx: number
  readonly leftPx: number
  readonly level: number
}

const LETTER_PX = 6.4
/** Tasks nearer than this to each other are one visit and share their words, min. */
const ONE_VISIT_MIN = 20

export function labelsOf(
  day: DayView,
  tasks: ReadonlyMap<string, DayTaskView>,
  row: { readonly left: number; readonly scale: number; readonly width: number },
  taken: number[],
  visit: (from: string, to: string, tasks: number) => string
): LaneLabel[] {
  const there = day.spans.filter(s => s.lane !== 'alone')
  const visits: (typeof there)[] = []
  for (const s of there) {
    const last = visits.at(-1)
    if (last !== undefined && s.fromMin - Math.max(...last.map(x => x.toMin)) < ONE_VISIT_MIN) last.push(s)
    else visits.push([s])
  }
  return visits.map(list => {
    const first = list[0]!
    // The longest is what the visit is called after.
    const named = [...list].sort((a, b) => b.toMin - b.fromMin - (a.toMin - a.fromMin))[0]!
    const count = new Set(list.map(s => s.id)).size
    const from = timeOn(day, first.fromMin)
    const says = tasks.get(named.id)?.says ?? ''
    const cut = says.length > 34 ? `${says.slice(0, 33)}…` : says
    const when = count === 1 ? from : visit(from, timeOn(day, Math.max(...list.map(s => s.toMin))), count)
    const atPx = row.left + pxOn(day, first.fromMin, row.scale)
    const width = LETTER_PX * Math.max(cut.length, when.length) + 10
    const leftPx = Math.max(0, Math.min(atPx, row.width - width))
    let level = taken.findIndex(end => end <= leftPx)
    if (level < 0) level = taken.length
    taken[level] = leftPx + width
    return { id: named.id, says: cut, when, atPx, leftPx, level }
  })
}

/** A moment of a day on its clock. */
export function timeOn(day: DayView, atMin: number): string {
  const m = Math.round(atMin - day.fromMin)
  const two = (x: number) => String(x).padStart(2, '0')
  return `${two(Math.floor(m / 60))}:${two(m % 60)}`
}
