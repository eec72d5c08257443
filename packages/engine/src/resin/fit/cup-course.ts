import { columnGrid } from '../column-grid.ts'
import { type ColumnState, columnState, conductances, tryStep } from '../column-step.ts'
import { ZERO_CELSIUS_K } from '../constant.ts'
import { type CureTable, cureTable } from '../cure-table.ts'
import type { ResinModel } from '../model.ts'

/** A cup as the fit runs it: the sphere of the same V/A, as in cup.ts. */
export interface CourseBody {
  readonly resin: ResinModel
  /** Tables of the resin's rate law without its rate factor; made when not given. */
  readonly table?: CureTable
  readonly rateFactor: number
  readonly volumePerAreaMm: number
  readonly hWm2K: number
  readonly roomC: number
  readonly startC: number
  readonly untilS: number
}

/** What a cup goes through, at every step of the run. */
export interface Course {
  readonly timeS: readonly number[]
  readonly centreC: readonly number[]
  readonly meanC: readonly number[]
  readonly centreConversion: readonly number[]
  readonly meanConversion: readonly number[]
}

/**
 * The course of a cup for fitting: same equations, cells and step as column.ts (finite volumes, ROS2), with
 * one thing more: a run may follow the steps of another. Two runs on the same steps differ smoothly with what
 * was changed between them, so that derivatives by differences hold; steps chosen anew each time would bury
 * them in the error that the steps allow.
 *
 * Check: cup.ts at full effort and an independent extrapolation integrator (tests).
 *
 * Limits: those of cup.ts; the room at one temperature. Eight shells: centre within 0.5 K of forty.
 */
export function cupCourse(body: CourseBody, steps?: readonly number[]): Course {
  const { resin, volumePerAreaMm, roomC, startC, untilS } = body
  const grid = columnGrid('sphere', [
    {
      kind: 'resin',
      thicknessMm: 3 * volumePerAreaMm,
      cells: CELLS,
      resin,
      startC,
      rateFactor: body.rateFactor,
      table: body.table ?? cureTable(resin.kinetics)
    }
  ])
  const state = columnState(grid, Number.POSITIVE_INFINITY, 1 / body.hWm2K)
  const course = {
    timeS: [0],
    centreC: [startC],
    meanC: [startC],
    centreConversion: [0],
    meanConversion: [0]
  }
  const outsideK = roomC + ZERO_CELSIUS_K
  conductances(state, state.tempK, state.conversion, state.scratch.conductance)
  const longestS = Math.max(LONGEST_S, untilS * LONGEST_SHARE)
  let t = 0
  let dt = Math.min(FIRST_STEP_S, untilS)
  for (let tries = 0; t < untilS && tries < MOST_TRIES; tries++) {
    const followed = steps?.[course.timeS.length - 1]
    if (followed !== undefined) dt = followed - t
    else if (dt > untilS - t) dt = untilS - t
    tryStep(state, dt, 0, outsideK, 0, outsideK)
    const error = Math.max(state.errorK / ERROR_K, state.errorConversion / ERROR_CONVERSION)
    // Followed steps are taken as they come unless they go astray.
    if (!(error <= (followed === undefined ? 1 : ASTRAY))) {
      steps = undefined
      dt *= Math.max(0.2, 0.9 / Math.sqrt(error) || 0.2)
      continue
    }
    accept(state)
    t = followed ?? (dt === untilS - t ? untilS : t + dt)
    record(state, course, t)
    if (followed === undefined)
      dt = Math.min(longestS, dt * Math.min(2, 0.9 / Math.sqrt(error), (0.9 * CHANGE) / state.change))
  }
  return course
}

/** The times of a course as steps for another to follow: the end of each, s. */
export function stepsOf(course: Course): readonly number[] {
  return course.timeS.slice(1)
}

const CELLS = 8
const FIRST_STEP_S = 1
/** Longest step, s, or this share of the run: long after the cure nothing changes. */
const LONGEST_S = 900
const LONGEST_SHARE = 1 / 120
/** Accepted error of a step, K and 1, and change of conversion aimed at: between FULL and QUICK of column.ts. */
const ERROR_K = 0.3
const ERROR_CONVERSION = 0.006
const CHANGE = 0.04
/** Errors of a followed step beyond so many times the accepted one: the courses have parted. */
const ASTRAY = 30
const MOST_TRIES = 20_000

function accept(state: ColumnState): void {
  const { tempK, conversion } = state
  state.tempK = state.nextK
  state.conversion = state.nextConversion
  state.nextK = tempK
  state.nextConversion = conversion
}

function record(state: ColumnState, course: { [K in keyof Course]: number[] }, timeS: number): void {
  const { volume, cells } = state.grid
  let mass = 0
  let temp = 0
  let cure = 0
  for (let i = 0; i < cells; i++) {
    mass += volume[i]!
    temp += volume[i]! * state.tempK[i]!
    cure += volume[i]! * state.conversion[i]!
  }
  course.timeS.push(timeS)
  course.centreC.push(middle(state.tempK) - ZERO_CELSIUS_K)
  course.meanC.push(temp / mass - ZERO_CELSIUS_K)
  course.centreConversion.push(middle(state.conversion))
  course.meanConversion.push(cure / mass)
}

// Even at the centre (zero slope): the parabola through the first two cells, at h/2 and 3h/2.
function middle(value: Float64Array): number {
  return value[0]! + (value[0]! - value[1]!) / 8
}

/** A course's value at a time, straight between steps and held beyond the ends. */
export function courseAt(course: Course, value: readonly number[], timeS: number): number {
  const { timeS: t } = course
  let low = 0
  let high = t.length - 1
  if (timeS <= t[0]!) return value[0]!
  if (timeS >= t[high]!) return value[high]!
  while (high - low > 1) {
    const mid = (low + high) >> 1
    if (t[mid]! <= timeS) low = mid
    else high = mid
  }
  return value[low]! + ((value[high]! - value[low]!) * (timeS - t[low]!)) / (t[high]! - t[low]!)
}
