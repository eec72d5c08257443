import type { ColumnGrid, Reacting } from './column-grid.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { glassTransitionC } from './glass.ts'
import type { ResinModel } from './model.ts'
import { viscosityPaS } from './thickening.ts'

/**
 * What happened in one resin layer, sampled: every array has `timeS.length` entries, index = sample.
 * Samples are the solver's own steps, thinned evenly to at most `MOST_SAMPLES`; straight lines between
 * them are good, because the steps themselves shorten where something happens.
 */
export interface LayerHistory {
  readonly timeS: Float64Array
  /** Mean over the layer's volume, hottest cell, inner face (floor, centre) and outer face (top), °C. */
  readonly meanC: Float64Array
  readonly maxC: Float64Array
  readonly innerC: Float64Array
  readonly outerC: Float64Array
  /** Conversion: mean, least cell, outermost cell. */
  readonly meanConversion: Float64Array
  readonly leastConversion: Float64Array
  readonly outerConversion: Float64Array
  /** Viscosity at the mean temperature and mean conversion, Pa·s, at most `MOST_PAS`. */
  readonly meanViscosityPaS: Float64Array
  /** Glass transition at the mean conversion and at the outermost cell, °C. */
  readonly meanTgC: Float64Array
  readonly outerTgC: Float64Array
}

export const MOST_SAMPLES = 400
/** Stands for "no longer flows" in a history, so that no sample is infinite. */
const MOST_PAS = 1e9

const FIELDS = 8

/** Collects the samples of one resin layer during a run; memory is taken once. */
export interface LayerRecorder {
  readonly cells: Reacting
  readonly resin: ResinModel
  /** MOST_SAMPLES rows of FIELDS numbers. */
  readonly rows: Float64Array
  count: number
  stride: number
  peakK: number
  peakAtS: number
  peakCell: number
  /** Time at which each cell of the layer gelled, s; Infinity until it has. */
  readonly gelS: Float64Array
}

export function layerRecorder(grid: ColumnGrid, cells: Reacting, resin: ResinModel): LayerRecorder {
  const gelS = new Float64Array(cells.to - cells.from).fill(Number.POSITIVE_INFINITY)
  for (let i = cells.from; i < cells.to; i++)
    if (grid.startConversion[i]! >= resin.kinetics.gelConversion) gelS[i - cells.from] = 0
  return {
    cells,
    resin,
    rows: new Float64Array(MOST_SAMPLES * FIELDS),
    count: 0,
    stride: 1,
    peakK: -1,
    peakAtS: 0,
    peakCell: cells.from,
    gelS
  }
}

/** After each accepted step: the peak and the cells that gelled between `fromS` and `toS`. */
export function watch(
  recorder: LayerRecorder,
  fromS: number,
  toS: number,
  tempK: Float64Array,
  before: Float64Array,
  now: Float64Array
): void {
  const { cells, gelS, resin } = recorder
  const { from, to } = cells
  const gel = resin.kinetics.gelConversion
  for (let i = from; i < to; i++) {
    if (tempK[i]! > recorder.peakK) {
      recorder.peakK = tempK[i]!
      recorder.peakAtS = toS
      recorder.peakCell = i
    }
    if (now[i]! >= gel && before[i]! < gel && gelS[i - from] === Number.POSITIVE_INFINITY)
      gelS[i - from] = fromS + ((toS - fromS) * (gel - before[i]!)) / (now[i]! - before[i]!)
  }
}

/** Writes one sample: every `stride`-th step, and always when `last`. */
export function sample(
  recorder: LayerRecorder,
  grid: ColumnGrid,
  step: number,
  last: boolean,
  timeS: number,
  tempK: Float64Array,
  conversion: Float64Array,
  innerK: number,
  outerK: number
): void {
  if (!last && step % recorder.stride !== 0) return
  const { rows } = recorder
  if (!last && recorder.count === MOST_SAMPLES - 1) {
    // full but for the last sample: drop every other one and go on at half the density
    recorder.count = (recorder.count + 1) >> 1
    recorder.stride *= 2
    for (let k = 1; k < recorder.count; k++)
      rows.copyWithin(k * FIELDS, 2 * k * FIELDS, 2 * k * FIELDS + FIELDS)
    if (step % recorder.stride !== 0) return
  }
  const { from, to } = recorder.cells
  const { volume } = grid
  let sum = 0
  let heat = 0
  let cured = 0
  let hottest = 0
  let least = 2
  for (let i = from; i < to; i++) {
    const v = volume[i]!
    const k = tempK[i]!
    const a = conversion[i]!
    sum += v
    heat += v * k
    cured += v * a
    if (k > hottest) hottest = k
    if (a < least) least = a
  }
  const row = recorder.count++ * FIELDS
  rows[row] = timeS
  rows[row + 1] = heat / sum - ZERO_CELSIUS_K
  rows[row + 2] = hottest - ZERO_CELSIUS_K
  rows[row + 3] = innerK - ZERO_CELSIUS_K
  rows[row + 4] = outerK - ZERO_CELSIUS_K
  rows[row + 5] = cured / sum
  rows[row + 6] = least
  rows[row + 7] = conversion[to - 1]!
}

/** The samples as arrays, with viscosity and glass transition worked out from them. */
export function layerHistory({ rows, count, resin }: LayerRecorder): LayerHistory {
  return historyFrom(resin, count, (k, field) => rows[k * FIELDS + field]!)
}

/**
 * A history from its samples, whoever took them. Fields of a sample: s; mean, hottest, inner and outer temperature, °C;
 * mean, least and outer conversion.
 */
export function historyFrom(
  { kinetics, flow }: ResinModel,
  count: number,
  at: (sample: number, field: number) => number
): LayerHistory {
  const column = (field: number): Float64Array => Float64Array.from({ length: count }, (_, k) => at(k, field))
  const meanC = column(1)
  const meanConversion = column(5)
  const outerConversion = column(7)
  return {
    timeS: column(0),
    meanC,
    maxC: column(2),
    innerC: column(3),
    outerC: column(4),
    meanConversion,
    leastConversion: column(6),
    outerConversion,
    meanViscosityPaS: meanC.map((c, k) =>
      Math.min(MOST_PAS, viscosityPaS(flow, kinetics.gelConversion, c, meanConversion[k]!))
    ),
    meanTgC: meanConversion.map(a => glassTransitionC(kinetics, a)),
    outerTgC: outerConversion.map(a => glassTransitionC(kinetics, a))
  }
}
