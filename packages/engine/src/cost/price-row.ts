import type { Shop } from '../piece/shop-schema.ts'
import { parseQuantity } from '../quantity/parse.ts'
import type { Lot } from './shelf.ts'
import { lastDay } from './shelf.ts'

/** A pack it is sold in, in the unit that is asked for; price null: not known. */
export interface Pack {
  readonly size: number
  readonly price: number | null
}

/** A price of the shop, in the unit that is asked for: its packs, what lies on the shelf. */
export interface PriceRow {
  readonly packs: readonly Pack[]
  /** All of the shelf: what has no date of its own last. */
  readonly lots: readonly Lot[]
  readonly days: number
  /** The supplier it comes from; null: the shop does not say. */
  readonly from: string | null
}

/** What the shop says of an item. */
export interface Priced {
  /** Null where nothing, or nothing in a unit that can be turned into the one asked for, stands in the shop. */
  readonly row: PriceRow | null
  /** Why a price that is there is not used; "" where none is left aside. */
  readonly leftAside: string
}

/** Fixed units of lengths are mm: a metre of them. */
const MM_IN_M = 1000
const AREAS_M2: Readonly<Record<string, number>> = { 'm²': 1, m2: 1, 'cm²': 1e-4, cm2: 1e-4, 'ft²': 0.3048 ** 2, ft2: 0.3048 ** 2 } // biome-ignore format: one table
const PIECES: ReadonlySet<string> = new Set(['piece', 'pieces', 'pc', 'pcs', 'each', 'pair', 'pairs'])

/**
 * The row of the shop's prices for an item, turned into the unit it is needed in: a price per kg is no price per gram.
 *
 *   pack' = pack × what one unit of the row holds of the unit asked for
 *
 * Check: exact factors of units (parseQuantity); foot 0.3048 m (1959, exact).
 */
export function pricedIn(shop: Shop, item: string, unit: string): Priced {
  const found = shop.prices.find(p => p.item === item)
  if (found === undefined) return { row: null, leftAside: '' }
  const holds = unitsIn(found.unit.trim(), unit)
  if (holds === null)
    return { row: null, leftAside: `the shop prices it per ${found.unit}, and it is needed in ${unit}` }
  const { keeps } = found
  return {
    row: {
      packs: [{ pack: found.pack, price: found.price }, ...found.packs].map(p => ({
        size: p.pack * holds,
        price: p.price ?? null
      })),
      lots: [
        ...found.lots.map(l => ({ lot: l.lot ?? null, amount: l.amount * holds, until: lastDay(l, keeps) })),
        ...(found.stock > 0 ? [{ lot: null, amount: found.stock * holds, until: null }] : [])
      ],
      days: found.days,
      from: found.from ?? null
    },
    leftAside: ''
  }
}

/** What one unit costs by the cheapest of its packs; null: no price is known. */
export function unitPrice(packs: readonly Pack[]): number | null {
  const rates = packs.flatMap(p => (p.price === null ? [] : [p.price / p.size]))
  return rates.length === 0 ? null : Math.min(...rates)
}

/** How much of `unit` one `given` is; null where they do not go together. */
function unitsIn(given: string, unit: string): number | null {
  if (given === unit) return 1
  if (unit === 'piece' || unit === 'pair') return PIECES.has(given) ? 1 : null
  if (unit === 'm²') return AREAS_M2[given] ?? null
  const read = (is: 'mass' | 'volume' | 'length') => parseQuantity(`1 ${given}`, is)?.value ?? null
  if (unit === 'g') return read('mass')
  if (unit === 'ml') return read('volume')
  if (unit !== 'm') return null
  const mm = read('length')
  return mm === null ? null : mm / MM_IN_M
}
