import type { ResinKinetics } from '../catalogue/resin.ts'

/**
 * Glass transition of a curing resin, DiBenedetto's equation in the form of Pascault and Williams.
 *
 *   (Tg − Tg0) / (Tg∞ − Tg0) = λ·α / (1 − (1 − λ)·α)
 *
 *   Tg   glass transition          °C
 *   Tg0  uncured, Tg∞ fully cured   °C
 *   λ    step of heat capacity at Tg, cured over uncured    1, 0 < λ ≤ 1; epoxies 0.35-0.50
 *   α    conversion                 1
 *
 * Source: Pascault & Williams, J Polym Sci B 28 (1990) 85 (memory).
 * Check: α = 0 gives Tg0, α = 1 gives Tg∞, λ = 1 is a straight line.
 *
 * Limits: stoichiometric mixes; a wrong ratio or a plasticiser lowers Tg∞ and is not in the equation.
 */
export function glassTransitionC(
  kinetics: Pick<ResinKinetics, 'tg0C' | 'tgInfC' | 'lambda'>,
  conversion: number
): number {
  const { tg0C, tgInfC, lambda } = kinetics
  return tg0C + ((tgInfC - tg0C) * lambda * conversion) / (1 - (1 - lambda) * conversion)
}

/** The conversion at which the glass transition is `tgC`; the inverse of {@link glassTransitionC}, clipped to 0..1. */
export function conversionAtGlass(
  kinetics: Pick<ResinKinetics, 'tg0C' | 'tgInfC' | 'lambda'>,
  tgC: number
): number {
  const { tg0C, tgInfC, lambda } = kinetics
  const y = (tgC - tg0C) / (tgInfC - tg0C)
  if (!(y > 0)) return 0
  if (y >= 1) return 1
  return y / (lambda + (1 - lambda) * y)
}
