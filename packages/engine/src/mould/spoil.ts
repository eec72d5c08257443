import { inRange, wholeInRange } from '../quantity/range.ts'

/**
 * How many blanks to make so that enough come out good.
 *
 *   P(at least k good of n) = Σ_(i=0..n−k) C(n, i)·p^i·(1 − p)^(n−i)      p  loss per blank
 *
 * Source: binomial distribution (textbook). Check: 12 good at 5 % loss each, from 12, 13, 14 blanks: 54, 86,
 * 97 %.
 *
 * Limits: losses are independent. One bad batch, a power cut or a wrong zero takes several at once; spread
 * the blanks over batches and days, or count the batch as the thing that is lost. The loss per blank is the
 * maker's own record.
 */

const MOST_BLANKS = 10_000

/**
 * Chance, 0..1, that at least `good` of `blanks` (up to 10 000) are good when each is lost with `loss`
 * (0..1).
 */
export function chanceOfGood(good: number, blanks: number, loss: number): number {
  wholeInRange('number of blanks', blanks, 0, MOST_BLANKS)
  wholeInRange('number of good ones', good, 0, MOST_BLANKS)
  inRange('loss per blank', loss, 0, 1, '(as a fraction)')
  if (good > blanks) return 0
  if (good === 0 || loss === 0) return 1
  if (loss === 1) return 0
  // Logarithms, because (1 − p)^n underflows long before n is large.
  let logTerm = blanks * Math.log1p(-loss)
  const logOdds = Math.log(loss) - Math.log1p(-loss)
  let chance = Math.exp(logTerm)
  for (let lost = 1; lost <= blanks - good; lost++) {
    logTerm += Math.log((blanks - lost + 1) / lost) + logOdds
    chance += Math.exp(logTerm)
  }
  return Math.min(1, chance)
}

/**
 * Fewest blanks that give `good` good ones with at least `certainty` (0 to below 1), and the chance they
 * give.
 *
 * @throws RangeError when 10 000 blanks do not reach it
 */
export function blanksFor(
  good: number,
  loss: number,
  certainty: number
): { readonly blanks: number; readonly chance: number } {
  wholeInRange('number of good ones', good, 1, MOST_BLANKS)
  inRange('certainty', certainty, 0, 1 - 1e-9, '(as a fraction)')
  // The chance rises with every blank: double until past it, then halve the bracket.
  let high = good
  while (chanceOfGood(good, high, loss) < certainty) {
    if (high === MOST_BLANKS) {
      throw new RangeError(
        `${MOST_BLANKS} blanks at a loss of ${loss} each do not give ${good} good ones with certainty ${certainty}`
      )
    }
    high = Math.min(MOST_BLANKS, high * 2)
  }
  let low = good - 1
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (chanceOfGood(good, middle, loss) < certainty) low = middle
    else high = middle
  }
  return { blanks: high, chance: chanceOfGood(good, high, loss) }
}
