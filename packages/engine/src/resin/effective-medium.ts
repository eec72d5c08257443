import { inRange } from '../quantity/range.ts'

/**
 * Resin with stones in it as one material, for heat.
 *
 *   k      Maxwell-Eucken, stones in resin   k = kr·(2kr + ks − 2φ(kr − ks))/(2kr + ks + φ(kr − ks))
 *   ρ·cp   mean by volume
 *   heat of reaction and of cure: of the resin's share alone, (1 − φ) by volume
 *
 * Source: Maxwell 1873, Eucken 1940 (memory). It is the lower bound of Hashin and Shtrikman, J Appl Phys 33
 * (1962) 3125, for stones that conduct better than what they lie in (memory).
 * Check: φ 0 and 1 give resin and stone; equal k give that k; to first order k/kr = 1 + 3φ(ks − kr)/(ks + 2kr).
 *
 * Limits: grains that do not touch: packed stones conduct better, up to Hashin-Shtrikman's upper bound; the cast
 * then comes out hotter than it is, the unfavourable end.
 */
export function effectiveMedium(
  resin: { readonly kWmK: number; readonly rhoCpJm3K: number },
  stone: { readonly kWmK: number; readonly rhoCpJm3K: number },
  solidShare: number
): { readonly kWmK: number; readonly rhoCpJm3K: number; readonly heatShare: number } {
  const f = inRange('solid share', solidShare, 0, 1)
  const [kr, ks] = [resin.kWmK, stone.kWmK]
  inRange('conductivity in W/(m·K)', kr, 1e-4, 1e4)
  inRange('conductivity in W/(m·K)', ks, 1e-4, 1e4)
  return {
    kWmK: (kr * (2 * kr + ks - 2 * f * (kr - ks))) / (2 * kr + ks + f * (kr - ks)),
    rhoCpJm3K: (1 - f) * resin.rhoCpJm3K + f * stone.rhoCpJm3K,
    heatShare: 1 - f
  }
}
