import { inRange } from '../quantity/range.ts'
import { type ColumnGrid, columnGrid, type Layer, type ResinLayer, type Shape } from './column-grid.ts'
import { type LayerRecorder, layerRecorder, sample, watch } from './column-history.ts'
import { type ColumnResult, columnResult } from './column-result.ts'
import { type ColumnState, columnState, conductances, tryStep } from './column-step.ts'
import { ZERO_CELSIUS_K } from './constant.ts'

/** A temperature in °C, constant or as a function of the run's time in s. */
export type Outside = number | ((timeS: number) => number)

/** What lies beyond an outer face. */
export type Boundary =
  | { readonly kind: 'insulated' }
  | { readonly kind: 'fixed'; readonly tempC: Outside }
  | { readonly kind: 'convective'; readonly hWm2K: number; readonly ambientC: Outside }

/**
 * Heat and cure in one direction through layers of resin, board and timber.
 *
 *   ρ·cp·∂T/∂t = 1/r^j·∂/∂r(r^j·k·∂T/∂r) + ρ·H·∂α/∂t        ∂α/∂t = cure rate (cure.ts)
 *
 *   j = 0 slab (r is height above the floor), 1 cylinder, 2 sphere (r is radius; no floor: insulated there)
 *   k = kLiquid + kSlope·α, times a multiplier while the resin is liquid; ρ·cp constant
 *
 * Finite volumes with faces on the layers' edges, second order in space; ROS2 in time (column-step.ts),
 * second order, steps controlled and rejected by an embedded error.
 *
 * Sources: heat equation and boundary conditions, Carslaw & Jaeger, Conduction of Heat in Solids; checks
 * against series, exact criticality limits and independently computed casts are in the tests.
 *
 * Limits: one direction, so the upper bound of a wide pour: edges, islands of timber and stones cool it,
 * which the 3-D cast model sees. No flow of the liquid but by the multiplier; no change of volume.
 * Peaks above 150 °C are runaways, not figures.
 */
export interface ColumnProblem {
  readonly shape: Shape
  /** From the floor up (slab) or from the centre out. */
  readonly layers: readonly Layer[]
  /** Below the first layer; ignored for cylinder and sphere. */
  readonly floor: Boundary
  /** Above or outside the last layer. */
  readonly top: Boundary
  /** Length of the run, s. */
  readonly untilS: number
  /** Accuracy; {@link FULL} if not given. */
  readonly control?: ColumnControl
  /** Ends the run as soon as a resin cell is hotter than this. */
  readonly stopAboveC?: number
}

export interface ColumnControl {
  /** Accepted error of a step in temperature, K, and in conversion. */
  readonly errorK: number
  readonly errorConversion: number
  /** Largest change of conversion aimed at in a step, and longest step, s. */
  readonly change: number
  readonly longestS: number
}

/** Peaks within 0.1 K and first gel within 0.3 % of a run with steps four times finer (tests). */
export const FULL: ColumnControl = { errorK: 0.15, errorConversion: 0.004, change: 0.03, longestS: 1800 }
/** For bands and searches: peaks within 0.5 K, first gel within 1 % (tests); half the steps. */
export const QUICK: ColumnControl = { errorK: 0.6, errorConversion: 0.015, change: 0.06, longestS: 3600 }

const FIRST_STEP_S = 1
const SHORTEST_STEP_S = 1e-9
const MOST_STEPS = 1_000_000

