import type { LayerHistory } from '../resin/column-history.ts'
import { crossingS } from '../resin/conversion.ts'

/** Surface hard to the nail and dry under paper, K over the room (fitted: practice 12 h thin, 24-36 h medium, 72 h deep). */
const HARD_OVER_ROOM_K = 15

/** When the surface is hard to the nail, min: its glass transition stands well over the room; null: not within the run. */
export function hardMin(
  h: Pick<LayerHistory, 'timeS' | 'outerC' | 'outerTgC'>,
  roomC = h.outerC[h.outerC.length - 1]!
): number | null {
  const s = crossingS(h.timeS, h.outerTgC, roomC + HARD_OVER_ROOM_K)
  return s === null ? null : s / 60
}
