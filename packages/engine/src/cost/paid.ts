/** So many packs of one size: grams, and the price of one. */
export interface Packs {
  readonly size: number
  readonly count: number
  readonly price: number | null
  /** Of a resin: the one part it holds; left out: what is bought of it whole. */
  readonly part?: 'A' | 'B'
}

/** What whole packs are paid with; null: one of them has no price. */
export function costOfPacks(packs: readonly Packs[]): number | null {
  return packs.reduce<number | null>(
    (sum, p) => (sum === null || p.price === null ? null : sum + p.count * p.price),
    0
  )
}

/** What one unit in whole packs costs; null: there are none, or one has no price, and is not for nothing. */
export function rateOfPacks(packs: readonly Packs[]): number | null {
  const paid = costOfPacks(packs)
  return packs.length === 0 || paid === null
    ? null
    : paid / packs.reduce((sum, p) => sum + p.size * p.count, 0)
}
