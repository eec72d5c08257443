import type { Check } from './finding.ts'

/** Names said at the most. */
const MOST_NAMES = 4

/** Lines of the buy list without a price, where the shop prices others: sums are "at least". */
export const priceMissing: Check = {
  id: 'price-missing',
  about: 'what has no price in a shop that prices the rest',
  cases: [],
  run: work => {
    const without = work.buy.filter(l => l.rate === null)
    // A shop without any price wants no sums.
    if (without.length === 0 || without.length === work.buy.length) return []
    const names = [...new Set(without.map(l => l.name))]
    const said = names.slice(0, MOST_NAMES).join('; ')
    const more = names.length > MOST_NAMES ? ` and ${names.length - MOST_NAMES} more` : ''
    return [
      {
        severity: 'note',
        at: '',
        says: `No price is known for ${said}${more}: they are planned without, and every sum is at least so much.`,
        value: names.length,
        unit: null,
        limit: 0,
        basis: 'prices of the shop, by the id of the buy list',
        settledBy: 'their prices in the facts of the shop'
      }
    ]
  }
}
