import type { Operation } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import type { Found } from './finding.ts'
import type { Rounding } from './fix.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Least depth that is offered as a fix, mm: less is a scratch. */
const LEAST_OFFERED_MM = 0.3

/**
 * The fix that makes a cut deeper by `byMm` (shallower when negative), in the words the document uses: its depth
 * on the day or in the finished face. None right through, or where next to nothing would be left.
 */
export function deepen(
  work: Work,
  cutIndex: number,
  byMm: number,
  rounding: Rounding
): Pick<Found, 'fix' | 'fixSays'> {
  const { at, id, value } = work.entries.cuts[cutIndex]!
  if (value.through || !Number.isFinite(byMm)) return {}
  const key = value.depth !== undefined ? 'depth' : 'finishedDepth'
  const wanted = (value[key] ?? 0) + byMm
  const depth = rounded(wanted, rounding, 0.1)
  if (depth < LEAST_OFFERED_MM) return {}
  const set = setQuantity(work.document, `${at}/${key}`, 'length', wanted, rounding)
  // The width of a V follows from its depth; one that is written beside it would contradict.
  const width: Operation[] =
    value.profile === 'v' && value.width !== undefined ? [{ op: 'remove', path: `${at}/width` }] : []
  return { fix: [...set, ...width], fixSays: `${id} ${decimals(depth, 1)} deep` }
}

/** How much a cut can be deepened, mm, until it leaves less than `leastMm` under it; Infinity right through. */
export function roomUnder(work: Work, cutIndex: number, leastMm: number): number {
  const floor = work.covers.find(c => c.cut === cutIndex)?.floor
  return floor ? floor.mm - leastMm : Number.POSITIVE_INFINITY
}
