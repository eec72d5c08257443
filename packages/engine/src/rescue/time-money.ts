import type { Shop } from '../piece/shop-schema.ts'
import type { Totals } from '../plan-answer.ts'

/** What a way on costs beyond going on as planned. Days of 24 h; money in the currency of the shop. */
export interface TimeMoney {
  /** Waiting more, or less, by the re-planned plan: its waits less those of the plan as it stands. */
  readonly planDays: number
  /** Waiting that the plan has no step for, days. */
  readonly waitDays: number
  /** Work of hands that the plan has no step for, min. */
  readonly handsMin: number
  /** All of it in days: waits, and hands spread over the hours at the bench. */
  readonly days: number
  /** Material by the re-planned plan less that of the plan as it stands. */
  readonly material: number
  /** Hands at the rate of the shop; null where it has none. */
  readonly labour: number | null
  readonly money: number
  readonly currency: string
  /** Lines of the buy list without a price: the money is then more. */
  readonly unpriced: number
}

/** A working day where the shop says no hours, min (practice). */
const USUAL_DAY_MIN = 480
const WEEK_DAYS = 7

/**
 * What a way costs: waits and material of two plans, one less the other, and the hands it takes besides. The one
 * place where time and money of a rescue come from.
 *
 *   days = plan's waits after − before + waiting besides + hands / (hours at the bench of a week / 7)
 */
export function timeMoney(
  before: Totals,
  after: Totals,
  draft: { readonly handsMin: number; readonly waitDays: number },
  shop: Shop
): TimeMoney {
  const planDays = after.waitDays - before.waitDays
  const material = after.materialCost - before.materialCost
  const { labour: rate } = shop.rates
  const labour = rate === undefined ? null : (rate * draft.handsMin) / 60
  return {
    planDays,
    waitDays: draft.waitDays,
    handsMin: draft.handsMin,
    days: planDays + draft.waitDays + draft.handsMin / benchMinPerDay(shop),
    material,
    labour,
    money: material + (labour ?? 0),
    currency: shop.currency,
    unpriced: after.unpriced
  }
}

/** Minutes at the bench of a day of the week, on average. */
export function benchMinPerDay(shop: Pick<Shop, 'hours'>): number {
  if (shop.hours === undefined) return USUAL_DAY_MIN
  const minutes = Object.values(shop.hours)
    .flat()
    .reduce((sum, span) => sum + minutesOf(String(span)), 0)
  return minutes > 0 ? minutes / WEEK_DAYS : USUAL_DAY_MIN
}

// "09:00-17:00"
function minutesOf(span: string): number {
  const [from, to] = span.split('-').map(t => Number(t.slice(0, 2)) * 60 + Number(t.slice(3, 5)))
  return Math.max(0, (to ?? 0) - (from ?? 0))
}
