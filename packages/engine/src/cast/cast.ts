import type { BoardRecord } from '../catalogue/board.ts'
import type { ResinRecord } from '../catalogue/resin.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { dailyTemperature } from '../resin/ambient.ts'
import type { PourBand } from '../resin/bands.ts'
import { pourBand } from '../resin/bands.ts'
import { FULL, QUICK, runColumn } from '../resin/column.ts'
import type { InertLayer, Layer, Profile, ResinLayer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import type { SlabPour } from '../resin/slab.ts'
import { H_TOP } from '../resin/slab.ts'
import type { Stack } from '../stack/stack.ts'
import type { Materials } from './facts.ts'
import type { Speed } from './speed.ts'
import type { Curve, Windows } from './windows.ts'
import { curveOf, windowsOf } from './windows.ts'

/** How one pour cures and heats. Times are minutes since it was poured. */
export interface PourCast {
  readonly index: number
  /** When it is poured, min after the first pour. */
  readonly startMin: number
  /** Temperature of the mix when poured, °C. */
  readonly startC: number
  readonly peakC: number
  readonly peakBandC: readonly [number, number]
  readonly peakMin: number
  /** Height of the hottest place over the floor of the pour, mm. */
  readonly peakAtMm: number
  readonly runaway: boolean
  readonly windows: Windows
  readonly curve: Curve
  /** Which unsure input moves the peak most: what a reading would settle first. */
  readonly mostFrom: PourBand['mostFrom']
}

/** What the cast needs beside the stack. */
export interface CastInput {
  readonly stack: Stack
  readonly choices: readonly ResinChoice[]
  readonly speeds: readonly Speed[]
  readonly board: BoardRecord
  readonly shop: Shop
  readonly effort: 'preview' | 'full'
}

/** Air below a warm face, W/(m²·K): ISO 6946 surface resistance 0.17 m²K/W downwards = 5.9 (read). */
const H_BELOW = 6

/**
 * What leads heat away below, W/(m²·K): air and board in series, U = 1/(1/6 + d/k).
 *
 * The board is taken as a resistance that holds no heat, because the classes were fitted so: with the heat
 * of an 18 mm board counted, a peak near the edge comes out 5 to 50 K lower. This is the unfavourable end.
 */
function floorConductance(board: BoardRecord): number {
  return 1 / (1 / H_BELOW + board.thicknessMm / 1000 / board.conductivityWmK)
}

/** How long a pour is followed, min: seven days, after which the class no longer changes by more than the band. */
const FOLLOWED_MIN = 7 * 24 * 60

interface Running {
  readonly layers: Layer[]
  readonly pours: number[]
}

/**
 * The pours into the mould one after the other, each on what lies below it: board, earlier pours still
 * curing. Pours of families that are not predicted, and layers outside the mould, give null.
 *
 * The room follows a day from its coldest to its warmest; pours start at nine in the morning unless the
 * document says when. A pour waits for the recoat window of the one below unless the document says how long.
 *
 * Band: the eight corners of {@link pourBand} on the same bed, taken as offsets from their own centre.
 *
 * Limits: one direction, at the deepest place: what the sides and timber islands take is left out, so a
 * narrow river runs cooler than this says. The 3-D cast replaces it for full plans.
 */
export function castOf(input: CastInput): readonly (PourCast | null)[] {
  const { stack, choices, shop } = input
  const out: (PourCast | null)[] = stack.piece.pours.map(() => null)
  const { night, day } = shop.climate
  const mean = (night + day) / 2
  const air = dailyTemperature({ meanC: mean, swingC: Math.max(0, (day - night) / 2), startHour: 9 })
  let running: Running | null = null
  let clockMin = 0
  let before: PourCast | null = null
  for (const step of stack.steps) {
    if (step.kind !== 'pour') continue
    const { index, value } = step.pour!
    const model = choices[index]!.record.model
    const pour = stack.pours[index]!
    if (model === null || pour.liquidDepth < 0.05) {
      before = null
      continue
    }
    if (value.kind !== 'cast') {
      out[index] = single(input, index, air)
      continue
    }
    const wait: number = before === null ? 0 : (value.after ?? before.windows.recoat.open)
    if (running !== null && wait > 0) running = advance(running, wait, clockMin, air, input)
    clockMin += wait
    const startC = value.startTemperature ?? air(clockMin * 60)
    const fresh: ResinLayer = {
      kind: 'resin',
      thicknessMm: pour.liquidDepth,
      resin: model,
      startC,
      rateFactor: input.speeds[index]!.factor,
      cells: input.effort === 'full' ? 40 : 20
    }
    const below: Layer[] = running?.layers ?? []
    const layers = [...below, fresh]
    const result = run(layers, FOLLOWED_MIN, clockMin, air, input)
    const own = result.layers[result.layers.length - 1] as ResinResult
    const band = bandOf(input, index, below, startC)
    before = pourCast(input, index, clockMin, startC, own, band)
    out[index] = before
    running = { layers, pours: [...(running?.pours ?? []), index] }
  }
  return out
}

/** A layer on its own: a flood on the finished body, a seal, an inlay. It lies on timber or cured resin. */
function single(input: CastInput, index: number, air: (s: number) => number): PourCast {
  const model = input.choices[index]!.record.model!
  const pour = input.stack.pours[index]!
  const startC = input.stack.piece.pours[index]!.startTemperature ?? air(0)
  const body: InertLayer = {
    kind: 'inert',
    thicknessMm: Math.max(5, input.stack.finishedHigh - input.stack.finishedLow),
    cells: 10,
    ...CURED,
    startC: air(0)
  }
  const fresh: ResinLayer = {
    kind: 'resin',
    thicknessMm: pour.liquidDepth,
    resin: model,
    startC,
    rateFactor: input.speeds[index]!.factor,
    cells: 20
  }
  const own = run([body, fresh], FOLLOWED_MIN, 0, air, input).layers[1] as ResinResult
  return pourCast(input, index, 0, startC, own, bandOf(input, index, [body], startC))
}

/** Cured resin: k 0.21 W/(m·K) (0.19-0.23, Crawford, table 1.8: 0.23 read), 1157 kg/m³ × 1800 J/(kg·K). */
const CURED = { kWmK: 0.21, rhoCpJm3K: 1157 * 1800 }

function run(
  layers: readonly Layer[],
  forMin: number,
  clockMin: number,
  air: (s: number) => number,
  input: CastInput
) {
  const ambientC = (s: number) => air(clockMin * 60 + s)
  return runColumn({
    shape: 'slab',
    layers,
    floor: { kind: 'convective', hWm2K: floorConductance(input.board), ambientC },
    top: { kind: 'convective', hWm2K: H_TOP, ambientC },
    untilS: forMin * 60,
    control: input.effort === 'full' ? FULL : QUICK
  })
}

// Lets what is in the mould go on curing until the next pour, and hands its profiles on.
function advance(
  running: Running,
  waitMin: number,
  clockMin: number,
  air: (s: number) => number,
  input: CastInput
): Running {
  const result = run(running.layers, waitMin, clockMin, air, input)
  const layers = running.layers.map((layer, k): Layer => {
    const done = result.layers[k]!
    return layer.kind === 'resin' && done.kind === 'resin'
      ? { ...layer, startC: done.final.temp, startConversion: done.final.conversion }
      : { ...layer, startC: done.final.temp as Profile }
  })
  return { layers, pours: running.pours }
}

/** A pour as the band and the search for a depth take it: one column on its bed, with the doubts of its class. */
export interface PourOnBed {
  readonly pour: SlabPour
  readonly band: ResinRecord['band']
  readonly doubtK: number
}

/** The pour of a planned piece on its bed; null for a family that is not predicted. */
export function bedOf(
  input: {
    readonly stack: Stack
    readonly materials: Pick<Materials, 'resins' | 'base'>
    readonly speeds: readonly Speed[]
    readonly casts: readonly (PourCast | null)[]
    readonly shop: Shop
  },
  index: number
): PourOnBed | null {
  const { stack, materials, speeds, casts, shop } = input
  const choice = materials.resins[index]!
  const cast = casts[index]
  if (choice.record.model === null || !cast) return null
  const before = stack.pours
    .slice(0, index)
    .filter((p, k) => stack.piece.pours[k]!.kind === 'cast' && p.liquidDepth > 0)
  const cured =
    stack.piece.pours[index]!.kind === 'cast'
      ? before.map(p => p.depth)
      : [Math.max(5, stack.finishedHigh - stack.finishedLow)]
  return {
    pour: {
      resin: choice.record.model,
      depthMm: stack.pours[index]!.liquidDepth,
      bed: {
        layers: cured.map(thicknessMm => ({ kind: 'inert', thicknessMm, cells: 6, ...CURED })),
        hFloorWm2K: floorConductance(materials.base)
      },
      roomC: (shop.climate.night + shop.climate.day) / 2,
      startC: cast.startC,
      rateFactor: speeds[index]!.factor
    },
    band: choice.record.band,
    doubtK: shop.climate.doubt
  }
}

function bandOf(input: CastInput, index: number, below: readonly Layer[], startC: number): PourBand {
  const { stack, choices, shop } = input
  const choice = choices[index]!
  const { night, day, doubt } = shop.climate
  return pourBand({
    pour: {
      resin: choice.record.model!,
      depthMm: stack.pours[index]!.liquidDepth,
      bed: { layers: below.map(inert), hFloorWm2K: floorConductance(input.board) },
      roomC: (night + day) / 2,
      startC,
      rateFactor: input.speeds[index]!.factor
    },
    band: choice.record.band,
    roomBandK: doubt
  })
}

function inert(layer: Layer): Omit<InertLayer, 'startC'> {
  return layer.kind === 'inert'
    ? {
        kind: 'inert',
        thicknessMm: layer.thicknessMm,
        cells: 6,
        kWmK: layer.kWmK,
        rhoCpJm3K: layer.rhoCpJm3K
      }
    : { kind: 'inert', thicknessMm: layer.thicknessMm, cells: 6, ...CURED }
}

function pourCast(
  input: CastInput,
  index: number,
  startMin: number,
  startC: number,
  own: ResinResult,
  band: PourBand
): PourCast {
  const choice = input.choices[index]!
  const low = own.peakC + (band.peakC.low - band.peakC.central)
  const high = own.peakC + (band.peakC.high - band.peakC.central)
  return {
    index,
    startMin,
    startC,
    peakC: own.peakC,
    peakBandC: [Math.max(Math.min(startC, own.peakC), low), Math.max(own.peakC, high)],
    peakMin: own.peakAtS / 60,
    peakAtMm: own.peakAtMm,
    runaway: own.peakC > 150,
    windows: windowsOf(choice.record, own),
    curve: curveOf(own),
    mostFrom: band.mostFrom
  }
}
