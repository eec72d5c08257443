import type { ResinKinetics } from '../catalogue/resin.ts'
import { decimals, formatC } from '../quantity/format.ts'
import { LABEL_ROOM_C, ZERO_CELSIUS_K } from '../resin/constant.ts'
import { rateConstant2 } from '../resin/cure.ts'
import { LEAST_ROOM_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** How long a start counts, h: three days. */
const FIRST_H = 72

/** A room colder than the resin takes. */
export const coldRoom: Check = {
  id: 'cold-room',
  about: 'a room that falls below the least temperature of a resin',
  cases: ['C16'],
  run
}

/**
 * Hours of the first `hours` (whole days) in which a day that runs as a sine from `night` to `day` is below
 * `limit`: the share 1 − arccos(x)/π, x = (limit − mean)/swing (exact for whole days).
 */
function hoursBelow(night: number, day: number, limit: number, hours: number): number {
  const mean = (night + day) / 2
  const swing = Math.max(0, (day - night) / 2)
  if (limit <= mean - swing) return 0
  if (limit >= mean + swing) return hours
  return hours * (1 - Math.acos((limit - mean) / swing) / Math.PI)
}

function run(work: Work): Found[] {
  const seen = new Set<string>()
  return work.entries.pours.flatMap(({ index, at }): Found[] => {
    const choice = work.materials.resins[index]!
    if (seen.has(choice.id)) return []
    seen.add(choice.id)
    const least = choice.label?.leastTemperature ?? (choice.record.family === 'epoxy' ? LEAST_ROOM_C : null)
    return least === null ? [] : one(work, index, at, least)
  })
}

function one(work: Work, index: number, at: string, least: number): Found[] {
  const { night, day, doubt } = work.shop.climate
  if (night - doubt >= least) return []
  const { label, name } = work.materials.resins[index]!
  const whole = Math.max(night, day) < least
  const hours = hoursBelow(night, day, least, FIRST_H)
  const where = whole
    ? `the room stays under ${limitWords(least)} day and night (${formatC(night)} to ${formatC(day)})`
    : night < least
      ? `nights fall to ${formatC(night)}, under ${limitWords(least)}: ${decimals(hours, 0)} of the first ${FIRST_H} hours`
      : `nights of ${formatC(night)} may fall under ${limitWords(least)}`
  return [
    {
      severity: whole ? 'stop' : 'caution',
      at,
      says: `${label?.name ?? label?.id ?? name}, in ${work.entries.pours[index]!.id}: ${where}.${night < least ? slower(work, index) : ''} Too cold, not spoiled: a heat tent or a faster hardener helps, never more hardener.`,
      value: night,
      unit: '°C',
      band: [night - doubt, night + doubt],
      limit: least,
      basis: `least temperature: ${label?.leastTemperature === undefined ? 'common practice for epoxies, no source' : 'the label of the resin'}; hours and rate: the room as a sine from its coldest to its warmest, activation energy of the generic class`,
      settledBy: 'a thermometer beside the mould, over a night'
    }
  ]
}

// One decimal: 60 °F is 15.6.
function limitWords(c: number): string {
  return `${decimals(c, 1)} °C`
}

/**
 * Mean rate of a class over a day that runs as a sine from `night` to `day`, over its rate at 23 °C: hourly
 * means of the main reaction's Arrhenius factor.
 */
function meanRate(kinetics: ResinKinetics, night: number, day: number): number {
  const mean = (night + day) / 2
  const swing = Math.max(0, (day - night) / 2)
  let sum = 0
  for (let hour = 0; hour < 24; hour++) {
    const tempC = mean + swing * Math.cos((2 * Math.PI * (hour + 0.5)) / 24)
    sum += rateConstant2(kinetics, tempC + ZERO_CELSIUS_K)
  }
  return sum / 24 / rateConstant2(kinetics, LABEL_ROOM_C + ZERO_CELSIUS_K)
}

// The class knows no least temperature: what it gives is the least delay, and is said so.
function slower(work: Work, index: number): string {
  const { model } = work.materials.resins[index]!.record
  if (model === null) return ' Do not count on it being hard in three days.'
  const { night, day } = work.shop.climate
  const times = 1 / meanRate(model.kinetics, night, day)
  return ` Over this day and night it takes at least ${decimals(times, 1)} times as long as at ${LABEL_ROOM_C} °C: do not count on it being hard in three days.`
}
