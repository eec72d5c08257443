import type { ResinMix } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'

/**
 * How much hardener a resin takes, and what an error of ratio does.
 *
 *   AHEW = M/(active hydrogens)            g per equivalent of amine hydrogen
 *   EEW of a blend = 100/Σ(w_i/EEW_i)      g per equivalent of epoxide; filler has mass but no epoxide
 *   phr  = 100·AHEW/EEW                    parts of hardener per hundred parts of resin, by mass
 *
 * Source: epoxy formulating guides, three alike (read).
 * Check: DETA (103 g/mol, 5 hydrogens) AHEW 20.6; with EEW 200: 10.3 phr.
 *
 * Limits: addition cure. Catalysed systems (polyester) have no such ratio.
 */
export function amineHydrogenEquivalent(molarMassGMol: number, activeHydrogens: number): number {
  inRange('molar mass in g/mol', molarMassGMol, 10, 1e5)
  inRange('active hydrogens', activeHydrogens, 1, 1000)
  return molarMassGMol / activeHydrogens
}

/** A part of a blend: mass fraction (any scale) and EEW, g/eq; null where it carries no epoxide (filler, plasticiser). */
export interface BlendPart {
  readonly mass: number
  readonly eew: number | null
}

/** EEW of a blend, g/eq. Throws if nothing in it carries epoxide. */
export function blendEew(parts: readonly BlendPart[]): number {
  let total = 0
  let equivalents = 0
  for (const { mass, eew } of parts) {
    inRange('mass of a blend part', mass, 0, 1e9)
    total += mass
    if (eew === null) continue
    inRange('EEW in g/eq', eew, 40, 1e5)
    equivalents += mass / eew
  }
  if (!(equivalents > 0))
    throw new Error('the blend carries 0 equivalents of epoxide; at least one part with an EEW')
  return total / equivalents
}

/** Parts of hardener per hundred of resin, by mass. */
export function partsPerHundred(ahew: number, eew: number): number {
  inRange('AHEW in g/eq', ahew, 10, 1e5)
  inRange('EEW in g/eq', eew, 40, 1e5)
  return (100 * ahew) / eew
}

/**
 * Heat of reaction of a mix, J/kg: molar heat of epoxide with amine hydrogen over EEW + AHEW, less the
 * share that does not react. Molar heat 95-110 kJ/mol, 103 for design (memory).
 */
export function mixHeatJPerKg(molarHeatJ: number, eew: number, ahew: number, inertFraction = 0): number {
  inRange('inert mass fraction', inertFraction, 0, 1)
  return ((molarHeatJ * 1000) / (eew + ahew)) * (1 - inertFraction)
}

/** Resin to hardener by volume from the same by mass: times ρB/ρA (densities of B, hardener, and A, resin). */
export function volumeRatio(massRatioAB: number, densityAGMl: number, densityBGMl: number): number {
  inRange('density of A in g/ml', densityAGMl, 0.5, 3)
  inRange('density of B in g/ml', densityBGMl, 0.5, 3)
  return (massRatioAB * densityBGMl) / densityAGMl
}

/** Resin to hardener by mass from the same by volume; the inverse of {@link volumeRatio}. */
export function massRatio(volumeRatioAB: number, densityAGMl: number, densityBGMl: number): number {
  return volumeRatioAB / volumeRatio(1, densityAGMl, densityBGMl)
}

/** A mix from a ratio stated by volume. */
export function mixFromVolumes(
  volumeA: number,
  volumeB: number,
  densityAGMl: number,
  densityBGMl: number
): ResinMix {
  inRange('volume of A', volumeA, 1e-9, 1e9)
  inRange('volume of B', volumeB, 1e-9, 1e9)
  return { massA: volumeA * densityAGMl, massB: volumeB * densityBGMl, densityAGMl, densityBGMl }
}

/**
 * Relative error of the hardener when the volumes of the label are weighed as if they were masses.
 * Check: 1 : 1 by volume is 100 : 83 by mass; weighed 1 : 1 it has 20 % too much hardener (1/0.83).
 */
export function volumeWeighedError(mix: ResinMix): number {
  const byVolume = mix.massB / mix.densityBGMl / (mix.massA / mix.densityAGMl)
  return byVolume / (mix.massB / mix.massA) - 1
}

export type RatioVerdict = 'harmless' | 'noticeable' | 'soft' | 'tacky'

export interface OffRatio {
  /** Amine hydrogens per epoxide over the label's: 1 + error. */
  readonly ratio: number
  /** Greatest conversion of either group: the one in excess cannot all react. */
  readonly epoxideCap: number
  readonly amineCap: number
  /** Practice: to 5 % harmless, to 10 % noticeable (Tg 5-15 K lower), to 20 % soft, beyond tacky. */
  readonly verdict: RatioVerdict
}

/**
 * What a relative error of hardener over resin does: +0.1 is a tenth too much hardener.
 * Bands ±5, ±10, ±20 % from practice (memory). Between them the true loss of Tg depends on the resin.
 */
export function offRatio(error: number): OffRatio {
  inRange('relative error of ratio', error, -0.999, 100)
  const ratio = 1 + error
  // A hair of slack, so that 10.5 g for 10 g is 5 % and not a rounding error above it.
  const size = Math.abs(error) - 1e-9
  const verdict = size <= 0.05 ? 'harmless' : size <= 0.1 ? 'noticeable' : size <= 0.2 ? 'soft' : 'tacky'
  return { ratio, epoxideCap: Math.min(1, ratio), amineCap: Math.min(1, 1 / ratio), verdict }
}

/**
 * Largest relative error of the weighed hardener: half a step of the scale over its mass.
 * Check: 2.5 g on a scale of 1 g steps: 20 %.
 *
 * Limits: the scale's steps alone. Its own error, drift under a heavy bucket, and the resin part's error
 * (smaller by the ratio) come on top.
 */
export function ratioErrorFromScale(massBG: number, resolutionG: number): number {
  inRange('mass of hardener in g', massBG, 1e-6, 1e9)
  inRange('resolution of the scale in g', resolutionG, 0, 1e6)
  return resolutionG / 2 / massBG
}

/** Least batch, g, whose smaller part is weighed within `maxError` on a scale of `resolutionG` steps. */
export function leastBatchG(mix: ResinMix, resolutionG: number, maxError: number): number {
  inRange('resolution of the scale in g', resolutionG, 0, 1e6)
  inRange('accepted error of ratio', maxError, 1e-6, 1)
  const smaller = Math.min(mix.massA, mix.massB) / (mix.massA + mix.massB)
  return resolutionG / 2 / maxError / smaller
}
