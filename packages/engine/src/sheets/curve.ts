import type { PourCast } from '../cast/cast.ts'
import { FOLLOWED_MIN } from '../cast/cast.ts'
import { decimals } from '../quantity/format.ts'
import { aboutTime } from '../quantity/rough.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { degreesIn, METRIC } from '../quantity/shown-units.ts'
import { fromFixedUnit, toFixedUnit } from '../quantity/unit.ts'
import { CAUTION_ABOVE_C } from '../resin/limits.ts'
import { HONEY_PAS, SYRUP_PAS } from '../resin/thickening.ts'
import { LANE_MM, type LaneAxis, laneCount, laneMarks, lanesOf } from './curve-lanes.ts'
import type { Mark, Sheet } from './mark.ts'
import { CAPTION_MM, line, text, textWidthMm } from './mark.ts'
import type { WindowRow } from './window-rows.ts'

/** The course of a pour: temperature and viscosity with their bands, and the windows under the same hours. */
export interface CurveOptions {
  readonly widthMm: number
  /** Windows drawn under the curves. */
  readonly rows: readonly WindowRow[]
  /** What it is written in; metric unless said. */
  readonly shown?: ShownUnits
  /** The same pour before something was tried: drawn dashed beside it. */
  readonly was?: PourCast | null
}

const LEFT = 8
const RIGHT = 13.5
const HEAD = 4.6
const WARM_MM = 18
const GAP_MM = 2
const THICK_MM = 9
const HOURS_MM = 5.4
const DEGREE_STEPS = [10, 20, 40, 50, 100]
/** The axis begins here, min: nothing of a casting happens before, and a logarithm has no nought. */
const FIRST_MIN = 5
/** Viscosities drawn, Pa·s: from thin resin to what no longer flows. */
const THICK_PAS = [0.1, 1000] as const
const TICKS: readonly (readonly [min: number, words: string])[] = [
  [10, '10 min'],
  [30, '30'],
  [60, '1 h'],
  [180, '3'],
  [360, '6'],
  [720, '12'],
  [1440, '1 d'],
  [2880, '2'],
  [FOLLOWED_MIN, '7 d']
]

/**
 * Curves of a pour on card width, hours by their logarithm: what matters happens in minutes as well as in days.
 * Bands are drawn as a wash round each line; a window is lighter over its doubt.
 */
export function curveSheet(cast: PourCast, options: CurveOptions): Sheet {
  const { widthMm, rows, shown = METRIC, was = null } = options
  const toMm = widthMm - RIGHT
  const span = Math.log(FOLLOWED_MIN / FIRST_MIN)
  const x = (min: number) =>
    LEFT + (Math.log(Math.min(FOLLOWED_MIN, Math.max(FIRST_MIN, min)) / FIRST_MIN) / span) * (toMm - LEFT)
  const axis: LaneAxis = { x, fromMm: LEFT, toMm, widthMm }
  const laid = lanesOf(rows, axis)
  const lanesMm = laneCount(laid) * LANE_MM
  const thickFoot = lanesMm + HOURS_MM
  const warmFoot = thickFoot + THICK_MM + GAP_MM
  const heightMm = warmFoot + WARM_MM + HEAD
  const [low, high] = degrees(cast, was)
  const y = (c: number) => warmFoot + ((Math.min(high, Math.max(low, c)) - low) / (high - low)) * WARM_MM
  return {
    widthMm,
    heightMm,
    marks: [
      ...hourMarks(x, thickFoot, warmFoot + WARM_MM, toMm),
      ...warmMarks(cast, was, x, y, toMm),
      ...degreeMarks(low, high, shown, y, toMm),
      ...peakMarks(cast, shown, x, y, toMm),
      ...thickMarks(cast, x, thickFoot, toMm),
      ...laneMarks(laid, lanesMm, axis)
    ]
  }
}

type Along = (v: number) => number

function degrees(cast: PourCast, was: PourCast | null): [number, number] {
  const both = was === null ? [cast] : [cast, was]
  const most = Math.max(
    CAUTION_ABOVE_C + 5,
    ...both.map(c => Math.min(260, Math.max(c.peakC, c.peakBandC[1]) + 8))
  )
  const least = Math.min(15, ...cast.curve.lowC, ...cast.curve.hottestC)
  return [Math.floor(least / 5) * 5, Math.ceil(most / 5) * 5]
}

function degreeMarks(low: number, high: number, shown: ShownUnits, y: Along, toMm: number): Mark[] {
  const unit = shown.temperature
  const limit = fromFixedUnit(CAUTION_ABOVE_C, unit)
  const marks: Mark[] = [
    line('limit', [LEFT, y(CAUTION_ABOVE_C)], [toMm, y(CAUTION_ABOVE_C)]),
    caption([toMm + 0.9, y(CAUTION_ABOVE_C) - 1.1], `limit ${decimals(limit, 0)}`)
  ]
  const [least, most] = [fromFixedUnit(low, unit), fromFixedUnit(high, unit)]
  const step = DEGREE_STEPS.find(s => (most - least) / s <= 4) ?? 200
  for (let degree = Math.ceil(least / step) * step; degree <= most; degree += step) {
    const at = y(toFixedUnit(degree, unit))
    marks.push(
      caption([LEFT - 1.9, at - 1.1], decimals(degree, 0), 'end'),
      line('dimension', [LEFT - 1.3, at], [LEFT - 0.4, at])
    )
  }
  marks.push(caption([LEFT - 1.9, y(high) + 1.3], unit, 'end'))
  return marks
}

