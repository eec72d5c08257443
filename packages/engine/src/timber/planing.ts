import { inRange } from '../quantity/range.ts'
import { hollowMm } from './cup.ts'

/**
 * Timber planed while its core is wetter, or drier, than its skin: the piece that is left goes hollow as it evens out.
 *
 *   M(z) = M_s + (M_c − M_s)·sin(πz/L)       over the thickness L as it dried, first mode of diffusion
 *   g    = (12/t³)·∫ M(z)·(z − z_m) dz        mean slope of moisture over what is left, from a to L − b
 *   κ    = C·g,   f = κ·w²/8
 *
 *   a, b  taken off the underside and the top, mm    t = L − a − b, z_m its middle    C  movement per %
 *   w  width across the grain, mm                     f  hollow, mm; positive: the top goes concave
 *
 * A slice planed flat is flat while its moisture still differs through it; when it has evened out every layer has
 * moved by C times its own change, and the straight part of that is a curvature. Taking the same off both faces leaves
 * it symmetric: no hollow. What is left of the gradient falls with the core: {@link coreFraction} in settle.ts.
 *
 * Source: first mode of the plane sheet (Crank); strain of a free strip as the moment of its free strain (derived).
 * Check: the integral by quadrature; equal faces give none; the same taken off the other face gives the opposite.
 *
 * Limits: a free board, elastic, cut at one moment; resin beside or under it holds it and builds up stress instead.
 * Rings add their own (cup.ts). Stress left by fast drying (case-hardening) adds to it and is not modelled: boards
 * differ.
 */
export interface PlanedBoard {
  readonly thicknessMm: number
  /** Taken off the underside and off the top, mm. */
  readonly belowMm: number
  readonly aboveMm: number
  readonly corePct: number
  readonly surfacePct: number
}

/** Slope of moisture left in the planed board, % a mm; positive: wetter towards the top. */
export function planedGradientPctPerMm(board: PlanedBoard): number {
  const { thicknessMm, belowMm, aboveMm, corePct, surfacePct } = board
  inRange('thickness', thicknessMm, 0.5, 1000, 'mm')
  inRange('taken off the underside', belowMm, 0, thicknessMm, 'mm')
  inRange('taken off the top', aboveMm, 0, thicknessMm, 'mm')
  inRange('moisture of the core', corePct, 0, 200, '%')
  inRange('moisture of the surface', surfacePct, 0, 40, '%')
  const left = thicknessMm - belowMm - aboveMm
  inRange('what is left', left, 0.1, thicknessMm, 'mm')
  const k = Math.PI / thicknessMm
  const middle = belowMm + left / 2
  // Antiderivative of sin(kz)·(z − middle).
  const f = (z: number) => Math.sin(k * z) / k ** 2 - ((z - middle) * Math.cos(k * z)) / k
  return (((corePct - surfacePct) * 12) / left ** 3) * (f(thicknessMm - aboveMm) - f(belowMm))
}

/** Hollow over a width once it has evened out, mm; positive: the top is concave. */
export function planedHollowMm(board: PlanedBoard, coefficientPerPct: number, widthMm: number): number {
  inRange('coefficient of movement', coefficientPerPct, 0, 0.01, 'per %')
  // Beyond this it is no shallow arc, and no board survives it.
  const curvature = Math.max(-0.1, Math.min(0.1, coefficientPerPct * planedGradientPctPerMm(board)))
  return hollowMm(curvature, widthMm)
}
