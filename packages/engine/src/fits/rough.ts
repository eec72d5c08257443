import { coefficientOf } from '../catalogue/timber.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import { flatSawnCupMm } from '../timber/cup.ts'
import { crossGrainMovement } from '../timber/movement.ts'
import { flatnessLoss } from '../timber/rough.ts'
import type { Season } from './season.ts'

/** One part of the thickness to start from: what it is for, mm, and where it comes from. */
export interface RoughPart {
  readonly what: string
  readonly mm: number
  readonly from: string
}

/** Thickness of the board that a timber is cut from. */
export interface RoughThickness {
  readonly parts: readonly RoughPart[]
  /** All together, mm. */
  readonly startMm: number
  /** The board at hand, mm; null when the piece does not say. */
  readonly givenMm: number | null
}

/** Planing each sawn face clean, mm (common practice). */
const CLEAN_MM = 0.5
/** Bow and twist of a stored board when nobody measured, mm a metre of its length (common practice). */
const CROOKED_MM_PER_M = 2
/** Moisture a board is taken to have been sawn at, %: the start of shrinkage, when it begins to cup. */
const SAWN_PCT = 30

export interface RoughInput {
  readonly timber: Timber
  readonly record: TimberRecord
  readonly season: Season
  readonly pithMm: number
  /** In the finished piece, and what flattening takes off it below and above, mm. */
  readonly finishedMm: number
  readonly belowMm: number
  readonly aboveMm: number
  readonly lengthMm: number
  /** Moisture at which it is set, %: what it still dries to. */
  readonly setPct: number
}

/**
 * Rough thickness of a timber: finished, both faces' flattening, planing it clean and flat, and what it still shrinks.
 * null for a top that is not planed (crowned or measured).
 */
export function roughOf(input: RoughInput): RoughThickness | null {
  const { timber, season, finishedMm, belowMm, aboveMm, lengthMm } = input
  if (timber.crown !== undefined || timber.measured !== undefined) return null
  const { rough } = timber
  const crooked = CROOKED_MM_PER_M * (lengthMm / 1000)
  const loss = flatnessLoss({
    cupMm: Math.min(100, rough?.cup ?? sawnCup(input)),
    bowMm: Math.min(200, rough?.bow ?? crooked),
    twistMm: Math.min(200, rough?.twist ?? crooked)
  })
  const told = (given: number | undefined, else_: string) => (given === undefined ? else_ : 'measured')
  const parts: RoughPart[] = [
    { what: 'finished', mm: finishedMm, from: 'the piece' },
    { what: 'flattened off below', mm: belowMm, from: 'the piece' },
    { what: 'flattened off above', mm: aboveMm, from: 'the piece' },
    { what: 'both faces planed clean', mm: 2 * CLEAN_MM, from: 'common practice' },
    { what: 'cup', mm: loss.cupMm, from: told(rough?.cup, cupWords(timber, input.pithMm)) },
    { what: 'bow', mm: loss.bowMm, from: told(rough?.bow, 'not measured: 2 mm a metre, common practice') },
    {
      what: 'half of the twist',
      mm: loss.twistMm,
      from: told(rough?.twist, 'not measured: 2 mm a metre, common practice')
    },
    { what: 'shrinks while it dries', mm: drying(input), from: `from ${season.moisturePct.toFixed(1)} % now` }
  ].filter(p => p.mm >= 0.005)
  return {
    parts,
    startMm: parts.reduce((sum, p) => sum + p.mm, 0),
    givenMm: rough?.thickness ?? null
  }
}

function cupWords(timber: Timber, pithMm: number): string {
  return `not measured: flat-sawn, ${pithMm.toFixed(0)} mm from the pith${timber.pith === undefined ? ' (assumed)' : ''}, dried from ${SAWN_PCT} %`
}

// What a flat-sawn board has cupped by since it was sawn.
function sawnCup({ timber, record, season, pithMm }: RoughInput): number {
  const radial = coefficientOf(record, 'radial')?.value
  const tangential = coefficientOf(record, 'tangential')?.value
  if (timber.rings !== 'flat' || radial === undefined || tangential === undefined) return 0
  return Math.abs(
    flatSawnCupMm({
      radialPerPct: radial,
      tangentialPerPct: tangential,
      moistureChangePct: Math.min(0, season.moisturePct - SAWN_PCT),
      widthMm: Math.min(10_000, season.acrossMm),
      pithDistanceMm: pithMm
    })
  )
}

// Thickness lost on the way to the moisture it is set at; the greater coefficient counts.
function drying({ record, season, setPct, finishedMm }: RoughInput): number {
  const c = coefficientOf(record, 'tangential')?.value ?? season.coefficientPerPct
  if (c === null || season.moisturePct <= setPct) return 0
  const { centralMm } = crossGrainMovement({
    dimensionMm: finishedMm,
    coefficientPerPct: c,
    fromPct: Math.min(200, season.moisturePct),
    toPct: setPct,
    shrinkageStartPct: record.shrinkageStartPct ?? 30
  })
  return Math.abs(centralMm)
}
