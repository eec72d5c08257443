import { lengthsOf } from '../piece/lengths.ts'
import type { Planned } from '../plan.ts'
import { decimals } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn, lengthUnit, massIn } from '../quantity/shown-units.ts'
import { bounds } from '../shape/measure.ts'
import { finishedThickness } from '../stack/stack.ts'
import type { CoreModel } from './core-model.ts'
import type { Mark, Sheet } from './mark.ts'
import { box, CAPTION_MM, text } from './mark.ts'
import { coreModelOf } from './model.ts'
import { planView } from './plan-view.ts'
import { scaleBar } from './scale-bar.ts'
import { sectionSheet } from './section.ts'
import { sectionOf } from './section-cut.ts'
import { sectionPathOf } from './section-path.ts'
import { partsOn, roundsOn } from './sheet-views.ts'
import type { Paper } from './tile.ts'
import { FRAME, framed, TITLE } from './title-field.ts'

/** Scales a drawing may have, paper : piece (ISO 5455; memory). */
const SCALES: readonly (readonly [words: string, factor: number])[] = [
  ['10:1', 10],
  ['5:1', 5],
  ['2:1', 2],
  ['1:1', 1],
  ['1:2', 0.5],
  ['1:5', 0.2],
  ['1:10', 0.1],
  ['1:20', 0.05],
  ['1:50', 0.02]
]

/** A drawing lies on the next larger sheet: A3, or 11 × 17 in (ISO 216, ASME Y14.1; memory), mm. */
const SHEETS: Readonly<Record<Paper, readonly [number, number]>> = {
  A4: [420, 297],
  letter: [431.8, 279.4]
}

/** Beside the plan, for its dimensions and the letters of the section, mm. */
const SIDE_MM = 24
/** Over and under plan and section, for dimensions and callouts, mm. */
const BETWEEN_MM = 56

/**
 * Plan and section A to A as a workshop drawing: frame and title block (ISO 5457, ISO 7200), the largest scale of ISO
 * 5455 at which both fit, line types and hatching of ISO 128 with a key of materials, a scale bar. Sizes are those
 * of the finished piece, in the unit asked for.
 *
 * Limits: one section; ring lines of timber are drawn calm, not as the board has them.
 */
