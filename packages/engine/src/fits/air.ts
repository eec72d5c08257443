import type { Materials } from '../cast/facts.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { equilibriumMoisturePct, MOISTURE_TEMP_RANGE_C } from '../timber/moisture.ts'

interface Air {
  readonly tempC: number
  readonly humidityPct: number
}

/** Air a piece lives in, driest and dampest. */
export interface LivingAir {
  readonly dry: Air
  readonly damp: Air
  readonly name: string
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

/** The air that timber stands in until it is set: its store, else the shop. */
export function standingAir(shop: Shop): Air {
  if (shop.storage !== undefined)
    return { tempC: shop.storage.temperature, humidityPct: shop.storage.humidity }
  return shopAir(shop)
}

/** The air of the shop, over the day. */
export function shopAir({ climate: { night, day, humidity } }: Shop): Air {
  return { tempC: (night + day) / 2, humidityPct: humidity }
}

/** Equilibrium moisture at an air, %; temperatures beyond the table are held at its ends. */
export function settledPct(tempC: number, humidityPct: number): number {
  const [low, high] = MOISTURE_TEMP_RANGE_C
  return equilibriumMoisturePct(
    Math.min(high, Math.max(low, tempC)),
    Math.min(99, Math.max(0, humidityPct)) / 100
  )
}
