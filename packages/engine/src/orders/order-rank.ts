import type { Patch } from '../piece/patch.ts'
import type { OrderPlan } from './order-plan.ts'

/** An order that was planned anew. */
export interface Weighed {
  /** Numbers of its steps, as they stand in the given order. */
  readonly indexes: readonly number[]
  readonly patch: Patch
  readonly plan: OrderPlan
  readonly does: string
  /** What it gives up that the given order keeps, and how much of what that gives up it keeps. */
  readonly gives: readonly string[]
  readonly keeps: number
}

/** How orders are ranked, in words. */
export const ORDER_RULE =
  'the fewest stops, the fewest cautions, the least given up, the fewest days (to half a day), the least money, the least work; what gains under ten minutes and under 1 % of the cost is not worth a change'

const HALF_DAY_MS = 43_200_000
const WORTH_MIN = 10
const WORTH_SHARE = 0.01

/** The orders from the best to the last, by {@link ORDER_RULE}; of two alike the one nearer to the given order first. */
export function rankedOrders(list: readonly Weighed[], given: OrderPlan): Weighed[] {
  const keyed = list.map(w => ({ w, key: [...keyOf(w, given), distance(w.indexes)] }))
  return keyed.sort((a, b) => compared(a.key, b.key)).map(({ w }) => w)
}

/** Ranked, and of those that come to the same the nearest alone. */
export function distinctOrders(list: readonly Weighed[], given: OrderPlan): Weighed[] {
  const seen = new Set<string>()
  return rankedOrders(list, given).filter(w => {
    const key = keyOf(w, given)
      .map(x => x.toFixed(3))
      .join(' ')
    const before = seen.has(key)
    seen.add(key)
    return !before
  })
}

/** Better than the given order, and by more than a trifle. */
export function isBetter(w: Weighed, given: OrderPlan): boolean {
  const a = w.plan.figures
  const b = given.figures
  if (a.readyMs !== null && b.readyMs === null) return a.stops <= b.stops
  const now = [b.stops, b.cautions, 0, b.readyMs === null ? Number.MAX_SAFE_INTEGER : 0]
  const ahead = compared(keyOf(w, given).slice(0, now.length), now)
  if (ahead !== 0) return ahead < 0
  if (a.coins > b.coins) return false
  return b.handsMin - a.handsMin >= WORTH_MIN || b.coins - a.coins > WORTH_SHARE * b.coins
}

/** Ahead of the given order by the rule, be it by a trifle: worth looking on from. */
export function isAhead(w: Weighed, given: OrderPlan): boolean {
  const { stops, cautions, readyMs, coins, handsMin } = given.figures
  const days = readyMs === null ? Number.MAX_SAFE_INTEGER : 0
  return compared(keyOf(w, given), [stops, cautions, 0, days, coins, handsMin]) < 0
}

/** How far an order is from the given one: pairs that stand the other way round. */
export function distance(order: readonly number[]): number {
  let out = 0
  for (let i = 0; i < order.length; i++)
    for (let k = i + 1; k < order.length; k++) if (order[i]! > order[k]!) out++
  return out
}

/** Below 0: a goes first. */
export function compared(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((x, i) => Math.abs(x - b[i]!) > 1e-9)
  return k < 0 ? 0 : a[k]! - b[k]!
}

function keyOf({ plan, gives, keeps }: Weighed, given: OrderPlan): number[] {
  const { figures: f } = plan
  const days =
    f.readyMs === null
      ? Number.MAX_SAFE_INTEGER
      : Math.round((f.readyMs - (given.figures.readyMs ?? 0)) / HALF_DAY_MS)
  return [f.stops, f.cautions, gives.length - keeps, days, f.coins, f.handsMin]
}
