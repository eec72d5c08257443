import type { Confidence } from './record.ts'
import { weakest } from './tag.ts'
import { TIMBERS_AUSTRALIA, TIMBERS_EUROPE } from './timber-data-australia-europe.ts'
import { TIMBERS_NORTH_AMERICA } from './timber-data-north-america.ts'
import { TIMBERS_TROPICAL } from './timber-data-tropical.ts'
import type { TimberRecord } from './timber-record.ts'

/**
 * The timbers, and what can be worked out where a row has a gap.
 *
 *   link      C   = S/(100·n − S·(n − 10))          S total shrinkage %, n start of shrinkage 30 or 22 %
 *   from 12 % S   = S_12·n/(n − 12)                 S_12 shrinkage from green to 12 % (equation 4-7 turned)
 *   gravity   G_12 = ρ_12/1120                      ρ_12 density at 12 %, water included, kg/m³
 *             G_b = G_12/(1 + 0.265·G_12·(1 − 12/30))
 *   modulus   E = 20.5·G_12^0.84 softwood, 16.5·G_12^0.7 hardwood, GPa; along the grain proper 1.10·E
 *
 * Source: link derived from Wood Handbook (FPL-GTR-190/282) equation 13-3; 4-7, 4-9 to 4-11 (memory); the
 * functions of modulus from its chapter 5 on property against gravity (memory); 1.10 from the note to its
 * Table 5-1 (memory).
 * Check: the link gives the listed coefficients of 59 of 69 species within 0.00002; the rest list a group's
 * value or stem from older data. Walnut 7.8 % gives 0.00274. 622 kg/m³ gives G_b 0.51.
 *
 * Limits: **a filled gap is an estimate, never a table value**, and says so. Boards of one species differ by a
 * quarter in movement. Shrinkage from green to 12 % includes collapse in some eucalypts, so a coefficient
 * worked out from it may be out by a factor of two either way; one of 32 comparable values, mountain ash
 * tangential, is out by 2.4. The functions of modulus miss single species by up to four fifths and half the
 * species by less than an eighth.
 */
export const TIMBERS: readonly TimberRecord[] = [
  ...TIMBERS_NORTH_AMERICA,
  ...TIMBERS_TROPICAL,
  ...TIMBERS_AUSTRALIA,
  ...TIMBERS_EUROPE
]

/** A value from the row itself, or filled. */
export interface Filled {
  readonly value: number
  /** True when it is not in the row but worked out. */
  readonly derived: boolean
  /** How the value, or what it was worked out from, is known. */
  readonly confidence: Confidence
  /** It may be greater or smaller by this factor. */
  readonly doubt: number
}

/** Start of shrinkage where a row does not give it, % (Wood Handbook: most species). */
const START_PCT = 30

/** Spread of movement between boards of one species, 20 to 25 % (Wood Handbook; memory). */
const LISTED_DOUBT = 1.25

/** See Limits: green-to-12 shrinkage against unit shrinkage, 31 of 32 values within this factor. */
const TO_12_DOUBT = 2

/** The link: coefficient of movement per %, from total shrinkage (green to oven-dry, %). */
export function linkedCoefficientPerPct(totalShrinkagePct: number, startPct: number = START_PCT): number {
  if (!(totalShrinkagePct >= 0 && totalShrinkagePct <= 25)) {
    throw new RangeError(`total shrinkage is ${totalShrinkagePct} %; allowed 0 to 25 %`)
  }
  if (!(startPct >= 15 && startPct <= 40)) {
    throw new RangeError(`start of shrinkage is ${startPct} %; allowed 15 to 40 %`)
  }
  return totalShrinkagePct / (100 * startPct - totalShrinkagePct * (startPct - 10))
}

/**
 * Coefficient of movement, listed or else by the link; null when the row gives neither it nor a shrinkage in
 * that direction.
 */
export function coefficientOf(timber: TimberRecord, direction: 'radial' | 'tangential'): Filled | null {
  const radial = direction === 'radial'
  const listed = radial ? timber.radialPerPct : timber.tangentialPerPct
  if (listed !== null) {
    const derived = timber.coefficientKnown === 'derived'
    return { value: listed, derived, confidence: timber.coefficientKnown, doubt: LISTED_DOUBT }
  }
  const shrinkage = radial ? timber.shrinkRadialPct : timber.shrinkTangentialPct
  if (shrinkage === null || timber.basis === 'differential swelling') return null
  const start = timber.shrinkageStartPct ?? START_PCT
  const total = timber.basis === 'green to 12 %' ? (shrinkage * start) / (start - 12) : shrinkage
  return {
    value: linkedCoefficientPerPct(total, start),
    derived: true,
    confidence: weakest('derived', timber.shrinkageKnown),
    doubt: timber.basis === 'green to 12 %' ? TO_12_DOUBT : LISTED_DOUBT
  }
}

