import type { Factor } from '../cast/factors.ts'
import { factorsOf } from '../cast/factors.ts'
import { decimals, formatC } from '../quantity/format.ts'
import { LABEL_ROOM_C } from '../resin/constant.ts'
import { CAUTION_ABOVE_C, RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import { removeValue } from './fix.ts'
import { castInputOf } from './pour-depth.ts'
import type { Work } from './work.ts'

/** A warm room, a warm mix and a warm layer below, each harmless by itself, that together make a pour too hot. */
export const factorsTogether: Check = {
  id: 'factors-together',
  about: 'depth, room, mix and the layer below: each alone would pass, together they do not',
  cases: ['C02', 'C05'],
  run: work => work.casts.flatMap((_, i) => one(work, i))
}

function one(work: Work, i: number): Found[] {
  const cast = work.casts[i]
  if (!cast || cast.peakC <= CAUTION_ABOVE_C) return []
  const factors = factorsOf(castInputOf(work), work.casts, i)
  if (factors === null || factors.each.length < 2) return []
  const passes = (peakC: number) => peakC <= CAUTION_ABOVE_C
  if (!passes(factors.alone) || !factors.each.every(f => passes(f.peakC)) || passes(factors.together))
    return []
  const { id, at } = work.entries.pours[i]!
  const heat = (c: number) => (c > RUNAWAY_ABOVE_C ? 'a runaway' : formatC(c))
  const { night, day } = work.shop.climate
  const words: Readonly<Record<Factor, string>> = {
    room: `in a room of ${formatC((night + day) / 2)}`,
    mix: `with parts of ${formatC(cast.startC)}`,
    layer: 'on the layer below, still curing'
  }
  return [
    {
      severity: 'caution',
      at,
      says: `${id}: its ${decimals(work.stack.pours[i]!.liquidDepth, 1)} mm alone come to ${heat(factors.alone)} at ${LABEL_ROOM_C} °C; ${factors.each.map(f => `${words[f.factor]}: ${heat(f.peakC)}`).join('; ')}. Each would pass; they multiply, and together it comes to ${heat(factors.together)}. Take one of them away.`,
      value: factors.together,
      unit: '°C',
      limit: CAUTION_ABOVE_C,
      basis:
        'the pour run with each factor by itself and with all of them: cure model in one direction; limit 60 °C: engineering judgement (memory)',
      settledBy: 'a cup test of this resin; a thermometer in the parts before they are mixed',
      ...coolParts(work, i, factors.each)
    }
  ]
}

// Parts at the room’s temperature are what the maker has in hand, where that does.
function coolParts(
  work: Work,
  i: number,
  each: readonly { readonly factor: Factor }[]
): Pick<Found, 'fix' | 'fixSays'> {
  if (!each.some(f => f.factor === 'mix')) return {}
  const { at, id } = work.entries.pours[i]!
  const fix = removeValue(work.document, `${at}/startTemperature`)
  return fix === null ? {} : { fix, fixSays: `${id} mixed as warm as the room` }
}
