import { formatC } from '../quantity/format.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import { depthUnder, setDepth } from './pour-depth.ts'
import type { Work } from './work.ts'

/** A part cast into a pour that gets hotter than it takes. */
export const hardwareHeat: Check = {
  id: 'hardware-heat',
  about: 'a part cast into a pour that gets hotter than it takes',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    const limit = value.heat ?? fit.record.heatLimitC
    const cast = fit.castIn === null ? null : work.casts[fit.castIn]
    if (!cast || limit === null || fit.castIn === null) return []
    const [low, high] = cast.peakBandC
    if (high <= limit) return []
    return [
      {
        severity: cast.peakC > limit ? 'stop' : 'caution',
        at,
        says: `${id} takes ${formatC(limit)}; ${work.entries.pours[fit.castIn]!.id} round it comes to ${cast.runaway ? 'a runaway' : formatC(cast.peakC)}, band ${formatC(low)} to ${high > RUNAWAY_ABOVE_C ? 'runaway' : formatC(high)}. Heat can spoil it for good.`,
        value: cast.peakC,
        unit: '°C',
        band: [low, high],
        limit,
        basis: `${value.heat === undefined ? 'greatest temperature of the part: catalogue, common practice' : 'greatest temperature of the part: the piece'}; peak at the hottest place of the pour: cure model of a generic class`,
        settledBy: 'a cup test of this resin',
        ...setDepth(work, fit.castIn, depthUnder(work, fit.castIn, limit))
      }
    ]
  })
}
