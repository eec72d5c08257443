/** Words of Buy (English). */
export const buyWords = {
  region: 'Buy',
  list: 'Buy list',
  for: (blanks: number) =>
    blanks === 1 ? 'for one piece, spare included' : `for ${blanks} blanks, spare included`,
  head: { item: 'Item', need: 'Need', stock: 'On the shelf', buy: 'Buy' },
  price: (currency: string) => `Pay, ${currency}`,
  none: '–',
  noPrice: 'no price',
  arrives: (days: number) => `${days} day${days === 1 ? '' : 's'} to arrive`,
  paid: (sum: string, currency: string) => `Paid for whole packs: ${sum} ${currency}`,
  unpriced: (n: number) => `${n} line${n === 1 ? '' : 's'} without a price`,
  noPrices: 'No prices in the shop yet: amounts are right, sums are missing.',
  toShop: 'To the shop',
  order: 'To be ordered by',
  cost: 'Cost and price',
  keep: 'Keep this quote',
  keepWhy: 'Keep it when you give it: what comes of it is held against it here.',
  kept: (day: string) =>
    `Kept on ${day}. Minutes, what is mixed and what is used at the bench are held against it.`,
  actual: 'Quoted, and what came of it',
  own: 'For you alone: the quote for a client is under Print.'
}
