import { type ColumnControl, type ColumnProblem, FULL, type Outside, QUICK, runColumn } from './column.ts'
import type { InertLayer } from './column-grid.ts'
import { type ColumnResult, type ResinResult, resinOf } from './column-result.ts'
import { filmGelS } from './gel.ts'
import type { ResinModel } from './model.ts'

/** What a pour lies on: layers from below up, at room temperature, and the air under them. */
export interface Bed {
  readonly layers: readonly Omit<InertLayer, 'startC'>[]
  /** Film coefficient under the lowest layer, W/(m²·K). */
  readonly hFloorWm2K: number
}

/**
 * A melamine-faced or plain board of 18 mm with air beneath.
 * k 0.12 W/(m·K), ρ·cp 1.19 MJ/(m³·K): memory, between softwood 0.13 (EN ISO 10077-2, read) and MDF of
 * 600-800 kg/m³ 0.14-0.18 (EN ISO 10456, memory). Air below a warm face 5.9 W/(m²·K): ISO 6946, 0.17 m²K/W (read).
 */
export const BOARD_18: Bed = {
  layers: [{ kind: 'inert', thicknessMm: 18, kWmK: 0.12, rhoCpJm3K: 1.19e6 }],
  hFloorWm2K: 6
}

/** Still air above a warm face with radiation, W/(m²·K): computed 9.2-12.7 for 5-40 K; ISO 6946 0.10 m²K/W = 10 (read). */
export const H_TOP = 9

/**
 * A wide pour of even depth on a bed, as a column.
 *
 * Limits: those of column.ts. The heat capacity of the bed counts: 18 mm of board under 10 mm of a medium
 * resin takes 13 K off the peak against the same board without it.
 */
export interface SlabPour {
  readonly resin: ResinModel
  readonly depthMm: number
  readonly bed: Bed
  readonly roomC: number
  /** Course of the air's temperature above and below, °C over the run's time in s; `roomC` if not given. */
  readonly airC?: Outside
  /** Temperature of the mix when poured; the room's if not given. */
  readonly startC?: number
  readonly startConversion?: number
  /** Film coefficient above, W/(m²·K); {@link H_TOP} if not given. */
  readonly hTopWm2K?: number
  readonly rateFactor?: number
  readonly kLiquidMultiplier?: number
}

/** `quick` takes fewer cells and looser steps, for bands and searches: within about 0.5 K. */
export type Effort = 'full' | 'quick'

const CELLS: Readonly<Record<Effort, { readonly resin: number; readonly bed: number }>> = {
  full: { resin: 40, bed: 12 },
  quick: { resin: 12, bed: 4 }
}
const CONTROL: Readonly<Record<Effort, ColumnControl>> = { full: FULL, quick: QUICK }

/** Layers up to here are even in temperature (Biot 9·0.002/0.2 = 0.09 at the face), and need few cells. */
export const FILM_MM = 2
export const FILM_CELLS = 6

/** The column of a pour. */
export function slabColumn(pour: SlabPour, untilS: number, effort: Effort = 'full'): ColumnProblem {
  const { resin, depthMm, bed, roomC } = pour
  const ambientC = pour.airC ?? roomC
  const cells = CELLS[effort]
  return {
    shape: 'slab',
    layers: [
      ...bed.layers.map(layer => ({ cells: cells.bed, ...layer, startC: roomC })),
      {
        kind: 'resin',
        thicknessMm: depthMm,
        cells: depthMm <= FILM_MM ? FILM_CELLS : cells.resin,
        resin,
        startC: pour.startC ?? roomC,
        startConversion: pour.startConversion ?? 0,
        rateFactor: pour.rateFactor ?? 1,
        kLiquidMultiplier: pour.kLiquidMultiplier ?? 1
      }
    ],
    floor: { kind: 'convective', hWm2K: bed.hFloorWm2K, ambientC },
    top: { kind: 'convective', hWm2K: pour.hTopWm2K ?? H_TOP, ambientC },
    untilS,
    control: CONTROL[effort]
  }
}

/** Runs a pour and gives its resin layer with the whole column's result. */
export function runSlab(
  pour: SlabPour,
  untilS: number,
  effort: Effort = 'full'
): { readonly resin: ResinResult; readonly column: ColumnResult } {
  const column = runColumn(slabColumn(pour, untilS, effort))
  return { resin: resinOf(column), column }
}

/**
 * Length of a run that is sure to hold the peak, s: three times the thin film's gel time at the colder
 * of room and mix, at most 60 days. Heat only brings the peak forward.
 */
export function peakHorizonS(pour: Pick<SlabPour, 'resin' | 'roomC' | 'startC' | 'rateFactor'>): number {
  const coldest = Math.min(pour.roomC, pour.startC ?? pour.roomC)
  const gelS = filmGelS(pour.resin.kinetics, coldest) / (pour.rateFactor ?? 1)
  return Math.min(60 * 86_400, 3 * gelS)
}
