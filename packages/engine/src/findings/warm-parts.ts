import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import { bathOf } from './bubbles-stay.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Parts warmed so far that the batch runs away or is too thick before it is out. */
export const warmParts: Check = {
  id: 'warm-parts',
  about: 'parts warmed before mixing, and a batch that does not last',
  cases: [],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

/** Parts this much over the room count as warmed, K. */
const WARMED_K = 2

function one(work: Work, i: number): Found[] {
  const { value, id, at } = work.entries.pours[i]!
  const { night, day } = work.shop.climate
  const roomC = (night + day) / 2
  const bathC = value.startTemperature
  if (bathC === undefined || bathC < roomC + WARMED_K) return []
  const bath = bathOf(work, i, bathC)
  // What does not last at room temperature either is not the bath's doing.
  if (bath === null || bath.refused === null || bathOf(work, i, roomC)?.refused !== null) return []
  const allowed = warmest(work, i, roomC, bathC)
  return [
    {
      severity: 'stop',
      at: `${at}/startTemperature`,
      says: `${id} is mixed from parts at ${formatC(bathC)}: ${decimals(1 / bath.viscosityRatio, 1)} times thinner than at the room’s ${formatC(roomC)}, but ${bath.refused === 'runaway' ? 'its batch may run away in the vessel before it is poured' : 'its batch may be too thick before it is poured'}${bath.minutesOut === null ? '' : `: out by ${formatMinutes(bath.minutesOut)} at the likeliest${bath.minutesOutAtRoom === null ? '' : `, ${formatMinutes(bath.minutesOutAtRoom)} from the room’s temperature`}`}. Warm them to ${formatC(Math.floor(allowed))} at most, or mix less at a time.`,
      value: bathC,
      unit: '°C',
      limit: Math.floor(allowed),
      basis:
        'cup model of a generic class at the early end of its times (±30 %); stirring and pouring as given, else common practice',
      settledBy: 'a cup test of this resin from warm parts',
      fix: setQuantity(work.document, `${at}/startTemperature`, 'temperature', allowed, 'down', 1),
      fixSays: `Parts at ${formatC(Math.floor(allowed))}`
    }
  ]
}

// The warmest that is not refused, by bisection to a tenth; warmer never lasts longer.
function warmest(work: Work, i: number, good: number, bad: number): number {
  let [low, high] = [good, bad]
  while (high - low > 0.1) {
    const middle = (low + high) / 2
    if (bathOf(work, i, middle)!.refused === null) low = middle
    else high = middle
  }
  return low
}
