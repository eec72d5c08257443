import { mixingOf } from '../catalogue/mixing.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import { clingsToWall, stirringHeatK } from '../resin/stir.ts'
import { freshViscosityPaS } from '../resin/thickening.ts'
import { batchCount, inBatches } from './batches.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Resin that clings unmixed to its cup, or is stirred too briefly: streaks and patches that never set. */
export const unmixed: Check = {
  id: 'unmixed',
  about: 'a mix stirred in one cup, or too briefly',
  cases: ['C19'],
  run: work => work.entries.pours.flatMap(({ index }) => [...oneCup(work, index), ...brief(work, index)])
}

const PATCHES = 'patches that stay soft come from mixing or dirt; soft throughout comes from ratio or cold'

function oneCup(work: Work, i: number): Found[] {
  const { value, id, at } = work.entries.pours[i]!
  const way = mixingOf(value.mixing)
  const { record, densityGMl } = work.materials.resins[i]!
  if (way.wallMixed || !work.batches[i] || record.family === 'other') return []
  const b = inBatches(work, i, batchCount(work, i), value.minutes)
  // No scale of the trade shows less than a tenth of a gram of a batch.
  const ml = Math.max(0.1, b.batchG / densityGMl)
  const known = work.shop.vessels.find(v => Math.abs(v.capacity - b.vesselMl) < 1)
  const share = clingsToWall(ml, known?.diameter ?? Math.cbrt((4 * b.vesselMl * 1000) / Math.PI))
  return [
    {
      severity: 'caution',
      at: `${at}/mixing`,
      says: `${id} is stirred in one cup: about ${decimals(share * 100, 0)} % of a batch cling to its wall unmixed, and scraped out they set in streaks or not at all (${PATCHES}). Stir three minutes, pour over into a second cup, stir three more.${heat(work, i, b.batchG)}`,
      value: share * 100,
      unit: '%',
      basis:
        'film of 0.3 mm on wall and floor of the vessel; two cups: common practice, no source; patches: a supplier’s page',
      settledBy: 'no streaks when the mix runs off the stick',
      fix: setValue(work.document, `${at}/mixing`, 'two cups'),
      fixSays: `Mix ${id} in two cups`
    }
  ]
}

// Stirring by itself warms next to nothing: a cup that grows warm reacts.
function heat(work: Work, i: number, massG: number): string {
  const { model } = work.materials.resins[i]!.record
  if (model === null) return ''
  const { night, day } = work.shop.climate
  const k = stirringHeatK(
    mixingOf('paddle'),
    freshViscosityPaS(model.flow, (night + day) / 2),
    Math.max(0.1, massG),
    model.bulk.cpJkgK
  )
  return k < 1 ? ' Stirring itself does not warm it: if it grows warm, it reacts.' : ''
}

function brief(work: Work, i: number): Found[] {
  const { value, id, at } = work.entries.pours[i]!
  if (value.minutes === undefined || !work.batches[i]) return []
  const way = mixingOf(value.mixing)
  const b = inBatches(work, i, batchCount(work, i), undefined)
  // What the plan itself takes for stirring and pouring.
  if (value.minutes >= b.standingMin - 1e-9) return []
  const pouring = b.standingMin - way.minutes
  const stirring = value.minutes - pouring
  return [
    {
      severity: 'caution',
      at: `${at}/minutes`,
      says: `${formatMinutes(value.minutes)} from the first stir until ${id} is out leave ${stirring <= 0 ? 'no time' : formatMinutes(stirring)} to stir; mixing ${way.name} takes about ${formatMinutes(way.minutes)}. Under-stirred resin sets in patches.`,
      value: value.minutes,
      unit: 'min',
      limit: b.standingMin,
      basis: 'stirring by way of mixing, pouring two minutes a kilogram: common practice, no source',
      settledBy: 'no streaks when the mix runs off the stick',
      fix: setQuantity(work.document, `${at}/minutes`, 'time', b.standingMin, 'up', 1),
      fixSays: `${formatMinutes(Math.ceil(b.standingMin))} for ${id}`
    }
  ]
}
