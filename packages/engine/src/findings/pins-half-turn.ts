import { dowelPinOf } from '../catalogue/dowel-pin.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { pinsWith } from './pin-fix.ts'
import type { Work } from './work.ts'

/** Pins on which the piece goes the wrong way round as well. */
export const pinsHalfTurn: Check = {
  id: 'pins-half-turn',
  about: 'pins alike end for end, so that the piece goes on them turned about the wrong line',
  cases: ['C74', 'C77', 'O4'],
  run
}

/** Off by less than this nothing shows the mistake, mm. */
const SEEN_MM = 1

function run(work: Work): Found[] {
  const { wrong, goesOn, datum } = work.pins
  const other = wrong.find(w => w.how === 'turned about the other line')
  if (!goesOn || other === undefined || !other.fits || other.offMm === null) return []
  const by = other.offMm < SEEN_MM ? 'and nothing shows it' : `and ${decimals(other.offMm, 1)} mm off`
  return [
    {
      severity: 'caution',
      at: work.document.pins === undefined ? '/mould' : '/pins',
      says: `the pins are alike end for end: turned over about the ${datum.about === 'x' ? 'upright' : 'level'} line instead, the piece goes on them as well, upside-down left to right ${by}. Two diameters, or one pin off its place, let it go on one way only.`,
      value: other.offMm,
      unit: 'mm',
      basis: 'the pattern of the holes turned by half a turn: geometry',
      ...smaller(work)
    }
  ]
}

// Of two pins the second one size thinner: it needs no more room.
function smaller(work: Work): Pick<Found, 'fix' | 'fixSays'> {
  const { pins } = work.pins
  const [first] = pins
  if (pins.length !== 2 || first === undefined) return {}
  const d = first.diameterMm
  const thinner = (dowelPinOf(d) ?? dowelPinOf(6))!.diametersMm.filter(x => x < d - 1e-6).at(-1)
  if (thinner === undefined) return {}
  const after = pinsWith(work, { diameter: [d, thinner] })
  if (after.wrong.some(w => w.how === 'turned about the other line' && w.fits)) return {}
  return {
    fix: setValue(work.document, '/pins/diameter', [d, thinner]),
    fixSays: `Pins of ${decimals(d, 1)} and ${decimals(thinner, 1)}`
  }
}
