import { kept } from '../quantity/kept.ts'

/**
 * Money is counted in the smallest coin of its currency, so that lines add up to their sum exactly.
 *
 * Digits after the point by ISO 4217, as the platform's own table has them; 2 for what is no code of it.
 */

const known = new Map<string, number>()

/** Digits after the point of a currency: 2 for EUR, 0 for JPY, 3 for KWD. */
export function minorDigits(currency: string): number {
  return kept(known, currency, () => digitsOf(currency))
}

function digitsOf(currency: string): number {
  try {
    return (
      new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ??
      2
    )
  } catch {
    return 2
  }
}

/** An amount in the smallest coins, rounded half up. */
export function toCoins(amount: number, currency: string): number {
  return Math.round(amount * 10 ** minorDigits(currency) + 1e-9)
}

/** Coins as an amount in words: "14.20 EUR". */
export function moneyWords(coins: number, currency: string): string {
  const digits = minorDigits(currency)
  return `${(coins / 10 ** digits).toFixed(digits)} ${currency}`
}
