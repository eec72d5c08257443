import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { settledPct, standingAir } from './air.ts'
import type { LogNow } from './drying-now.ts'
import { logOf } from './drying-now.ts'
import { takenMoistures } from './taken-moisture.ts'

/** Where a moisture figure comes from. */
export type MoistureSource = 'reading' | 'log' | 'document' | 'storage' | 'room'

/** A timber's moisture as far as it is known. */
export interface MoistureNow {
  /** Mean through its thickness, %, and the ends it may lie between. */
  readonly moisturePct: number
  readonly bandPct: readonly [low: number, high: number]
  /** At its core: the mean, where nothing was measured inside. */
  readonly corePct: number
  readonly source: MoistureSource
  /** How it is known, in a few words: "pins 8 mm deep, corrected for 12 °C". */
  readonly how: string
  /** Its drying log; null when it was not weighed. */
  readonly log: LogNow | null
}

/** A moisture written into the document, points (judgement). */
const DOCUMENT_DOUBT_PCT = 2

/**
 * Moisture of a timber now: what was taken last, by meter, sample or weight; else the document's, else the
 * balance of the air it is stored in, else of the shop's room.
 *
 * @param wantedPct what its core is to come down to, for the forecast of its log
 */
export function moistureNow(
  timber: Timber,
  id: string,
  record: TimberRecord,
  shop: Shop,
  readings: readonly Reading[],
  wantedPct: number
): MoistureNow {
  const taken = takenMoistures(timber, id, record, shop, readings)
  const log = logOf(timber, id, shop, readings, taken, wantedPct)
  const latest = taken.at(-1)
  if (log !== null && log.fit !== null && !(latest && Date.parse(latest.at) > Date.parse(log.lastAt))) {
    const [low, central, high] = log.fit.meanPct.map(held) as [number, number, number]
    return {
      moisturePct: central,
      bandPct: [low, high],
      corePct: held(log.fit.corePct[1]),
      source: 'log',
      how: `${log.weighings} weights`,
      log
    }
  }
  if (latest !== undefined) {
    const { meanPct, corePct, doubtPct, how } = latest
    return { ...within(held(meanPct), doubtPct), corePct: held(corePct), source: 'reading', how, log }
  }
  if (timber.moisture !== undefined)
    return {
      ...within(timber.moisture, DOCUMENT_DOUBT_PCT),
      corePct: timber.moisture,
      source: 'document',
      how: 'given',
      log
    }
  const air = standingAir(shop)
  const pct = settledPct(air.tempC, air.humidityPct)
  const stored = shop.storage !== undefined
  return {
    ...within(pct, DOCUMENT_DOUBT_PCT),
    corePct: pct,
    source: stored ? 'storage' : 'room',
    how: stored ? 'from the air it is stored in' : 'from the air of the shop',
    log
  }
}

/** Moisture that timber can have, %: what is worked out from odd readings stays within it. */
function held(pct: number): number {
  return Math.min(200, Math.max(0, pct))
}

function within(pct: number, doubtPct: number) {
  return { moisturePct: pct, bandPct: [Math.max(0, pct - doubtPct), pct + doubtPct] as const }
}
