import { lengthIn } from '../quantity/shown-units.ts'
import { bounds } from '../shape/measure.ts'
import type { CoreModel } from './core-model.ts'
import { corePartsAt, frontUp, seenTone } from './core-model.ts'
import type { Mark, Sheet } from './mark.ts'
import { line, text } from './mark.ts'
import { sectionSheet } from './section.ts'
import { sectionOf } from './section-cut.ts'

export interface SectionAtOptions {
  readonly widthMm: number
  /** Most height of the drawing, mm. */
  readonly heightMm: number
}

const RIGHT_MM = 15
const LEFT_MM = 4
/** Least width of the piece that is shown, mm, and against its thickness. */
const LEAST_MM = 34
const TIMES_THICK = 2.1
const FINE_STEPS = 150

/** How wide a stretch is shown about the pointer, and its scale on the sheet. */
function windowAt(
  model: CoreModel,
  y: number,
  { widthMm, heightMm }: SectionAtOptions
): { readonly from: number; readonly to: number; readonly scale: number } {
  const box = bounds(model.geometry.outline)
  const thick = model.finishedHigh - model.finishedLow
  const wanted = Math.min(box.maxY - box.minY, Math.max(LEAST_MM, TIMES_THICK * thick))
  const from = Math.min(Math.max(box.minY, y - wanted / 2), box.maxY - wanted)
  const scale = Math.min((widthMm - LEFT_MM - RIGHT_MM) / wanted, (heightMm - 4) / thick)
  return { from, to: from + wanted, scale }
}

/**
 * The section B-B across the piece at the pointer, enlarged, heights true: what the core strip shows with its
 * neighbourhood. Breaks are drawn where the piece goes on; thicknesses at the pointer stand on the right.
 */
export function sectionAt(model: CoreModel, x: number, y: number, options: SectionAtOptions): Sheet {
  const { widthMm } = options
  const { from, to, scale } = windowAt(model, y, options)
  const box = bounds(model.geometry.outline)
  const section = sectionOf(
    model,
    { along: 'y', legs: [{ from, to, at: x }] },
    Math.max(0.2, (to - from) / FINE_STEPS)
  )
  const originX = LEFT_MM - from * scale
  const sheet = sectionSheet(model, section, {
    scale,
    stretch: 1,
    originX,
    widthMm,
    parts: [],
    rounds: [],
    bare: true
  })
  const thick = (model.finishedHigh - model.finishedLow) * scale
  const foot = 2
  const up = frontUp(model)
  const height = (z: number) => foot + (up ? z - model.finishedLow : model.finishedHigh - z) * scale
  const [left, right, at] = [originX + from * scale, originX + to * scale, originX + y * scale]
  const marks: Mark[] = [...sheet.marks]
  if (section.columns.length > 0) {
    if (from > box.minY + 1e-6) marks.push(breakLine(left, foot, foot + thick))
    if (to < box.maxY - 1e-6) marks.push(breakLine(right, foot, foot + thick))
  }
  const parts = corePartsAt(model, x, y)
  if (parts.length > 0) marks.push(line('pointer', [at, foot - 1.5], [at, foot + thick + 1.5]))
  for (const part of parts) {
    const [y0, y1] = [height(part.from), height(part.to)].sort((a, b) => a - b) as [number, number]
    marks.push(
      line('dimension', [right + 1.6, y0], [right + 4, y0]),
      line('dimension', [right + 1.6, y1], [right + 4, y1])
    )
    if (y1 - y0 < 2.4) continue
    const tone = part.seen === null ? 'figure' : seenTone(part.seen)
    marks.push(
      text([right + 5, (y0 + y1) / 2 - 1.2], lengthIn(model.shown, part.to - part.from, 1, 1), {
        lettering: tone,
        strong: tone !== 'figure'
      })
    )
  }
  return { widthMm, heightMm: sheet.heightMm, marks }
}

// A freehand-like break: straight with one zigzag (ISO 128-2, 01.1 with zigzags; memory).
function breakLine(x: number, y0: number, y1: number): Mark {
  const m = (y0 + y1) / 2
  return {
    kind: 'path',
    ink: 'dimension',
    lines: [
      Float64Array.of(x, y0 - 1.2, x, m - 1.6, x - 1.2, m - 0.6, x + 1.2, m + 0.6, x, m + 1.6, x, y1 + 1.2)
    ]
  }
}
