import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { finalCure } from '../resin/final-cure.ts'
import { LEAST_ROOM_C, LEAST_TG_C } from '../resin/limits.ts'
import type { Edge } from './whole/whole-cast.ts'

/** The rooms in which a plan holds, by their mean over the day, °C; and which pour sets each end. */
export interface RoomRange {
  /** Cooler, and a pour is still soft after a week (or its label forbids it); null: none within what is searched. */
  readonly lowC: number | null
  readonly lowPour: number | null
  /** Warmer, and the top of a pour's band passes the limit for clear work; null: none within what is searched. */
  readonly highC: number | null
  readonly highPour: number | null
  /** A pour that no room searched keeps within its limit; null: there is none such. */
  readonly tooHotPour: number | null
}

/** Days after which a piece is to be hard, and how far below the planned room is searched, K. */
const DAYS = 7
const MOST_COOLER_K = 25
const WITHIN_K = 0.1
/** Means that are searched: no resin is cured beyond, and the models are not asked there. */
const COLDEST_C = -15
const WARMEST_C = 60

/**
 * The range of the room, its swing over the day kept: from the cast of the whole mould at the warm end, from the cure
 * of a thin layer that keeps no heat at the cold one (the least; a deep pour warms itself).
 *
 * Limits: those of final-cure.ts and of the edges; all pours share the room.
 */
export function roomRange(
  choices: readonly ResinChoice[],
  edges: readonly (Edge | null)[],
  shop: Shop
): RoomRange {
  const { night, day } = shop.climate
  const mean = (night + day) / 2
  let high: { at: number; pour: number } | null = null
  let low: { at: number; pour: number } | null = null
  let tooHot: number | null = null
  edges.forEach((edge, pour) => {
    if (edge === null) return
    if (edge.over && edge.roomK === null) tooHot ??= pour
    if (edge.roomK !== null && (high === null || mean + edge.roomK < high.at))
      high = { at: mean + edge.roomK, pour }
    const coldest = coldestRoom(choices[pour]!, shop)
    if (coldest !== null && (low === null || coldest > low.at)) low = { at: coldest, pour }
  })
  const found = (end: { at: number; pour: number } | null) => [end?.at ?? null, end?.pour ?? null] as const
  const [lowC, lowPour] = found(low)
  const [highC, highPour] = found(high)
  return { lowC, lowPour, highC, highPour, tooHotPour: tooHot }
}

/** The coolest mean room that a resin's label or practice lets, and in which it is hard after a week, °C. */
function coldestRoom({ record, label }: ResinChoice, shop: Shop): number | null {
  const { night, day } = shop.climate
  const model = record.model
  if (model === null) return null
  const swing = (day - night) / 2
  const softAt = (meanC: number): boolean =>
    finalCure(model.kinetics, { nightC: meanC - swing, dayC: meanC + swing }, DAYS).tgC < LEAST_TG_C
  // label and practice speak of the coldest the room gets
  const byLabel = (label?.leastTemperature ?? LEAST_ROOM_C) + swing
  let cold = Math.max(COLDEST_C, (night + day) / 2 - MOST_COOLER_K)
  let warm = Math.max(cold, Math.min(WARMEST_C, (night + day) / 2 + MOST_COOLER_K))
  if (!softAt(cold)) return byLabel
  if (softAt(warm)) return warm
  while (warm - cold > WITHIN_K) {
    const middle = (warm + cold) / 2
    if (softAt(middle)) cold = middle
    else warm = middle
  }
  return Math.max(warm, byLabel)
}
