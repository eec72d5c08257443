import type { Shop } from '../piece/shop-schema.ts'
import type { Cost } from './cost.ts'
import { minorDigits, moneyWords, toCoins } from './money.ts'

/** How a price is come to. */
export type PriceRule = 'margin on top' | 'margin of the price' | 'by the hour' | 'four times material'

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
 *   by the hour           hours × an hour as it is charged + all that is no hour
 *   four times material   4 × (material + consumables)
 *
 * Each is rounded so that the client pays whole steps, where the shop says of what.
 *
 * Check: markup m and margin k give the same price where k = m / (1 + m) (identity; tests). A margin of the price of
 * 100 % or more has no price, and is left out.
 */
export function pricesOf(cost: Cost, rates: Shop['rates']): Price[] {
  const over = cost.total * (1 + rates.overhead / 100)
  const margin = rates.margin / 100
  const four = 4 * (cost.sums.material + cost.sums.consumables)
  const price = (rule: PriceRule, says: string, coins: number): Price => {
    const { net } = paidOf(coins, rates, cost.currency)
    return { rule, says, coins: net, anHour: anHourOf(cost, rates, net) }
  }
  const hour = rates.hour ?? rates.labour
  const coin = 10 ** minorDigits(cost.currency)
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
    ...(hour === undefined || cost.handsMin <= 0
      ? []
      : [
          price(
            'by the hour',
            `${moneyWords(hour * coin, cost.currency)} an hour, and all but hours at cost`,
            (cost.handsMin / MIN_PER_H) * hour * coin + cost.total - cost.sums.labour
          )
        ]),
    price('four times material', 'four times what material and consumables cost', four)
  ]
}

/** What the client pays, and what of it is tax: whole steps where the shop rounds, never down. Coins. */
export function paidOf(
  coins: number,
  rates: Pick<Shop['rates'], 'tax' | 'round'>,
  currency: string
): { readonly net: number; readonly tax: number; readonly gross: number } {
  const net = Math.round(coins)
  const tax = Math.round((net * rates.tax) / 100)
  if (rates.round === undefined) return { net, tax, gross: net + tax }
  const step = Math.max(1, toCoins(rates.round, currency))
  const gross = Math.ceil((net + tax) / step - 1e-9) * step
  const before = Math.round(gross / (1 + rates.tax / 100))
  return { net: before, tax: gross - before, gross }
}

/** What a price leaves for an hour at the bench: less material, consumables, machine and overhead. Coins; null without hands. */
export function anHourOf(cost: Cost, rates: Shop['rates'], coins: number): number | null {
  if (cost.handsMin <= 0) return null
  const others = cost.total - cost.sums.labour + (cost.total * rates.overhead) / 100
  return Math.round(((coins - others) / cost.handsMin) * MIN_PER_H)
}
