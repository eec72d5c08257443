import { nobodyThere } from '../cast/bench-hours.ts'
import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import { dewPointC } from '../resin/dew-point.ts'
import { COLD_NIGHT_C, DAMP_PCT } from './damp-night.ts'
import type { Check, Found } from './finding.ts'
import { intervalMin, orderIsGiven } from './interval.ts'
import { momentOf } from './moment.ts'
import { recoatPairs } from './recoat-window.ts'
import type { Work } from './work.ts'

/** Waits from this length on have a night in them wherever they begin, min: no bench day is longer. */
const OVER_NIGHT_MIN = 12 * 60

/** A layer that lay through a damp night before the next went on it: blush, whatever the hours say. */
export const blushBetween: Check = {
  id: 'blush-between',
  about: 'a pour onto one that lay through a damp night: wash, abrade, then coat',
  cases: ['C48'],
  run: work => recoatPairs(work).flatMap(p => one(work, p.below, p.next))
}

interface Poured {
  readonly index: number
  readonly step: number
}

function one(work: Work, below: Poured, next: Poured): Found[] {
  const { night, day, humidity, doubt } = work.shop.climate
  const dew = dewPointC(day, humidity)
  const crossed = night < dew
  if (!crossed && !(night < COLD_NIGHT_C && humidity > DAMP_PCT)) return []
  if (work.materials.resins[below.index]!.record.family !== 'epoxy') return []
  const { id, at, value } = work.entries.pours[next.index]!
  const given = orderIsGiven(work) || value.after !== undefined || work.clock[next.step]!.given
  const wait = intervalMin(work, below.step, next.step)
  if (!given || !overNight(work, below.step, wait)) return []
  const lower = work.entries.pours[below.index]!.id
  return [
    {
      severity: 'caution',
      at,
      says: `${id} goes on ${formatMinutes(wait)} after ${lower}, which lies through a night of ${formatC(night)}${crossed ? `, below the dew point of ${decimals(dew, 1)} °C` : ' in damp air'}: wash its greasy film off with plain water, dry, abrade, then coat, even if it is still tacky. Dry sanding first only smears it; covered overnight it stays dry.`,
      value: night,
      unit: '°C',
      band: [night - doubt, night + doubt],
      limit: crossed ? dew : COLD_NIGHT_C,
      basis:
        'dew point: Magnus formula (Sonntag 1990, WMO-No. 8); 12 °C and 70 %: common practice, no source; blush of amines in damp air: common practice',
      settledBy: 'a wet finger on the face in the morning: greasy or not'
    }
  ]
}

// With a moment, whether the night of 22 to 7 is touched; without one, whether the wait is longer than a bench day.
function overNight(work: Work, step: number, wait: number): boolean {
  const at = momentOf(work, step)
  if (at === null) return wait >= OVER_NIGHT_MIN
  const shop = { ...work.shop, hours: undefined }
  for (let min = 0; min <= wait; min += 30) if (nobodyThere(shop, at, min) !== null) return true
  return false
}
