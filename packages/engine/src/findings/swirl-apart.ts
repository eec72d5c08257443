import type { Swirl } from '../cast/swirl.ts'
import { meeting } from '../cast/swirl.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Colours that are to be drawn together must be ready together for this share of the narrower window. */
const SHARE = 0.5

/** Colours of a marbled pour that are not ready at the same time. */
export const swirlApart: Check = {
  id: 'swirl-apart',
  about: 'colours of a marbled pour whose moments to draw them do not meet',
  cases: ['C56'],
  run: work => work.casts.flatMap((_, i) => one(work, i))
}

interface Known {
  readonly index: number
  readonly open: number
  readonly close: number
}

function one(work: Work, i: number): Found[] {
  const swirls = work.casts[i]?.swirls
  if (!swirls) return []
  const known = swirls.flatMap((s: Swirl): Known[] =>
    s.openMin === null || s.closeMin === null ? [] : [{ index: s.index, open: s.openMin, close: s.closeMin }]
  )
  if (known.length < 2) return []
  const met = meeting(swirls)
  const narrow = Math.min(...known.map(s => s.close - s.open))
  const together = met === null ? 0 : met[1] - met[0]
  if (known.length === swirls.length && together >= SHARE * narrow - 1e-9) return []
  const { id, at } = work.entries.pours[i]!
  // The colour that is ready first waits: it is mixed later.
  const first = known.reduce((a, b) => (b.open < a.open ? b : a))
  const last = known.reduce((a, b) => (b.open > a.open ? b : a))
  const delay = rounded(last.open - first.open, 'up', 0.1)
  const own = work.piece.pours[i]!.marbling![first.index]!.later ?? 0
  return [
    {
      severity: 'caution',
      at,
      says: `the colours of ${id} can be drawn ${known.map(s => `${s.index + 1}: from ${spoken(s.open)} for ${spoken(s.close - s.open)}`).join('; ')}, counted from the first mix. ${met === null ? 'The windows do not overlap' : `They meet for ${spoken(together)} only`}: delay mixing colour ${first.index + 1} by ${spoken(delay)}.`,
      value: together,
      unit: 'min',
      limit: SHARE * narrow,
      basis:
        'viscosity 3 to 10 Pa·s (practice) of each colour in its own cup, its heat included: cure model of a generic class, times ±30 % for all alike; pace of a colour: the maker’s',
      settledBy: 'a stick in each cup every two minutes from half that time on',
      fix: setQuantity(work.document, `${at}/marbling/${first.index}/later`, 'time', own + delay, 'up', 0.1),
      fixSays: `Colour ${first.index + 1} mixed ${spoken(own + delay)} later`
    }
  ]
}

// Windows of a few minutes are said by their tenths.
function spoken(min: number): string {
  return min < 20 ? `${decimals(min, 1)} min` : formatMinutes(min)
}
