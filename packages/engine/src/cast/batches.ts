import { mixingOf } from '../catalogue/mixing.ts'
import type { Pour } from '../piece/piece-schema.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Batches, BatchRequest, NoBatches } from '../resin/batch.ts'
import { MOST_RATIO_ERROR, splitBatches, standingOf, USABLE_FILL } from '../resin/batch.ts'
import { cupHistory } from '../resin/cup.ts'
import { leastBatchG } from '../resin/stoichiometry.ts'
import type { PourStack } from '../stack/stack.ts'
import type { TintPigment } from './facts.ts'
import type { Speed } from './speed.ts'

/** Batches of one pour. */
export interface PourBatches {
  /** Mass that goes into the mould, and mass mixed: what stays in the vessels is added, g. */
  readonly pouredG: number
  readonly mixedG: number
  readonly split: Batches | NoBatches
  /** What the maker fixed (vessel, number, minutes), if anything, and whether it stands. */
  readonly wanted: WantedBatches | null
  /** How it is mixed; null when it cannot be split. */
  readonly mixed: MixedBatches | null
}

/** How a pour is mixed: what the plan, its sheets, its cost and its days all go by. Times in min. */
export interface MixedBatches {
  readonly count: number
  readonly batchG: number
  readonly vesselMl: number
  /** From the first stir until a batch is out of its vessel. */
  readonly standingMin: number
  /** By when a batch must be out of its vessel; null when that is not predicted. */
  readonly allowedMin: number | null
  /** Whether the maker fixed number or minutes; else the plan split it. */
  readonly chosen: boolean
}

/** Batches as the maker wants them. Times in min. */
export interface WantedBatches {
  readonly count: number
  readonly batchG: number
  readonly vesselMl: number
  readonly standingMin: number
  /** By when a batch must be out of its vessel; null when it does not set within 72 h. */
  readonly allowedMin: number | null
  /** How hot it gets when it is left in its vessel, °C; null when not predicted. */
  readonly peakC: number | null
  /** Whether a batch goes into its vessel at all. */
  readonly fits: boolean
}

/** Pouring out takes about two minutes a kilogram (common practice for a steady stream). */
export const POUR_MIN_PER_KG = 2

/** Brushing on a seal coat: min, and min a square metre of what it covers (common practice, no source). */
export const BRUSH_MIN = { each: 5, perM2: 30 } as const

/** A pour of less than a hundredth of a gram is nothing, g: no scale of the trade shows it. */
const NOTHING_G = 0.01

/** Pouring into one blank takes at least so long, min (common practice, no source). */
export const POUR_MIN_A_BLANK = 1

/**
 * Splits a pour into batches that are out of their vessels in time; `blanks`: into so many it is poured. null for a pour
 * of nothing.
 */
export function batchesOf(
  pour: Pour,
  stack: PourStack,
  choice: ResinChoice,
  tint: readonly TintPigment[],
  speed: Speed,
  shop: Shop,
  blanks = 1
): PourBatches | null {
  if (!(stack.massG >= NOTHING_G)) return null
  const request = requestOf(pour, stack, choice, tint, speed, shop, blanks)
  const asked = pour.batches !== undefined || pour.minutes !== undefined || pour.vessel !== undefined
  const split = splitBatches(request)
  const wanted = asked ? batchesAs(request, choice, pour.batches ?? 1, pour.minutes) : null
  const mixed = mixedAs(pour, split, wanted)
  return { pouredG: stack.massG, mixedG: request.totalG, split, wanted, mixed }
}

// The maker's number, else one batch when the minutes given are of one that fits, else the plan's split.
function mixedAs(pour: Pour, split: Batches | NoBatches, wanted: WantedBatches | null): MixedBatches | null {
  if (wanted !== null && (pour.batches !== undefined || (pour.minutes !== undefined && wanted.fits)))
    return mixedIn(wanted, wanted.vesselMl, true)
  if (split.possible) return mixedIn(split, split.vessel.capacityMl, false)
  return wanted === null ? null : mixedIn(wanted, wanted.vesselMl, false)
}

function mixedIn(batches: Batches | WantedBatches, vesselMl: number, chosen: boolean): MixedBatches {
  const { count, batchG, standingMin, allowedMin } = batches
  return { count, batchG, vesselMl, standingMin, allowedMin, chosen }
}

