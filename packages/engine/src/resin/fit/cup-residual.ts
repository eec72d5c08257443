import { H_CUP } from '../cup.ts'
import { type CureTable, cureTable } from '../cure-table.ts'
import type { ResinModel } from '../model.ts'
import { conversionAtViscosity, freshViscosityPaS, SYRUP_PAS } from '../thickening.ts'
import { type Course, courseAt, cupCourse, stepsOf } from './cup-course.ts'
import { courseKey, effect, inCup, LAG_S, modelAt } from './cup-parameter.ts'
import type { CupTest } from './cup-test.ts'

/** A cup test as the fit sees it. */
export interface FitProblem {
  readonly base: ResinModel
  readonly test: CupTest
  readonly volumePerAreaMm: number
  /** Expected temperature at the start, °C, and its standard deviation, K. */
  readonly startC: number
  readonly startDoubt: number
  /** Standard deviation of each reading, K. */
  readonly sigmaK: ArrayLike<number>
}

/** A course of the cup at θ with what the thermometer shows at the readings. */
export interface Fitted {
  readonly course: Course
  readonly model: ResinModel
  /** The clock's zero on the course's own time, s. */
  readonly zeroS: number
  readonly shownC: Float64Array
}

/** What a fit has at hand from earlier runs: tables by what they depend on, and the last few courses. */
export interface Kept {
  readonly tables: Map<string, CureTable>
  /** Courses run on the steps of another, by what decides them. */
  readonly courses: Map<string, Course>
}

export const nothingKept = (): Kept => ({ tables: new Map(), courses: new Map() })

/** Runs the cup at θ; on the steps of another course when given. */
export function courseOf(
  problem: FitProblem,
  theta: ArrayLike<number>,
  kept: Kept,
  steps?: readonly number[]
): Fitted {
  const { base, test } = problem
  const key = courseKey(theta)
  const known = steps === undefined ? undefined : kept.courses.get(key)
  const course = known ?? runAt(problem, theta, kept, steps)
  if (steps !== undefined) kept.courses.set(key, course)
  return {
    course,
    model: modelAt(base, theta),
    zeroS: effect(theta, 'clock') * 60,
    shownC: lagged(course, LAG_S * effect(theta, 'lag'), effect(theta, 'clock') * 60, test.readings)
  }
}

function runAt(problem: FitProblem, theta: ArrayLike<number>, kept: Kept, steps?: readonly number[]): Course {
  const { base, test } = problem
  const rates = modelAt(base, theta, false)
  const { kinetics } = rates
  const key = `${kinetics.k1OverK2At25} ${kinetics.e1JPerMol} ${kinetics.m} ${kinetics.n}`
  let table = kept.tables.get(key)
  if (!table) {
    table = cureTable(kinetics)
    if (kept.tables.size >= MOST_KEPT) kept.tables.clear()
    kept.tables.set(key, table)
  }
  return cupCourse(
    {
      resin: inCup(rates, theta),
      table,
      rateFactor: effect(theta, 'activity'),
      volumePerAreaMm: problem.volumePerAreaMm,
      hWm2K: H_CUP * effect(theta, 'film'),
      roomC: test.roomC + effect(theta, 'room'),
      startC: problem.startC + effect(theta, 'start') * problem.startDoubt,
      untilS: endS(test)
    },
    steps
  )
}

const MOST_KEPT = 24

/** The clock may have been started so much late, s: courses run on for as long. */
const LATE_CLOCK_S = 150

/** Seconds from mixing to the last thing observed, and as long as the clock may be off. */
function endS(test: CupTest): number {
  const last = test.readings[test.readings.length - 1]!.timeMin
  return Math.max(last, test.stringsMin ?? 0, test.gelledMin ?? 0) * 60 + LATE_CLOCK_S
}

/** What a thermometer of that lag shows: τ·dθ/dt = T − θ, exact for a course straight between its steps. */
function lagged(course: Course, lagS: number, zeroS: number, readings: CupTest['readings']): Float64Array {
  const { timeS, centreC } = course
  const out = new Float64Array(readings.length)
  let shown = centreC[0]!
  let k = 0
  const last = timeS.length - 1
  for (let i = 0; i < readings.length; i++) {
    const at = Math.max(0, readings[i]!.timeMin * 60 + zeroS)
    while (k < last && timeS[k + 1]! <= at) {
      shown = through(shown, centreC[k]!, centreC[k + 1]!, timeS[k + 1]! - timeS[k]!, lagS)
      k++
    }
    const rest = at - timeS[k]!
    out[i] = rest <= 0 ? shown : through(shown, centreC[k]!, courseAt(course, centreC, at), rest, lagS)
  }
  return out
}

function through(shown: number, fromC: number, toC: number, spanS: number, lagS: number): number {
  const slope = (toC - fromC) / spanS
  return toC - slope * lagS + (shown - fromC + slope * lagS) * Math.exp(-spanS / lagS)
}

