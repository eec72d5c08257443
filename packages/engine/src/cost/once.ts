import type { Shop } from '../piece/shop-schema.ts'

const MIN_PER_H = 60

/** What of a build is spent once, however many pieces are made alike. */
export interface Once {
  readonly onceHandsMin: number
  readonly onceMachineMin: number
  /** Coins beside those minutes: delivery, orders outside. */
  readonly onceCoins: number
}

/** What is done once, in coins; `coin` are the coins of one of the currency. */
export function onceOf(cost: Once, rates: Shop['rates'], coin: number): number {
  return (
    ((cost.onceHandsMin * (rates.labour ?? 0) + cost.onceMachineMin * (rates.machine ?? 0)) / MIN_PER_H) *
      coin +
    cost.onceCoins
  )
}

/** The cost of `count` pieces alike, where `cost` is that of `pieces`: what is done once is shared. Coins. */
export function costOfMany(total: number, once: number, pieces: number, count: number): number {
  return once + ((total - once) / pieces) * count
}
