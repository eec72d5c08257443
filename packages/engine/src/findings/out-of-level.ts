import { cornersOf } from '../finish/bench-level.ts'
import { cornersFromHeights, levelFromReadings } from '../mould/level.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Out of level that is let pass, and what flattening keeps in hand beside it, mm (common practice). */
const LET_PASS_MM = 0.5

/** A mould that is not level: the casting is a wedge. */
export const outOfLevel: Check = {
  id: 'out-of-level',
  about: 'a mould out of level or in twist by its corner readings',
  cases: ['C26'],
  run
}

function run(work: Work): Found[] {
  const corners = cornersOf(work.piece, work.readings)
  if (corners === null || !work.mould.needsMould) return []
  const { innerLength, innerWidth } = work.mould
  const level = levelFromReadings(cornersFromHeights(innerLength, innerWidth, corners))
  const { down, flatten } = work.piece
  const allowance = flatten[down]
  const out = level.flatteningMm
  const stop = out > allowance + 1e-9
  // Out of level is let pass while half a millimetre of the allowance is left for all else.
  if (out <= LET_PASS_MM || (!stop && allowance - out >= LET_PASS_MM - 1e-9)) return []
  const needed = out + LET_PASS_MM
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: '/mould/corners',
      says: `the corners of the mould read ${decimals(out, 2)} mm apart (wedge ${decimals(level.wedgeMm, 2)}, twist ${decimals(level.twistMm, 2)}); resin finds its own level, so the ${down} costs that to face, of ${decimals(allowance, 1)} mm. Shims: ${shimWords(level.shimsMm)}.`,
      value: out,
      unit: 'mm',
      limit: stop ? allowance : Math.max(LET_PASS_MM, allowance - LET_PASS_MM),
      basis:
        'plane and twist of the corner readings (least squares); half a millimetre in hand: common practice, no source',
      settledBy: 'the four corners again after shimming',
      fix: setQuantity(work.document, `/flatten/${down}`, 'length', needed, 'up'),
      fixSays: `Take ${decimals(rounded(needed, 'up', 0.1), 1)} mm off the ${down}`
    }
  ]
}

const PLACES = ['front left', 'front right', 'back right', 'back left'] as const

function shimWords(shims: readonly number[]): string {
  const words = shims.flatMap((mm, i) => (mm < 0.05 ? [] : [`${decimals(mm, 1)} mm ${PLACES[i]}`]))
  return words.join(', ')
}
