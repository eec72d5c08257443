import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** A glass that the tip of a shaft touches. */
export const glassNear: Check = {
  id: 'glass-near',
  about: 'the tip of a shaft too near the glass over its hands',
  cases: ['C89'],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    const { glass, shaft } = value
    if (glass === undefined || shaft === undefined || fit.shaft === null || fit.record.shaft === null)
      return []
    const tip = shaft - fit.shaft.passesMm - fit.shaft.filmMm
    const [least] = fit.record.shaft.glassGapMm
    const gap = glass - tip
    if (gap >= least - 1e-6) return []
    return [
      {
        severity: 'caution',
        at,
        says: `The shaft of ${id} stands ${decimals(tip, 1)} mm out of the face and the glass is ${decimals(glass, 1)} off: ${gap < 0 ? `${decimals(-gap, 1)} mm too near` : `${decimals(gap, 1)} mm between them`}. It wants ${decimals(least, 1)} mm at the least, or its nut rubs.`,
        value: gap,
        unit: 'mm',
        limit: least,
        basis:
          'length of the whole shaft less what it passes; 0.5 to 1.0 mm to the glass: common practice, no source',
        settledBy: 'the shaft in its dial, measured from the face',
        fix: setQuantity(work.document, `${at}/glass`, 'length', tip + least, 'up'),
        fixSays: `The glass ${decimals(Math.ceil((tip + least) * 10 - 1e-7) / 10, 1)} mm off the face`
      }
    ]
  })
}
