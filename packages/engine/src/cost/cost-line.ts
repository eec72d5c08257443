/** What lines of the cost are of, in the order they are shown. */
export const COST_GROUPS = [
  'material',
  'consumables',
  'labour',
  'machine',
  'cutters',
  'outside',
  'delivery',
  'spoil'
] as const
export type CostGroup = (typeof COST_GROUPS)[number]

/** One line of the cost of a build: amount, rate, and where the rate comes from. Coins of the shop's currency. */
export interface CostLine {
  readonly group: CostGroup
  readonly name: string
  /** Its id in the buy list; null of what stands in none. */
  readonly item: string | null
  readonly amount: number
  readonly unit: string
  /** What one unit costs; null: no price is known, and the line counts for nothing. */
  readonly rate: number | null
  readonly coins: number | null
  readonly basis: string
}

/** A line before its sum; `small`: without a price it belongs to the overhead, and nothing is "at least" for it. */
export type Charged = Omit<CostLine, 'coins' | 'item'> & { readonly item?: string; readonly small?: boolean }
