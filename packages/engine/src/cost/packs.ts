/** So many packs of one size: grams, and the price of one. */
export interface Packs {
  readonly size: number
  readonly count: number
  readonly price: number | null
}

/**
 * Whole packs that hold at least `needG` at the least price; without prices, with the least left over. Never
 * rounded down. Exact where the packs are whole grams: the cheapest way to hold each amount in steps of their common
 * divisor (dynamic programme); else in steps of a hundredth of the smallest. Needs beyond 200,000 steps take the pack
 * with the least price a gram.
 */
export function cheapestPacks(
  needG: number,
  packs: readonly { readonly size: number; readonly price: number | null }[]
): readonly Packs[] {
  if (needG <= 0 || packs.length === 0) return []
  const priced = packs.every(p => p.price !== null)
  const sizes = packs.map(p => p.size)
  const step = sizes.every(s => Number.isInteger(s)) ? sizes.reduce(divisor) : Math.min(...sizes) / 100
  const target = Math.ceil(needG / step - 1e-9)
  if (target > 200_000) {
    const best = packs.reduce((a, b) => (rate(b, priced) < rate(a, priced) ? b : a))
    return [{ size: best.size, count: Math.ceil(needG / best.size - 1e-9), price: best.price }]
  }
  const cost = new Float64Array(target + 1).fill(Number.POSITIVE_INFINITY)
  const from = new Int32Array(target + 1).fill(-1)
  cost[0] = 0
  for (let t = 1; t <= target; t++) {
    packs.forEach((p, k) => {
      const before = Math.max(0, t - Math.floor(p.size / step + 1e-9))
      // A hair per pack, so that of two ways alike the one with fewer packs is taken.
      const c = cost[before]! + (priced ? p.price! : p.size) + 1e-9
      if (c < cost[t]!) {
        cost[t] = c
        from[t] = k
      }
    })
  }
  const counts = new Array<number>(packs.length).fill(0)
  // Each pack holds a step at the least, so that it ends.
  for (let t = target; t > 0; ) {
    const k = from[t]!
    counts[k] = counts[k]! + 1
    t = Math.max(0, t - Math.floor(packs[k]!.size / step + 1e-9))
  }
  return packs.flatMap((p, k) =>
    counts[k]! > 0 ? [{ size: p.size, count: counts[k]!, price: p.price }] : []
  )
}

/** Greatest common divisor of two whole numbers. */
function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b)
}

function rate(p: { size: number; price: number | null }, priced: boolean): number {
  return priced ? p.price! / p.size : 1 / p.size
}
