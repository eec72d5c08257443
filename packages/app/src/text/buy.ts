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
  own: 'For you alone: the quote for a client is under Print.'
}
