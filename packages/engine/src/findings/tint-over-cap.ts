import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Tinted } from './tinted.ts'
import { tintedOf } from './tinted.ts'
import type { Work } from './work.ts'

/** More pigment than the mix takes: what does not cure with it softens and weakens. */
export const tintOverCap: Check = {
  id: 'tint-over-cap',
  about: 'more of a pigment than the mix takes',
  cases: [],
  run: work => tintedOf(work).flatMap(tinted => one(work, tinted))
}

function one(work: Work, { id, at, tint }: Tinted): Found[] {
  return tint.flatMap(({ pigment, share }, j): Found[] => {
    const percent = share * 100
    const cap = pigment.capPct
    // What no resin takes at all is another finding.
    if (cap === 0 || percent <= cap + 1e-9) return []
    return [
      {
        severity: 'caution',
        at: `${at}/${j}`,
        says: `${decimals(percent, 3)} % of ${pigment.name} in ${id}: allowed up to ${decimals(cap, 3)} %. What it is made up in does not cure with the resin: more leaves it soft, slow and dull.`,
        value: percent,
        unit: '%',
        limit: cap,
        basis:
          'pastes to 6 %, all solids to 10 % of the mix, dyes and inks to 1 %: common guidance (memory); the label of the colour goes first',
        settledBy: 'a cup of that mix, left to harden beside one without colour',
        fix: setQuantity(work.document, `${at}/${j}/percent`, 'percent', cap, 'down', 0.0001),
        fixSays: `${decimals(cap, 3)} % of ${pigment.name}`
      }
    ]
  })
}
