import { buildCost } from '../build-cost.ts'
import type { Cost } from '../cost/cost.ts'
import { minorDigits } from '../cost/money.ts'
import { finishOf } from '../days.ts'
import type { DaysOptions } from '../days-answer.ts'
import { localMoment } from '../days-data.ts'
import type { Work } from '../findings/work.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { programsOf } from '../task-reckoning.ts'
import type { PlanInput } from '../work.ts'

/** What a way on costs beyond going on as planned. Days of 24 h; money in the currency of the shop. */
export interface TimeMoney {
  /** Ready so many days later than as planned, by the calendar; null: no calendar holds one of the two. */
  readonly days: number | null
  /** When it is ready this way, on the clock of the place, ISO 8601; null: no calendar holds it. */
  readonly ready: string | null
  /** Hands at work more, or less, min: what no step stands for among it. */
  readonly handsMin: number
  /** Waiting that the plan has no step for, days. */
  readonly waitDays: number
  /** Material and consumables more, or less. */
  readonly material: number
  /** Hands at the rate of the shop; null where it has none. */
  readonly labour: number | null
  readonly machine: number
  readonly money: number
  readonly currency: string
  /** Lines of the cost without a price or a rate: the money is then more. */
  readonly unpriced: number
  /** What has to be done besides because a window that can pass is passed. */
  readonly passed: readonly string[]
}

/** A plan with its calendar and its cost. */
export interface Reckoned {
  readonly readyMs: number | null
  readonly passed: readonly string[]
  readonly cost: Cost
}

/** Calendar and cost of a plan, with the work it has no step for. */
export function reckoned(
  input: PlanInput,
  work: Work,
  { asOf, effort = 'full' }: Pick<DaysOptions, 'asOf' | 'effort'>,
  draft: { readonly does: string; readonly handsMin: number; readonly waitDays: number } | null = null
): Reckoned {
  const besides =
    draft === null
      ? null
      : { says: draft.does, handsMin: draft.handsMin, waitMin: draft.waitDays * 1440, first: true }
  const programs = effort === 'quick' ? null : programsOf(work)
  const { readyMs, tasks, passed } = finishOf(input, { work, programs }, { asOf, effort }, besides)
  return { readyMs, passed, cost: buildCost(work, tasks, programs) }
}

/**
 * What a way costs: ready date and cost of the plan made anew, less those of the plan as it stands. The one place where
 * time and money of a rescue come from.
 *
 *   days = ready anew − ready as it stands        money = cost anew − cost as it stands
 *
 * Check: equal to those of `daysOf` and `quoteOf` of the changed piece (tests).
 * Limits: work besides the steps is taken to come before all that is not begun.
 */
export function timeMoney(
  before: Reckoned,
  after: Reckoned,
  waitDays: number,
  { rates, timeZone }: Pick<Shop, 'rates' | 'timeZone'>
): TimeMoney {
  const { currency } = after.cost
  const unit = 10 ** minorDigits(currency)
  const of = (coins: (c: Cost) => number) => (coins(after.cost) - coins(before.cost)) / unit
  return {
    days:
      before.readyMs === null || after.readyMs === null
        ? null
        : (after.readyMs - before.readyMs) / 86_400_000,
    ready: after.readyMs === null ? null : localMoment(after.readyMs, timeZone),
    handsMin: after.cost.handsMin - before.cost.handsMin,
    waitDays,
    material: of(c => c.sums.material + c.sums.consumables),
    labour: rates.labour === undefined ? null : of(c => c.sums.labour),
    machine: of(c => c.sums.machine),
    money: of(c => c.total),
    currency,
    unpriced: after.cost.unpriced.length,
    passed: after.passed
  }
}
