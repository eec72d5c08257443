import type { Shop } from '../piece/shop-schema.ts'
import type { Cost } from './cost.ts'

/** How a price is come to. */
export type PriceRule = 'margin on top' | 'margin of the price' | 'four times material'

/** A price by one rule, before tax. Coins. */
export interface Price {
  readonly rule: PriceRule
  readonly says: string
  readonly coins: number
  /** What is left for an hour at the bench once all else is paid, overhead too; null where no hands are in it. */
  readonly anHour: number | null
}

const MIN_PER_H = 60

/**
 * Prices of a cost by the rules makers use, side by side (all common practice, no source):
 *
 *   margin on top         cost × (1 + overhead) × (1 + margin)
 *   margin of the price   cost × (1 + overhead) / (1 − margin)
 *   four times material   4 × (material + consumables)
 *
 * Check: markup m and margin k give the same price where k = m / (1 + m) (identity; tests). A margin of the price of
 * 100 % or more has no price, and is left out.
 */
export function pricesOf(cost: Cost, rates: Shop['rates']): Price[] {
  const over = cost.total * (1 + rates.overhead / 100)
  const margin = rates.margin / 100
  const four = 4 * (cost.sums.material + cost.sums.consumables)
  const price = (rule: PriceRule, says: string, coins: number): Price => {
    const rounded = Math.round(coins)
    return { rule, says, coins: rounded, anHour: anHourOf(cost, rates, rounded) }
  }
  return [
    price(
      'margin on top',
      `cost with ${rates.overhead} % overhead, and ${rates.margin} % on top of that`,
      over * (1 + margin)
    ),
    ...(margin < 1
      ? [
          price(
            'margin of the price',
            `cost with ${rates.overhead} % overhead; ${rates.margin} % of the price is left over`,
            over / (1 - margin)
          )
        ]
      : []),
    price('four times material', 'four times what material and consumables cost', four)
  ]
}

/** What a price leaves for an hour at the bench: less material, consumables, machine and overhead. Coins; null without hands. */
export function anHourOf(cost: Cost, rates: Shop['rates'], coins: number): number | null {
  if (cost.handsMin <= 0) return null
  const others = cost.total - cost.sums.labour + (cost.total * rates.overhead) / 100
  return Math.round(((coins - others) / cost.handsMin) * MIN_PER_H)
}

/** What is done once, in coins; `coin` are the coins of one of the currency. */
export function onceOf(cost: Cost, rates: Shop['rates'], coin: number): number {
  return (
    ((cost.onceHandsMin * (rates.labour ?? 0) + cost.onceMachineMin * (rates.machine ?? 0)) / MIN_PER_H) *
    coin
  )
}

/** The cost of `count` pieces alike, where `cost` is that of `pieces`: what is done once is shared. Coins. */
export function costOfMany(total: number, once: number, pieces: number, count: number): number {
  return once + ((total - once) / pieces) * count
}