/** Boards of one species spread about 10 % in density (coefficient of variation, Wood Handbook; memory). */
const DENSITY_DOUBT = 1.1

/** Basic specific gravity, listed or else from the density at 12 %. */
export function basicGravityOf(timber: TimberRecord): Filled | null {
  if (timber.gravityGreen !== null) return listedGravity(timber, timber.gravityGreen)
  if (timber.density12KgM3 === null) return null
  const gravity12 = timber.density12KgM3 / 1120
  return derivedGravity(timber, gravity12 / (1 + 0.265 * gravity12 * (1 - 12 / START_PCT)))
}

/** Density at 12 %, kg/m³, listed or else from the basic specific gravity. */
export function density12Of(timber: TimberRecord): Filled | null {
  if (timber.density12KgM3 !== null) return listedGravity(timber, timber.density12KgM3)
  if (timber.gravityGreen === null) return null
  const basic = timber.gravityGreen
  return derivedGravity(timber, (1120 * basic) / (1 - 0.265 * basic * (1 - 12 / START_PCT)))
}

function listedGravity(timber: TimberRecord, value: number): Filled {
  return { value, derived: false, confidence: timber.gravityKnown, doubt: DENSITY_DOUBT }
}

function derivedGravity(timber: TimberRecord, value: number): Filled {
  const confidence = weakest('memory', timber.gravityKnown)
  return { value, derived: true, confidence, doubt: DENSITY_DOUBT }
}

/** Ratio of the modulus along the grain to the tabulated bending one (note to Wood Handbook Table 5-1; memory). */
export const LONGITUDINAL_OVER_BENDING = 1.1

/** Bending modulus at 12 %, MPa, listed or else from the gravity at 12 %. */
export function bendingModulusOf(timber: TimberRecord): Filled | null {
  if (timber.modulus12MPa !== null) {
    return {
      value: timber.modulus12MPa,
      derived: false,
      confidence: timber.gravityKnown,
      doubt: LISTED_DOUBT // Wood Handbook: coefficient of variation of the modulus 22 % (memory)
    }
  }
  const density = density12Of(timber)
  if (density === null) return null
  const gravity = density.value / 1120
  const gPa = isSoftwood(timber) ? 20.5 * gravity ** 0.84 : 16.5 * gravity ** 0.7
  return { value: 1000 * gPa, derived: true, confidence: weakest('memory', density.confidence), doubt: 1.4 }
}

/** Genera of the catalogue that are conifers, for rows whose source gives no pores (botany, not a table). */
const CONIFERS: readonly string[] = ['Araucaria', 'Callitris', 'Larix', 'Picea', 'Pinus']

/** True for conifers: no vessels. */
export function isSoftwood(timber: TimberRecord): boolean {
  return timber.poreType?.startsWith('tracheid') ?? CONIFERS.includes(genusOf(timber))
}

/**
 * Genera whose wood is open-pored (ring-porous, semi-ring-porous or with large vessels), and those whose
 * pores are fine or that have none. After the lists of Siau (1984) and the IAWA 1989 classes of vessel
 * diameter (memory).
 */
const OPEN_PORED: readonly string[] = [
  ...['Quercus', 'Fraxinus', 'Ulmus', 'Carya', 'Castanea', 'Celtis', 'Robinia', 'Sassafras', 'Juglans'],
  ...['Tectona', 'Swietenia', 'Khaya', 'Entandrophragma', 'Milicia', 'Aucoumea']
]
const CLOSED_PORED: readonly string[] = [
  ...['Acer', 'Prunus', 'Betula', 'Fagus', 'Platanus', 'Tilia', 'Populus', 'Alnus', 'Nyssa', 'Olea', 'Buxus']
]

/** Whether the pores are open: of the row, else of its genus; null when neither is known (eucalypts). */
export function openPoredOf(
  timber: TimberRecord
): { readonly open: boolean; readonly derived: boolean; readonly confidence: Confidence } | null {
  // The source of this column does not say how it was known; the lists it follows were recalled.
  if (timber.openPored !== null) return { open: timber.openPored, derived: false, confidence: 'memory' }
  const genus = genusOf(timber)
  if (OPEN_PORED.includes(genus)) return { open: true, derived: true, confidence: 'memory' }
  if (CLOSED_PORED.includes(genus) || isSoftwood(timber)) {
    return { open: false, derived: true, confidence: 'memory' }
  }
  return null
}

/** First word of the botanical name. */
export function genusOf(timber: TimberRecord): string {
  return timber.botanical.split(' ')[0] ?? ''
}
