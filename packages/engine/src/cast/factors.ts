import type { Layer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import { LABEL_ROOM_C } from '../resin/constant.ts'
import type { CastInput } from './bed.ts'
import { freshLayer, runBed } from './bed.ts'
import type { PourCast } from './cast.ts'
import { FOLLOWED_MIN } from './cast.ts'
import { coldBed } from './hotter.ts'
import { layersBefore } from './peak.ts'
import { airFor } from './starts.ts'

/** What works on a pour beside its depth. */
export type Factor = 'room' | 'mix' | 'layer'

export interface Factors {
  /** Peak of the depth alone: a room and a mix of 23 °C, a cold bed, °C. */
  readonly alone: number
  /** Peak with one factor more than that, for those that are there, °C. */
  readonly each: readonly { readonly factor: Factor; readonly peakC: number }[]
  /** Peak with all of them, °C. */
  readonly together: number
}

/** A factor counts from this much on, K over 23 °C or over the room. */
const COUNTS_K = 1

/**
 * The peak of a planned pour taken apart: depth alone, with a warmer room, a warmer mix, a layer below that still
 * gives heat, each by itself, and all together. They multiply, since each raises the rate.
 * null for a pour that is not predicted or not in the mould.
 *
 * Check: without any factor the peaks are one (test). Limits: those of the cast.
 */
export function factorsOf(
  input: CastInput,
  casts: readonly (PourCast | null)[],
  index: number
): Factors | null {
  const cast = casts[index]
  if (!cast || input.stack.piece.pours[index]!.kind !== 'cast') return null
  const { night, day } = input.shop.climate
  const air = airFor(input.stack, input.shop, index)
  const warmBed = layersBefore(input, casts, index, air)
  const { startC, startMin } = cast
  const depthMm = input.stack.pours[index]!.liquidDepth
  const roomC = air(startMin * 60)
  const peak = (has: ReadonlySet<Factor>): number => {
    const room = has.has('room') ? roomC : LABEL_ROOM_C
    const bed: readonly Layer[] = has.has('layer') ? warmBed : coldBed(input, index, warmBed, room)
    const layers = [...bed, freshLayer(input, index, depthMm, has.has('mix') ? startC : room)]
    const around = has.has('room') ? air : () => LABEL_ROOM_C
    const run = runBed(input, layers, FOLLOWED_MIN, startMin, around)
    return (run.layers[bed.length] as ResinResult).peakC
  }
  const there: Factor[] = []
  if ((night + day) / 2 > LABEL_ROOM_C + COUNTS_K) there.push('room')
  if (startC > Math.max(roomC, LABEL_ROOM_C) + COUNTS_K) there.push('mix')
  if (warmBed.length > 0) there.push('layer')
  return {
    alone: peak(new Set()),
    each: there.map(factor => ({ factor, peakC: peak(new Set([factor])) })),
    together: peak(new Set(there))
  }
}
