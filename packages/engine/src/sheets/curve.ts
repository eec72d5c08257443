import type { PourCast } from '../cast/cast.ts'
import type { Window } from '../cast/window.ts'
import { decimals } from '../quantity/format.ts'
import { aboutTime } from '../quantity/rough.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { degreesIn, METRIC } from '../quantity/shown-units.ts'
import { fromFixedUnit, toFixedUnit } from '../quantity/unit.ts'
import { CAUTION_ABOVE_C } from '../resin/limits.ts'
import type { Mark, Sheet } from './mark.ts'
import { box, CAPTION_MM, line, text, textWidthMm } from './mark.ts'

/** The course of a pour: hottest temperature over the hours, its limit, and the window of the next pour. */
export interface CurveOptions {
  readonly widthMm: number
  /** What the recoat window is for: "next pour", or null when nothing follows. */
  readonly next: string | null
  /** What it is written in; metric unless said. */
  readonly shown?: ShownUnits
}

const LEFT = 8
const RIGHT = 12.5
const FOOT = 6
const PLOT_MM = 17
const HEAD = 5
const HEAD_PLAIN = 1.6
const HOUR_STEPS = [1, 2, 3, 6, 12, 24, 48]
const DEGREE_STEPS = [10, 20, 40, 50, 100]

/**
 * A small curve on card width. The band stands at the peak only, since only the peak's band is computed; a
 * window has soft ends as wide as its doubt.
 */
export function curveSheet(cast: PourCast, { widthMm, next, shown = METRIC }: CurveOptions): Sheet {
  const { curve, windows } = cast
  const heightMm = FOOT + PLOT_MM + (next === null ? HEAD_PLAIN : HEAD)
  const endMin = reach(cast, next !== null)
  const [low, high] = degrees(cast)
  const x = (min: number) => LEFT + (Math.min(endMin, Math.max(0, min)) / endMin) * (widthMm - LEFT - RIGHT)
  const y = (c: number) => FOOT + ((Math.min(high, Math.max(low, c)) - low) / (high - low)) * PLOT_MM
  const marks: Mark[] = []
  if (next !== null) marks.push(...windowMarks(windows.recoat, next, x, FOOT, FOOT + PLOT_MM, endMin))
  marks.push(
    line('limit', [LEFT, y(CAUTION_ABOVE_C)], [widthMm - RIGHT, y(CAUTION_ABOVE_C)]),
    text([widthMm - RIGHT + 1, y(CAUTION_ABOVE_C) - 1.1], 'limit', {
      lettering: 'caption',
      heightMm: CAPTION_MM
    })
  )
  const [least, most] = [low, high].map(c => fromFixedUnit(c, shown.temperature)) as [number, number]
  const step = DEGREE_STEPS.find(s => (most - least) / s <= 4) ?? 200
  for (let degrees = Math.ceil(least / step) * step; degrees <= most; degrees += step) {
    const c = toFixedUnit(degrees, shown.temperature)
    marks.push(
      text([LEFT - 2.2, y(c) - 1.1], decimals(degrees, 0), {
        anchor: 'end',
        lettering: 'caption',
        heightMm: CAPTION_MM
      }),
      line('dimension', [LEFT - 1.4, y(c)], [LEFT - 0.4, y(c)])
    )
  }
  marks.push(...hours(endMin, x, widthMm))
  const points: number[] = []
  curve.min.forEach((min, i) => {
    if (min > endMin) return
    points.push(x(min), y(curve.hottestC[i]!))
  })
  marks.push({ kind: 'path', ink: 'curve', lines: [Float64Array.from(points)] })
  marks.push(...peakMarks(cast, shown, x, y, widthMm))
  return { widthMm, heightMm, marks }
}

// How long a curve is shown: past the peak and the window, to a whole step of hours.
function reach(cast: PourCast, next: boolean): number {
  const window = cast.windows.recoat
  const late = Math.max(cast.peakMin * 2.2, next ? (window.band[1] ?? window.open * 1.6) * 1.08 : 0, 6 * 60)
  const hours = Math.min(7 * 24, Math.max(6, late / 60))
  const step = HOUR_STEPS.find(s => hours / s <= 6) ?? 48
  return Math.ceil(hours / step) * step * 60
}

function degrees(cast: PourCast): [number, number] {
  const most = Math.max(CAUTION_ABOVE_C + 5, Math.min(260, cast.peakBandC[1] + 15))
  const least = Math.min(15, ...cast.curve.hottestC)
  return [Math.floor(least / 5) * 5, Math.ceil(most / 5) * 5]
}

function hours(endMin: number, x: (min: number) => number, widthMm: number): Mark[] {
  const step = HOUR_STEPS.find(s => endMin / 60 / s <= 6) ?? 48
  const out: Mark[] = [line('edge', [LEFT, FOOT], [widthMm - RIGHT, FOOT])]
  for (let h = 0; h * 60 <= endMin + 1e-6; h += step) {
    const last = (h + step) * 60 > endMin + 1e-6
    out.push(
      line('edge', [x(h * 60), FOOT], [x(h * 60), FOOT - 0.9]),
      text([x(h * 60), FOOT - 4.3], last ? `${h} h` : String(h), {
        anchor: 'middle',
        lettering: 'caption',
        heightMm: CAPTION_MM
      })
    )
  }
  return out
}

function peakMarks(
  cast: PourCast,
  shown: ShownUnits,
  x: (min: number) => number,
  y: (c: number) => number,
  widthMm: number
): Mark[] {
  const at = x(cast.peakMin)
  const [low, high] = cast.peakBandC
  const words = cast.runaway
    ? 'runaway'
    : `${degreesIn(shown, cast.peakC)} ${shown.temperature} after ${aboutTime(cast.peakMin)}`
  const wide = textWidthMm(words, CAPTION_MM, true)
  const middle = Math.min(widthMm - RIGHT - wide / 2, Math.max(LEFT + wide / 2, at))
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

// A wash in steps: full where it is sure, fading over its doubt.
function windowMarks(
  window: Window,
  word: string,
  x: (min: number) => number,
  foot: number,
  head: number,
  endMin: number
): Mark[] {
  const close = window.close ?? endMin
  const late = window.band[1] ?? endMin
  const soft = (from: number, to: number): Mark[] =>
    Array.from({ length: SOFT_STEPS }, (_, k): Mark => {
      const a = from + ((to - from) * k) / SOFT_STEPS
      return {
        kind: 'region',
        rings: [box(Math.min(x(a), x(to)), foot, Math.max(x(a), x(to)), head)],
        paint: 'window',
        hatch: null,
        edge: null
      }
    })
  const sure: Mark[] = Array.from({ length: SOFT_STEPS }, () => ({
    kind: 'region',
    rings: [box(x(window.open), foot, x(close), head)],
    paint: 'window',
    hatch: null,
    edge: null
  }))
  const marks = [
    ...(x(window.open) - x(window.band[0]) > 0.3 ? soft(window.band[0], window.open) : []),
    ...(x(close) - x(window.open) > 0.3 ? sure : []),
    ...(x(late) - x(close) > 0.3 ? soft(late, close) : [])
  ]
  return [
    { kind: 'group', name: 'time-window', marks },
    text([(x(window.open) + x(close)) / 2, head + 1.2], word, {
      anchor: 'middle',
      strong: true,
      heightMm: CAPTION_MM
    })
  ]
}

const SOFT_STEPS = 6