/** A moment told by hand is good to this share of its time, and to so many minutes at least. Practice: looked at every few minutes. */
const MOMENT_SHARE = 0.04
const MOMENT_LEAST_MIN = 2
/** Least doubt of a conversion told by a stick. */
const STICK_CONVERSION = 0.008

/** Standard deviation of a moment told by hand, min. */
function momentDoubtMin(timeMin: number): number {
  return Math.hypot(MOMENT_LEAST_MIN, MOMENT_SHARE * timeMin)
}

/**
 * Residuals over their standard deviations: readings first, then strings and gelled where told.
 *
 * A moment is held against the conversion that stands then, not against a time that a course may never reach:
 * (α(t) − α wanted)/σ, σ the greater of what the doubt of the time makes of it and 0.008. Strings: mean of the
 * cup, viscosity {@link SYRUP_PAS} at its mean temperature; gelled: the middle at the conversion of gel.
 */
function residualsOf(problem: FitProblem, fitted: Fitted): Float64Array {
  const { test, sigmaK } = problem
  const { shownC, course, model, zeroS } = fitted
  const n = test.readings.length
  const moments: number[] = []
  if (test.stringsMin !== null) {
    const tempC = courseAt(course, course.meanC, test.stringsMin * 60 + zeroS)
    const wanted = conversionAtStrings(model, tempC)
    moments.push(moment(course, course.meanConversion, test.stringsMin, zeroS, wanted))
  }
  if (test.gelledMin !== null)
    moments.push(moment(course, course.centreConversion, test.gelledMin, zeroS, model.kinetics.gelConversion))
  const out = new Float64Array(n + moments.length)
  for (let i = 0; i < n; i++) out[i] = (shownC[i]! - test.readings[i]!.tempC) / sigmaK[i]!
  out.set(moments, n)
  return out
}

// A mix that is too thick from the start has no such conversion: the law is drawn on straight below zero, so that
// the fit finds its way back.
function conversionAtStrings({ flow, kinetics }: ResinModel, tempC: number): number {
  const beyond = Math.log(freshViscosityPaS(flow, tempC) / SYRUP_PAS)
  if (beyond > 0) return (-beyond * kinetics.gelConversion) / flow.c1
  return conversionAtViscosity(flow, kinetics.gelConversion, tempC, SYRUP_PAS)
}

function moment(
  course: Course,
  conversion: readonly number[],
  timeMin: number,
  zeroS: number,
  wanted: number
): number {
  const doubtS = momentDoubtMin(timeMin) * 60
  const t = timeMin * 60 + zeroS
  const at = (s: number): number => courseAt(course, conversion, s)
  const spread = (at(t + doubtS) - at(t - doubtS)) / 2
  return (at(t) - wanted) / Math.max(STICK_CONVERSION, spread)
}

/** A problem's residuals at θ, and near the θ last asked for. */
export function residualFunctions(problem: FitProblem, kept: Kept) {
  let steps: readonly number[] = []
  return {
    at: (theta: Float64Array): Float64Array => {
      const fitted = courseOf(problem, theta, kept)
      steps = stepsOf(fitted.course)
      kept.courses.clear()
      return residualsOf(problem, fitted)
    },
    near: (theta: Float64Array): Float64Array => residualsOf(problem, courseOf(problem, theta, kept, steps))
  }
}

/** A moment told by hand and how the fit meets it. */
export interface CupMark {
  readonly mark: 'strings' | 'gelled'
  readonly toldMin: number
  /** When the fitted course has come that far, min; left out where it never does within the run. */
  readonly fittedMin?: number
  /** Off by so many standard deviations; above 0 the fit is further on at the time told. */
  readonly sigmas: number
}

/** How a fit meets what was told by hand. */
export function marksOf(problem: FitProblem, fitted: Fitted): readonly CupMark[] {
  const { test } = problem
  const { course, model, zeroS } = fitted
  const off = residualsOf(problem, fitted).slice(test.readings.length)
  const reached = (value: readonly number[], wanted: (i: number) => number): { fittedMin?: number } => {
    const i = value.findIndex((x, k) => x >= wanted(k))
    return i < 0 ? {} : { fittedMin: Math.max(0, (course.timeS[i]! - zeroS) / 60) }
  }
  const out: CupMark[] = []
  if (test.stringsMin !== null)
    out.push({
      mark: 'strings',
      toldMin: test.stringsMin,
      ...reached(course.meanConversion, k => conversionAtStrings(model, course.meanC[k]!)),
      sigmas: off[0]!
    })
  if (test.gelledMin !== null)
    out.push({
      mark: 'gelled',
      toldMin: test.gelledMin,
      ...reached(course.centreConversion, () => model.kinetics.gelConversion),
      sigmas: off[out.length]!
    })
  return out
}
