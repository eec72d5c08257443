import type { Piece } from '../piece/piece-schema.ts'
import { CAUTION_ABOVE_C } from '../resin/limits.ts'
import type { Materials } from './facts.ts'

/** A peak is left alone only when the top of its band stays this far under every limit, K (practice). */
export const WELL_UNDER_K = 10

/** Somebody must be there this long on either side of a peak near a limit, min: to see it turn (practice). */
export const ROUND_PEAK_MIN = 30

/** The lowest limit that the heat of a pour meets, °C, and its name. */
export function leastHeatLimit(
  piece: Piece,
  { base, walls, liner }: Pick<Materials, 'base' | 'walls' | 'liner'>,
  pour: number
): readonly [limitC: number, name: string] {
  const limits: [number, string][] = [[CAUTION_ABOVE_C, 'the limit for clear work']]
  if (piece.pours[pour]!.kind === 'cast') {
    for (const part of [base, walls, liner])
      if (part.softeningC !== null) limits.push([part.softeningC, `${part.name} softening from`])
  }
  return limits.reduce((a, b) => (b[0] < a[0] ? b : a))
}
