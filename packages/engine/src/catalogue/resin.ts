import type { CatalogueRecord } from './record.ts'

/**
 * What the cure and heat models need to know of a resin. Rates are given at 25 °C with activation
 * energies, so that A_i = k_i(25 °C)·exp(E_i / (R·298.15 K)).
 */
export interface ResinKinetics {
  /** k2 at 25 °C, 1/s: the autocatalytic rate constant. */
  readonly k2At25PerS: number
  /** k1/k2 at 25 °C. */
  readonly k1OverK2At25: number
  /** Activation energies, J/mol. */
  readonly e1JPerMol: number
  readonly e2JPerMol: number
  /** Exponents of conversion: α^m and (1−α)^n. */
  readonly m: number
  readonly n: number
  /** Heat of reaction per mass of mix, J/kg. */
  readonly heatJPerKg: number
  /** Conversion at gel, 0..1. */
  readonly gelConversion: number
  /** DiBenedetto: glass transition uncured and fully cured, °C, and λ. */
  readonly tg0C: number
  readonly tgInfC: number
  readonly lambda: number
  /** Logistic diffusion limit fd = 1/(1+exp((Tg(α) − T − offset)/width)), K; null switches it off. */
  readonly diffusion: { readonly offsetK: number; readonly widthK: number } | null
}

export interface ResinFlow {
  /** Viscosity of the fresh mix at 25 °C, Pa·s, and its activation energy, J/mol. */
  readonly eta25PaS: number
  readonly etaEJPerMol: number
  /** Castro-Macosko exponents: η = η0·(αg/(αg−α))^(C1+C2·α). */
  readonly c1: number
  readonly c2: number
}

export interface ResinBulk {
  /** Density of the liquid mix and of the cured resin, kg/m³. */
  readonly liquidKgM3: number
  readonly curedKgM3: number
  /** Thermal conductivity k = kLiquid + kSlope·α, W/(m·K). */
  readonly kLiquidWmK: number
  readonly kSlopeWmK: number
  /** Heat capacity, J/(kg·K), taken constant by the first models. */
  readonly cpJkgK: number
}

/** A resin as sold in two parts, A (resin) and B (hardener). */
export interface ResinMix {
  /** Parts by mass: A to B. */
  readonly massA: number
  readonly massB: number
  /** Densities of the parts, g/ml. */
  readonly densityAGMl: number
  readonly densityBGMl: number
}

export type ResinFamily = 'epoxy' | 'polyester' | 'polyurethane' | 'other'

export interface ResinRecord extends CatalogueRecord {
  readonly family: ResinFamily
  /** What it is made for. */
  readonly use: 'deep' | 'medium' | 'thin' | 'none'
  readonly mix: ResinMix
  /** null for a family that is recorded but not predicted. */
  readonly model: {
    readonly kinetics: ResinKinetics
    readonly flow: ResinFlow
    readonly bulk: ResinBulk
  } | null
  /** Volumetric cure shrinkage, % of the cured volume (ISO 3521 sense); low and high of the class. */
  readonly shrinkagePct: number
  readonly shrinkageBandPct: readonly [number, number]
  /** Relative one-sigma-like bounds of the class: times ±, safe depth ±, peak ±K below 70 °C. */
  readonly band: { readonly time: number; readonly depth: number; readonly peakK: number }
}

const SECOND_FIT =
  'generic class fitted to common practice (pot life, greatest depth, demould and recoat hours) with activation energies inside the published range for cycloaliphatic amines, 44-57 kJ/mol (Barral et al. 1995, J Appl Polym Sci 56:1029, abstract); no product'

const DIFFUSION = { offsetK: 15, widthK: 6 } // fitted: ambient cure stops near Tg = T + 10…25 K

const bulk = (liquidKgM3: number): ResinBulk => ({
  liquidKgM3, // memory: liquid mixes 1080-1120
  curedKgM3: liquidKgM3 / (1 - 0.05), // shrinkage 5 % of the cured volume
  kLiquidWmK: 0.17, // fitted between 0.16-0.18 uncured and 0.19-0.23 cured (Crawford, Plastics Engineering, table 1.8: 0.23, read)
  kSlopeWmK: 0.04,
  cpJkgK: 1800 // memory: liquid 1700-1900, rubber 1800-2100
})

const GENERIC_MIX: ResinMix = {
  // derived: EEW 195 with AHEW 80 is 2.44 : 1 by mass, 2.13 : 1 by volume; systems sold as 2 : 1 by
  // volume are 100 : 42 to 100 : 45 by mass. The label of the resin at hand overrides it.
  massA: 100,
  massB: 44,
  densityAGMl: 1.14, // memory: resin part 1.10-1.16
  densityBGMl: 0.98 // memory: hardener 0.94-1.00
}

