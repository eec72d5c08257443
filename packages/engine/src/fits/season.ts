import type { Materials } from '../cast/facts.ts'
import { coefficientOf } from '../catalogue/timber.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Region } from '../shape/region.ts'
import { coefficientAtRingAnglePerPct, crossGrainMovement, RING_ANGLE_DEG } from '../timber/movement.ts'
import { livingAir, settledPct } from './air.ts'
import type { MoistureNow } from './moisture-now.ts'
import { moistureNow } from './moisture-now.ts'

/** Points over the middle of the year's balance that single pieces may be out (Wood Handbook ch. 13: 8 ± 2 %; memory). */
const OVER_MIDDLE_PCT = 2
/** Points over the balance of the dampest air: what a meter may be out (practice). */
const OVER_DAMPEST_PCT = 1
/** Above this resin is not poured on timber at all, % (common practice, no source). */
const MOST_PCT = 20

/** What timber may hold when it is built in: up to `wellPct` well, above `mostPct` not at all. */
export function builtIn(
  dryPct: number,
  dampPct: number
): { readonly wellPct: number; readonly mostPct: number } {
  const middle = (dryPct + dampPct) / 2
  const mostPct = Math.min(Math.max(middle + OVER_MIDDLE_PCT, dampPct + OVER_DAMPEST_PCT), MOST_PCT)
  return { wellPct: Math.min(middle + OVER_MIDDLE_PCT, mostPct), mostPct }
}

/** A timber's moisture now, where it will settle over the year, and what it moves across the grain. */
export interface Season extends MoistureNow {
  readonly timber: number
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
  const { wellPct } = builtIn(dryPct, dampPct)
  return piece.timbers.map((timber, i): Season => {
    const record = materials.timbers[i]!
    const now = moistureNow(timber, ids[i]!, record, shop, readings, wellPct)
    const acrossMm = extent(regions[i]!, grainDegOf(timber, regions[i]!) + 90)
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
        fromPct: now.moisturePct,
        toPct,
        shrinkageStartPct: start
      })
      return [m.lowMm, m.centralMm, m.highMm]
    }
    return {
      ...now,
      timber: i,
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
