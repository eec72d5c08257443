import { decimals } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn, lengthUnit } from '../quantity/shown-units.ts'
import { fromFixedUnit, toFixedUnit } from '../quantity/unit.ts'
import type { CoreModel, CorePart } from './core-model.ts'
import {
  castPartsAt,
  corePartsAt,
  finishedOf,
  frontUp,
  seenFigures,
  seenTone,
  seenWords
} from './core-model.ts'
import type { Mark, Sheet } from './mark.ts'
import { box, CAPTION_MM, FIGURE_MM, line, text, textWidthMm } from './mark.ts'

/** Which heights the strip counts in: from the finished back, or from the base of the mould. */
export type Levels = 'finished' | 'as cast'

export interface StripOptions {
  readonly levels: Levels
  readonly widthMm: number
  readonly heightMm: number
}

/** Places across the strip, mm. */
const AXIS_X = 9
const BRACKET_X = 1.2
const LEFT = 11
const RIGHT = 25
const LABEL_X = 29.5
/** Room over and under the strip for the words "front" and "back", mm. */
const END_MM = 5.5
const LINE_MM = 3.9
const BETWEEN_MM = 1.6
/** Distance of the line that ties plan and core from the upper edge of both, mm. */
export const LINK_MM = 8
/** Steps of the axis in its unit, and the ticks in each. */
const TICKS = {
  mm: { steps: [1, 2, 5, 10, 20, 50, 100, 200, 500], parts: 5, decimals: 0 },
  in: { steps: [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20], parts: 5, decimals: 2 },
  'in fraction': { steps: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16], parts: 4, decimals: 0 }
} as const

interface Label {
  readonly part: CorePart
  readonly lines: readonly {
    readonly words: string
    readonly mark: (at: readonly [number, number]) => Mark
  }[]
  readonly wanted: number
  readonly height: number
  top: number
}

/**
 * The core at a point as a narrow strip, front at the top: each stretch with its material, thickness and, where
 * something covers a void, whether the void shows. Outside the outline it says so. Heights and thicknesses are
 * of the finished piece or as cast, as `levels` says; as cast, what flattening takes off is marked.
 */
export function coreStrip(model: CoreModel, x: number, y: number, options: StripOptions): Sheet {
  const { widthMm, heightMm, levels } = options
  const parts = levels === 'finished' ? corePartsAt(model, x, y) : castPartsAt(model, x, y)
  const [low, high] =
    levels === 'finished'
      ? [model.finishedLow, model.finishedHigh]
      : [0, Math.max(model.castHeight, model.finishedHigh)]
  const foot = END_MM
  const head = heightMm - END_MM
  const up = frontUp(model)
  const at = (z: number): number => {
    const t = (z - low) / (high - low)
    return foot + (up ? t : 1 - t) * (head - foot)
  }
  const marks: Mark[] = [
    text([(LEFT + RIGHT) / 2, head + 1.6], 'front', { lettering: 'caption', anchor: 'middle' }),
    text([(LEFT + RIGHT) / 2, foot - 4.2], 'back', { lettering: 'caption', anchor: 'middle' }),
    { kind: 'group', name: 'tie', marks: bracket(heightMm, foot, head) },
    ...axis(model.shown, levels === 'finished' ? z => finishedOf(model, z) : z => z, low, high, at)
  ]
  for (const part of parts) {
    const [y0, y1] = [at(part.from), at(part.to)]
    marks.push({
      kind: 'region',
      rings: [box(LEFT, Math.min(y0, y1), RIGHT, Math.max(y0, y1))],
      paint: part.paint,
      hatch: part.hatch,
      edge: part.material === null ? 'edge' : 'outline'
    })
  }
  if (levels === 'as cast') marks.push(...takenOff(model, low, high, at))
  if (parts.length === 0)
    marks.push(text([LABEL_X, (foot + head) / 2], 'outside the piece', { lettering: 'caption' }))
  else {
    const [e0, e1] = [at(model.finishedLow), at(model.finishedHigh)]
    marks.push({
      kind: 'path',
      ink: 'outline',
      lines: [box(LEFT, Math.min(e0, e1), RIGHT, Math.max(e0, e1))],
      closed: true
    })
  }
  const labels = placed(parts.map(p => labelOf(model.shown, p, at, widthMm)).reverse(), head + 1, 0)
  for (const label of labels) marks.push(...labelMarks(label, at, widthMm))
  return { widthMm, heightMm, marks }
}

// Where the line from the pointer on the plan comes in: it ties the whole strip to it.
function bracket(heightMm: number, foot: number, head: number): Mark[] {
  return [
    line('pointer', [0, heightMm - LINK_MM], [BRACKET_X, heightMm - LINK_MM]),
    {
      kind: 'path',
      ink: 'pointer',
      lines: [Float64Array.of(BRACKET_X + 1, head, BRACKET_X, head, BRACKET_X, foot, BRACKET_X + 1, foot)]
    }
  ]
}

