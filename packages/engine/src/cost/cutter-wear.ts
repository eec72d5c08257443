import { wearOf } from '../cuts/run/wear.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { MadePath } from '../programs/program-input.ts'
import type { Charged } from './cost-line.ts'

/**
 * What cutters wear: the share of the edge of each that the programs of a blank take, at the price of a new one.
 *
 *   share = minutes in the cut / minutes it lasts as the shop says; else way / the way an edge lasts (cuts/run/wear.ts)
 *
 * Limits: programs alone, without their test and air cuts and without what is cut by hand; a cutter without a price
 * is part of the overhead.
 */
export function wearCost(made: readonly MadePath[], blanks: number, shop: Pick<Shop, 'cutters'>): Charged[] {
  const worn = new Map<string, { name: string; minutes: number; share: number }>()
  for (const { operation, time } of made) {
    const { cutter, met } = operation
    const sum = worn.get(cutter.id) ?? { name: cutter.name, minutes: 0, share: 0 }
    sum.minutes += time.minutes
    sum.share += wearOf(time.cutMm, met).share
    worn.set(cutter.id, sum)
  }
  return [...worn].map(([id, { name, minutes, share }]): Charged => {
    const own = shop.cutters.find(c => c.id === id)
    const price = own?.price ?? null
    const by =
      own?.life === undefined
        ? 'way of its cuts over the way an edge lasts: common practice, no source'
        : `${Math.ceil(minutes * blanks)} min of its cuts over the minutes it lasts, as the shop says`
    return {
      group: 'cutters',
      name: `wear of ${name}`,
      amount: blanks * (own?.life === undefined ? share : minutes / own.life),
      unit: 'cutter',
      rate: price,
      basis: price === null ? `${by}; without a price it is part of the overhead` : by,
      small: true
    }
  })
}
