import type { ResinResult } from '../../resin/column-result.ts'
import { crossingS } from '../../resin/conversion.ts'
import type { PourCast } from '../cast.ts'
import type { Window } from '../window.ts'

/** Up to this multiple of the time until it is covered, a gel counts as the face's own. */
const SOON = 1.5

/**
 * How much later the face of a pour gels in the whole mould than in its column, as a factor; 1 where it is covered
 * long before it gels, for then the pour above decides. `coveredS`: when the next pour lands on it, s since it was
 * poured; a face that gels soon after is taken as its own.
 */
export function gelLater(
  column: PourCast,
  run: Pick<ResinResult, 'history'>,
  gelConversion: number,
  coveredS: number
): number {
  const { timeS, outerConversion } = run.history
  const gelS = crossingS(timeS, outerConversion, gelConversion)
  const own = column.windows.tacky
  return gelS === null || gelS > SOON * coveredS || !own.reached || own.open <= 0 ? 1 : gelS / 60 / own.open
}

/**
 * A pour that another covers: until when its face takes the next one is asked as if nothing had followed, and a run
 * with the next pour in it does not say. The column's, which ends where it ends, is taken, as much later as the face
 * gels later.
 */
export function uncovered(own: PourCast, column: PourCast, later: number): PourCast {
  const { tacky, recoat } = column.windows
  return {
    ...own,
    windows: { ...own.windows, tacky: stretched(tacky, later), recoat: stretched(recoat, later) }
  }
}

function stretched(w: Window, times: number): Window {
  const by = <T extends number | null>(x: T): T => (x === null ? x : (x as number) * times) as T
  const pair = <A extends number | null, B extends number | null>([a, b]: readonly [A, B]) =>
    [by(a), by(b)] as const
  return {
    ...w,
    open: by(w.open),
    close: by(w.close),
    band: pair(w.band),
    openBand: pair(w.openBand),
    closeBand: pair(w.closeBand)
  }
}
