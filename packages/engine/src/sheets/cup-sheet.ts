import type { CupResult } from '../cast/cup-result.ts'
import { decimals } from '../quantity/format.ts'
import { roughTime } from '../quantity/rough.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { degreesIn } from '../quantity/shown-units.ts'
import { fromFixedUnit, toFixedUnit } from '../quantity/unit.ts'
import type { Mark, Sheet } from './mark.ts'
import { box, CAPTION_MM, line, text } from './mark.ts'

export interface CupSheetOptions {
  readonly widthMm: number
  readonly shown: ShownUnits
}

const LEFT = 9
const RIGHT = 3
const HEAD = 5
const COURSE_MM = 42
const GAP_MM = 5
const OFF_MM = 15
const HOURS_MM = 6
const DEGREE_STEPS = [5, 10, 20, 50, 100]
const HOUR_STEPS = [0.25, 0.5, 1, 2, 4, 6, 12, 24, 48]
/** Room that a figure of the hours takes, mm. */
const LABEL_MM = 14
/** Half a cross of a reading, mm. */
const CROSS_MM = 0.75
/** Residuals are drawn to this at least, K, so that a good fit does not look wild. */
const LEAST_OFF_K = 1

/**
 * A cup test as it was read and as it was fitted: crosses for readings, the curve of the middle of the cup, and below,
 * what is left between the readings and what the thermometer would have shown (it lags), with the strip in which two
 * of three readings stray.
 */
export function cupSheet({ test, fit }: CupResult, { widthMm, shown }: CupSheetOptions): Sheet {
  const toMm = widthMm - RIGHT
  const offFoot = HOURS_MM
  const foot = offFoot + OFF_MM + GAP_MM
  const { residuals } = fit
  const endMin = Math.max(...residuals.map(r => r.timeMin), test.stringsMin ?? 0, test.gelledMin ?? 0, 10)
  const x = (min: number) => LEFT + (min / endMin) * (toMm - LEFT)
  const temps = [...residuals.map(r => r.measuredC), ...fit.curve.map(c => c.middleC)]
  const [low, high] = [Math.min(...temps) - 2, Math.max(...temps) + 4]
  const y = (c: number) => foot + ((c - low) / (high - low)) * COURSE_MM
  const offK = Math.max(LEAST_OFF_K, ...residuals.map(r => Math.abs(r.offK)))
  const off = (k: number) => offFoot + OFF_MM / 2 + (k / offK) * (OFF_MM / 2)
  const fitted = fit.curve.flatMap(c => [x(Math.min(endMin, c.timeMin)), y(c.middleC)])
  const crosses = residuals.flatMap(r => {
    const [cx, cy] = [x(r.timeMin), y(r.measuredC)]
    return [
      Float64Array.of(cx - CROSS_MM, cy, cx + CROSS_MM, cy),
      Float64Array.of(cx, cy - CROSS_MM, cx, cy + CROSS_MM)
    ]
  })
  const { sigmaK } = fit.noise
  return {
    widthMm,
    heightMm: foot + COURSE_MM + HEAD,
    marks: [
      ...degreeMarks(low, high, shown, y),
      ...hourMarks(endMin, x, offFoot, foot + COURSE_MM, toMm),
      ...momentMarks(test, x, foot, toMm),
      { kind: 'path', ink: 'curve', lines: [Float64Array.from(fitted)] },
      { kind: 'path', ink: 'pointer', lines: crosses },
      ...offMarks(offK, sigmaK, shown, off, toMm),
      {
        kind: 'path',
        ink: 'pointer',
        lines: residuals.map(r => Float64Array.of(x(r.timeMin), off(0), x(r.timeMin), off(r.offK)))
      }
    ]
  }
}

