import { find } from '../catalogue/find.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { decimals } from '../quantity/format.ts'
import { meterMoisture, throughThickness } from '../timber/meter.ts'
import { ovenDryMoisturePct } from '../timber/moisture.ts'
import { settledPct, standingAir } from './air.ts'

/** One moisture taken at the bench. */
export interface TakenMoisture {
  readonly at: string
  readonly meanPct: number
  readonly corePct: number
  readonly doubtPct: number
  readonly how: string
}

/** What a figure without a way of taking may be out, points: a meter on any setting (practice). */
const UNTOLD_DOUBT_PCT = 2
/** Moistures taken of a timber by meter or sample, in the order of time, corrected. */
export function takenMoistures(
  timber: Timber,
  id: string,
  record: TimberRecord,
  shop: Shop,
  readings: readonly Reading[]
): TakenMoisture[] {
  const out: TakenMoisture[] = []
  for (const r of readings) {
    if (r.kind === 'sample' && r.timber === id) {
      const pct = ovenDryMoisturePct(r.wet, r.dry)
      const { doubtPct } = meterMoisture({ readingPct: Math.min(100, pct), way: 'oven-dry' })
      out.push({ at: r.at, meanPct: pct, corePct: pct, doubtPct, how: 'sample dried in the oven' })
    }
    if (r.kind === 'moisture' && r.timber === id) out.push(metered(r, timber, record, shop))
  }
  return out.sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
}

type Metered = Extract<Reading, { kind: 'moisture' }>

function metered(r: Metered, timber: Timber, record: TimberRecord, shop: Shop): TakenMoisture {
  const plain = r.depth === undefined && r.temperature === undefined && r.setting === undefined
  if (r.way === undefined && plain)
    return {
      at: r.at,
      meanPct: r.moisture,
      corePct: r.moisture,
      doubtPct: UNTOLD_DOUBT_PCT,
      how: 'measured'
    }
  const way = r.way ?? 'pins'
  const own = r.setting !== undefined && find('timber', r.setting)?.id === record.id
  const { pct, doubtPct } = meterMoisture({
    readingPct: r.moisture,
    way,
    ownSetting: own,
    ...(r.temperature === undefined ? {} : { tempC: r.temperature })
  })
  const corrected =
    way === 'pins' && r.temperature !== undefined && Math.abs(pct - r.moisture) >= 0.05
      ? `, read ${decimals(r.moisture, 1)} at ${decimals(r.temperature, 0)} °C`
      : ''
  const set = way === 'pins' && r.setting !== undefined && !own ? `, meter set to ${r.setting}` : ''
  if (way !== 'pins' || r.depth === undefined || r.depth > timber.thickness)
    return { at: r.at, meanPct: pct, corePct: pct, doubtPct, how: `${WAYS[way]}${corrected}${set}` }
  const air = standingAir(shop)
  const inside = {
    depthMm: r.depth,
    thicknessMm: Math.max(0.2, timber.thickness),
    surfacePct: settledPct(air.tempC, air.humidityPct)
  }
  const { meanPct, corePct } = throughThickness({ ...inside, atDepthPct: pct })
  const higher = throughThickness({ ...inside, atDepthPct: pct + doubtPct })
  return {
    at: r.at,
    meanPct,
    corePct,
    doubtPct: higher.meanPct - meanPct,
    how: `pins ${decimals(r.depth, 0)} mm deep${corrected}${set}`
  }
}

const WAYS = { pins: 'pins', pinless: 'pinless meter', 'oven-dry': 'sample dried in the oven' } as const
