import { decimals, formatC } from '../quantity/format.ts'
import { aboutTime } from '../quantity/rough.ts'
import { LABEL_ROOM_C } from '../resin/constant.ts'
import { CAUTION_ABOVE_C, heatEffect, RUNAWAY_ABOVE_C, STOP_ABOVE_C } from '../resin/limits.ts'
import { poursNeeded } from '../resin/pours.ts'
import { edgeWords } from './edge-words.ts'
import type { Check, Found } from './finding.ts'
import { rounded } from './fix.ts'
import { knownBy } from './known-by.ts'
import { depthUnder, setDepth, splitPour } from './pour-depth.ts'
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
  const safe = depthUnder(work, i, CAUTION_ABOVE_C)
  const split = splitPour(work, i, mostAt(work, i, safe))
  const after = aboutTime(cast.peakMin)
  const most = high > RUNAWAY_ABOVE_C ? 'a runaway' : formatC(high)
  // Where the likeliest peak stands within the limit, what it may reach is what there is to say.
  const heat = cast.runaway
    ? `comes to a runaway, over ${formatC(RUNAWAY_ABOVE_C)}, after ${after}`
    : cast.peakC > limit
      ? `comes to ${formatC(cast.peakC)} after ${after}, between ${formatC(low)} and ${most}`
      : `may reach ${most}, likeliest ${formatC(cast.peakC)} after ${after}`
  const effect = heatEffect(Math.max(cast.peakC, Math.min(high, RUNAWAY_ABOVE_C + 1)))
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: entry.at,
      says: `${entry.id} at ${decimals(pour.depth, 1)} mm ${heat}: ${effect?.says ?? 'past the limit for clear work'}; ${wayOut(work, i, safe, split)}${nearness(work, i)}.`,
      value: cast.peakC,
      unit: '°C',
      band: [low, high],
      limit,
      basis: `peak: cure and heat in ${work.whole === null ? 'one direction' : 'three directions'}, ${knownBy(work, i)}, room, liquid mixing${work.whole === null ? '; what timber, walls and sides take is left out, so a narrow or tall place runs cooler' : ''}; limits 60, 100, 150 °C: engineering judgement (memory), the data sheet of the resin goes before`,
      settledBy: SETTLES[cast.mostFrom],
      ...(split ?? setDepth(work, i, safe))
    }
  ]
}

// Where the whole mould was cast: by how little it is past the limit.
function nearness(work: Work, i: number): string {
  const edge = work.whole?.edges[i]
  if (edge == null) return ''
  const { liquidDepth } = work.stack.pours[i]!
  const near = edge.depthMm !== null && edge.depthMm > 0.75 * liquidDepth
  const words = near ? edgeWords(edge, liquidDepth) : ''
  return words === '' ? '' : `; ${words}`
}

// The depth that does, the label's greatest in mind.
function mostAt(work: Work, i: number, safe: number): number {
  return Math.min(safe, work.materials.resins[i]!.label?.greatestDepth ?? safe)
}

// How many pours of what depth would do, the label's greatest depth in mind; in a warm room, a cooler hour.
function wayOut(work: Work, i: number, safe: number, split: ReturnType<typeof splitPour>): string {
  const { depth } = work.stack.pours[i]!
  const most = mostAt(work, i, safe)
  const shallow = rounded(most, 'down', 0.1)
  const pours = shallow > 0.5 ? poursNeeded(depth, shallow) : 1
  const { day } = work.shop.climate
  const cooler =
    day > LABEL_ROOM_C + 2 ? `the room of ${formatC(day)} takes depth away: pour by night or cool it` : null
  if (pours < 2) return cooler ?? 'a slower resin or a cooler room would do'
  // The words of the fix, so that sentence and fix say one number.
  const layers = `${pours} pours of ${decimals(depth / pours, 1)} mm`
  const does = split?.fixSays
    ? `${split.fixSays} would do`
    : `${decimals(shallow, 1)} mm at most would do, or ${layers}`
  return cooler === null ? does : `${does}; ${cooler}`
}
