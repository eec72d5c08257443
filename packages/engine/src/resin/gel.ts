import type { ResinKinetics } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { conversionPath, crossingS, isothermalTimeS, type TemperatureHistory } from './conversion.ts'

/**
 * Conversion at gel of a step polymerisation of A_f with B_g, Flory and Stockmayer.
 *
 *   pA·pB·(f − 1)·(g − 1) = 1,   pB = conversion of epoxide, pA = pB/r = conversion of amine hydrogen
 *   →  pB = √( r / ((f − 1)(g − 1)) )
 *
 *   f  amine hydrogens of a molecule (weight average)     1, above 1
 *   g  epoxides of a molecule (weight average)            1, above 1
 *   r  amine hydrogens per epoxide                        1
 *
 * Source: Flory, Principles of Polymer Chemistry (1953), chapter 9; Stockmayer, J Polym Sci 9 (1952) 69 (memory).
 * Check: f = 4, g = 2, r = 1: 0.577.
 *
 * Returns null when the mix never gels because a group is used up first.
 *
 * Limits: equal reactivity, no rings. Rings and slow secondary amines delay gel (measured 0.58-0.62 where
 * this gives 0.577), so a resin's own recorded value goes before this one.
 */
export function gelConversion(
  amineHydrogens: number,
  epoxides: number,
  hydrogensPerEpoxide = 1
): { readonly epoxide: number; readonly amine: number } | null {
  inRange('amine hydrogens of a molecule', amineHydrogens, 1, 100)
  inRange('epoxides of a molecule', epoxides, 1, 100)
  inRange('amine hydrogens per epoxide', hydrogensPerEpoxide, 0.01, 100)
  const epoxide = Math.sqrt(hydrogensPerEpoxide / ((amineHydrogens - 1) * (epoxides - 1)))
  const amine = epoxide / hydrogensPerEpoxide
  return epoxide < 1 && amine < 1 ? { epoxide, amine } : null
}

/** Seconds to gel at one temperature, a thin film that keeps no heat; Infinity if it never gels. */
export function filmGelS(kinetics: ResinKinetics, tempC: number): number {
  // Every run of a band asks for it at one of a few temperatures. The answer is that of the integral, kept.
  const known = KNOWN.get(kinetics) ?? new Map<number, number>()
  KNOWN.set(kinetics, known)
  let timeS = known.get(tempC)
  if (timeS === undefined) {
    if (known.size >= MOST_KNOWN) known.clear()
    timeS = isothermalTimeS(kinetics, tempC, kinetics.gelConversion)
    known.set(tempC, timeS)
  }
  return timeS
}

const KNOWN = new WeakMap<ResinKinetics, Map<number, number>>()
const MOST_KNOWN = 256

/** The time of gel along a temperature history, s on the history's own clock; null if not within it. */
export function gelTimeS(
  kinetics: ResinKinetics,
  history: TemperatureHistory,
  startConversion = 0
): number | null {
  const { timeS, conversion } = conversionPath(kinetics, history, startConversion)
  return crossingS(timeS, conversion, kinetics.gelConversion)
}