export const RESINS: readonly ResinRecord[] = [
  {
    id: 'deep',
    name: 'slow casting resin for deep pours',
    source: SECOND_FIT,
    confidence: 'fitted',
    note: 'sensitivity to temperature, a factor 1.7 per 10 K, is below the rule "half per 10 K"',
    family: 'epoxy',
    use: 'deep',
    mix: GENERIC_MIX,
    model: {
      kinetics: {
        k2At25PerS: 5.0e-5,
        k1OverK2At25: 0.2,
        e1JPerMol: 48_000,
        e2JPerMol: 44_000,
        m: 1,
        n: 2,
        heatJPerKg: 210_000,
        gelConversion: 0.6,
        tg0C: -45,
        tgInfC: 58,
        lambda: 0.42,
        diffusion: DIFFUSION
      },
      flow: { eta25PaS: 0.35, etaEJPerMol: 52_000, c1: 4.0, c2: 2.5 },
      bulk: bulk(1100)
    },
    shrinkagePct: 5,
    shrinkageBandPct: [3, 6],
    band: { time: 0.3, depth: 0.25, peakK: 15 }
  },
  {
    id: 'medium',
    name: 'casting resin of medium speed',
    source: SECOND_FIT,
    confidence: 'fitted',
    note: 'hardens a little earlier than practice says',
    family: 'epoxy',
    use: 'medium',
    mix: GENERIC_MIX,
    model: {
      kinetics: {
        k2At25PerS: 1.4e-4,
        k1OverK2At25: 0.15,
        e1JPerMol: 52_000,
        e2JPerMol: 48_000,
        m: 1,
        n: 2,
        heatJPerKg: 320_000,
        gelConversion: 0.58,
        tg0C: -40,
        tgInfC: 78,
        lambda: 0.42,
        diffusion: DIFFUSION
      },
      flow: { eta25PaS: 0.7, etaEJPerMol: 55_000, c1: 3.5, c2: 2.0 },
      bulk: bulk(1100)
    },
    shrinkagePct: 5,
    shrinkageBandPct: [3, 6],
    band: { time: 0.3, depth: 0.25, peakK: 15 }
  },
  {
    id: 'thin',
    name: 'fast resin for thin coats',
    source: SECOND_FIT,
    confidence: 'fitted',
    note: 'hardens a little earlier than practice says',
    family: 'epoxy',
    use: 'thin',
    mix: GENERIC_MIX,
    model: {
      kinetics: {
        k2At25PerS: 3.2e-4,
        k1OverK2At25: 0.25,
        e1JPerMol: 54_000,
        e2JPerMol: 50_000,
        m: 1,
        n: 2,
        heatJPerKg: 340_000,
        gelConversion: 0.55,
        tg0C: -38,
        tgInfC: 60,
        lambda: 0.42,
        diffusion: DIFFUSION
      },
      flow: { eta25PaS: 1.1, etaEJPerMol: 57_000, c1: 3.0, c2: 2.0 },
      bulk: bulk(1100)
    },
    shrinkagePct: 5,
    shrinkageBandPct: [3, 6],
    band: { time: 0.3, depth: 0.25, peakK: 15 }
  },
  ...(['polyester', 'polyurethane', 'other'] as const).map(
    (family): ResinRecord => ({
      id: family === 'other' ? 'other-resin' : family,
      name: family === 'other' ? 'a resin of another family' : `${family} casting resin`,
      source: 'recorded so that amounts can be planned; cure and heat are not predicted for this family',
      confidence: 'practice',
      note: 'cautions only: follow the data sheet of the resin at hand',
      family,
      use: 'none',
      // practice: polyester about 1-2 % of a catalyst, casting polyurethanes often 1 : 1 by mass; the label decides
      mix:
        family === 'polyester'
          ? { massA: 100, massB: 1.5, densityAGMl: 1.1, densityBGMl: 1.1 }
          : { massA: 100, massB: 100, densityAGMl: 1.05, densityBGMl: 1.1 },
      model: null,
      shrinkagePct: family === 'polyester' ? 7 : 3, // practice: polyester 6-8 %, filled less
      shrinkageBandPct: family === 'polyester' ? [5, 9] : [0.5, 5],
      band: { time: 0.5, depth: 0.5, peakK: 30 }
    })
  )
]
