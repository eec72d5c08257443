import type { Share } from './build-cost.ts'
import { buildCost } from './build-cost.ts'
import type { Task } from './calendar/task.ts'
import { tasksOf } from './calendar/tasks.ts'
import type { Cost } from './cost/cost.ts'
import { COST_GROUPS } from './cost/cost-line.ts'
import { minorDigits } from './cost/money.ts'
import { costOfMany, onceOf } from './cost/once.ts'
import type { Price } from './cost/price.ts'
import { anHourOf, paidOf, pricesOf } from './cost/price.ts'
import type { Planned } from './plan-answer.ts'
import { programsOf, taskReckoning } from './task-reckoning.ts'

/**
 * How many are made alike, in the table of unit prices: one, half a dozen, a dozen. Common practice of price lists, no
 * source; what is asked for besides is in `count`.
 */
const COUNTS = [1, 6, 12] as const

/** Cost and price of a planned piece. Sums are coins of the currency (see cost/money.ts). */
export interface Quote {
  readonly name: string
  readonly asOf: string
  /** How many are asked for. */
  readonly count: number
  readonly cost: Cost
  /** Of all pieces asked for, by each rule, before tax. */
  readonly prices: readonly Price[]
  /** The rule that the shop quotes by: margin on top. */
  readonly net: number
  readonly tax: number
  readonly taxPct: number
  /** What the client pays. */
  readonly gross: number
  readonly deposit: number
  readonly depositPct: number
  /** Price of one by the same rule when so many are made alike, before tax. */
  readonly units: readonly { readonly count: number; readonly coins: number }[]
  /** What one spoiled blank costs, material and work. */
  readonly spoiled: number
  /** A price that was asked about, and what it leaves for an hour; null: none was. */
  readonly asked: { readonly coins: number; readonly anHour: number | null } | null
  readonly validDays: number
  /** Minutes of your hands at each step, by its key. */
  readonly steps: readonly { readonly step: string; readonly minutes: number }[]
  /** false: something has no price or rate, and every sum is "at least". */
  readonly whole: boolean
}

/**
 * What the piece costs the shop and what it is quoted at: minutes of the very tasks of the calendar, material of the buy
 * list, rates of the shop.
 *
 * Check: net and tax add up to gross in coins; the price of one of one equals the net price of one piece (tests).
 * Limits: pieces beyond those the document plans are taken to cost what these do, work done once shared.
 */
export function quoteOf(
  { work }: Pick<Planned, 'work'>,
  options: { readonly asOf: string; readonly count?: number; readonly price?: number; readonly share?: Share }
): Quote {
  const { shop, quantity, piece } = work
  const { rates, currency } = shop
  const programs = programsOf(work)
  const { tasks } = tasksOf(
    work,
    taskReckoning(work, { piece: '', originMs: Date.parse(options.asOf) }, programs)
  )
  const { blanks } = quantity
  const cost = buildCost(work, tasks, programs, options.share)
  const coin = 10 ** minorDigits(currency)
  const pieces = Math.max(1, quantity.pieces)
  const count = options.count ?? pieces
  const once = onceOf(cost, rates, coin)
  const many = (n: number) => costOfMany(cost.total, once, pieces, n)
  const onTop = (1 + rates.overhead / 100) * (1 + rates.margin / 100)
  const scaled = count === pieces ? cost.total : Math.round(many(count))
  const prices = pricesOf(scaledTo(cost, scaled), rates)
  const { net, tax, gross } = paidOf(scaled * onTop, rates, currency)
  return {
    name: piece.name,
    asOf: options.asOf,
    count,
    cost,
    prices,
    net,
    tax,
    taxPct: rates.tax,
    gross,
    deposit: Math.round((gross * rates.deposit) / 100),
    depositPct: rates.deposit,
    units: COUNTS.map(n => ({
      count: n,
      coins: Math.round(paidOf(many(n) * onTop, rates, currency).net / n)
    })),
    spoiled: Math.round((cost.total - cost.sums.spoil - once) / Math.max(1, blanks)),
    asked:
      options.price === undefined
        ? null
        : {
            coins: Math.round(options.price * coin),
            anHour: anHourOf(scaledTo(cost, scaled), rates, Math.round(options.price * coin))
          },
    validDays: rates.valid,
    steps: minutesByStep(tasks),
    whole: cost.unpriced.length === 0
  }
}

function minutesByStep(tasks: readonly Task[]): Quote['steps'] {
  const sums = new Map<string, number>()
  for (const t of tasks)
    if (t.step !== null && t.attended && t.needs.includes('hands'))
      sums.set(t.step, (sums.get(t.step) ?? 0) + t.minutes)
  return [...sums].map(([step, minutes]) => ({ step, minutes }))
}

// All lines of a cost grown alike, so that its rules see the pieces asked for.
function scaledTo(cost: Cost, total: number): Cost {
  if (total === cost.total || cost.total === 0) return cost
  const f = total / cost.total
  const sums = { ...cost.sums }
  for (const group of COST_GROUPS) sums[group] *= f
  return { ...cost, total, handsMin: cost.handsMin * f, sums }
}