/** Runs a column. Throws on a value out of range; never returns NaN. Same input, same bytes. */
export function runColumn(problem: ColumnProblem): ColumnResult {
  const { shape, layers, untilS } = problem
  const control = problem.control ?? FULL
  inRange('length of the run in s', untilS, 1e-9, 1e10)
  const grid = columnGrid(shape, layers)
  const floor = shape === 'slab' ? problem.floor : INSULATED
  const { top } = problem
  const state = columnState(grid, resistance(floor), resistance(top))
  const recorders = recordersOf(grid, layers)
  const startK = state.tempK.slice()
  const layerPeakK = new Float64Array(layers.length).fill(-1)
  const stopAboveK = (problem.stopAboveC ?? Number.POSITIVE_INFINITY) + ZERO_CELSIUS_K

  conductances(state, state.tempK, state.conversion, state.scratch.conductance)
  let floorK = outsideK(floor, 0)
  let topK = outsideK(top, 0)
  record(state, recorders, 0, false, 0, floorK, topK, layerPeakK)
  for (const r of recorders) watch(r, 0, 0, state.tempK, state.conversion, state.conversion)

  let t = 0
  let dt = Math.min(FIRST_STEP_S, untilS)
  let steps = 0
  let rejected = 0
  for (let ended = false; !ended; ) {
    if (steps + rejected > MOST_STEPS) throw new Error(`the column took more than ${MOST_STEPS} steps`)
    const rest = untilS - t
    // never leave a sliver for the last step
    if (dt >= rest) dt = rest
    else if (dt > rest / 2) dt = rest / 2
    const floorNextK = outsideK(floor, t + dt)
    const topNextK = outsideK(top, t + dt)
    tryStep(state, dt, floorK, topK, floorNextK, topNextK)
    const error = Math.max(state.errorK / control.errorK, state.errorConversion / control.errorConversion)
    if (!(error <= 1)) {
      if (dt < SHORTEST_STEP_S) throw new Error(`the column's step fell below ${SHORTEST_STEP_S} s at ${t} s`)
      rejected++
      dt *= Math.max(0.2, Math.min(0.9, 0.9 / Math.sqrt(error)) || 0.2)
      continue
    }
    const { tempK: oldK, conversion: old } = state
    state.tempK = state.nextK
    state.conversion = state.nextConversion
    state.nextK = oldK
    state.nextConversion = old
    state.lost = state.nextLost
    const beforeS = t
    t = dt === rest ? untilS : t + dt
    steps++
    floorK = floorNextK
    topK = topNextK
    let hottest = 0
    for (let k = 0; k < recorders.length; k++) {
      watch(recorders[k]!, beforeS, t, state.tempK, old, state.conversion)
      hottest = Math.max(hottest, recorders[k]!.peakK)
    }
    ended = t >= untilS || hottest > stopAboveK
    record(state, recorders, steps, ended, t, floorK, topK, layerPeakK)
    dt = Math.min(
      control.longestS,
      dt * Math.min(2, 0.9 / Math.sqrt(error), (0.9 * control.change) / state.change)
    )
  }
  return columnResult({ layers, state, recorders, startK, layerPeakK, timeS: t, steps, rejected })
}

const INSULATED: Boundary = { kind: 'insulated' }

function resistance(boundary: Boundary): number {
  if (boundary.kind === 'insulated') return Number.POSITIVE_INFINITY
  if (boundary.kind === 'fixed') return 0
  inRange('film coefficient in W/(m²·K)', boundary.hWm2K, 0, 1e9)
  return 1 / boundary.hWm2K
}

function outsideK(boundary: Boundary, timeS: number): number {
  if (boundary.kind === 'insulated') return ZERO_CELSIUS_K
  const outside = boundary.kind === 'fixed' ? boundary.tempC : boundary.ambientC
  const c = typeof outside === 'number' ? outside : outside(timeS)
  inRange('temperature outside in °C', c, -60, 400)
  return c + ZERO_CELSIUS_K
}

function recordersOf(grid: ColumnGrid, layers: readonly Layer[]): LayerRecorder[] {
  const resins = layers.filter((layer): layer is ResinLayer => layer.kind === 'resin')
  return resins.map((layer, k) => layerRecorder(grid, grid.reacting[k]!, layer.resin))
}

/** Samples every resin layer and keeps the peak of every layer. */
function record(
  state: ColumnState,
  recorders: LayerRecorder[],
  step: number,
  last: boolean,
  timeS: number,
  floorK: number,
  topK: number,
  layerPeakK: Float64Array
): void {
  const { grid, tempK, conversion } = state
  const { firstCell } = grid
  for (let l = 0; l < layerPeakK.length; l++)
    for (let i = firstCell[l]!; i < firstCell[l + 1]!; i++)
      if (tempK[i]! > layerPeakK[l]!) layerPeakK[l] = tempK[i]!
  for (let k = 0; k < recorders.length; k++) {
    const recorder = recorders[k]!
    if (!last && step % recorder.stride !== 0) continue
    const innerK = faceK(state, recorder.cells.from, floorK, topK)
    const outerK = faceK(state, recorder.cells.to, floorK, topK)
    sample(recorder, grid, step, last, timeS, tempK, conversion, innerK, outerK)
  }
}

/** Temperature on a face, from the half cells (or the film) that meet there. */
function faceK(state: ColumnState, face: number, floorK: number, topK: number): number {
  const { tempK, grid, scratch } = state
  const half = scratch.halfResistance
  if (face === 0) return between(tempK[0]!, half[0]!, floorK, state.floorResistance)
  const i = face - 1
  if (face === grid.cells) return between(tempK[i]!, half[i]!, topK, state.topResistance)
  return between(tempK[i]!, half[i]!, tempK[face]!, half[face]!)
}

const between = (a: number, halfA: number, b: number, halfB: number): number =>
  halfB === Number.POSITIVE_INFINITY ? a : a + ((b - a) * halfA) / (halfA + halfB)
