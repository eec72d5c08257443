import { nobodyThere } from '../cast/bench-hours.ts'
import type { LocalTime } from '../cast/local-time.ts'
import { timeWords } from '../cast/local-time.ts'
import { leastHeatLimit, ROUND_PEAK_MIN, WELL_UNDER_K } from '../cast/peak-limit.ts'
import { formatC } from '../quantity/format.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import { momentOf } from './moment.ts'
import { needsOf, otherStart } from './pour-needs.ts'
import type { Work } from './work.ts'

/** A pour that is hottest when nobody is there, and may come near a limit. */
export const peakUnattended: Check = {
  id: 'peak-unattended',
  about: 'a peak of heat at night or with nobody there, unless it stays well under every limit',
  cases: ['O6'],
  run: work =>
    work.steps.flatMap((s, k) => {
      const at = s.kind === 'pour' ? momentOf(work, k) : null
      return at === null ? [] : one(work, k, s.pour!.index, at)
    })
}

function one(work: Work, step: number, pour: number, at: LocalTime): Found[] {
  const cast = work.casts[pour]
  if (!cast || work.piece.pours[pour]!.kind === 'seal') return []
  const [low, high] = cast.peakBandC
  const [limit, what] = leastHeatLimit(work.piece, work.materials, pour)
  const left = limit - WELL_UNDER_K
  const why = nobodyThere(work.shop, at, cast.peakMin)
  if (high <= left || why === null) return []
  const { id, at: entry } = work.entries.pours[pour]!
  const peak = {
    does: 'is hottest',
    span: [Math.max(0, cast.peakMin - ROUND_PEAK_MIN), cast.peakMin + ROUND_PEAK_MIN] as const,
    min: 2 * ROUND_PEAK_MIN
  }
  const other = otherStart(work, step, at, [...needsOf(work, pour), peak])
  const most = high > RUNAWAY_ABOVE_C ? 'a runaway' : formatC(high)
  return [
    {
      severity: 'caution',
      at: entry,
      says: `${id}, mixed ${timeWords(at)}, is hottest about ${timeWords(at, cast.peakMin)}, ${why === 'night' ? 'at night' : 'when nobody is at the bench'}: ${cast.runaway ? 'a runaway' : formatC(cast.peakC)}, up to ${most}, with ${what} ${formatC(limit)}. ${other.words === null ? 'No start within a day and a half fits: a shallower pour, or somebody who stays.' : `Mixed ${other.words} somebody would be there.`}`,
      value: high,
      unit: '°C',
      band: [low, high],
      limit: left,
      basis: `peak left alone only ${WELL_UNDER_K} K under every limit: common practice, no source; time and heat: cure model over its band`,
      settledBy: 'a thermometer in the pour, an hour before it is due',
      ...('fix' in other ? { fix: other.fix!, fixSays: other.fixSays! } : {})
    }
  ]
}