export function sectionDrawing(
  planned: Planned,
  paper: Paper = 'A4',
  shown: ShownUnits = lengthsOf(planned.work.shop).shown
): Sheet {
  const { plan, work } = planned
  const [widthMm, heightMm] = SHEETS[paper]
  const model = coreModelOf(work, shown)
  const path = sectionPathOf(work)
  const b = bounds(work.stack.geometry.outline)
  const [w, h] = [b.maxX - b.minX, b.maxY - b.minY]
  const thick = finishedThickness(work.stack)
  const long = path.along === 'x' ? w : path.legs.reduce((sum, l) => sum + l.to - l.from, 0)
  const innerW = widthMm - FRAME.left - FRAME.other - 2 * SIDE_MM
  const innerH = heightMm - 2 * FRAME.other - TITLE.heightMm - BETWEEN_MM
  const [words, scale] =
    SCALES.find(([, s]) => Math.max(w, long) * s <= innerW && (h + thick) * s <= innerH) ??
    SCALES[SCALES.length - 1]!
  const plane = planView(work, model, {
    face: 'front',
    widthMm: w * scale + 2 * SIDE_MM,
    mostHeightMm: h * scale,
    sideMm: SIDE_MM,
    path
  })
  const section = sectionOf(model, path, 0.3 / scale)
  const across = path.along === 'y'
  const first = path.legs[0]!
  const sectionWide = across ? long * scale + 2 * SIDE_MM : plane.sheet.widthMm
  const cut = sectionSheet(model, section, {
    scale,
    stretch: 1,
    originX: across ? SIDE_MM - first.from * scale : plane.view.originX,
    widthMm: sectionWide,
    parts: partsOn(path, work),
    rounds: roundsOn(path, work)
  })
  const left = FRAME.left + (widthMm - FRAME.left - FRAME.other - plane.sheet.widthMm) / 2
  const top = heightMm - FRAME.other
  const foot = FRAME.other + TITLE.heightMm
  const spare = top - foot - plane.sheet.heightMm - cut.heightMm
  const planY = top - spare / 3 - plane.sheet.heightMm
  const cutY = planY - spare / 3 - cut.heightMm
  const cutX = across ? FRAME.left + (widthMm - FRAME.left - FRAME.other - sectionWide) / 2 : left
  const unit = lengthUnit(shown)
  return {
    widthMm,
    heightMm,
    marks: [
      ...framed(widthMm, heightMm, [
        { label: 'title', value: plan.name },
        { label: 'shop', value: work.shop.name },
        { label: 'document', value: `plan and section A–A${across ? ', across' : ''}` },
        { label: 'planned', value: plan.asOf.slice(0, 10) },
        { label: 'sheet', value: '1 of 1' },
        {
          label: `finished size, ${unit}`,
          value: [w, h, thick].map(mm => lengthIn(shown, mm, 1)).join(' × ')
        },
        { label: 'mass', value: massIn(shown, plan.totals.massG, g => `${decimals(g / 1000, 2)} kg`) },
        { label: 'scale', value: words },
        { label: 'state', value: stateWords(plan.verdict) }
      ]),
      ...moved(plane.sheet.marks, left, planY),
      text([cutX + SIDE_MM, cutY + cut.heightMm + 1], 'A–A', {
        lettering: 'plane',
        heightMm: 5,
        strong: true
      }),
      ...moved(cut.marks, cutX, cutY),
      ...key(model, FRAME.left + 6, FRAME.other + TITLE.heightMm + 1),
      ...scaleBar(scale, 60, FRAME.left + 110, FRAME.other + 8, shown)
    ]
  }
}

function stateWords(verdict: Planned['plan']['verdict']): string {
  return { stop: 'not to be built: a stop stands', caution: 'with cautions', ready: 'ready' }[verdict]
}

/** Height of a row of the key, and the swatch before its words, mm. */
const ROW_MM = 5.6
const SWATCH = [11, 4.4] as const

// What hatching and colour mean: resin has no hatching fixed by a standard, so a key always stands by.
function key(model: CoreModel, x: number, topY: number): Mark[] {
  const rows = [...model.timbers, ...model.pours, ...model.markings]
  const most = 5
  const shown = rows.slice(0, rows.length > most ? most - 1 : most)
  const marks = shown.flatMap((m, k): Mark[] => {
    const y = topY - ROW_MM * (k + 1)
    return [
      {
        kind: 'region',
        rings: [box(x, y, x + SWATCH[0], y + SWATCH[1])],
        paint: m.paint,
        hatch: m.hatch,
        edge: 'edge'
      },
      text([x + SWATCH[0] + 3, y + 0.8], `${m.name}: ${m.words}`, {
        lettering: 'caption',
        heightMm: CAPTION_MM
      })
    ]
  })
  if (rows.length > shown.length)
    marks.push(
      text([x, topY - ROW_MM * (shown.length + 1) + 0.8], `and ${rows.length - shown.length} more`, {
        lettering: 'caption',
        heightMm: CAPTION_MM
      })
    )
  return marks
}

// Marks laid elsewhere on the sheet.
function moved(marks: readonly Mark[], dx: number, dy: number): Mark[] {
  const spot = ([x, y]: readonly [number, number]) => [x + dx, y + dy] as const
  const ring = (r: Float64Array) => r.map((v, k) => v + (k % 2 === 0 ? dx : dy))
  return marks.map((m): Mark => {
    switch (m.kind) {
      case 'line':
        return { ...m, from: spot(m.from), to: spot(m.to) }
      case 'path':
        return { ...m, lines: m.lines.map(ring) }
      case 'region':
        return { ...m, rings: m.rings.map(ring) }
      case 'group':
        return { ...m, marks: moved(m.marks, dx, dy) }
      default:
        return { ...m, at: spot(m.at) }
    }
  })
}
