import type { BoardRecord } from '../../catalogue/board.ts'
import type { StoneRecord } from '../../catalogue/stone.ts'
import type { TimberRecord } from '../../catalogue/timber-record.ts'
import { effectiveMedium } from '../../resin/effective-medium.ts'
import { H_TOP } from '../../resin/slab.ts'
import { conductivityWPerMK, heatCapacityKJPerKgK } from '../../timber/heat.ts'
import type { CastInput, RoomAir } from '../bed.ts'
import { CURED, floorConductance, H_BELOW } from '../bed.ts'
import type { PourCast } from '../cast.ts'
import { FOLLOWED_MIN } from '../cast.ts'
import type { FieldControl, FieldMaterial, FieldProblem } from '../field/field-problem.ts'
import { FULL_FIELD, QUICK_FIELD } from '../field/field-problem.ts'
import { timberDensity } from '../floating.ts'
import type { CellKey, Raster } from './raster.ts'

/** What the cast of a whole mould needs beside that of a column. */
export interface WholeInput extends CastInput {
  readonly stones: readonly (readonly StoneRecord[])[]
  readonly timbers: readonly TimberRecord[]
  readonly walls: BoardRecord
}

/** What is changed against the plan: one corner of a band, or one try of a search. */
export interface Variant {
  /** All rates as recorded, or at an end of each resin's band. */
  readonly rate: 'recorded' | 'fast' | 'slow'
  /** K on the room, and on mixes that stand in it. */
  readonly roomK: number
  /** Factor on the conductivity of the liquid. */
  readonly liquid: number
}

/**
 * A part of the time, s after the first pour: what was poured before `fromS` is taken as cured and as warm as the room.
 * The whole time if not given.
 */
export interface Span {
  readonly fromS?: number
  readonly untilS?: number
}

export const AS_PLANNED: Variant = { rate: 'recorded', roomK: 0, liquid: 1 }

/** Air beside a warm upright face, W/(m²·K): ISO 6946 surface resistance 0.13 m²K/W sideways = 7.7 (read). */
const H_BESIDE = 1 / 0.13
/**
 * A former is wood or foam, wrapped: what it is made of is not asked. Foam board 0.035, softwood 0.13 W/(m·K)
 * (EN ISO 10456, memory): taken nearer to foam, which holds the heat in, the unfavourable end.
 */
const FORMER = { kWmK: 0.06, rhoCpJm3K: 2e5 }
/** Oven-dry timber holds 1.0 of its mass, moist so much more; the wood of a dry room holds 9 % (Wood Handbook, table 4-2). */
const USUAL_MOISTURE_PCT = 9
/** Temperature at which the heat capacity of timber is taken, K: 30 °C, between the room and the peak. */
const TIMBER_K = 303.15

/**
 * The mould of a piece as cells, materials, films and moments: the problem of field/field-problem.ts.
 *
 * Times are s after the first pour. Base and walls are resistances that hold no heat, as in the column, because the
 * classes were fitted so: the unfavourable end. Timber conducts as across its grain.
 *
 * Limits: those of the field; the casting stays in its mould as long as it is followed.
 */
export function wholeProblem(
  input: WholeInput,
  casts: readonly (PourCast | null)[],
  raster: Raster,
  air: RoomAir,
  variant: Variant,
  quick: boolean,
  span: Span = {}
): FieldProblem {
  const { films, ...mould } = mouldOf(input, raster)
  const last = Math.max(...casts.map((c, i) => (isCast(input, i) && c !== null ? c.startMin : 0)))
  const fromS = span.fromS ?? 0
  return {
    ...mould,
    films,
    materials: raster.keys.map(key => materialOf(input, casts, key, variant, air, fromS)),
    ambientC: timeS => air(fromS + timeS) + variant.roomK,
    untilS: (span.untilS ?? (last + FOLLOWED_MIN) * 60) - fromS,
    control: quick ? QUICK_FIELD : FULL_CONTROL
  }
}

/** After the cure a day is long: steps may be too. */
const FULL_CONTROL: FieldControl = { ...FULL_FIELD, longestS: 5400 }

export const isCast = (input: CastInput, index: number): boolean =>
  input.stack.piece.pours[index]!.kind === 'cast'

function mouldOf(
  input: WholeInput,
  raster: Raster
): Pick<FieldProblem, 'nx' | 'ny' | 'dxM' | 'dyM' | 'dzM' | 'cells' | 'films'> {
  const { walls } = input
  return {
    nx: raster.nx,
    ny: raster.ny,
    dxM: raster.dxMm / 1000,
    dyM: raster.dyMm / 1000,
    dzM: raster.levels.dzM,
    cells: raster.cells,
    films: {
      floor: floorConductance(input.board),
      side: 1 / (1 / H_BESIDE + walls.thicknessMm / 1000 / walls.conductivityWmK),
      up: H_TOP,
      down: H_BELOW,
      sideways: H_BESIDE
    }
  }
}

function materialOf(
  input: WholeInput,
  casts: readonly (PourCast | null)[],
  key: CellKey,
  variant: Variant,
  air: RoomAir,
  fromS: number
): FieldMaterial {
  const startC = air(fromS) + variant.roomK
  if (key.kind === 'former') return { kind: 'inert', ...FORMER, startC }
  if (key.kind === 'timber') return { kind: 'inert', ...timberHeat(input, key.index), startC }
  const { record } = input.choices[key.index]!
  const model = record.model!
  const cast = casts[key.index]!
  if (cast.startMin * 60 < fromS) return { kind: 'inert', ...CURED, startC }
  const given = input.stack.piece.pours[key.index]!.startTemperature !== undefined
  const base = {
    kind: 'resin',
    resin: model,
    atS: cast.startMin * 60 - fromS,
    startC: cast.startC + (given ? 0 : variant.roomK),
    rateFactor: input.speeds[key.index]!.factor / pace(record.band.time, variant.rate),
    liquidMultiplier: variant.liquid,
    pour: key.index
  } as const
  if (key.stones === null) return base
  const stone = input.stones[key.index]![key.stones]!
  const entry = input.stack.piece.pours[key.index]!.stones[key.stones]!
  const share = entry.fill ?? (stone.packing[0] + stone.packing[1]) / 2
  const { bulk } = model
  const alone = { kWmK: bulk.kLiquidWmK, rhoCpJm3K: bulk.liquidKgM3 * bulk.cpJkgK }
  const rock = { kWmK: stone.conductivityWmK, rhoCpJm3K: stone.densityKgM3 * stone.heatCapacityJkgK }
  const mixed = effectiveMedium(alone, rock, share)
  return {
    ...base,
    stones: {
      k: mixed.kWmK / alone.kWmK,
      rhoCp: mixed.rhoCpJm3K / alone.rhoCpJm3K,
      share: mixed.heatShare
    }
  }
}

// Times × (1 ± band), so the rate over that.
function pace(band: number, rate: Variant['rate']): number {
  return rate === 'recorded' ? 1 : rate === 'fast' ? 1 - band : 1 + band
}

function timberHeat(input: WholeInput, index: number): { kWmK: number; rhoCpJm3K: number } {
  const moisture = Math.min(25, input.stack.piece.timbers[index]!.moisture ?? USUAL_MOISTURE_PCT)
  const density = timberDensity(input.timbers[index]!, moisture)
  // oven-dry mass over the volume at this moisture
  const gravity = density / 1000 / (1 + moisture / 100)
  return {
    kWmK: conductivityWPerMK(gravity, moisture),
    rhoCpJm3K: density * heatCapacityKJPerKgK(TIMBER_K, moisture) * 1000
  }
}
