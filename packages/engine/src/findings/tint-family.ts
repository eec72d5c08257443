import type { Check, Found } from './finding.ts'
import type { Tinted } from './tinted.ts'
import { tintedOf } from './tinted.ts'

/** A colour that was not made for the resin it goes into: it may foam, change hue or keep the resin soft. */
export const tintFamily: Check = {
  id: 'tint-family',
  about: 'a colour that was made for another resin, or for none',
  cases: ['C57'],
  run: work => tintedOf(work).flatMap(one)
}

function one({ id, at, tint, resin }: Tinted): Found[] {
  const { family } = resin.record
  return tint.flatMap(({ pigment }, j): Found[] => {
    if (pigment.families.includes(family)) return []
    const none = pigment.families.length === 0
    return [
      {
        severity: none ? 'stop' : 'caution',
        at: `${at}/${j}`,
        says: `${pigment.name} in ${id} is not for ${none ? 'this resin, nor for any: it brings water, which clouds and softens epoxy and foams polyurethane' : `${family === 'other' ? 'this family of resin' : family}: it may foam, change colour or keep it from curing`}. Take a colour sold for this resin.`,
        basis:
          'families as colours are generally sold: common practice, no source; the label of the colour decides',
        settledBy: 'a spoonful of the mix, left to harden'
      }
    ]
  })
}
