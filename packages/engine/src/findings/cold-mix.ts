import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import { freshAsThickC, freshViscosityPaS, SYRUP_PAS } from '../resin/thickening.ts'
import { bathOf } from './bubbles-stay.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Parts so cold and thick that stirring beats air in and does not mix them. */
export const coldMix: Check = {
  id: 'cold-mix',
  about: 'parts so cold that the mix is as thick as syrup before it reacts',
  cases: [],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

function one(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const cast = work.casts[i]
  const { model } = work.materials.resins[i]!.record
  if (!cast || model === null) return []
  const paS = freshViscosityPaS(model.flow, cast.startC)
  if (paS <= SYRUP_PAS) return []
  const enough = Math.ceil(freshAsThickC(model.flow, SYRUP_PAS))
  const bath = bathOf(work, i, enough)
  const lasts = bath !== null && bath.refused === null && enough <= WARMEST_C
  const wayOut = lasts
    ? `Stand the parts in a warm bath until they are at ${formatC(enough)}; warmed parts last less long${bath.minutesOut ? `, ${formatMinutes(bath.minutesOut)} in the vessel` : ''}.`
    : `Warmed enough to stir, a batch would not last: take a thinner resin, or mix less at a time in a warmer room.`
  return [
    {
      severity: 'caution',
      at: value.startTemperature === undefined ? at : `${at}/startTemperature`,
      says: `${id} is mixed at ${formatC(cast.startC)}, where it is ${thicknessWords(paS)} (${decimals(paS, 1)} Pa·s): stirring beats air in that does not come up, and leaves streaks. ${wayOut}`,
      value: paS,
      unit: 'Pa·s',
      limit: SYRUP_PAS,
      basis:
        'viscosity of the fresh mix, Arrhenius of a generic class; 3 Pa·s: thickness of syrup, common practice',
      settledBy: 'a spoonful that runs off the stick in a thread or in lumps',
      // What would not last in its vessel is not offered.
      ...(lasts
        ? {
            fix: setQuantity(work.document, `${at}/startTemperature`, 'temperature', enough, 'up', 1),
            fixSays: `Parts at ${formatC(enough)}`
          }
        : {})
    }
  ]
}

/** Parts are not warmed beyond what a hand bears, °C (practice): labels and their data sheets speak of 30 to 40. */
const WARMEST_C = 40

// Everyday liquids by viscosity: honey to 20 Pa·s, above it nothing runs (public tables, read).
function thicknessWords(paS: number): string {
  return paS < 5 ? 'as thick as syrup' : paS < 20 ? 'as thick as honey' : 'too thick to run off a stick'
}
