import { bendingModulusOf, LONGITUDINAL_OVER_BENDING } from '../catalogue/timber.ts'
import { elasticOf } from '../catalogue/timber-elastic.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import { partsAcrossMPa } from '../catalogue/timber-tension.ts'
import type { Timber } from '../piece/piece-schema.ts'

/** Strain at which a timber parts across its grain. */
export interface PartingStrain {
  readonly strain: readonly [low: number, high: number]
  /** Whether stress and stiffness are those of the species. */
  readonly listed: boolean
}

/**
 * Strain at which a timber parts across its grain, held stiffly and pulled at once: stress over modulus.
 *
 *   ε = σ_t/E        E = E_T, E_R or their mean, by the rings, from the ratios to E_L
 *
 * Source: Wood Handbook Tables 5-1 and 5-3a (memory).
 * Check: white ash flat-sawn: 6.5 MPa over 0.080·1.10·12 000 MPa: 0.6 %.
 *
 * Limits: within minutes. Over months timber and resin creep and bear two to three times the strain (practice), which is
 * why many joints live; a check, a knot or a weak bond parts at less. Never a claim of strength. null where no modulus is
 * known.
 */
export function partingStrain(timber: Timber, record: TimberRecord): PartingStrain | null {
  const bending = bendingModulusOf(record)
  if (bending === null) return null
  const elastic = elasticOf(record.id)
  const ratio = {
    flat: elastic.tangentialRatio,
    rift: (elastic.tangentialRatio + elastic.radialRatio) / 2,
    quarter: elastic.radialRatio
  }[timber.rings]
  const modulus = bending.value * LONGITUDINAL_OVER_BENDING * ratio
  const { mPa, listed } = partsAcrossMPa(record.id)
  return { strain: [mPa[0] / modulus, mPa[1] / modulus], listed: listed && elastic.id === record.id }
}
