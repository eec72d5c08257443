import type { BuyLine } from '../../src/cost/buy-line.ts'
import { lineOf } from '../../src/cost/line-of.ts'
import type { Need } from '../../src/cost/need.ts'
import type { Shop } from '../../src/piece/shop-schema.ts'

/** The line of the buy list for so much of an item, as the shop has it. */
export function bought(
  shop: Shop,
  item: string,
  amount: number,
  { group = 'timber', unit = 'piece' }: Partial<Pick<Need, 'group' | 'unit'>> = {}
): BuyLine {
  const uses = [{ amount, day: null }]
  return lineOf({ group, item, name: item, unit, uses, spare: 0, note: '', resin: null }, shop)
}
