import type { Timber } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { dayAfter, dayWords } from '../quantity/day.ts'
import type { DryingLog, LogRefused } from '../timber/drying-log.ts'
import { dryingLog } from '../timber/drying-log.ts'
import { equilibriumMoistureBand, MOISTURE_TEMP_RANGE_C } from '../timber/moisture.ts'
import { standingAir } from './air.ts'
import type { TakenMoisture } from './taken-moisture.ts'

/** When the core of a timber has come down to what is wanted; days `YYYY-MM-DD`. */
export interface ReadyDay {
  /** It has come down to it by the last weight, as far as is likeliest. */
  readonly reached: boolean
  readonly on: string
  readonly from: string
  /** null: it may never in the air it stands in. */
  readonly to: string | null
}

/** The drying log of a timber. */
export interface LogNow {
  readonly weighings: number
  readonly firstAt: string
  readonly lastAt: string
  /** What the weights say; null with `why` when they say nothing. */
  readonly fit: DryingLog | null
  readonly wantedPct: number
  readonly ready: ReadyDay | null
  /** Why there is no day, in words; null when there is one. */
  readonly why: string | null
  /** What is wrong with the weights themselves; null when they are only too few, or good. */
  readonly doubt: 'gains' | 'jump' | null
}

/** What a moisture written beside a weight, or into the document, may be out, points (practice). */
const BESIDE_DOUBT_PCT = 1.5
const DOCUMENT_DOUBT_PCT = 2
/** Moistures taken so long before or after the log still tie it, days (judgement). */
const NEAR_DAYS = 10
/** A day further off than this is no forecast, days. */
const MOST_DAYS = 5 * 365

/** The log of a timber from its weights; null when it was not weighed. */
export function logOf(
  timber: Timber,
  id: string,
  shop: Shop,
  readings: readonly Reading[],
  taken: readonly TakenMoisture[],
  wantedPct: number
): LogNow | null {
  const weights = readings
    .flatMap(r => (r.kind === 'weight' && r.timber === id ? [r] : []))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
  const [first, last] = [weights[0], weights.at(-1)]
  if (first === undefined || last === undefined) return null
  const day = (at: string) => (Date.parse(at) - Date.parse(first.at)) / 86_400_000
  const known = [
    ...taken.map(t => ({ day: day(t.at), pct: t.meanPct, doubtPct: t.doubtPct })),
    ...weights.flatMap(w =>
      w.moisture === undefined ? [] : [{ day: day(w.at), pct: w.moisture, doubtPct: BESIDE_DOUBT_PCT }]
    )
  ].filter(k => k.day > -NEAR_DAYS && k.day < day(last.at) + NEAR_DAYS)
  if (known.length === 0 && timber.moisture !== undefined)
    known.push({ day: 0, pct: timber.moisture, doubtPct: DOCUMENT_DOUBT_PCT })
  const air = standingAir(shop)
  const band = equilibriumMoistureBand(
    Math.max(MOISTURE_TEMP_RANGE_C[0], air.tempC),
    Math.min(99, air.humidityPct) / 100
  )
  const log = dryingLog({
    weighings: weights.map(w => ({ day: day(w.at), massG: w.mass })),
    known: known.map(k => ({ ...k, day: Math.max(0, k.day) })),
    thicknessMm: Math.max(0.2, timber.thickness),
    airPct: Math.min(40, band.centralPct),
    airLowPct: band.lowPct,
    airHighPct: band.highPct,
    wantedPct,
    scaleG: shop.scale.resolution
  })
  const common = { weighings: weights.length, firstAt: first.at, lastAt: last.at, wantedPct, doubt: null }
  if ('refused' in log) {
    const { refused } = log
    const doubt = refused === 'gains' || refused === 'jump' ? refused : null
    return { ...common, fit: null, ready: null, why: whyOf(log, first.at), doubt }
  }
  const on = (d: number) => dayAfter(first.at, d)
  if (log.readyDay === null || log.readyFrom === null || log.readyDay > MOST_DAYS)
    return {
      ...common,
      fit: log,
      ready: null,
      why: 'the air it stands in is too damp for it to get there'
    }
  const { readyDay, readyFrom, readyTo } = log
  return {
    ...common,
    fit: log,
    ready: {
      reached: log.corePct[1] <= wantedPct,
      on: on(readyDay),
      from: on(readyFrom),
      to: readyTo === null || readyTo > MOST_DAYS ? null : on(readyTo)
    },
    why: null
  }
}

function whyOf({ refused, day }: LogRefused, firstAt: string): string {
  switch (refused) {
    case 'few':
      return 'three weights at least make a forecast'
    case 'short':
      return 'the weights span less than a week'
    case 'gains':
      return 'it weighs more than at first: it takes up moisture where it stands'
    case 'jump':
      return `the weight of ${dayWords(dayAfter(firstAt, day))} does not follow from the others: weigh it again`
  }
}

/** "ready on about 12 Feb 2027, between 3 Feb 2027 and 1 Mar 2027"; "dry enough since" where it is. */
export function readyWords({ reached, on, from, to }: ReadyDay): string {
  return `${reached ? 'dry enough since' : 'ready on'} about ${dayWords(on)}, ${to === null ? `not before ${dayWords(from)}, and it may never in that air` : from === to ? 'to the day' : `between ${dayWords(from)} and ${dayWords(to)}`}`
}
