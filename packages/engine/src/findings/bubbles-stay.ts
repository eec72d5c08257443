import { mixingOf } from '../catalogue/mixing.ts'
import { decimals, formatC, formatMinutes, formatVolume } from '../quantity/format.ts'
import {
  bubbleAtPressureMm,
  clearAfterMin,
  SEEN_MM,
  STANDARD_PA,
  smallestThatLeavesMm
} from '../resin/bubble.ts'
import { cupHistory } from '../resin/cup.ts'
import { airThatStays, hidesView, SEEN_HAZE } from '../resin/stir.ts'
import type { WarmBath } from '../resin/warm-bath.ts'
import { warmBath } from '../resin/warm-bath.ts'
import { batchCount, inBatches } from './batches.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { setDepth } from './pour-depth.ts'
import type { Work } from './work.ts'

/** Bubbles that cannot rise out of a pour before it thickens. */
export const bubblesStay: Check = {
  id: 'bubbles-stay',
  about: 'a pour that thickens before its bubbles have risen out of it',
  cases: ['C42'],
  run: work => work.casts.flatMap((_, i) => one(work, i))
}

/** Bath that is spoken of, °C (practice: parts at 30 to 35 °C). */
const BATH_C = 30
/** A pot under pressure, times the air's: 4 bar (practice of small castings). */
const POT = 4
/** Castings that go into a pot, ml (practice). */
const POT_ML = 3000

function one(work: Work, i: number): Found[] {
  const cast = work.casts[i]
  const { value, id, at } = work.entries.pours[i]!
  const { liquidDepth, liquidMl, depth } = work.stack.pours[i]!
  // A seal sinks in; what is opaque shows no bubble but at its face, where flattening opens few.
  if (!cast || value.kind === 'seal' || work.hiding[i]!.meant || liquidDepth <= 0) return []
  const density = work.materials.resins[i]!.record.model!.bulk.liquidKgM3
  const leaves = smallestThatLeavesMm(cast.curve, liquidDepth, density)
  const way = mixingOf(value.mixing)
  const haze = hidesView(way, leaves, liquidDepth)
  const seen = leaves > SEEN_MM
  if (!seen && haze[0] <= SEEN_HAZE) return []
  const air = airThatStays(way, leaves)
  const staying =
    air[1] * liquidMl < 0.05
      ? ''
      : ` Of the air that mixing ${way.name} beats in, up to ${formatVolume(air[1] * liquidMl)} stay.`
  const passes = cast.windows.passes.moments
  const heat = passes.length === 0 ? '' : ` What comes up, hot air breaks at ${passes.join(', ')} min.`
  const basis =
    'rise by Stokes in the thickening of a generic class; 0.1 mm seen at reading distance, 2 % of the view as haze (memory); air beaten in: common practice, no source'
  if (!seen)
    return [
      {
        severity: 'caution',
        at: `${at}/mixing`,
        says: `${id} is mixed ${way.name}: bubbles under ${decimals(leaves, 2)} mm do not rise out before it thickens, and cover ${decimals(haze[0] * 100, 0)} % of the view through it, seen as haze. ${standing(work, i)}Stir by hand.${heat}`,
        value: haze[0] * 100,
        unit: '%',
        band: [haze[0] * 100, haze[1] * 100],
        limit: SEEN_HAZE * 100,
        basis,
        settledBy: 'a cup of this mix, stirred alike and held against the light',
        ...(value.mixing === 'paddle'
          ? {
              fix: setValue(work.document, `${at}/mixing`, 'two cups'),
              fixSays: `Stir ${id} by hand, two cups`
            }
          : {})
      }
    ]
  // The way grows with the square of the diameter, all else alike; a thinner layer on a cool mould is a little
  // thicker in itself, which the margin is for.
  const enough = depth * (SEEN_MM / leaves) ** 2 * MARGIN
  return [
    {
      severity: 'caution',
      at,
      says: `${id}, ${decimals(depth, 1)} mm deep, thickens before bubbles under ${decimals(leaves, 2)} mm have risen out of it; from ${SEEN_MM} mm they are seen.${staying}${pot(leaves, liquidMl)} Thinner pours or a slower resin let them go.${warm(work, i)}${heat}`,
      value: leaves,
      unit: 'mm',
      band: [leaves / DOUBT, leaves * DOUBT],
      limit: SEEN_MM,
      basis,
      settledBy: 'a cup of this mix, as deep as the pour, held against the light',
      ...setDepth(work, i, enough)
    }
  ]
}

