import type { Shop } from '../piece/shop-schema.ts'
import type { BuyLine } from './buy-line.ts'
import type { Need } from './need.ts'
import { amountOf, roundedUp, withSpare } from './need.ts'
import { cheapestPacks } from './packs.ts'
import type { Packs } from './paid.ts'
import { costOfPacks, rateOfPacks } from './paid.ts'
import type { Pack } from './price-row.ts'
import { pricedIn, unitPrice } from './price-row.ts'
import { resinLine } from './resin-line.ts'
import { stillGood, takenFrom } from './shelf.ts'

/** Packs that differ more than this in size are no choice of one need (practice). */
const MOST_UNLIKE = 50_000

/** The line of one need: the shelf first, then whole packs at least cost. */
export function lineOf(need: Need, shop: Shop): BuyLine {
  if (need.resin !== null) return resinLine(need, need.resin, shop)
  const { group, item, name, unit } = need
  const { row, leftAside } = pricedIn(shop, item, unit)
  const spread = withSpare(need)
  const { taken, short, expired } = takenFrom(row?.lots ?? [], spread)
  const packs = packsFor(short, row?.packs ?? [])
  return {
    group,
    item,
    name,
    unit,
    need: roundedUp(amountOf(need), unit),
    withSpare: roundedUp(amountOf({ uses: spread }), unit),
    stock: stillGood(row?.lots ?? [], spread),
    lots: taken,
    expired,
    buy: row === null ? roundedUp(short, unit) : packs.reduce((sum, p) => sum + p.count * p.size, 0),
    packs,
    cost: row === null ? null : costOfPacks(packs),
    rate: rateOfPacks(packs) ?? (packs.length > 0 || row === null ? null : unitPrice(row.packs)),
    days: row?.days ?? null,
    from: row?.from ?? null,
    note: leftAside === '' ? need.note : `${need.note}; ${leftAside}`,
    lack: null
  }
}

// Of one size: as many as hold it. Of several: counted in units of the smallest, so that thousandths are counted too.
function packsFor(short: number, packs: readonly Pack[]): Packs[] {
  if (short <= 0 || packs.length === 0) return []
  const largest = Math.max(...packs.map(p => p.size))
  const alike = packs.filter(p => p.size > largest / MOST_UNLIKE)
  if (alike.length === 1) {
    const [{ size, price }] = alike as [Pack]
    const count = Math.ceil(short / size - 1e-9)
    return count === 0 ? [] : [{ size, count, price }]
  }
  const scale = Math.max(1, 1 / Math.min(...alike.map(p => p.size)))
  return cheapestPacks(
    short * scale,
    alike.map(p => ({ ...p, size: p.size * scale }))
  ).map(p => ({ ...p, size: p.size / scale }))
}
