import type { HandCut } from '../cuts/hand/hand-cut.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { BuyLine } from './buy-line.ts'
import type { Charged } from './cost-line.ts'

/** Delivery: one order of each supplier that something is bought from, free from the sum the supplier says. */
export function deliveryCost(
  buy: readonly BuyLine[],
  shop: Pick<Shop, 'suppliers'>
): (Charged & { readonly from: string })[] {
  return shop.suppliers.flatMap(({ id, delivery, freeFrom }) => {
    const lines = buy.filter(l => l.from === id && l.buy > 0)
    if (lines.length === 0) return []
    const paid = lines.reduce((sum, l) => sum + (l.cost ?? 0), 0)
    const free = freeFrom !== undefined && paid >= freeFrom
    return [
      {
        group: 'delivery' as const,
        from: id,
        name: `delivery from ${id}`,
        amount: 1,
        unit: 'order',
        rate: free ? 0 : delivery,
        basis: free ? 'free from this sum on, as the shop says' : 'of one order, as the shop says'
      }
    ]
  })
}

/** What others do: cuts that are sent out, by the order and by the cut; and what is made for the piece. */
export function outsideCost(
  hand: readonly Pick<HandCut, 'id' | 'way'>[],
  outside: Piece['outside'],
  blanks: number,
  { sentOut }: Pick<Shop, 'sentOut'>
): Charged[] {
  const sent = hand.filter(h => h.way === 'sent out')
  const firm = sentOut?.firm ?? 'a shop outside'
  const asSaid = 'as the shop says'
  const cuts: Charged[] =
    sent.length === 0
      ? []
      : [
          { group: 'outside', name: `${sent.map(h => h.id).join(', ')}: cut by ${firm}`, amount: sent.length * blanks, unit: 'cut', rate: sentOut?.each ?? (sentOut === undefined || sentOut.price === 0 ? null : 0), basis: asSaid },
          ...(sentOut !== undefined && sentOut.price > 0
            ? [{ group: 'outside' as const, name: `order at ${firm}`, amount: 1, unit: 'order', rate: sentOut.price, basis: asSaid }]
            : [])
        ] // biome-ignore format: one table
  return [
    ...cuts,
    ...outside.map(
      (o): Charged => ({
        group: 'outside',
        name: o.firm === undefined ? o.work : `${o.work}: ${o.firm}`,
        amount: 1,
        unit: 'job',
        rate: o.price ?? null,
        basis: 'as the piece says'
      })
    )
  ]
}