// Hours under both curves, and thin lines up through them to read along.
function hourMarks(x: Along, foot: number, head: number, toMm: number): Mark[] {
  const marks: Mark[] = [line('edge', [LEFT, foot], [toMm, foot])]
  for (const [min, words] of TICKS)
    marks.push(
      line('rule', [x(min), foot], [x(min), head]),
      line('edge', [x(min), foot], [x(min), foot - 0.8]),
      caption([x(min), foot - 4], words, 'middle')
    )
  return marks
}

function warmMarks({ curve }: PourCast, was: PourCast | null, x: Along, y: Along, toMm: number): Mark[] {
  const marks: Mark[] = [bandOf(curve.min, curve.lowC, curve.highC, x, y)]
  if (was !== null) marks.push({ ...courseOf(was.curve.min, was.curve.hottestC, x, y, toMm), ink: 'ghost' })
  marks.push(courseOf(curve.min, curve.hottestC, x, y, toMm))
  return marks
}

function thickMarks({ curve }: PourCast, x: Along, foot: number, toMm: number): Mark[] {
  const [thin, stiff] = THICK_PAS
  const span = Math.log(stiff / thin)
  const y = (pas: number) => foot + (Math.log(Math.min(stiff, Math.max(thin, pas)) / thin) / span) * THICK_MM
  const level = (pas: number, word: string): Mark[] => [
    line('ghost', [LEFT, y(pas)], [toMm, y(pas)]),
    caption([toMm + 0.9, y(pas) - (pas === SYRUP_PAS ? 2.3 : 0.2)], word)
  ]
  return [
    ...level(SYRUP_PAS, 'syrup'),
    ...level(HONEY_PAS, 'honey'),
    caption([LEFT + 0.8, foot + THICK_MM - 3], 'thickness'),
    bandOf(curve.min, curve.lowPaS, curve.highPaS, x, y),
    courseOf(curve.min, curve.viscosityPaS, x, y, toMm)
  ]
}

function courseOf(min: readonly number[], values: readonly number[], x: Along, y: Along, toMm: number) {
  const points: number[] = [LEFT, y(values[0]!)]
  min.forEach((m, i) => {
    if (m < FIRST_MIN || m > FOLLOWED_MIN) return
    points.push(x(m), y(values[i]!))
  })
  if (points.at(-2)! < toMm) points.push(toMm, points.at(-1)!)
  return { kind: 'path', ink: 'curve', lines: [Float64Array.from(points)] } as const
}

function bandOf(
  min: readonly number[],
  low: readonly number[],
  high: readonly number[],
  x: Along,
  y: Along
): Mark {
  const out: number[] = []
  const back: [number, number][] = []
  min.forEach((m, i) => {
    if (m > FOLLOWED_MIN) return
    out.push(x(m), y(high[i]!))
    back.push([x(m), y(low[i]!)])
  })
  const ring = Float64Array.from([...out, ...back.reverse().flat()])
  return { kind: 'region', rings: [ring], paint: 'doubt', hatch: null, edge: null }
}

function peakMarks(cast: PourCast, shown: ShownUnits, x: Along, y: Along, toMm: number): Mark[] {
  const at = x(cast.peakMin)
  const [low, high] = cast.peakBandC
  const words = cast.runaway
    ? 'runaway'
    : `${degreesIn(shown, cast.peakC)} ${shown.temperature} after ${aboutTime(cast.peakMin)}`
  const wide = textWidthMm(words, CAPTION_MM, true)
  const middle = Math.min(toMm - wide / 2, Math.max(LEFT + 3 + wide / 2, at))
  return [
    {
      kind: 'path',
      ink: 'band',
      lines: [
        Float64Array.of(at, y(low), at, y(high)),
        Float64Array.of(at - 0.8, y(low), at + 0.8, y(low)),
        Float64Array.of(at - 0.8, y(high), at + 0.8, y(high))
      ]
    },
    { kind: 'circle', ink: 'curve', at: [at, y(cast.peakC)], radiusMm: 0.7, filled: true },
    text([middle, y(high) + 1.3], words, {
      anchor: 'middle',
      strong: true,
      lettering: 'figure',
      heightMm: CAPTION_MM
    })
  ]
}

function caption(at: readonly [number, number], words: string, anchor: 'start' | 'middle' | 'end' = 'start') {
  return text(at, words, { anchor, lettering: 'caption', heightMm: CAPTION_MM })
}
