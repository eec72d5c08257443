import { peakOver } from '../cast/peak.ts'
import type { Operation } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import { CAUTION_ABOVE_C } from '../resin/limits.ts'
import type { Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { castInputOf } from './pour-depth.ts'
import type { Work } from './work.ts'

/** Least that is left of the neighbour, mm (practice: a clear layer thinner than this shows every speck). */
const LEAST_LEFT_MM = 3

/**
 * The fix that lets an opaque pour grow by `byMm` into the pour over it, the whole staying as it is; null where they
 * do not lie on one another, the neighbour has nothing to give, or the pour cannot be so deep.
 *
 * Only castings in the mould whose depths stand in the document: the neighbour gives what it takes itself when it
 * is filled to a height, and is written shorter when it has a depth.
 */
export function splitForCover(
  work: Work,
  pourIndex: number,
  byMm: number
): Pick<Found, 'fix' | 'fixSays'> | null {
  const { piece, stack, entries, document } = work
  const pour = piece.pours[pourIndex]!
  const next = piece.pours[pourIndex + 1]
  if (pour.kind !== 'cast' || pour.depth === undefined || next?.kind !== 'cast' || next.stones.length > 0)
    return null
  if (
    work.hiding[pourIndex + 1]!.meant ||
    Math.abs(stack.pours[pourIndex + 1]!.floor - stack.pours[pourIndex]!.level) > 0.01
  )
    return null
  // The layer has to lie in front of the cut: it grows towards the front.
  if (piece.down !== 'back') return null
  const by = rounded(byMm, 'up', 0.1)
  if (stack.pours[pourIndex + 1]!.depth - by < LEAST_LEFT_MM) return null
  if (!bears(work, pourIndex, pour.depth + by)) return null
  const fix: Operation[] = [
    ...setQuantity(document, `${entries.pours[pourIndex]!.at}/depth`, 'length', pour.depth + by, 'up')
  ]
  if (next.depth !== undefined)
    fix.push(
      ...setQuantity(document, `${entries.pours[pourIndex + 1]!.at}/depth`, 'length', next.depth - by, 'down')
    )
  else if (next.height === undefined && next.fill === undefined) return null
  return {
    fix,
    fixSays: `${entries.pours[pourIndex]!.id} ${decimals(by, 1)} deeper, ${entries.pours[pourIndex + 1]!.id} so much less`
  }
}

// So deep, it stays within its label and no hotter than what is cautioned of.
function bears(work: Work, index: number, depthMm: number): boolean {
  const { label } = work.materials.resins[index]!
  if (depthMm > (label?.greatestDepth ?? Number.POSITIVE_INFINITY)) return false
  const { depth, liquidDepth } = work.stack.pours[index]!
  const peak = peakOver(castInputOf(work), work.casts, index)
  return peak === null || peak.under((depthMm * liquidDepth) / depth, CAUTION_ABOVE_C)
}
