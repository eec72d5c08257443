import { coefficientOf } from '../catalogue/timber.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import { charHollowMm } from '../timber/char-hollow.ts'
import { flatSawnCupMm } from '../timber/cup.ts'
import { dryingByDiffusion } from '../timber/drying.ts'
import { oneSidedHollowMm } from '../timber/one-sided.ts'
import { planedHollowMm } from '../timber/planing.ts'
import type { Season } from './season.ts'

/**
 * How hollow a timber goes across its width, free, by each cause, mm. Positive: its top goes concave; of the rings:
 * its bark side.
 */
export interface Cupping {
  /** From now to the driest and to the dampest air, by its rings; null unless it is flat-sawn. */
  readonly ringsDryMm: number | null
  readonly ringsDampMm: number | null
  /** Distance from the pith, mm, and whether it was given. */
  readonly pithMm: number
  readonly pithGiven: boolean
  /** From what is planed off its two faces while its core differs from its skin; null where nothing is. */
  readonly planedMm: number | null
  readonly belowMm: number
  readonly aboveMm: number
  readonly surfacePct: number
  /** Core it is reckoned with: measured, or what the first mode of diffusion makes of its mean, %. */
  readonly corePct: number
  /** Days until its core is within a point of the air it stands in, fast to slow end: then it stays as it is cut. */
  readonly restDays: readonly [low: number, central: number, high: number]
  /** On the way to the driest or dampest air, when its faces are finished unlike; at most. 0 where they are alike. */
  readonly oneSidedMm: number
  /** From a charred top, on the day; 0 where it is not charred. */
  readonly charMm: number
}

/** Distance from the pith taken when the piece gives none: half the width of the board, and this at least, mm (judgement). */
const LEAST_PITH_MM = 40

/**
 * Cupping of one timber.
 *
 * @param surfacePct balance of the air it stands in
 * @param thickMm thickness before flattening; `belowMm` and `aboveMm` are what flattening takes off it
 */
export function cuppingOf(
  timber: Timber,
  record: TimberRecord,
  season: Season,
  surfacePct: number,
  thickMm: number,
  belowMm: number,
  aboveMm: number,
  oneSided: boolean
): Cupping {
  const { acrossMm, moisturePct, coefficientPerPct, dryPct, dampPct } = season
  const width = Math.min(10_000, acrossMm)
  const radial = coefficientOf(record, 'radial')?.value ?? null
  const tangential = coefficientOf(record, 'tangential')?.value ?? null
  const pithMm = timber.pith ?? Math.max(LEAST_PITH_MM, width / 2)
  const rings = (toPct: number): number | null =>
    timber.rings !== 'flat' || radial === null || tangential === null
      ? null
      : flatSawnCupMm({
          radialPerPct: radial,
          tangentialPerPct: tangential,
          moistureChangePct: toPct - Math.min(moisturePct, 30),
          widthMm: width,
          pithDistanceMm: pithMm
        })
  const core = coreOf(season, surfacePct)
  const left = thickMm - belowMm - aboveMm
  const rest = dryingByDiffusion({
    thicknessMm: Math.max(0.1, thickMm),
    coreMoisturePct: Math.min(200, core),
    roomMoisturePct: Math.min(30, surfacePct)
  })
  const c = coefficientPerPct
  return {
    ringsDryMm: rings(dryPct),
    ringsDampMm: rings(dampPct),
    pithMm,
    pithGiven: timber.pith !== undefined,
    planedMm:
      c === null || left < 0.5 || thickMm < 1
        ? null
        : planedHollowMm(
            { thicknessMm: thickMm, belowMm, aboveMm, corePct: core, surfacePct: Math.min(40, surfacePct) },
            c,
            width
          ),
    belowMm,
    aboveMm,
    surfacePct,
    corePct: core,
    restDays: [rest.lowDays, rest.centralDays, rest.highDays],
    oneSidedMm:
      c === null || !oneSided
        ? 0
        : oneSidedHollowMm({
            coefficientPerPct: c,
            moistureChangePct: Math.min(
              60,
              Math.max(Math.abs(dryPct - moisturePct), Math.abs(dampPct - moisturePct))
            ),
            widthMm: width,
            thicknessMm: Math.max(0.2, left)
          }),
    charMm:
      c === null || timber.charredTop === 0
        ? 0
        : charHollowMm({
            charredMm: timber.charredTop,
            thicknessMm: Math.max(0.2, thickMm),
            coefficientPerPct: c,
            moisturePct: Math.min(200, moisturePct),
            widthMm: width
          })
  }
}

/** Core of a timber: measured, else from its mean as the first mode leaves it. Never below nothing. */
function coreOf({ corePct, moisturePct, source, log }: Season, surfacePct: number): number {
  if (source === 'log' && log !== null) return corePct
  if (Math.abs(corePct - moisturePct) > 0.05) return corePct
  return Math.min(200, Math.max(0, surfacePct + ((moisturePct - surfacePct) * Math.PI) / 2))
}
