import type { WantedBatches } from '../cast/batches.ts'
import { leastWeighedG } from '../cast/batches.ts'
import { decimals, formatC, formatMass, formatMinutes, formatVolume } from '../quantity/format.ts'
import { USABLE_FILL } from '../resin/batch.ts'
import { RUNAWAY_ABOVE_C, STOP_ABOVE_C } from '../resin/limits.ts'
import { inBatches, standsWell } from './batches.ts'
import type { Check, Found } from './finding.ts'
import { removeValue, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Batches that set or boil in their vessel, or do not go into it. */
export const batchHeat: Check = {
  id: 'batch-heat',
  about: 'a batch that stands in its vessel longer than it lasts, or does not fit it',
  cases: ['C02'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

/** Mass that a pot life is printed for when the label does not say, g (common practice). */
const POT_LIFE_MASS_G = 100
/** From how many times that mass on the printed pot life is said not to hold: five (practice). */
const MANY_TIMES = 5
const MOST_BATCHES = 1000

function one(work: Work, i: number): Found[] {
  const batches = work.batches[i]
  if (!batches) return []
  const { split, wanted, mixed } = batches
  if (wanted !== null && mixed?.chosen === true) return asWanted(work, i, wanted)
  return split.possible || split.why === 'scale' ? [] : impossible(work, i, split.says)
}

function asWanted(work: Work, i: number, wanted: WantedBatches): Found[] {
  const { id, at } = work.entries.pours[i]!
  const { record } = work.materials.resins[i]!
  const batch = formatMass(wanted.batchG)
  const fix = enough(work, i, wanted)
  if (!wanted.fits) {
    const needed = wanted.batchG / work.materials.resins[i]!.densityGMl
    const room = wanted.vesselMl * USABLE_FILL
    return [
      {
        severity: 'stop',
        at,
        says: `a batch of ${id} is ${batch}, ${formatVolume(needed)}; its vessel takes ${formatVolume(room)} with room to stir${timesWords(work, i, wanted.batchG)}.`,
        value: needed,
        unit: 'ml',
        limit: room,
        basis: 'three quarters of a vessel can be stirred: common practice, no source',
        ...fix
      }
    ]
  }
  if (wanted.allowedMin === null) return []
  const early = wanted.allowedMin * (1 - record.band.time)
  if (wanted.standingMin <= early) return []
  const past = wanted.standingMin > wanted.allowedMin
  // A bucket that boils over hurts whoever holds it: there the early end of the band is the limit.
  const { peakC, batchG } = wanted
  const harms = peakC !== null && peakC > STOP_ABOVE_C && batchG >= MANY_TIMES * POT_LIFE_MASS_G
  const stop = past || harms
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at,
      says: `a batch of ${id}, ${batch}, stands ${formatMinutes(wanted.standingMin)} in its vessel; it must be out by ${formatMinutes(wanted.allowedMin)}, band from ${formatMinutes(early)}: after that it ${past ? 'thickens, heats and sets' : 'may thicken, heat and set'} in the vessel${harms ? `, at ${peakC > RUNAWAY_ABOVE_C ? 'a runaway that foams and smokes' : formatC(peakC)}` : ''}${timesWords(work, i, wanted.batchG)}.`,
      value: wanted.standingMin,
      unit: 'min',
      band: [early, wanted.allowedMin * (1 + record.band.time)],
      limit: past && !harms ? wanted.allowedMin : early,
      basis:
        'time until twice the viscosity, 60 °C or gel in the vessel: cure and heat of an equivalent sphere, generic class, times ±30 %; stirring and pouring as given, else common practice',
      settledBy: 'a cup test of this resin',
      ...fix
    }
  ]
}

function impossible(work: Work, i: number, why: string): Found[] {
  const { id, at } = work.entries.pours[i]!
  return [
    {
      severity: 'stop',
      at,
      says: `${id} cannot be split into batches that are out of their vessels in time: ${why}.`,
      basis: 'batches by vessel, scale and cup model of a generic class; handling times of common practice'
    }
  ]
}

// A label's pot life is of a small mass: say how many times that a batch is.
function timesWords(work: Work, i: number, batchG: number): string {
  const { label, record } = work.materials.resins[i]!
  const mass = label?.potLife?.mass ?? POT_LIFE_MASS_G
  const times = batchG / mass
  if (record.family !== 'epoxy' || times < MANY_TIMES) return ''
  return `; it is ${decimals(times, 0)} times the ${label?.potLife === undefined ? 'usual ' : ''}${formatMass(mass)} of a printed pot life, which does not apply`
}

// The fewest batches that fit and are out before the early end of the band, and that the scale still weighs;
// the maker's minutes are kept if they can be.
function enough(work: Work, i: number, wanted: WantedBatches): Pick<Found, 'fix' | 'fixSays'> {
  const { at, value } = work.entries.pours[i]!
  const stands = (count: number, minutes: number | undefined): boolean =>
    standsWell(work, i, inBatches(work, i, count, minutes))
  const { minutes } = value
  const leastG = leastWeighedG(work.materials.resins[i]!, work.materials.tints[i]!, work.shop)
  const most = Math.max(wanted.count, Math.floor(work.batches[i]!.mixedG / leastG + 1e-9))
  const kept = least(wanted.count, most, n => stands(n, minutes))
  const count = kept ?? (minutes === undefined ? null : least(wanted.count, most, n => stands(n, undefined)))
  if (count === null) return {}
  const set = setValue(work.document, `${at}/batches`, count)
  const drop = kept === null ? removeValue(work.document, `${at}/minutes`) : null
  const says = `${count} ${count === 1 ? 'batch' : 'batches'} of ${formatMass(work.batches[i]!.mixedG / count)}`
  if (drop === null) return { fix: set, fixSays: says }
  const { standingMin } = inBatches(work, i, count, undefined)
  return { fix: [...drop, ...set], fixSays: `${says}, each out within ${formatMinutes(standingMin)}` }
}

// The least whole number from `from` to `most` that does; a smaller batch always stands better.
function least(from: number, most: number, does: (count: number) => boolean): number | null {
  if (does(from)) return from
  let low = from
  let high = from * 2
  const last = Math.min(most, MOST_BATCHES)
  if (from >= last) return null
  while (!does(Math.min(high, last))) {
    if (high >= last) return null
    low = high
    high *= 2
  }
  high = Math.min(high, last)
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (does(middle)) high = middle
    else low = middle
  }
  return high
}
