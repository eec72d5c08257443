import type { BoardRecord } from '../catalogue/board.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { dailyTemperature } from '../resin/ambient.ts'
import type { BandInput } from '../resin/bands.ts'
import { FULL, QUICK, runColumn } from '../resin/column.ts'
import type { InertLayer, Layer, Profile, ResinLayer } from '../resin/column-grid.ts'
import type { ColumnResult } from '../resin/column-result.ts'
import { FILM_CELLS, FILM_MM, H_TOP } from '../resin/slab.ts'
import type { Stack } from '../stack/stack.ts'
import type { Speed } from './speed.ts'

/** What the cast needs beside the stack. */
export interface CastInput {
  readonly stack: Stack
  readonly choices: readonly ResinChoice[]
  readonly speeds: readonly Speed[]
  readonly board: BoardRecord
  readonly shop: Shop
  readonly effort: 'preview' | 'full'
}

/** Temperature of the room, °C, by seconds since nine in the morning. */
export type RoomAir = (timeS: number) => number

/** Cured resin: k 0.21 W/(m·K) (0.19-0.23, Crawford, table 1.8: 0.23 read), 1157 kg/m³ × 1800 J/(kg·K). */
export const CURED = { kWmK: 0.21, rhoCpJm3K: 1157 * 1800 }

/** Air below a warm face, W/(m²·K): ISO 6946 surface resistance 0.17 m²K/W downwards = 5.9 (read). */
export const H_BELOW = 6

/**
 * What leads heat away below, W/(m²·K): air and board in series, U = 1/(1/6 + d/k).
 *
 * The board is taken as a resistance that holds no heat, because the classes were fitted so: with the heat
 * of an 18 mm board counted, a peak near the edge comes out 5 to 50 K lower. This is the unfavourable end.
 */
export function floorConductance(board: BoardRecord): number {
  return 1 / (1 / H_BELOW + board.thicknessMm / 1000 / board.conductivityWmK)
}

/** The room over the day, from nine in the morning, when the first pour is made; warmest at three. */
export function airOf(shop: Shop): RoomAir {
  const { night, day } = shop.climate
  return dailyTemperature({
    meanC: (night + day) / 2,
    swingC: Math.max(0, (day - night) / 2),
    startHour: 9
  })
}

/** A pour as it goes in, of a family that is predicted. */
export function freshLayer(input: CastInput, index: number, depthMm: number, startC: number): ResinLayer {
  return {
    kind: 'resin',
    thicknessMm: depthMm,
    resin: input.choices[index]!.record.model!,
    startC,
    rateFactor: input.speeds[index]!.factor,
    cells: cellsOf(input, index, depthMm)
  }
}

// A film has one temperature throughout: its Biot number stays under 0.1 up to 2 mm.
function cellsOf(input: CastInput, index: number, depthMm: number): number {
  if (depthMm <= FILM_MM) return FILM_CELLS
  return input.effort === 'full' && input.stack.piece.pours[index]!.kind === 'cast' ? 40 : 16
}

/** The finished body under a flood or inlay: timber and cured resin, taken as resin. */
export function bodyLayer(stack: Stack, air: RoomAir): InertLayer {
  return {
    kind: 'inert',
    thicknessMm: Math.max(5, stack.finishedHigh - stack.finishedLow),
    cells: 10,
    ...CURED,
    startC: air(0)
  }
}

/** Runs the layers on the mould's base, from `clockMin` after the first pour on; ends early where resin passes `stopAboveC`. */
export function runBed(
  input: CastInput,
  layers: readonly Layer[],
  forMin: number,
  clockMin: number,
  air: RoomAir,
  stopAboveC?: number
): ColumnResult {
  const ambientC = (s: number) => air(clockMin * 60 + s)
  return runColumn({
    shape: 'slab',
    layers,
    floor: { kind: 'convective', hWm2K: floorConductance(input.board), ambientC },
    top: { kind: 'convective', hWm2K: H_TOP, ambientC },
    untilS: forMin * 60,
    control: input.effort === 'full' ? FULL : QUICK,
    ...(stopAboveC === undefined ? {} : { stopAboveC })
  })
}

/** The same layers after a wait: cured further, at the temperatures they have come to. */
export function advance(
  input: CastInput,
  layers: readonly Layer[],
  waitMin: number,
  clockMin: number,
  air: RoomAir
): readonly Layer[] {
  if (layers.length === 0 || waitMin <= 0) return layers
  const result = runBed(input, layers, waitMin, clockMin, air)
  return layers.map((layer, k): Layer => {
    const done = result.layers[k]!
    return layer.kind === 'resin' && done.kind === 'resin'
      ? { ...layer, startC: done.final.temp, startConversion: done.final.conversion }
      : { ...layer, startC: done.final.temp as Profile }
  })
}

/** A pour on its bed as the band takes it: an even room, what lies below as cured resin. */
export function bandInput(
  input: CastInput,
  index: number,
  below: readonly Layer[],
  startC: number,
  depthMm: number
): BandInput {
  const { record } = input.choices[index]!
  const { night, day, doubt } = input.shop.climate
  return {
    pour: {
      resin: record.model!,
      depthMm,
      bed: { layers: below.map(inert), hFloorWm2K: floorConductance(input.board) },
      roomC: (night + day) / 2,
      startC,
      rateFactor: input.speeds[index]!.factor
    },
    band: record.band,
    roomBandK: doubt,
    corners: input.effort === 'full' ? 'all' : 'ends'
  }
}

function inert({ thicknessMm, ...layer }: Layer): Omit<InertLayer, 'startC'> {
  const matter = layer.kind === 'inert' ? { kWmK: layer.kWmK, rhoCpJm3K: layer.rhoCpJm3K } : CURED
  return { kind: 'inert', thicknessMm, cells: 4, ...matter }
}
