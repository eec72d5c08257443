import { type ColumnGrid, LIQUID_FROM_C } from './column-grid.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { tableRates } from './cure-table.ts'

/**
 * One implicit step of heat and cure in a column: ROS2, a two-stage Rosenbrock method.
 *
 *   C·dT/dt = ΣG·(T_neighbour − T) + ρHV·dα/dt          dα/dt = r(T, α)
 *
 *   (I − γ·dt·J)·u1 = F(y)
 *   (I − γ·dt·J)·u2 = F(y + dt·u1) − 2·u1
 *   y' = y + 3/2·dt·u1 + 1/2·dt·u2,   γ = 1 − 1/√2
 *
 * Second order for any J, and L-stable: no oscillation after a new pour is laid on a cold board, so no
 * damping steps are needed. y + dt·u1 is first order; the difference, dt/2·(u1 + u2), is the error that
 * controls the step. Conversion does not diffuse, so it is eliminated cell by cell and one tridiagonal
 * system of the temperatures remains, factored once for both stages.
 *
 * Heat released is ρHV times the same increment of conversion, and the heat lost is carried along as one
 * more unknown, so the energy balance closes to rounding whatever the step.
 *
 * Source: Verwer, Spee, Blom & Hundsdorfer, SIAM J Sci Comput 20 (1999) 1456 (memory).
 */
export interface ColumnState {
  readonly grid: ColumnGrid
  /** Outer conductances at floor and top, 1/h, m²K/W: Infinity is insulated, 0 a fixed temperature. */
  readonly floorResistance: number
  readonly topResistance: number
  /** State now, and after the step that was tried. */
  tempK: Float64Array
  conversion: Float64Array
  nextK: Float64Array
  nextConversion: Float64Array
  /** Heat lost through floor and top so far, and after the tried step, J per unit of the grid. */
  lost: number
  nextLost: number
  /** Largest error of the tried step, K and 1, and largest change of conversion. */
  errorK: number
  errorConversion: number
  change: number
  readonly scratch: Scratch
}

interface Scratch {
  readonly rate: Float64Array
  readonly byConversion: Float64Array
  readonly byTemp: Float64Array
  readonly rate2: Float64Array
  readonly unused1: Float64Array
  readonly unused2: Float64Array
  readonly halfResistance: Float64Array
  readonly conductance: Float64Array
  readonly conductance2: Float64Array
  readonly upper: Float64Array
  readonly inverse: Float64Array
  readonly u1K: Float64Array
  readonly u1: Float64Array
  readonly u2K: Float64Array
  readonly stageK: Float64Array
  readonly stage: Float64Array
}

/** A state at rest on the grid's start values; all the memory a run needs. */
export function columnState(grid: ColumnGrid, floorResistance: number, topResistance: number): ColumnState {
  const n = grid.cells
  const array = (): Float64Array => new Float64Array(n)
  return {
    grid,
    floorResistance,
    topResistance,
    tempK: grid.startK.slice(),
    conversion: grid.startConversion.slice(),
    nextK: array(),
    nextConversion: array(),
    lost: 0,
    nextLost: 0,
    errorK: 0,
    errorConversion: 0,
    change: 0,
    scratch: {
      rate: array(),
      byConversion: array(),
      byTemp: array(),
      rate2: array(),
      unused1: array(),
      unused2: array(),
      halfResistance: array(),
      conductance: new Float64Array(n + 1),
      conductance2: new Float64Array(n + 1),
      upper: array(),
      inverse: array(),
      u1K: array(),
      u1: array(),
      u2K: array(),
      stageK: array(),
      stage: array()
    }
  }
}

/**
 * Conductance of every face, W/K: half cells in series, and at the outer faces the air film with them.
 * Reads the conductivity at the given temperature and conversion.
 */
export function conductances(
  state: ColumnState,
  tempK: Float64Array,
  conversion: Float64Array,
  out: Float64Array
): void {
  const { cells, widthM, faceArea, k0, k1, reacting } = state.grid
  const half = state.scratch.halfResistance
  for (let i = 0; i < cells; i++) half[i] = widthM[i]! / (2 * (k0[i]! + k1[i]! * conversion[i]!))
  for (let l = 0; l < reacting.length; l++) {
    const { from, to, multiplier, liquidBelow } = reacting[l]!
    if (multiplier === 1) continue
    for (let i = from; i < to; i++) {
      const at = Math.round(tempK[i]! - ZERO_CELSIUS_K) - LIQUID_FROM_C
      const limit = liquidBelow[at < 0 ? 0 : at < liquidBelow.length ? at : liquidBelow.length - 1]!
      if (conversion[i]! < limit) half[i]! /= multiplier
    }
  }
  out[0] = faceArea[0]! / (half[0]! + state.floorResistance)
  for (let i = 1; i < cells; i++) out[i] = faceArea[i]! / (half[i - 1]! + half[i]!)
  out[cells] = faceArea[cells]! / (half[cells - 1]! + state.topResistance)
}

const GAMMA = 1 - Math.SQRT1_2
/** γ·dt·∂r/∂α is held below this in J, so that the eliminated system stays well posed on a runaway. */
const MOST_GROWTH = 0.5

/**
 * Tries a step of `dt` seconds with the outside at floor0/top0 (K) at its start and floor1/top1 at its end.
 * Writes nextK, nextConversion, nextLost and the error; the caller accepts or shortens.
 */
