import { decimals } from '../quantity/format.ts'
import { thinnedRing } from '../shape/thin.ts'
import type { Mark, Paint, Sheet, Spot } from '../sheets/mark.ts'
import { CAPTION_MM, FIGURE_MM, line, text, textWidthMm } from '../sheets/mark.ts'
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
const STRAY_MM = 0.04

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
  const rows = levels.map(l => namesOf(l, narrow ? room : NAMES_MM - 4))
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
      foot + scale * DEPTH * (y - box.minY) + lift
    ]
    marks.push({ kind: 'group', name: 'level', marks: drawn(level, thick, put, flip) })
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

// Walls towards the reader first, then the tops, so that what lies before covers what lies behind.
function drawn(
  level: Level,
  thick: number,
  put: (x: number, y: number, lift: number) => Spot,
  flip: number
): Mark[] {
  const walls: { mark: Mark; depth: number }[] = []
  const tops: Mark[] = []
  const order = { timber: 0, pour: 1, stones: 2, marking: 3, hardware: 4 } as const
  const parts = [...level.parts].sort((a, b) => order[a.body.kind] - order[b.body.kind])
  for (const { body, rings } of parts) {
    const paint: Paint = body.paint
    const small = body.kind !== 'timber' && body.kind !== 'pour'
    for (const ring of small ? [] : rings)
      for (const wall of wallsOf(ring, thick, put, flip))
        walls.push({
          depth: wall[1]!,
          mark: { kind: 'region', rings: [wall], paint, hatch: null, edge: 'edge', bleeds: true }
        })
    const lifted = rings
      .map(ring => thinnedRing(spots(ring, thick, put), STRAY_MM))
      .filter(ring => ring.length >= 6)
    if (lifted.length === 0) continue
    if (body.kind === 'hardware') tops.push({ kind: 'path', ink: 'hardware', lines: lifted, closed: true })
    else if (body.kind === 'stones')
      tops.push({ kind: 'path', ink: 'stone-dark', lines: lifted, closed: true })
    else {
      const edge = body.kind === 'marking' ? null : 'edge'
      tops.push({ kind: 'region', rings: lifted, paint, hatch: null, edge, bleeds: true })
    }
  }
  // Farther from the reader is higher on the sheet.
  walls.sort((a, b) => b.depth - a.depth)
  return [{ kind: 'group', name: 'walls', marks: walls.map(v => v.mark) }, ...tops]
}

function spots(
  ring: Float64Array,
  lift: number,
  put: (x: number, y: number, lift: number) => Spot
): Float64Array {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) out.set(put(ring[k]!, ring[k + 1]!, lift), k)
  return out
}

/** The stretches of an outline whose wall turns to the reader, each as one area. */
function wallsOf(
  ring: Float64Array,
  thick: number,
  put: (x: number, y: number, lift: number) => Spot,
  flip: number
): Float64Array[] {
  const foot = thinnedRing(spots(ring, 0, put), STRAY_MM)
  const n = foot.length / 2
  if (n < 3) return []
  // On the sheet an outline runs counter-clockwise, its holes clockwise (the other way round when turned over):
  // a wall faces the reader where its edge runs to the right.
  const faces = (k: number) => flip * (foot[2 * ((k + 1) % n)]! - foot[2 * k]!) > 1e-9
  const start = Array.from({ length: n }, (_, k) => k).find(k => faces(k) && !faces((k + n - 1) % n))
  if (start === undefined) return []
  const out: Float64Array[] = []
  let run: number[] = []
  const close = () => {
    if (run.length === 0) return
    const wall = new Float64Array(4 * run.length)
    run.forEach((k, i) => {
      wall.set([foot[2 * k]!, foot[2 * k + 1]!], 2 * i)
      wall.set([foot[2 * k]!, foot[2 * k + 1]! + thick], 4 * run.length - 2 * i - 2)
    })
    out.push(wall)
    run = []
  }
  for (let i = 0; i < n; i++) {
    const k = (start + i) % n
    if (!faces(k)) {
      close()
      continue
    }
    if (run.length === 0) run.push(k)
    run.push((k + 1) % n)
  }
  close()
  return out
}

// Names in a level, as many to a line as go in.
function namesOf(level: Level, roomMm: number): string[] {
  const names = level.parts
    .filter(p => p.body.kind !== 'marking' || p.body.toMm >= level.toMm - 0.1)
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