/** What the split of a pour starts from. */
export function requestOf(
  pour: Pour,
  stack: PourStack,
  choice: ResinChoice,
  tint: readonly TintPigment[],
  speed: Speed,
  shop: Shop,
  blanks = 1
): BatchRequest {
  const roomC = (shop.climate.night + shop.climate.day) / 2
  const vessels = shop.vessels.map(v => ({ diameterMm: v.diameter, capacityMl: v.capacity }))
  const totalG = Math.max(pour.mixed ?? 0, stack.massG / (1 - shop.leftover / 100))
  return {
    totalG,
    mix: choice.mix,
    tint: tint.map(t => ({ name: t.pigment.id, massFraction: t.share })),
    vessels: pour.vessel === undefined ? vessels : [vesselOf(pour.vessel, vessels)],
    scaleResolutionG: shop.scale.resolution,
    resin: choice.record.model === null ? null : fast(choice.record.model, speed.factor),
    roomC,
    startC: pour.startTemperature ?? roomC,
    mixMin: mixingOf(pour.mixing).minutes,
    pourMinPerKg:
      blanks === 1 ? POUR_MIN_PER_KG : Math.max(POUR_MIN_PER_KG, (1000 * POUR_MIN_A_BLANK * blanks) / totalG),
    ...(pour.kind === 'seal' && { brushMin: brushMin(stack, blanks) })
  }
}

// A seal coat stands in its vessel while it is brushed on, each batch over its share of the timber. Whole minutes, up.
function brushMin(stack: PourStack, blanks: number): number {
  return Math.ceil(blanks * BRUSH_MIN.each + (BRUSH_MIN.perM2 * stack.surfaceMm2) / 1e6)
}

// A faster or slower resin of the same class: both rate constants scaled.
function fast(
  model: NonNullable<ResinChoice['record']['model']>,
  factor: number
): NonNullable<ResinChoice['record']['model']> {
  return factor === 1
    ? model
    : { ...model, kinetics: { ...model.kinetics, k2At25PerS: model.kinetics.k2At25PerS * factor } }
}

function vesselOf(capacityMl: number, known: BatchRequest['vessels']): BatchRequest['vessels'][number] {
  const same = known.find(v => Math.abs(v.capacityMl - capacityMl) < 1)
  // A bucket about as wide as it is high.
  return same ?? { capacityMl, diameterMm: Math.cbrt((4 * capacityMl * 1000) / Math.PI) }
}

/** How a number of batches stands; `minutes` from the first stir until out, reckoned when left out. */
export function batchesAs(
  request: BatchRequest,
  choice: ResinChoice,
  count: number,
  minutes?: number
): WantedBatches {
  const batchG = request.totalG / count
  const ml = batchG / choice.densityGMl
  const sorted = [...request.vessels].sort((a, b) => a.capacityMl - b.capacityMl)
  const vessel = sorted.find(v => v.capacityMl * USABLE_FILL >= ml) ?? sorted[sorted.length - 1]!
  const fits = vessel.capacityMl * USABLE_FILL >= ml * (1 - 1e-9)
  const standingMin = minutes ?? standingOf(request, batchG)
  const roomy = fits
    ? vessel
    : { capacityMl: ml / USABLE_FILL, diameterMm: Math.cbrt((4 * ml * 1000) / Math.PI) }
  const cup =
    request.resin === null
      ? null
      : cupHistory({
          resin: request.resin,
          massG: batchG,
          vessel: roomy,
          roomC: request.roomC,
          startC: request.startC ?? request.roomC,
          effort: 'quick'
        })
  return {
    count,
    batchG,
    vesselMl: vessel.capacityMl,
    standingMin,
    allowedMin: cup === null ? null : cup.minutesOut,
    peakC: cup === null ? null : cup.peakC,
    fits
  }
}

/** Least batch the scale weighs within 5 % of ratio, tint included, g. */
export function leastWeighedG(choice: ResinChoice, tint: readonly TintPigment[], shop: Shop): number {
  const share = tint.reduce((sum, t) => sum + t.share, 0)
  return leastBatchG(choice.mix, shop.scale.resolution, MOST_RATIO_ERROR) / (1 - share)
}