export function tryStep(
  state: ColumnState,
  dt: number,
  floor0: number,
  top0: number,
  floor1: number,
  top1: number
): void {
  const { grid, scratch, tempK, conversion, nextK, nextConversion } = state
  const { cells, capacity, heat, reacting, kChanges } = grid
  const { rate, byConversion, byTemp, rate2, conductance, upper, inverse } = scratch
  const { u1K, u1, u2K, stageK, stage } = scratch
  const last = cells - 1
  const g = GAMMA * dt

  // rates and conductances at the start
  for (let l = 0; l < reacting.length; l++) {
    const { table, factor, from, to } = reacting[l]!
    tableRates(table, factor, from, to, tempK, conversion, rate, byConversion, byTemp)
  }
  if (kChanges) conductances(state, tempK, conversion, conductance)

  // the matrix C − γdt·L − γdt·heat·(∂r/∂T)/(1 − γdt·∂r/∂α), factored from the floor up
  for (let i = 0; i < cells; i++) {
    let growth = g * byConversion[i]!
    if (growth > MOST_GROWTH) growth = MOST_GROWTH
    // from here on byConversion holds 1/(1 − γdt·∂r/∂α), byTemp γdt·(∂r/∂T) over the same
    const d = 1 / (1 - growth)
    let feedback = heat[i]! * g * byTemp[i]! * d
    if (feedback > capacity[i]! * MOST_GROWTH) feedback = capacity[i]! * MOST_GROWTH
    byConversion[i] = d
    byTemp[i] = heat[i]! > 0 ? feedback / heat[i]! : 0
    const below = g * conductance[i]!
    const above = g * conductance[i + 1]!
    let diagonal = capacity[i]! + below + above - feedback
    if (i > 0) diagonal -= below * upper[i - 1]!
    inverse[i] = 1 / diagonal
    upper[i] = above / diagonal
  }

  // stage 1: right side C·F(T) + heat·r/(1 − …), swept up, then down; conversion follows
  let flux = conductance[0]! * (floor0 - tempK[0]!)
  const floorFlux1 = flux
  let carried = 0
  for (let i = 0; i < cells; i++) {
    const next = conductance[i + 1]! * ((i < last ? tempK[i + 1]! : top0) - tempK[i]!)
    const right = flux + next + heat[i]! * rate[i]! * byConversion[i]!
    carried = (right + (i > 0 ? g * conductance[i]! * carried : 0)) * inverse[i]!
    u1K[i] = carried
    flux = -next
  }
  const topFlux1 = -flux
  for (let i = last - 1; i >= 0; i--) u1K[i]! += upper[i]! * u1K[i + 1]!
  for (let i = 0; i < cells; i++) {
    u1[i] = rate[i]! * byConversion[i]! + byTemp[i]! * u1K[i]!
    stageK[i] = tempK[i]! + dt * u1K[i]!
    stage[i] = conversion[i]! + dt * u1[i]!
  }
  const lost1 = -floorFlux1 - topFlux1 + g * (conductance[0]! * u1K[0]! + conductance[cells]! * u1K[last]!)

  // rates and conductances at the first-order end point
  for (let l = 0; l < reacting.length; l++) {
    const { table, factor, from, to } = reacting[l]!
    tableRates(table, factor, from, to, stageK, stage, rate2, scratch.unused1, scratch.unused2)
  }
  const conductance2 = kChanges ? scratch.conductance2 : conductance
  if (kChanges) conductances(state, stageK, stage, conductance2)

  // stage 2
  flux = conductance2[0]! * (floor1 - stageK[0]!)
  const floorFlux2 = flux
  carried = 0
  for (let i = 0; i < cells; i++) {
    const next = conductance2[i + 1]! * ((i < last ? stageK[i + 1]! : top1) - stageK[i]!)
    const target = rate2[i]! - 2 * u1[i]!
    const right =
      flux + next - 2 * capacity[i]! * u1K[i]! + heat[i]! * (target * byConversion[i]! + 2 * u1[i]!)
    carried = (right + (i > 0 ? g * conductance[i]! * carried : 0)) * inverse[i]!
    u2K[i] = carried
    rate2[i] = target
    flux = -next
  }
  const topFlux2 = -flux
  for (let i = last - 1; i >= 0; i--) u2K[i]! += upper[i]! * u2K[i + 1]!
  const lost2 =
    -floorFlux2 - topFlux2 - 2 * lost1 + g * (conductance[0]! * u2K[0]! + conductance[cells]! * u2K[last]!)

  // the step and its error
  let errorK = 0
  let errorConversion = 0
  let change = 0
  for (let i = 0; i < cells; i++) {
    const u2 = rate2[i]! * byConversion[i]! + byTemp[i]! * u2K[i]!
    nextK[i] = tempK[i]! + dt * (1.5 * u1K[i]! + 0.5 * u2K[i]!)
    const step = dt * (1.5 * u1[i]! + 0.5 * u2)
    nextConversion[i] = conversion[i]! + step
    const eK = Math.abs(u1K[i]! + u2K[i]!)
    const eA = Math.abs(u1[i]! + u2)
    if (eK > errorK) errorK = eK
    if (eA > errorConversion) errorConversion = eA
    if (step > change) change = step
  }
  state.nextLost = state.lost + dt * (1.5 * lost1 + 0.5 * lost2)
  state.errorK = (errorK * dt) / 2
  state.errorConversion = (errorConversion * dt) / 2
  state.change = change
}
