import type { BuyGroup, BuyUnit } from './need.ts'
import type { Packs } from './paid.ts'
import type { Lot } from './shelf.ts'

/**
 * One line of the buy list. Amounts in the line's own unit, rounded up to what is bought or weighed: whole g,
 * ml and pieces, hundredths of m and m².
 */
export interface BuyLine {
  readonly group: BuyGroup
  /** Id of the catalogue or the shop, by which the shop's prices are found. */
  readonly item: string
  /** What it is called. */
  readonly name: string
  readonly unit: BuyUnit
  /** What the plan uses, wastage of the vessels included. */
  readonly need: number
  /** Need with the shop's spare share. */
  readonly withSpare: number
  /** On the shelf and still good on the day it is first used; of a resin what can be mixed of it in its ratio. */
  readonly stock: number
  /** What is taken of it lot by lot, what expires first before the others. */
  readonly lots: readonly Lot[]
  /** What stands on the shelf and has expired by the day it is used. */
  readonly expired: readonly Lot[]
  /** What to buy: whole packs where the shop knows packs, else the amount. */
  readonly buy: number
  readonly packs: readonly Packs[]
  readonly cost: number | null
  /** What one unit of it costs where it is bought; null: no price is known. */
  readonly rate: number | null
  readonly days: number | null
  /** The supplier it comes from; null: the shop does not say. */
  readonly from: string | null
  readonly note: string
  /** The part of a resin that neither the shelf nor a pack holds enough of for the other; null: they match. */
  readonly lack: { readonly part: 'A' | 'B'; readonly have: number; readonly need: number } | null
}