const MARGIN = 0.97

/** Viscosity of a class is good to a factor of two, its times to 30 %: √(2·1.3) on the diameter. */
const DOUBT = Math.sqrt(2 * 1.3)

function pot(leavesMm: number, ml: number): string {
  if (ml > POT_ML || !Number.isFinite(leavesMm)) return ''
  const pressed = bubbleAtPressureMm(Math.min(leavesMm, 50), POT * STANDARD_PA)
  return ` Under ${POT} bar they would be ${decimals(pressed, 2)} mm.`
}

// What warmed parts would do, where nobody warms them yet.
function warm(work: Work, i: number): string {
  const { value } = work.entries.pours[i]!
  const { night, day } = work.shop.climate
  if (value.startTemperature !== undefined || (night + day) / 2 > BATH_C - 5) return ''
  const bath = bathOf(work, i, BATH_C)
  if (bath === null) return ''
  if (bath.refused !== null) return ' Do not warm the parts: the batch would not last.'
  const { minutesOut } = bath
  return ` Parts at ${formatC(BATH_C)} are ${decimals(1 / bath.viscosityRatio, 1)} times thinner${minutesOut === null ? '' : ` and last ${formatMinutes(minutesOut)} in the vessel`}.`
}

// Whether the mix could stand in its vessel until what is seen has come up.
function standing(work: Work, i: number): string {
  const batch = batchOf(work, i)
  if (batch === null) return ''
  const { history, minutesOut } = cupHistory({ ...batch, effort: 'quick' })
  const flow = {
    min: history.timeS.map(s => s / 60),
    viscosityPaS: history.meanViscosityPaS
  }
  const { liquidKgM3 } = batch.resin.bulk
  const floor = (Math.PI / 4) * batch.vessel.diameterMm ** 2
  const deepMm = ((batch.massG / liquidKgM3) * 1e6) / floor
  const clear = clearAfterMin(flow, deepMm, SEEN_MM, liquidKgM3)
  const lasts = minutesOut === null ? '' : `, and it lasts ${formatMinutes(minutesOut)} there`
  return clear === null
    ? `In the vessel bubbles of ${SEEN_MM} mm do not come up at all. `
    : `In the vessel bubbles of ${SEEN_MM} mm take ${formatMinutes(clear)} to come up${lasts}. `
}

/** A pour's batch with its parts at `bathC`; null where it is not predicted or does not go into its vessel. */
export function bathOf(work: Work, i: number, bathC: number): WarmBath | null {
  const batch = batchOf(work, i)
  if (batch === null) return null
  return warmBath({
    ...batch,
    bathC,
    neededMin: batch.standingMin,
    earlyShare: 1 - work.materials.resins[i]!.record.band.time
  })
}

// A batch of the pour as the cup's model takes it.
function batchOf(work: Work, i: number) {
  const { model } = work.materials.resins[i]!.record
  if (model === null || !work.batches[i]) return null
  const b = inBatches(work, i, batchCount(work, i), work.piece.pours[i]!.minutes)
  if (!b.fits) return null
  const known = work.shop.vessels.find(v => Math.abs(v.capacity - b.vesselMl) < 1)
  const { night, day } = work.shop.climate
  return {
    resin: model,
    massG: b.batchG,
    vessel: {
      capacityMl: b.vesselMl,
      // A vessel that the shop does not list is taken as wide as it is high.
      diameterMm: known?.diameter ?? Math.cbrt((4 * b.vesselMl * 1000) / Math.PI)
    },
    roomC: (night + day) / 2,
    rateFactor: work.speeds[i]!.factor,
    standingMin: b.standingMin
  }
}
