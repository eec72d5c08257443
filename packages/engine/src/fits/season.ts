import type { Materials } from '../cast/facts.ts'
import { coefficientOf } from '../catalogue/timber.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { Piece, Timber } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Region } from '../shape/region.ts'
import { equilibriumMoisturePct, MOISTURE_TEMP_RANGE_C } from '../timber/moisture.ts'
import { coefficientAtRingAnglePerPct, crossGrainMovement, RING_ANGLE_DEG } from '../timber/movement.ts'

/** Where a moisture figure comes from. */
export type MoistureSource = 'reading' | 'document' | 'storage' | 'room'

/** Air a piece lives in, driest and dampest. */
export interface LivingAir {
  readonly dry: { readonly tempC: number; readonly humidityPct: number }
  readonly damp: { readonly tempC: number; readonly humidityPct: number }
  readonly name: string
}

/** A timber's moisture now, where it will settle over the year, and what it moves across the grain. */
export interface Season {
  readonly timber: number
  readonly moisturePct: number
  readonly source: MoistureSource
  /** Equilibrium in the driest and dampest air it will live in, %. */
  readonly dryPct: number
  readonly dampPct: number
  /** Extent across the grain, mm, and coefficient used, per % of moisture; null when the table has none. */
  readonly acrossMm: number
  readonly coefficientPerPct: number | null
  /** Movement from now to the driest and the dampest air, mm (negative: shrinks), with its spread. */
  readonly toDryMm: readonly [low: number, central: number, high: number] | null
  readonly toDampMm: readonly [low: number, central: number, high: number] | null
}

/** The air a piece will live in. */
export function livingAir(piece: Piece, materials: Materials): LivingAir {
  if (typeof piece.climate !== 'string') {
    const { dry, damp } = piece.climate
    return {
      dry: { tempC: dry.temperature, humidityPct: dry.humidity },
      damp: { tempC: damp.temperature, humidityPct: damp.humidity },
      name: 'the air given'
    }
  }
  const room = materials.room!
  return { dry: room.dry, damp: room.damp, name: room.name }
}

/** Moisture of a timber now: the latest reading, the document, the air it is stored in, the shop's room. */
function moistureNow(
  timber: Timber,
  id: string,
  shop: Shop,
  readings: readonly Reading[]
): { pct: number; source: MoistureSource } {
  const latest = readings
    .filter(r => r.kind === 'moisture' && r.timber === id)
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    .at(-1)
  if (latest?.kind === 'moisture') return { pct: latest.moisture, source: 'reading' }
  if (timber.moisture !== undefined) return { pct: timber.moisture, source: 'document' }
  if (shop.storage !== undefined)
    return { pct: settledPct(shop.storage.temperature, shop.storage.humidity), source: 'storage' }
  const { night, day, humidity } = shop.climate
  return { pct: settledPct((night + day) / 2, humidity), source: 'room' }
}

/** Equilibrium moisture at an air, %; temperatures beyond the table are held at its ends. */
function settledPct(tempC: number, humidityPct: number): number {
  const [low, high] = MOISTURE_TEMP_RANGE_C
  return equilibriumMoisturePct(
    Math.min(high, Math.max(low, tempC)),
    Math.min(99, Math.max(0, humidityPct)) / 100
  )
}

/** One entry a timber. `regions` are the timbers' outlines on the plan. */
export function seasonsOf(
  piece: Piece,
  ids: readonly string[],
  regions: readonly Region[],
  materials: Materials,
  shop: Shop,
  readings: readonly Reading[]
): Season[] {
  const air = livingAir(piece, materials)
  const dryPct = settledPct(air.dry.tempC, air.dry.humidityPct)
  const dampPct = settledPct(air.damp.tempC, air.damp.humidityPct)
  return piece.timbers.map((timber, i): Season => {
    const now = moistureNow(timber, ids[i]!, shop, readings)
    const acrossMm = extent(regions[i]!, grainDegOf(timber, regions[i]!) + 90)
    const record = materials.timbers[i]!
    const radial = coefficientOf(record, 'radial')?.value ?? null
    const tangential = coefficientOf(record, 'tangential')?.value ?? null
    const coefficient =
      radial === null || tangential === null
        ? (tangential ?? radial)
        : coefficientAtRingAnglePerPct(radial, tangential, RING_ANGLE_DEG[timber.rings])
    const start = record.shrinkageStartPct ?? 30
    const move = (toPct: number): Season['toDryMm'] => {
      if (coefficient === null) return null
      const m = crossGrainMovement({
        dimensionMm: acrossMm,
        coefficientPerPct: coefficient,
        fromPct: now.pct,
        toPct,
        shrinkageStartPct: start
      })
      return [m.lowMm, m.centralMm, m.highMm]
    }
    return {
      timber: i,
      moisturePct: now.pct,
      source: now.source,
      dryPct,
      dampPct,
      acrossMm,
      coefficientPerPct: coefficient,
      toDryMm: move(dryPct),
      toDampMm: move(dampPct)
    }
  })
}

/** Extent of a region along a direction, mm. */
export function extent(region: Region, degrees: number): number {
  const a = (degrees * Math.PI) / 180
  const [cx, cy] = [Math.cos(a), Math.sin(a)]
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const ring of region.rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const u = ring[k]! * cx + ring[k + 1]! * cy
      low = Math.min(low, u)
      high = Math.max(high, u)
    }
  }
  return high - low
}
