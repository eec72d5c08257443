import type { BuyLine } from './cost/buy-line.ts'
import { minorDigits, moneyWords, toCoins } from './cost/money.ts'
import { deliveryCost } from './cost/orders.ts'
import { together, toldApart } from './cost/together.ts'
import { lengthsOf } from './piece/lengths.ts'
import type { Shop } from './piece/shop-schema.ts'
import type { Planned } from './plan-answer.ts'
import type { Quote } from './quote.ts'
import { quoteOf } from './quote.ts'
import type { QuotePart } from './quote-words.ts'
import { buyRows } from './sheets/buy-rows.ts'

/** Several pieces whose material is bought together. Coins of the currency. */
export interface QuoteMany {
  readonly currency: string
  readonly buy: readonly BuyLine[]
  /** Paid for packs and their delivery together, and if each piece were bought for by itself from the same shelf. */
  readonly paid: number
  readonly apart: number
  /** Of each piece, at what the packs bought together cost. */
  readonly quotes: readonly Quote[]
}

/**
 * Cost and price of several pieces that are bought for together; shop and currency are those of the first.
 * @throws RangeError without a piece
 */
export function quoteMany(planned: readonly Planned[], asOf: string): QuoteMany {
  const [first] = planned
  if (first === undefined) throw new RangeError('no piece is quoted')
  const { shop } = first.work
  const { currency } = shop
  const told = toldApart(planned.map(p => p.work.piece.name))
  const all = together(
    planned.map(({ work: { needs, buy } }, i) => ({ name: told[i]!, needs, buy })),
    shop
  )
  const coin = 10 ** minorDigits(currency)
  const paidFor = (buy: readonly BuyLine[]) =>
    buy.reduce((sum, l) => sum + toCoins(l.cost ?? 0, currency), 0) +
    deliveryCost(buy, shop).reduce((sum, d) => sum + Math.round((d.rate ?? 0) * coin), 0)
  return {
    currency,
    buy: all.buy,
    paid: paidFor(all.buy),
    apart: planned.reduce((sum, p) => sum + paidFor(p.work.buy), 0),
    quotes: planned.map((p, i) => ({ ...quoteOf(p, { asOf, share: all.shares[i]! }), name: told[i]! }))
  }
}

/** The same in words, in the units of the shop. */
export function quoteManyWords(q: QuoteMany, shop: Pick<Shop, 'units'>): QuotePart[] {
  const money = (coins: number) => moneyWords(coins, q.currency)
  const rows = buyRows(q.buy, lengthsOf(shop)).flatMap(g =>
    g.rows.map(
      r =>
        `${r.name}: needed ${r.need}${r.stock === null ? '' : `, on the shelf ${r.stock}`}, buy ${r.buy}${r.cost === null ? ', no price known' : `: cost ${r.cost} ${q.currency}`}${r.note === '' ? '' : ` (${r.note})`}`
    )
  )
  const least = q.quotes.every(o => o.whole) ? '' : 'at least '
  const less = q.apart - q.paid
  return [
    { head: 'Buy together', rows },
    {
      head: `Paid for packs and their delivery: ${least}${money(q.paid)}`,
      rows: [
        less > 0
          ? `Each bought for by itself costs ${money(q.apart)}: ${money(less)} more`
          : 'What lies on the shelf is counted once: each by itself would take it for itself'
      ]
    },
    ...q.quotes.map(o => {
      const at = o.whole ? '' : 'at least '
      return {
        head: `${o.name}: cost to the shop ${at}${money(o.cost.total)}`,
        rows: [
          `Material and consumables used cost ${at}${money(o.cost.sums.material + o.cost.sums.consumables)}, delivery ${money(o.cost.sums.delivery)} as its share`,
          `Price to the client before tax: ${at}${money(o.net)}; with tax: ${at}${money(o.gross)}`
        ]
      }
    })
  ]
}
