import { commonMassG, HAIR, LEAST_STEP_G } from './common-mass.ts'
import type { Packs } from './paid.ts'

/** Steps of mass that are counted at the most: about 2 ms of work a kind of pack. */
const MOST_STEPS = 200_000

/**
 * Whole packs that hold at least `needG` at the least price; without prices, with the least left over. Never
 * rounded down. The cheapest way to hold each amount in steps of the common measure of the packs (dynamic programme):
 * exact where that is a hundredth of a gram or more, as of packs in grams, in tenths, in pounds and ounces.
 *
 * Check: every choice of counts, walked (tests).
 * Limits: of packs without such a measure each counts as up to a step less than it holds: a hundredth of a gram, or
 * 1/100,000 of the largest where the need is beyond 200,000 steps. The bulk of such a need is in the packs with the
 * least price a gram, and only the rest is chosen.
 */
export function cheapestPacks(
  needG: number,
  packs: readonly { readonly size: number; readonly price: number | null }[]
): readonly Packs[] {
  if (needG <= 0 || packs.length === 0) return []
  const priced = packs.every(p => p.price !== null)
  const sizes = packs.map(p => p.size)
  const fine = Math.max(LEAST_STEP_G, sizes.reduce(commonMassG))
  const step = needG > MOST_STEPS * fine ? Math.max(fine, (2 * Math.max(...sizes)) / MOST_STEPS) : fine
  const steps = sizes.map(s => Math.floor(s / step + HAIR))
  const counts = new Array<number>(packs.length).fill(0)
  let target = Math.ceil(needG / step - HAIR)
  if (target > MOST_STEPS) {
    const best = packs.reduce((a, p, k) => (rate(p, priced) < rate(packs[a]!, priced) ? k : a), 0)
    counts[best] = Math.ceil((target - MOST_STEPS) / steps[best]!)
    target -= counts[best]! * steps[best]!
  }
  const cost = new Float64Array(target + 1).fill(Number.POSITIVE_INFINITY)
  const from = new Int32Array(target + 1).fill(-1)
  cost[0] = 0
  for (let t = 1; t <= target; t++) {
    packs.forEach((p, k) => {
      const before = Math.max(0, t - steps[k]!)
      // A hair per pack, so that of two ways alike the one with fewer packs is taken.
      const c = cost[before]! + (priced ? p.price! : p.size) + 1e-9
      if (c < cost[t]!) {
        cost[t] = c
        from[t] = k
      }
    })
  }
  // Each pack holds a step at the least, so that it ends.
  for (let t = target; t > 0; ) {
    const k = from[t]!
    counts[k] = counts[k]! + 1
    t = Math.max(0, t - steps[k]!)
  }
  return packs.flatMap((p, k) =>
    counts[k]! > 0 ? [{ size: p.size, count: counts[k]!, price: p.price }] : []
  )
}

function rate(p: { size: number; price: number | null }, priced: boolean): number {
  return priced ? p.price! / p.size : 1 / p.size
}