/** The same in words, for those who do not see it. */
export function cupSheetWords({ fit }: CupResult, shown: ShownUnits): string {
  const { residuals, noise } = fit
  const hottest = residuals.reduce((a, b) => (b.measuredC > a.measuredC ? b : a))
  const unit = shown.temperature
  const end = residuals[residuals.length - 1]!.timeMin
  const stray = decimals(unit === '°F' ? noise.sigmaK * 1.8 : noise.sigmaK, 1)
  return `${residuals.length} readings over ${roughTime(end)} and the fitted curve through them: hottest ${degreesIn(shown, hottest.measuredC)} ${unit} after ${roughTime(hottest.timeMin)}, fitted ${degreesIn(shown, hottest.fittedC)}; below, how far each reading lies from the curve, ${stray} ${unit} as a rule`
}

type Along = (v: number) => number

function degreeMarks(low: number, high: number, shown: ShownUnits, y: Along): Mark[] {
  const unit = shown.temperature
  const [least, most] = [fromFixedUnit(low, unit), fromFixedUnit(high, unit)]
  const step = DEGREE_STEPS.find(s => (most - least) / s <= 6) ?? 200
  const marks: Mark[] = [caption([LEFT - 1.9, y(high) + 1.6], unit, 'end')]
  for (let degree = Math.ceil(least / step) * step; degree <= most; degree += step) {
    const at = y(toFixedUnit(degree, unit))
    marks.push(
      caption([LEFT - 1.9, at - 1.1], decimals(degree, 0), 'end'),
      line('dimension', [LEFT - 1.3, at], [LEFT - 0.4, at])
    )
  }
  return marks
}

function hourMarks(endMin: number, x: Along, foot: number, head: number, toMm: number): Mark[] {
  const step = HOUR_STEPS.find(s => endMin / 60 / s <= (toMm - LEFT) / LABEL_MM) ?? 96
  const marks: Mark[] = [line('edge', [LEFT, foot], [toMm, foot])]
  const minutes = step < 1
  for (let h = 0; h * 60 <= endMin + 1e-6; h += step) {
    const last = (h + step) * 60 > endMin + 1e-6
    const words = minutes ? String(h * 60) : String(h)
    const end = last && x(h * 60) > toMm - 6
    marks.push(
      line('rule', [x(h * 60), foot], [x(h * 60), head]),
      line('edge', [x(h * 60), foot], [x(h * 60), foot - 0.9]),
      caption(
        [x(h * 60), foot - 4.3],
        last ? `${words} ${minutes ? 'min' : 'h'}` : words,
        end ? 'end' : 'middle'
      )
    )
  }
  return marks
}

function momentMarks(
  { stringsMin, gelledMin }: CupResult['test'],
  x: Along,
  foot: number,
  toMm: number
): Mark[] {
  const seen = [
    ['strings', stringsMin],
    ['gelled', gelledMin]
  ] as const
  return seen.flatMap(([word, min], k): Mark[] => {
    if (min === null) return []
    const at = x(min)
    const late = at > toMm - 16
    return [
      line('ghost', [at, foot], [at, foot + COURSE_MM]),
      caption([at + (late ? -0.8 : 0.8), foot + 0.8 + k * 3.6], word, late ? 'end' : 'start')
    ]
  })
}

function offMarks(offK: number, sigmaK: number, shown: ShownUnits, off: Along, toMm: number): Mark[] {
  const fahrenheit = shown.temperature === '°F'
  const words = decimals(fahrenheit ? offK * 1.8 : offK, 1)
  const stray = Math.min(offK, sigmaK)
  return [
    {
      kind: 'region',
      rings: [box(LEFT, off(-stray), toMm, off(stray))],
      paint: 'doubt',
      hatch: null,
      edge: null
    },
    line('edge', [LEFT, off(0)], [toMm, off(0)]),
    caption([LEFT - 1.9, off(offK) - 2.2], `+${words}`, 'end'),
    caption([LEFT - 1.9, off(0) - 1.1], '0', 'end'),
    caption([LEFT - 1.9, off(-offK) - 0.2], `−${words}`, 'end'),
    caption([LEFT + 0.8, off(offK) + 0.6], 'read less fitted')
  ]
}

function caption(at: readonly [number, number], words: string, anchor: 'start' | 'middle' | 'end' = 'start') {
  return text(at, words, { anchor, lettering: 'caption', heightMm: CAPTION_MM })
}