// Ticks on the left: figures at a round step, so that 3 to 8 of them stand on the axis.
function axis(
  shown: ShownUnits,
  level: (z: number) => number,
  low: number,
  high: number,
  at: (z: number) => number
): Mark[] {
  const thick = high - low
  const { steps, parts, decimals: places } = TICKS[shown.length]
  const unitMm = toFixedUnit(1, lengthUnit(shown))
  const step = (steps.find(s => thick / (s * unitMm) <= 7) ?? steps[steps.length - 1]!) * unitMm
  const out: Mark[] = []
  const [a, b] = [level(low), level(high)]
  const from = Math.min(a, b)
  const tick = (mm: number) =>
    shown.length === 'in fraction'
      ? lengthIn(shown, mm, 0)
      : decimals(fromFixedUnit(mm, lengthUnit(shown)), places)
  const zOf = (h: number) => (a <= b ? low + (h - from) : high - (h - from))
  const end = Math.max(a, b)
  for (let k = 0; k * (step / parts) <= end - from + 1e-9; k++) {
    const y = at(zOf(from + k * (step / parts)))
    const whole = k % parts === 0
    out.push(line('dimension', [AXIS_X + (whole ? -1.6 : -0.8), y], [AXIS_X, y]))
    if (whole)
      out.push(
        text([AXIS_X - 2.3, y - 1.15], tick(from + (k / parts) * step), {
          anchor: 'end',
          lettering: 'caption',
          heightMm: CAPTION_MM
        })
      )
  }
  out.push(line('dimension', [AXIS_X, at(low)], [AXIS_X, at(high)]))
  return out
}

// What flattening took off, drawn as a ghost at both ends.
function takenOff(model: CoreModel, low: number, high: number, at: (z: number) => number): Mark[] {
  return (
    [
      [low, model.finishedLow],
      [model.finishedHigh, high]
    ] as const
  ).flatMap(([from, to]): Mark[] =>
    to - from < 1e-6
      ? []
      : [
          {
            kind: 'path',
            ink: 'ghost',
            lines: [box(LEFT, Math.min(at(from), at(to)), RIGHT, Math.max(at(from), at(to)))],
            closed: true
          }
        ]
  )
}

function labelOf(shown: ShownUnits, part: CorePart, at: (z: number) => number, widthMm: number): Label {
  const figure = lengthIn(shown, part.to - part.from, 1, 1)
  const room = widthMm - LABEL_X
  const tone = part.seen === null ? 'figure' : seenTone(part.seen)
  const lines: Label['lines'][number][] = []
  wrapped(part.name, room - textWidthMm(figure, 3.75, true) - 2, 3.75).forEach((words, i) => {
    lines.push({
      words,
      mark: spot => ({
        kind: 'group',
        name: 'core-name',
        marks: [
          text(spot, words, { lettering: 'name', heightMm: 3.75 }),
          ...(i === 0
            ? [
                text([widthMm, spot[1]], figure, {
                  anchor: 'end',
                  strong: true,
                  heightMm: 3.75,
                  lettering: tone
                })
              ]
            : [])
        ]
      })
    })
  })
  if (part.seen !== null)
    for (const words of wrapped(seenWords(part.seen), room, CAPTION_MM, true))
      lines.push({
        words,
        mark: spot => text(spot, words, { lettering: tone, strong: true, heightMm: CAPTION_MM })
      })
  const small =
    part.seen === null ? part.words : [part.words, seenFigures(part.seen)].filter(w => w !== '').join('; ')
  for (const words of wrapped(small, room, CAPTION_MM))
    lines.push({ words, mark: spot => text(spot, words, { lettering: 'caption', heightMm: CAPTION_MM }) })
  const height = lines.length * LINE_MM
  const middle = (at(part.from) + at(part.to)) / 2
  return { part, lines, wanted: middle + height / 2, height, top: middle + height / 2 }
}

/** Breaks words into lines no wider than asked; a word wider than that stands alone. */
export function wrapped(words: string, widthMm: number, heightMm: number, strong = false): string[] {
  const out: string[] = []
  for (const word of words.split(' ').filter(w => w !== '')) {
    const last = out[out.length - 1]
    if (last !== undefined && textWidthMm(`${last} ${word}`, heightMm, strong) <= widthMm)
      out[out.length - 1] = `${last} ${word}`
    else out.push(word)
  }
  return out
}

// Labels from the top down, each where it wants to be but for its neighbours; the last ones push back up.
function placed(labels: Label[], head: number, foot: number): Label[] {
  let ceiling = head
  for (const l of labels) {
    l.top = Math.min(l.wanted, ceiling)
    ceiling = l.top - l.height - BETWEEN_MM
  }
  let floor = foot
  for (const l of [...labels].reverse()) {
    l.top = Math.max(l.top, floor + l.height)
    floor = l.top + BETWEEN_MM
  }
  return labels
}

function labelMarks({ part, lines, height, top }: Label, at: (z: number) => number, widthMm: number): Mark[] {
  const middle = (at(part.from) + at(part.to)) / 2
  const reach = top - height / 2
  const out: Mark[] = [
    {
      kind: 'path',
      ink: 'dimension',
      lines: [Float64Array.of(RIGHT, middle, RIGHT + 1, middle, LABEL_X - 2.2, reach, LABEL_X - 1.2, reach)]
    }
  ]
  const tone = part.seen === null ? 'figure' : seenTone(part.seen)
  if (tone !== 'figure')
    out.push({
      kind: 'region',
      rings: [box(LABEL_X - 1.2, top - height + 0.3, LABEL_X - 0.8, top - 0.5)],
      paint: null,
      hatch: null,
      edge: tone
    })
  lines.forEach((l, i) => {
    out.push(l.mark([LABEL_X, top - i * LINE_MM - 0.78 * FIGURE_MM]))
  })
  return widthMm > LABEL_X ? out : []
}
