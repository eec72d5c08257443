import type { CatalogueRecord } from './record.ts'

/** What a cured, glassy casting resin does under load and warmth; one row for all classes. */
export interface ResinElasticRecord extends CatalogueRecord {
  readonly modulusMPa: number
  readonly modulusBandMPa: readonly [low: number, high: number]
  readonly poisson: number
  /** Linear, per K, below the glass transition. */
  readonly expansionPerK: number
}

/**
 * Source: handbooks of epoxy castings: modulus 2.5 to 3.3 GPa, Poisson's ratio 0.35 to 0.40 (memory); expansion 55
 * to 75 × 10⁻⁶ per K, 70 in Crawford, Plastics Engineering, table 1.8 (read).
 *
 * Limits: glassy; over its glass transition a resin has a hundredth of this modulus. Fillers stiffen it.
 */
export const RESIN_ELASTIC: ResinElasticRecord = {
  id: 'cast-resin',
  name: 'cured casting resin',
  source:
    'handbook range of unfilled epoxy castings; expansion from Crawford, Plastics Engineering, table 1.8 (read)',
  confidence: 'memory',
  modulusMPa: 2900,
  modulusBandMPa: [2500, 3300],
  poisson: 0.36,
  expansionPerK: 70e-6
}
