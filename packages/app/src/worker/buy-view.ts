import type { QuotePart } from '../../../engine/src/quote-words.ts'
import type { BuyGroup } from '../../../engine/src/sheets/buy-rows.ts'
import type { DaysView } from './days-view.ts'

/** What is bought for the piece on the desk, what it costs and what it is quoted at. */
export interface BuyView {
  readonly groups: readonly BuyGroup[]
  readonly currency: string
  /** Paid for whole packs, with its currency; null: no price is known. */
  readonly paid: string | null
  readonly unpriced: number
  readonly blanks: number
  /** By when to order what has to come. */
  readonly order: DaysView['orderBy']
  readonly quote: readonly QuotePart[]
  /** The quote as a reading without its id and moment: what is recorded when it is kept. */
  readonly keep: Readonly<Record<string, unknown>>
  /** The day of the last quote that was kept; null: none was. */
  readonly keptOn: string | null
  /** That quote against what was read since. */
  readonly actual: readonly QuotePart[]
}
