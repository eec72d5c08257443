import { bedOf } from '../cast/cast.ts'
import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import { greatestDepth } from '../resin/depth.ts'
import { CAUTION_ABOVE_C, heatEffect, RUNAWAY_ABOVE_C, STOP_ABOVE_C } from '../resin/limits.ts'
import { poursNeeded } from '../resin/pours.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

const SETTLES = {
  rate: 'a cup test of this resin',
  room: 'a thermometer beside the mould, day and night',
  convection: 'a cup test of this resin'
} as const

/** A pour that gets too hot: peak of cure against the ladder of temperatures. */
export const pourHeat: Check = {
  id: 'pour-heat',
  about: 'a pour too deep or too hot for its resin, mould and room',
  cases: ['C01', 'C05', 'O5'],
  run: work => work.casts.flatMap((_, i) => one(work, i))
}

function one(work: Work, i: number): Found[] {
  const cast = work.casts[i]
  if (!cast || work.piece.pours[i]!.kind === 'seal') return []
  const [low, high] = cast.peakBandC
  const stop = cast.peakC > STOP_ABOVE_C || high > RUNAWAY_ABOVE_C
  if (!stop && high <= CAUTION_ABOVE_C) return []
  const limit = stop ? STOP_ABOVE_C : CAUTION_ABOVE_C
  const entry = work.entries.pours[i]!
  const pour = work.stack.pours[i]!
  const safe = safeDepth(work, i, CAUTION_ABOVE_C)
  const pours = safe > 0.5 ? poursNeeded(pour.depth, safe) : null
  const peak = cast.runaway ? 'a runaway' : `a peak of ${formatC(cast.peakC)}`
  const way =
    pours === null || pours < 2
      ? 'a slower resin or a cooler room would do'
      : `${pours} pours of ${decimals(pour.depth / pours, 1)} mm would do`
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: entry.at,
      says: `${entry.id} at ${decimals(pour.depth, 1)} mm comes to ${peak} after ${formatMinutes(cast.peakMin)}, band ${formatC(low)} to ${high > RUNAWAY_ABOVE_C ? 'runaway' : formatC(high)}: ${heatEffect(Math.max(cast.peakC, Math.min(high, RUNAWAY_ABOVE_C + 1)))?.says ?? 'past the limit for clear work'}; ${way}.`,
      value: cast.peakC,
      unit: '°C',
      band: [low, high],
      limit,
      basis:
        'peak: cure and heat in one direction, generic class, rate ±30 %, room, liquid mixing; limits 60, 100, 150 °C: engineering judgement (memory), the data sheet of the resin goes before',
      settledBy: SETTLES[cast.mostFrom],
      ...fixOf(work, i, safe)
    }
  ]
}

// The depth at which the whole band stays under the caution line.
function safeDepth(work: Work, i: number, limitC: number): number {
  const input = bedOf(work, i)
  if (input === null) return 0
  // The band's upper end is the corner run: faster, warmer, unmixed.
  const hot = {
    ...input.pour,
    rateFactor: (input.pour.rateFactor ?? 1) / (1 - input.band.time),
    roomC: input.pour.roomC + input.doubtK
  }
  return greatestDepth(hot, limitC, { mostMm: Math.max(1, work.stack.pours[i]!.liquidDepth) }).depthMm
}

function fixOf(work: Work, i: number, safe: number): Pick<Found, 'fix' | 'fixSays'> {
  const entry = work.entries.pours[i]!
  if (safe <= 0.5 || entry.value.depth === undefined) return {}
  const kept =
    1 - (work.stack.pours[i]!.liquidDepth - work.stack.pours[i]!.depth) / work.stack.pours[i]!.liquidDepth
  const depth = rounded(safe * kept, 'down', 0.1)
  if (depth < 0.5) return {}
  return {
    fix: setQuantity(work.document, `${entry.at}/depth`, 'length', depth, 'down'),
    fixSays: `${entry.id} ${decimals(depth, 1)} mm deep`
  }
}
