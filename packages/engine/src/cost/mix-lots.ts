import type { Shop } from '../piece/shop-schema.ts'
import { HAIR_G } from './common-mass.ts'
import type { Need } from './need.ts'
import { resinShelf } from './resin-line.ts'
import type { Lot, MixedFor } from './shelf.ts'
import { lotWords } from './shelf.ts'

/** Lots on the shelf of the resin that one pour or one filled marking is mixed from. */
export interface MixLots {
  /** Those the plan takes for it, A before B. */
  readonly taken: readonly string[]
  /** Those, when all of it comes from one marked lot, or from one of each part; null: it is not known before it is mixed. */
  readonly sure: string | null
  /** All that still keep on the day, those that are taken first. */
  readonly offered: readonly string[]
}

/**
 * Lots of the shelf for what is mixed `into` a pour or a marking, as the buy list takes them: with the spare, in the order
 * of the days. Null where nothing is mixed for it.
 *
 * Limits: of a pour mixed in several vessels not which lot goes into which.
 */
export function mixLots(needs: readonly Need[], shop: Shop, into: MixedFor): MixLots | null {
  const need = needs.find(n => n.resin !== null && n.uses.some(u => same(u.into, into)))
  if (need === undefined) return null
  const at = need.uses.findIndex(u => same(u.into, into))
  const { day } = need.uses[at]!
  const { a, b } = resinShelf(need, need.resin!, shop)
  const parts = [a, b].map(({ taken, own }) => ({ from: taken.by[at]!, needG: own[at]!.amount }))
  const taken = named(parts.flatMap(p => p.from))
  const one = parts.every(
    ({ from, needG }) => from.length === 1 && from[0]!.lot !== null && from[0]!.amount > needG - HAIR_G
  )
  const keeps = (l: Lot) => l.amount > 0 && (day === null || l.until === null || l.until >= day)
  return {
    taken,
    sure: one ? lotWords(taken) : null,
    offered: [...new Set([...taken, ...named([...a.lots, ...b.lots].filter(keeps))])]
  }
}

function named(lots: readonly Lot[]): string[] {
  return [...new Set(lots.flatMap(l => (l.lot === null ? [] : [l.lot])))]
}

function same(a: MixedFor | undefined, b: MixedFor): boolean {
  if (a === undefined) return false
  return 'pour' in a ? 'pour' in b && a.pour === b.pour : 'fill' in b && a.fill === b.fill
}
