import type { Piece } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'

/** What four corners read high, mm: front left, front right, back right, back left. */
export type Corners = readonly [number, number, number, number]

/** The latest corner readings, else the document's; null when there are none. */
export function cornersOf(piece: Piece, readings: readonly Reading[]): Corners | null {
  let best: { at: number; corners: readonly number[] } | null = null
  for (const r of readings)
    if (r.kind === 'corners' && (best === null || Date.parse(r.at) >= best.at))
      best = { at: Date.parse(r.at), corners: r.corners }
  const corners = best?.corners ?? piece.mould.corners
  return corners === undefined ? null : (corners as unknown as Corners)
}
