import type { LearnedFactor } from './calendar/learned-minutes.ts'
import type { Work } from './findings/work.ts'
import type { Reading } from './piece/reading-schema.ts'
import type { Quote } from './quote.ts'
import { taskReckoning } from './task-reckoning.ts'

/** A quote that was kept: the reading of it. */
export type Quoted = Extract<Reading, { kind: 'quoted' }>

/** One line of a quote against what came of it. Coins of the currency of the quote. */
export interface ActualLine {
  readonly name: string
  readonly unit: string
  readonly quoted: number
  /** What was read; null: nothing was. */
  readonly actual: number | null
  readonly quotedCoins: number | null
  readonly actualCoins: number | null
}

/** What was quoted against what was read. */
export interface Actual {
  /** When the quote was kept. */
  readonly at: string
  readonly currency: string
  readonly count: number
  readonly net: number
  readonly steps: readonly ActualLine[]
  readonly material: readonly ActualLine[]
  /** Of lines with both sides: what they were reckoned at, and what they came to. */
  readonly quotedCoins: number
  readonly actualCoins: number
  /** What stays in the vessels, % of what was mixed; null: not both were weighed. */
  readonly leftoverPct: number | null
  /** How much longer than reckoned each kind of work takes here, as the next pieces will go by. */
  readonly learned: ReadonlyMap<string, LearnedFactor>
}

/** A quote as it is kept among the readings, without its id and moment. */
export function keptQuote(q: Quote): Omit<Quoted, 'id' | 'at'> {
  return {
    kind: 'quoted',
    count: q.count,
    currency: q.cost.currency,
    net: q.net,
    gross: q.gross,
    lines: q.cost.lines.map(({ group, name, item, unit, amount, coins }) => ({
      group,
      name: name.slice(0, 200),
      ...(item === null ? {} : { item: item.slice(0, 120) }),
      unit,
      amount: Number(amount.toFixed(4)),
      ...(coins === null ? {} : { coins })
    })),
    steps: q.steps.map(s => ({ step: s.step, minutes: Number(s.minutes.toFixed(2)) }))
  }
}

/** The last quote that was kept; null: none was. */
export function lastQuoted(readings: readonly Reading[]): Quoted | null {
  return readings.findLast((r): r is Quoted => r.kind === 'quoted') ?? null
}

/**
 * What was quoted against what was read, line by line: minutes of steps, what was mixed, what was used.
 *
 *   coins of a line = what was read × coins quoted / amount quoted
 *   leftover = (mixed − poured) / mixed, of pours of which both were weighed
 *
 * Check: readings that say what was planned give no difference; worked by hand (tests).
 * Limits: prices are those of the quote; what nothing was read of stands as quoted and is left out of the sums.
 */
export function actualOf(work: Work, quoted: Quoted, asOf: string): Actual {
  const { readings } = work
  const took = new Map<string, number>()
  for (const r of readings)
    if ((r.kind === 'done' || r.kind === 'minutes') && r.minutes !== undefined) took.set(r.step, r.minutes)
  const labour = quoted.lines.find(l => l.group === 'labour')
  const perMin = labour?.coins === undefined || labour.amount <= 0 ? null : labour.coins / labour.amount / 60
  const known = new Set(quoted.steps.map(s => s.step))
  const more = [...took.keys()].filter(step => !known.has(step)).map(step => ({ step, minutes: 0 }))
  const steps = [...quoted.steps, ...more].map(({ step, minutes }) =>
    lineFor(step, 'min', minutes, took.get(step) ?? null, perMin)
  )
  const used = usedOf(work)
  const material = quoted.lines
    .filter(l => l.group === 'material' || l.group === 'consumables')
    .map(l => {
      const each = l.coins === undefined || l.amount <= 0 ? null : l.coins / l.amount
      return lineFor(l.name, l.unit, l.amount, used.get(l.item ?? '') ?? used.get(l.name) ?? null, each)
    })
  const both = [...steps, ...material].filter(l => l.actual !== null)
  const sum = (of: (l: ActualLine) => number | null) => both.reduce((total, l) => total + (of(l) ?? 0), 0)
  return {
    at: quoted.at,
    currency: quoted.currency,
    count: quoted.count,
    net: quoted.net,
    steps,
    material,
    quotedCoins: sum(l => l.quotedCoins),
    actualCoins: sum(l => l.actualCoins),
    leftoverPct: leftoverOf(readings),
    learned: taskReckoning(work, { piece: '', originMs: Date.parse(asOf) }, null).learned ?? new Map()
  }
}

function lineFor(
  name: string,
  unit: string,
  quoted: number,
  actual: number | null,
  each: number | null
): ActualLine {
  const coins = (x: number | null) => (x === null || each === null ? null : Math.round(x * each))
  return { name, unit, quoted, actual, quotedCoins: coins(quoted), actualCoins: coins(actual) }
}

// What was mixed, by the id of the buy list: the resin of a pour and its pigments by their shares; and what is said.
function usedOf({ readings, materials, entries }: Work): Map<string, number> {
  const out = new Map<string, number>()
  const add = (item: string, amount: number) => out.set(item, (out.get(item) ?? 0) + amount)
  for (const r of readings) {
    if (r.kind === 'used') add(r.item, r.amount)
    if (r.kind !== 'mixed' || r.mass === undefined) continue
    const i = entries.pours.findIndex(p => p.id === r.pour)
    if (i < 0) continue
    const tints = materials.tints[i]!
    for (const t of tints) add(t.pigment.id, r.mass * t.share)
    add(materials.resins[i]!.id, r.mass * (1 - tints.reduce((sum, t) => sum + t.share, 0)))
  }
  return out
}

function leftoverOf(readings: readonly Reading[]): number | null {
  const sums = new Map<string, { mixed: number; poured: number }>()
  for (const r of readings) {
    if ((r.kind !== 'mixed' && r.kind !== 'poured') || r.mass === undefined) continue
    const sum = sums.get(r.pour) ?? { mixed: 0, poured: 0 }
    sum[r.kind] += r.mass
    sums.set(r.pour, sum)
  }
  const both = [...sums.values()].filter(s => s.mixed > 0 && s.poured > 0 && s.poured <= s.mixed)
  const mixed = both.reduce((total, s) => total + s.mixed, 0)
  return mixed === 0 ? null : 100 * (1 - both.reduce((total, s) => total + s.poured, 0) / mixed)
}
