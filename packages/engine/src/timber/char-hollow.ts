import { inRange } from '../quantity/range.ts'
import { hollowMm, twoLayerCurvaturePerMm } from './cup.ts'

/**
 * A face that was charred: the timber just under the char is dried out, shrinks, and pulls that face hollow.
 *
 *   layer 1: the dried timber, as deep as the char     layer 2: the rest     ε = C·M
 *
 *   C  movement across the face per %      M  moisture before, %
 *
 * Both layers have the timber's own stiffness; the char itself has none. Curvature after Timoshenko (cup.ts).
 *
 * Source: Timoshenko 1925 (memory); dried as deep again as it is charred: judgement, no source (the standard's layer
 * without strength, 7 mm after 20 min of fire, is for far longer flames).
 * Check: against the formula for a thin layer, κ = 6·ε·t1/t2² (Stoney; memory).
 *
 * Limits: the worst, on the day: the dried layer takes moisture up again within days and gives most of it back. Charred
 * alike on both faces it stays flat. Elastic, free, no checks opened by the flame.
 */
export function charHollowMm(input: {
  readonly charredMm: number
  /** Of the board before, the charred layer with it. */
  readonly thicknessMm: number
  readonly coefficientPerPct: number
  readonly moisturePct: number
  readonly widthMm: number
}): number {
  const { charredMm, thicknessMm, coefficientPerPct, moisturePct, widthMm } = input
  inRange('depth charred', charredMm, 0, 20, 'mm')
  inRange('thickness', thicknessMm, 0.2, 1000, 'mm')
  inRange('coefficient of movement', coefficientPerPct, 0, 0.01, 'per %')
  inRange('moisture content', moisturePct, 0, 200, '%')
  // Char and dried layer leave at least as much again.
  const dried = Math.min(charredMm, thicknessMm / 3)
  if (dried < 1e-3) return 0
  const curvature = twoLayerCurvaturePerMm({
    thickness1Mm: dried,
    modulus1MPa: 1,
    thickness2Mm: thicknessMm - 2 * dried,
    modulus2MPa: 1,
    strainMismatch: Math.min(0.2, coefficientPerPct * Math.min(moisturePct, 30))
  })
  // Veneer curls up further than any shallow arc.
  return hollowMm(Math.min(0.1, curvature), widthMm)
}
