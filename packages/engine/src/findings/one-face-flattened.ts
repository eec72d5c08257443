import type { Face } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { otherFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { orderIsGiven } from './interval.ts'
import type { Work } from './work.ts'

/** What a face must lose to count as flattened, mm (practice: a light pass all over). */
const LEAST_MM = 0.5
/** So many times more, and so much more, off one face than off the other is uneven (practice). */
const TIMES = 4
const MORE_MM = 4

/** A piece of timber and resin planed on one face only, or far more on one than on the other. */
export const oneFaceFlattened: Check = {
  id: 'one-face-flattened',
  about: 'one face flattened and the other not, or much less',
  cases: ['C64'],
  run
}

interface Uneven {
  readonly less: Face
  readonly more: Face
  readonly low: number
  readonly high: number
  readonly least: number
}

/** What comes off either face, where that is uneven; null where it is not. */
export function unevenlyFlattened(work: Work): Uneven | null {
  if (work.piece.timbers.length === 0) return null
  const off = { front: offFace(work, 'front'), back: offFace(work, 'back') }
  const less: Face = off.front < off.back ? 'front' : 'back'
  const more = otherFace(less)
  const [low, high] = [off[less], off[more]]
  const bare = low < LEAST_MM - 1e-6 && high >= LEAST_MM
  const least = bare ? LEAST_MM : Math.min(high / TIMES, high - MORE_MM)
  return !bare && low >= least - 1e-6 ? null : { less, more, low, high, least }
}

function run(work: Work): Found[] {
  const uneven = unevenlyFlattened(work)
  if (uneven === null) return []
  const { less, more, low, high, least } = uneven
  const goal = rounded(Math.max(LEAST_MM, Math.min(high / TIMES, high - MORE_MM)), 'up', 0.1)
  // Steps that say what they take are not ruled by the allowance.
  const ruled = !orderIsGiven(work)
  return [
    {
      severity: 'caution',
      at: `/flatten/${less}`,
      says: `${decimals(high, 1)} mm come off the ${more} and ${low < 0.005 ? 'nothing' : `${decimals(low, 1)} mm`} off the ${less}: a skin of resin or of old surface left on one face pulls the piece hollow${reckoned(work)}. Plane both faces, and start so much thicker: 5 to 8 mm over the finished thickness is usual for tables.`,
      value: low,
      unit: 'mm',
      limit: least,
      basis:
        'a maker’s report of tops that cupped with the underside unplaned; 0.5 mm, and four times as much on one face: common practice, no source',
      settledBy: 'a straightedge across both faces, a week after flattening',
      ...(ruled
        ? {
            fix: setQuantity(work.document, `/flatten/${less}`, 'length', goal, 'up'),
            fixSays: `Take ${decimals(goal, 1)} mm off the ${less}`
          }
        : {})
    }
  ]
}

/** Less of a bow than this is not worth a word, mm. */
const WORTH_MM = 0.1

// What the plate says of it, where it says something.
function reckoned(work: Work): string {
  const worst = Math.max(
    0,
    ...(work.bow?.rows ?? [])
      .filter(r => r.when === 'driest' || r.when === 'dampest')
      .flatMap(r => [r.front.mm, r.back.mm])
  )
  return worst < WORTH_MM ? '' : `, by about ${decimals(worst, 1)} mm over the year as reckoned`
}

// What flattening and sanding take off a face, mm.
function offFace(work: Work, face: Face): number {
  return work.steps.reduce(
    (sum, s) => ((s.kind === 'flatten' || s.kind === 'sand') && s.face === face ? sum + (s.byMm ?? 0) : sum),
    0
  )
}
