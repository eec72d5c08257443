import { decimals, formatC } from '../quantity/format.ts'
import { LABEL_ROOM_C, ZERO_CELSIUS_K } from '../resin/constant.ts'
import { rateConstant2 } from '../resin/cure.ts'
import { dewPointC } from '../resin/dew-point.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A night this cold and air this damp leave an amine hardener greasy even above the dew point (practice). */
export const COLD_NIGHT_C = 12
export const DAMP_PCT = 70

/** Moisture that settles on fresh resin in the night. */
export const dampNight: Check = {
  id: 'damp-night',
  about: 'a night that crosses the dew point, or is cold and damp, over fresh resin',
  cases: ['C17', 'C48'],
  run
}

function run(work: Work): Found[] {
  const first = work.entries.pours.find(p => work.materials.resins[p.index]!.record.family === 'epoxy')
  if (first === undefined) return []
  const { night, day, humidity, doubt } = work.shop.climate
  const dew = dewPointC(day, humidity)
  const crossed = night < dew
  if (!crossed && !(night < COLD_NIGHT_C && humidity > DAMP_PCT)) return []
  const { model } = work.materials.resins[first.index]!.record
  const share =
    model === null
      ? 1
      : rateConstant2(model.kinetics, night + ZERO_CELSIUS_K) /
        rateConstant2(model.kinetics, LABEL_ROOM_C + ZERO_CELSIUS_K)
  return [
    {
      severity: 'caution',
      at: first.at,
      says: `air of ${formatC(day)} and ${decimals(humidity, 0)} % has its dew point at ${decimals(dew, 1)} °C; the night falls to ${formatC(night)}${crossed ? ', below it' : ', cold and damp'}. There ${first.id} reacts at about ${decimals(share, 1)} of its rate at ${LABEL_ROOM_C} °C, and moisture on the half-cured face leaves it sticky or greasy: do not pour this evening, or keep it warm and covered; a greasy face is washed with water before it is sanded.`,
      value: night,
      unit: '°C',
      band: [night - doubt, night + doubt],
      limit: crossed ? dew : COLD_NIGHT_C,
      basis:
        'dew point: Magnus formula (Sonntag 1990, WMO-No. 8); 12 °C and 70 %: common practice, no source; rate: activation energy of the generic class',
      settledBy: 'thermometer and hygrometer beside the mould, over a night'
    }
  ]
}
