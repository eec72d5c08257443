import { decimals } from '../quantity/format.ts'
import type { Mark, Sheet, Spot } from '../sheets/mark.ts'
import { CAPTION_MM, FIGURE_MM, line, text, textWidthMm } from '../sheets/mark.ts'
import { levelMarks, onTop } from './level-marks.ts'
import type { Level } from './level-stack.ts'
import { levelsOf } from './level-stack.ts'
import type { RoundModel } from './round-model.ts'

export interface LevelSheetOptions {
  readonly widthMm: number
  /** Heights between which the piece is shown, finished, mm. */
  readonly fromMm: number
  readonly toMm: number
  /** The face that lies on top. */
  readonly face: 'front' | 'back'
}

/** Oblique projection: lengths in depth at this share, leaning to the right by this much of their length. */
const DEPTH = 0.44
const LEAN = 0.3
const MARGIN_MM = 4
const GAP_MM = 7
/** Names stand beside the levels where there is room for them, else under each, mm. */
const NAMES_MM = 42
const NARROW_MM = 110
const ROW_MM = 4.4
/** Heights are drawn at the plan's scale, but never so thin that a level looks like paper, mm on the sheet. */
const LEAST_THICK_MM = 1.2

/**
 * The piece taken apart by its levels, one drawn above the other in oblique projection, the face looked at on top,
 * each with its height and what lies in it. Needs no more than a drawing does: for screens without the means to
 * show bodies, and for paper.
 */
export function levelSheet(model: RoundModel, o: LevelSheetOptions): Sheet {
  const levels = levelsOf(model, o.fromMm, o.toMm)
  if (o.face === 'front') levels.reverse()
  const narrow = o.widthMm < NARROW_MM
  const { box } = model
  const [w, d] = [box.maxX - box.minX, box.maxY - box.minY]
  const room = o.widthMm - 2 * MARGIN_MM - (narrow ? 0 : NAMES_MM)
  const scale = room / (w + LEAN * d)
  const high = DEPTH * d * scale
  const rows = levels.map(l => namesOf(l, o.face === 'back', narrow ? room : NAMES_MM - 4))
  const heights = levels.map((l, k) => {
    const thick = Math.max(LEAST_THICK_MM, (l.toMm - l.fromMm) * scale)
    const words = (rows[k]!.length + 1) * ROW_MM
    return { thick, all: narrow ? high + thick + words + 2 : Math.max(high + thick, words) }
  })
  const total = heights.reduce((sum, h) => sum + h.all, 0) + GAP_MM * Math.max(0, levels.length - 1)
  const heightMm = total + 2 * MARGIN_MM
  const marks: Mark[] = []
  let top = heightMm - MARGIN_MM
  levels.forEach((level, k) => {
    const { thick, all } = heights[k]!
    const foot = top - high - thick
    const flip = o.face === 'back' ? -1 : 1
    const x0 = o.face === 'back' ? -box.maxX : box.minX
    const put = (x: number, y: number, lift: number): Spot => [
      MARGIN_MM + scale * (flip * x - x0 + LEAN * (y - box.minY)),
      foot + scale * DEPTH * (y - box.minY) + thick * lift
    ]
    const view = { put, over: o.face === 'back' }
    // On the face of a material edges are dark in every theme.
    marks.push({ kind: 'group', name: 'level on-face', marks: levelMarks(level, view) })
    const x = narrow ? MARGIN_MM : o.widthMm - MARGIN_MM - NAMES_MM + 4
    let y = narrow
      ? foot - 1 - FIGURE_MM
      : top - Math.max(FIGURE_MM, (all - (rows[k]!.length + 1) * ROW_MM) / 2 + FIGURE_MM)
    const span = `${tenths(level.fromMm)} to ${tenths(level.toMm)} mm`
    marks.push(text([x, y], span, { heightMm: FIGURE_MM, strong: true }))
    for (const words of rows[k]!) {
      y -= ROW_MM
      marks.push(text([x, y], words, { lettering: 'caption', heightMm: CAPTION_MM }))
    }
    if (!narrow) marks.push(line('dimension', [x - 2, top], [x - 2, top - all]))
    top -= all + GAP_MM
  })
  return { widthMm: o.widthMm, heightMm, marks }
}

const tenths = (mm: number) => decimals(mm, 1)

// Names in a level, as many to a line as go in.
function namesOf(level: Level, over: boolean, roomMm: number): string[] {
  const names = [...level.slabs.flatMap(s => s.parts), ...level.small]
    .filter(p => p.body.kind !== 'marking' || onTop(p.body, level, over))
    .map(p => p.body.name)
  const out: string[] = []
  for (const name of [...new Set(names)]) {
    const last = out[out.length - 1]
    const joined = `${last}, ${name}`
    if (last !== undefined && textWidthMm(joined, CAPTION_MM) <= roomMm) out[out.length - 1] = joined
    else out.push(name)
  }
  return out
}
