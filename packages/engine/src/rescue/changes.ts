import type { Work } from '../findings/work.ts'
import { decimals, formatMass, formatMinutes, formatMm } from '../quantity/format.ts'
import { finishedThickness } from '../stack/stack.ts'
import { momentWords } from './moment-words.ts'

/** One thing that is otherwise than it was planned. */
export interface Change {
  readonly what:
    | 'level'
    | 'mass'
    | 'start'
    | 'thickness'
    | 'moisture'
    | 'speed'
    | 'flatness'
    | 'film'
    | 'size'
  /** JSON Pointer into the piece. */
  readonly at: string
  readonly planned: number | null
  readonly built: number | null
  readonly unit: 'mm' | 'g' | 'min' | '%' | null
  readonly says: string
}

// What is closer to the plan than these is as planned: what the hand and its tool are off by (practice).
/** Level, mm: a rule read. */
const LEVEL_MM = 0.2
/** Share of the mass: what a vessel keeps or gives. */
const MASS_SHARE = 0.02
/** Start, min. */
const START_MIN = 15
/** Thickness, mm: a caliper at two places. */
const THICK_MM = 0.1
/** Moisture, %: a meter read twice. */
const MOISTURE_PCT = 0.5

/** What is otherwise than planned: `plan` without its readings, `built` with them. */
export function changesOf(plan: Work, built: Work): Change[] {
  return [...levels(plan, built), ...masses(plan, built), ...starts(plan, built), ...rest(plan, built)]
}

function levels(plan: Work, built: Work): Change[] {
  return built.entries.pours.flatMap(({ id, at, index }): Change[] => {
    if (!built.readings.some(r => r.kind === 'height' && r.pour === id)) return []
    const was = plan.stack.pours[index]!.level
    const is = built.stack.pours[index]!.level
    if (Math.abs(is - was) < LEVEL_MM) return []
    const off = Math.abs(is - was)
    return [
      {
        what: 'level',
        at,
        planned: was,
        built: is,
        unit: 'mm',
        says: `${id} stands ${formatMm(is)} high as cast, ${formatMm(off)} ${is < was ? 'lower' : 'higher'} than planned`
      }
    ]
  })
}

function masses(plan: Work, built: Work): Change[] {
  return built.entries.pours.flatMap(({ id, at, index }): Change[] => {
    const poured = built.readings.flatMap(r => (r.kind === 'poured' && r.pour === id ? [r.mass] : []))
    if (poured.length === 0) return []
    const sum = poured.reduce((a, b) => a + b, 0)
    const was = plan.stack.pours[index]!.massG * plan.quantity.blanks
    if (Math.abs(sum - was) <= MASS_SHARE * was) return []
    return [
      {
        what: 'mass',
        at,
        planned: was,
        built: sum,
        unit: 'g',
        says: `${formatMass(sum)} of ${id} were poured, ${formatMass(Math.abs(sum - was))} ${sum < was ? 'less' : 'more'} than planned`
      }
    ]
  })
}

function starts(plan: Work, built: Work): Change[] {
  return built.entries.pours.flatMap(({ id, at, index, value }): Change[] => {
    const was = plan.piece.pours[index]!.start
    const is = value.start
    if (was === undefined || is === undefined || was === is) return []
    const late = (Date.parse(is) - Date.parse(was)) / 60_000
    if (Math.abs(late) < START_MIN) return []
    return [
      {
        what: 'start',
        at,
        planned: 0,
        built: late,
        unit: 'min',
        says: `${id} was begun ${momentWords(is)}, ${formatMinutes(Math.abs(late))} ${late > 0 ? 'later' : 'earlier'} than planned`
      }
    ]
  })
}

function rest(plan: Work, built: Work): Change[] {
  const out: Change[] = []
  const was = finishedThickness(plan.stack)
  const is = finishedThickness(built.stack)
  if (Math.abs(is - was) >= THICK_MM)
    out.push({
      what: 'thickness',
      at: '/flatten',
      planned: was,
      built: is,
      unit: 'mm',
      says: `the finished piece will be ${formatMm(is)} thick, ${formatMm(Math.abs(is - was))} ${is < was ? 'thinner' : 'thicker'} than planned`
    })
  built.seasons.forEach((s, i) => {
    const entry = built.entries.timbers[i]!
    if (!built.readings.some(r => 'timber' in r && r.timber === entry.id)) return
    const before = plan.seasons[i]!.moisturePct
    if (Math.abs(s.moisturePct - before) < MOISTURE_PCT) return
    out.push({
      what: 'moisture',
      at: entry.at,
      planned: before,
      built: s.moisturePct,
      unit: '%',
      says: `${entry.id} holds ${decimals(s.moisturePct, 1)} % of water, ${decimals(before, 1)} % was planned`
    })
  })
  built.casts.forEach((c, i) => {
    const { id, at } = built.entries.pours[i]!
    if (!c?.learned || c.learned.signs.length === 0) return
    out.push({
      what: 'speed',
      at,
      planned: 1,
      built: c.learned.factor,
      unit: null,
      says: `${id}: ${c.learned.says}`
    })
  })
  for (const r of built.readings) {
    if (r.kind === 'flatness' && built.bow !== null && r.out > built.bow.flatnessMm)
      out.push({
        what: 'flatness',
        at: '/flatness',
        planned: built.bow.flatnessMm,
        built: r.out,
        unit: 'mm',
        says: `the ${r.face} is ${formatMm(r.out)} out of flat; ${formatMm(built.bow.flatnessMm)} is wanted`
      })
  }
  return out
}
