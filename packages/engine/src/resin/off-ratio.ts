import type { ResinKinetics } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { glassTransitionC } from './glass.ts'

/**
 * What an error of ratio costs a fully cured resin.
 *
 *   r = hydrogens per epoxide over the label's     the group in excess cannot all react:
 *   p(epoxide) = min(1, r), p(hydrogen) = min(1, 1/r)
 *   network   α = 2·min(1, r)/(1 + r)              share of all groups that reacted: what DiBenedetto is asked at
 *   free      (1 − p)^f of the part in excess      molecules of which no group reacted, binomial
 *   softened  1/Tg = w/Tg0 + (1 − w)/Tg(α)         Fox, Tg0 of the uncured mix as the softener's
 *
 *   f  2 for the resin, 4 for a diamine            w mass of free molecules over all
 *
 * Source: limiting group, arithmetic; Pascault & Williams 1990, Fox 1956 (memory).
 * Check: r = 1 loses nothing; ±10 % loses 5-15 K of Tg and ±20 % leaves it soft (practice: memory).
 *
 * Limits: equal reactivity, no reaction of epoxide with itself (with too little hardener and a warm cure some of
 * it still reacts: the loss is then less); a fully cured mix: in a cool room it stops even earlier. Within
 * 1/3 to 3; a gross error does not gel at all.
 */
export interface OffRatioLoss {
  /** Share of all groups that reacted, 0..1. */
  readonly network: number
  /** Mass share of molecules that hang on nothing. */
  readonly freeShare: number
  /** Glass transition fully cured, °C, and what is lost of it, K. */
  readonly tgC: number
  readonly lossK: number
}

export function offRatioLoss(
  kinetics: Pick<ResinKinetics, 'tg0C' | 'tgInfC' | 'lambda'>,
  error: number,
  mix: { readonly massA: number; readonly massB: number }
): OffRatioLoss {
  const r = 1 + inRange('relative error of ratio', error, -0.66, 2)
  const network = (2 * Math.min(1, r)) / (1 + r)
  const massB = mix.massB * r
  const reacted = r < 1 ? r : 1 / r
  const free = (1 - reacted) ** (r < 1 ? EPOXIDES : HYDROGENS)
  const freeShare = (free * (r < 1 ? mix.massA : massB)) / (mix.massA + massB)
  const network0K = glassTransitionC(kinetics, network) + ZERO_CELSIUS_K
  const tgK = 1 / (freeShare / (kinetics.tg0C + ZERO_CELSIUS_K) + (1 - freeShare) / network0K)
  const tgC = tgK - ZERO_CELSIUS_K
  return { network, freeShare, tgC, lossK: kinetics.tgInfC - tgC }
}

/** Groups of a molecule of resin (a diglycidyl ether) and of hardener (a diamine). */
const EPOXIDES = 2
const HYDROGENS = 4
