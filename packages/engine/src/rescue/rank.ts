import type { Way } from './weigh.ts'

/** How ways on are ranked, in words. */
export const RANK_RULE =
  'first what keeps the piece, then the fewest stops, the fewest cautions, the soonest ready (to half a day), the least money; what your answers speak for goes before days and money'

/** Days closer than this are alike: what is reckoned of them is known no better (practice). */
const HALF_DAY = 0.5

/** The ways from the best to the last, by {@link RANK_RULE}; what is alike in all keeps its order. */
export function ranked(ways: readonly Way[]): Way[] {
  const keyOf = (w: Way): readonly number[] => [
    w.lost ? 1 : 0,
    w.after.stops,
    w.after.cautions,
    w.favoured === null ? 1 : 0,
    w.cost.days === null ? Number.MAX_VALUE : Math.round(w.cost.days / HALF_DAY),
    w.cost.money
  ]
  return [...ways].sort((a, b) => {
    const [x, y] = [keyOf(a), keyOf(b)]
    const k = x.findIndex((v, i) => Math.abs(v - y[i]!) > 1e-9)
    return k < 0 ? 0 : x[k]! - y[k]!
  })
}
