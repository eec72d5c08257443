import type { CatalogueRecord, Confidence } from './record.ts'
import { weakest } from './tag.ts'

/**
 * What the shrinkage and the coefficients of a row stand on.
 *
 * - `green to ovendry`       total shrinkage; coefficients per % between 6 and 14 % (Wood Handbook)
 * - `green to 12 %`          shrinkage to 12 % only; coefficients are the "unit shrinkage" of Australian
 *                            practice, per % below about 12 to 25 %
 * - `differential swelling`  no shrinkage; coefficients per % after DIN 68100
 */
export type ShrinkageBasis = 'green to ovendry' | 'green to 12 %' | 'differential swelling'

/** Vessels of a hardwood in cross section; softwoods have tracheids. */
export type PoreType =
  | 'ring'
  | 'ring (tylosed)'
  | 'ring/semi-ring'
  | 'semi-ring'
  | 'diffuse/semi-ring'
  | 'semi-diffuse'
  | 'diffuse'
  | 'diffuse (fine)'
  | 'diffuse (wide rays)'
  | 'diffuse (large pores)'
  | 'tracheid'
  | 'tracheid (resin canals)'

/** One species (or group sold as one). What its source does not give is null; see timber.ts for gaps. */
export interface TimberRecord extends CatalogueRecord {
  readonly botanical: string
  /** Where it grows; "tropical (DIN value)" for the second row of a species, after DIN 68100. */
  readonly region: string
  readonly basis: ShrinkageBasis
  /** Shrinkage on the `basis`, % of the green size: radial, tangential, volume. */
  readonly shrinkRadialPct: number | null
  readonly shrinkTangentialPct: number | null
  readonly shrinkVolumePct: number | null
  /** Coefficients of movement C_R and C_T: change per dimension and % of moisture. */
  readonly radialPerPct: number | null
  readonly tangentialPerPct: number | null
  /** Moisture below which it starts to shrink, %: 30, or 22 by the footnote of the source. */
  readonly shrinkageStartPct: number | null
  /** Basic specific gravity: oven-dry mass over green volume, over water. */
  readonly gravityGreen: number | null
  /** Specific gravity: oven-dry mass over the volume at 12 %. */
  readonly gravity12: number | null
  /** Density at 12 %, water included, kg/m³. */
  readonly density12KgM3: number | null
  /** Modulus in bending at 12 % as tabulated, MPa; along the grain proper see timber.ts. */
  readonly modulus12MPa: number | null
  readonly poreType: PoreType | null
  /** Pores wide enough to be felt, to drink resin and to show unfilled. */
  readonly openPored: boolean | null
  /** How shrinkage, coefficients, and gravity with modulus are known; `confidence` is the weakest. */
  readonly shrinkageKnown: Confidence
  readonly coefficientKnown: Confidence
  readonly gravityKnown: Confidence
  /** The same three where one word does not say it all. */
  readonly knownInWords: readonly [string, string, string] | null
}

type Figure = number | null

/**
 * A row of the data files, in the order of the published columns: names, figures (shrinkage R, T, V in %;
 * C_R, C_T per %; start of shrinkage %; specific gravity green and at 12 %; kg/m³ at 12 %; modulus in MPa),
 * pores with whether they are open, how shrinkage, coefficients and gravity are known, and the rest.
 */
export type TimberRow = readonly [
  names: readonly [id: string, species: string, botanical: string],
  figures: readonly [
    shrinkRadialPct: Figure,
    shrinkTangentialPct: Figure,
    shrinkVolumePct: Figure,
    radialPerPct: Figure,
    tangentialPerPct: Figure,
    shrinkageStartPct: Figure,
    gravityGreen: Figure,
    gravity12: Figure,
    density12KgM3: Figure,
    modulus12MPa: Figure
  ],
  pores: readonly [type: PoreType, open: boolean] | null,
  known: readonly [shrinkage: Confidence, coefficient: Confidence, gravity: Confidence],
  rest?: {
    readonly region?: string
    readonly source?: string
    readonly note?: string
    readonly words?: string | readonly [string, string, string]
  }
]

/** What the rows of one part of a data file share. */
export interface TimberPart {
  readonly region: string
  readonly basis: ShrinkageBasis
  readonly source: string
  /** Stands before the row's own note. */
  readonly note?: string
}

/** Records from rows. The second row of a species carries its region in the name. */
export function timberRecords(part: TimberPart, rows: readonly TimberRow[]): readonly TimberRecord[] {
  return rows.map(([[id, species, botanical], figures, pores, known, rest]) => {
    const region = rest?.region ?? part.region
    const words = rest?.words
    const note = [part.note, rest?.note].filter(n => n !== undefined).join(' ')
    return {
      id,
      name: id.endsWith('-din') ? `${species} (DIN value)` : species,
      source: rest?.source ?? part.source,
      confidence: weakest(...known),
      ...(note === '' ? {} : { note }),
      botanical,
      region,
      basis: part.basis,
      shrinkRadialPct: figures[0],
      shrinkTangentialPct: figures[1],
      shrinkVolumePct: figures[2],
      radialPerPct: figures[3],
      tangentialPerPct: figures[4],
      shrinkageStartPct: figures[5],
      gravityGreen: figures[6],
      gravity12: figures[7],
      density12KgM3: figures[8],
      modulus12MPa: figures[9],
      poreType: pores?.[0] ?? null,
      openPored: pores?.[1] ?? null,
      shrinkageKnown: known[0],
      coefficientKnown: known[1],
      gravityKnown: known[2],
      knownInWords: words === undefined ? null : typeof words === 'string' ? [words, words, words] : words
    }
  })
}
