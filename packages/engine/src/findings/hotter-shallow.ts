import type { Difference } from '../cast/hotter.ts'
import { whyHotter } from '../cast/hotter.ts'
import { decimals, formatC } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { castInputOf } from './pour-depth.ts'
import type { Work } from './work.ts'

/** Differences in depth, mm, and in peak, K, from which on it looks odd. */
const DEPTH_MM = 0.5
const PEAK_K = 1

const WORDS: Readonly<Record<Difference, string>> = {
  'warm layer': 'the layer below it still cures and is warm',
  floor: 'what it lies on leads less heat away',
  hour: 'it is poured at a warmer hour of the day',
  mix: 'its mix is warmer',
  sides: 'timber and walls take less of its heat'
}

/** A shallower pour that runs hotter than a deeper one of the same resin: why. */
export const hotterShallow: Check = {
  id: 'hotter-shallow',
  about: 'a shallower pour that runs hotter than a deeper one of the same resin, and why',
  cases: ['O9'],
  run: work => work.casts.flatMap((_, i) => one(work, i))
}

function one(work: Work, i: number): Found[] {
  const cast = work.casts[i]
  const own = work.entries.pours[i]!
  if (!cast || own.value.kind !== 'cast') return []
  const depth = work.stack.pours[i]!.liquidDepth
  // The deepest that stays cooler makes it plainest.
  const cooler = work.casts.flatMap((c, k) =>
    c &&
    work.piece.pours[k]!.kind === 'cast' &&
    work.piece.pours[k]!.resin === own.value.resin &&
    work.stack.pours[k]!.liquidDepth > depth + DEPTH_MM &&
    c.peakC < cast.peakC - PEAK_K
      ? [k]
      : []
  )
  if (cooler.length === 0) return []
  const other = cooler.reduce((a, b) =>
    work.stack.pours[b]!.liquidDepth > work.stack.pours[a]!.liquidDepth ? b : a
  )
  const worths = whyHotter(castInputOf(work), work.casts, i, other).filter(w => w.kelvin > 0.3)
  const [first, ...rest] = worths
  const names = `${own.id}, ${decimals(depth, 1)} mm deep, comes to ${formatC(cast.peakC)}; ${work.entries.pours[other]!.id}, ${decimals(work.stack.pours[other]!.liquidDepth, 1)} mm, to ${formatC(work.casts[other]!.peakC)}`
  const why =
    first === undefined
      ? 'no one difference makes it: together they do'
      : `mostly because ${WORDS[first.difference]} (${decimals(first.kelvin, 0)} K)${rest.map(w => `; ${WORDS[w.difference]} (${decimals(w.kelvin, 0)} K)`).join('')}`
  return [
    {
      severity: 'note',
      at: own.at,
      says: `${names}: ${why}.`,
      value: cast.peakC,
      unit: '°C',
      band: [cast.peakBandC[0], cast.peakBandC[1]],
      basis:
        'the pour run anew with each difference to the other taken away, one at a time: cure and heat in one direction; the sides are what the whole mould adds to that',
      settledBy: null
    }
  ]
}
