import type { Layer, Profile } from './column-grid.ts'
import { type LayerHistory, type LayerRecorder, layerHistory } from './column-history.ts'
import type { ColumnState } from './column-step.ts'
import { ZERO_CELSIUS_K } from './constant.ts'

/** What one layer came to; the cure fields stand only on resin. */
export type LayerResult = ResinResult | InertResult

export interface InertResult {
  readonly kind: 'inert'
  readonly peakC: number
  readonly final: { readonly temp: Profile }
}

export interface ResinResult {
  readonly kind: 'resin'
  /** Hottest cell of the whole run, °C; when, s; its centre above the layer's inner face, mm. */
  readonly peakC: number
  readonly peakAtS: number
  readonly peakAtMm: number
  /** When the first cell, half the volume and all of it had gelled, s; null if not within the run. */
  readonly firstGelS: number | null
  readonly halfGelS: number | null
  readonly allGelS: number | null
  readonly history: LayerHistory
  /** Profiles at the end, to start the next pour's run with: temperature in °C, and conversion. */
  readonly final: { readonly temp: Profile; readonly conversion: Profile }
}

/** Heat per m² of floor (slab), per radian and metre (cylinder) or per steradian (sphere), J. */
export interface EnergyBalance {
  readonly releasedJ: number
  readonly lostJ: number
  readonly storedJ: number
  /** (released − lost − stored) over the largest of the three; 0 is exact. */
  readonly closure: number
}

export interface ColumnResult {
  /** In the order of the problem's layers. */
  readonly layers: readonly LayerResult[]
  readonly energy: EnergyBalance
  /** When the run ended, s. */
  readonly timeS: number
  readonly steps: number
  readonly rejected: number
}

/** Gathers the result from what the run left behind. */
export function columnResult(run: {
  readonly layers: readonly Layer[]
  readonly state: ColumnState
  readonly recorders: readonly LayerRecorder[]
  readonly startK: Float64Array
  readonly layerPeakK: Float64Array
  readonly timeS: number
  readonly steps: number
  readonly rejected: number
}): ColumnResult {
  const { layers, state, recorders, layerPeakK } = run
  let next = 0
  const results = layers.map((layer, l): LayerResult => {
    const temp = profile(state, l, state.tempK, ZERO_CELSIUS_K)
    if (layer.kind === 'inert')
      return { kind: 'inert', peakC: layerPeakK[l]! - ZERO_CELSIUS_K, final: { temp } }
    const conversion = profile(state, l, state.conversion, 0)
    return resinResult(state, recorders[next++]!, { temp, conversion })
  })
  return {
    layers: results,
    energy: energyBalance(state, run.startK),
    timeS: run.timeS,
    steps: run.steps,
    rejected: run.rejected
  }
}

/** The resin layer of a result, the first if not told which; throws if there is none. */
export function resinOf(result: ColumnResult, nth = 0): ResinResult {
  const resins = result.layers.filter(layer => layer.kind === 'resin')
  const found = resins[nth]
  if (!found) throw new Error(`resin layer ${nth} asked for; the column has ${resins.length}`)
  return found
}

function resinResult(state: ColumnState, recorder: LayerRecorder, final: ResinResult['final']): ResinResult {
  const { centreM, widthM } = state.grid
  const { from, to } = recorder.cells
  const innerM = centreM[from]! - widthM[from]! / 2
  const gel = gelTimes(recorder, state.grid.volume.subarray(from, to))
  return {
    kind: 'resin',
    peakC: recorder.peakK - ZERO_CELSIUS_K,
    peakAtS: recorder.peakAtS,
    peakAtMm: (centreM[recorder.peakCell]! - innerM) * 1000,
    ...gel,
    history: layerHistory(recorder),
    final
  }
}

/** First, half by volume, all. */
function gelTimes(
  recorder: LayerRecorder,
  volume: Float64Array
): Pick<ResinResult, 'firstGelS' | 'halfGelS' | 'allGelS'> {
  const order = Array.from(recorder.gelS, (timeS, i) => ({ timeS, volume: volume[i]! }))
  order.sort((a, b) => a.timeS - b.timeS)
  const half = volume.reduce((sum, v) => sum + v, 0) / 2
  let gelled = 0
  let halfGelS: number | null = null
  for (const cell of order) {
    gelled += cell.volume
    // a hair below one half, so that equal cells split evenly whatever the rounding of the sum
    if (halfGelS === null && gelled >= half * (1 - 1e-12)) halfGelS = cell.timeS
  }
  const known = (s: number | null): number | null => (s !== null && Number.isFinite(s) ? s : null)
  return {
    firstGelS: known(order[0]!.timeS),
    halfGelS: known(halfGelS),
    allGelS: known(order.at(-1)!.timeS)
  }
}

function profile(state: ColumnState, layer: number, values: Float64Array, minus: number): Profile {
  const { firstCell, centreM, widthM } = state.grid
  const from = firstCell[layer]!
  const to = firstCell[layer + 1]!
  const innerM = centreM[from]! - widthM[from]! / 2
  return {
    positionMm: centreM.slice(from, to).map(x => (x - innerM) * 1000),
    // a rounding error beyond 0..1 must not trip the next run's check at the door
    value: values.slice(from, to).map(v => (minus === 0 ? Math.min(1, Math.max(0, v)) : v - minus))
  }
}

function energyBalance(state: ColumnState, startK: Float64Array): EnergyBalance {
  const { cells, capacity, heat, startConversion } = state.grid
  let releasedJ = 0
  let storedJ = 0
  for (let i = 0; i < cells; i++) {
    releasedJ += heat[i]! * (state.conversion[i]! - startConversion[i]!)
    storedJ += capacity[i]! * (state.tempK[i]! - startK[i]!)
  }
  const lostJ = state.lost
  const largest = Math.max(Math.abs(releasedJ), Math.abs(lostJ), Math.abs(storedJ))
  return { releasedJ, lostJ, storedJ, closure: largest > 0 ? (releasedJ - lostJ - storedJ) / largest : 0 }
}
