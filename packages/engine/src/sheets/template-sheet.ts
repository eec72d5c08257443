import type { Template } from '../cuts/hand/template.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsIn } from '../piece/lengths.ts'
import { METRIC } from '../quantity/shown-units.ts'
import { bounds } from '../shape/measure.ts'
import type { Bounds } from '../shape/region.ts'
import { clipLines } from './clip-line.ts'
import type { Ink, Mark, Sheet, Spot } from './mark.ts'
import { box, line, text } from './mark.ts'
import type { Paper, Tile } from './tile.ts'
import { MARGIN, OVERLAP_MM, tilingOf } from './tile.ts'

/** The check bars: how long, and their ticks. 4 in are 101.6 mm. */
const BARS = {
  mm: { says: '100 mm', stepMm: 10, steps: 10 },
  in: { says: '4 in', stepMm: 12.7, steps: 8 }
} as const
const TITLE_MM = 4.5
const WORDS_MM = 3
const LEADING_MM = 4.4
/** How many lines of words stand under a drawing at most. */
const MOST_LINES = 6

/** A template on paper in its true size: as many sheets as it takes, each with its bars and its joins. */
export function templateSheets(
  template: Template,
  piece: string,
  paper: Paper,
  lengths: Lengths = lengthsIn(METRIC)
): Sheet[] {
  const strokes = strokesOf(template)
  const shows = (w: Bounds) =>
    strokes.some(s => s.ink !== 'hardware' && clipLines([ringOf(w)], s.lines).length > 0)
  const { tiles, widthMm, heightMm } = tilingOf(template.scope, paper, shows)
  return tiles.map(tile => ({
    widthMm,
    heightMm,
    marks: [
      ...drawn(template, strokes, tile, lengths),
      ...joins(tile),
      ...checkBars(lengths.unit),
      ...wordsOf({ ...template, says: template.says.map(lengths.beside) }, piece, tile, tiles.length, widthMm)
    ]
  }))
}

interface Stroke {
  readonly ink: Ink
  readonly lines: readonly Float64Array[]
  readonly widthMm?: number
}

function strokesOf(t: Template): Stroke[] {
  const closed = (rings: readonly Float64Array[]) => rings.map(r => Float64Array.of(...r, r[0]!, r[1]!))
  const crosses = t.holes.flatMap(h => {
    const arm = h.diameterMm / 2 + 5
    return [Float64Array.of(h.x - arm, h.y, h.x + arm, h.y), Float64Array.of(h.x, h.y - arm, h.x, h.y + arm)]
  })
  return [
    // The edge of the piece where it is not what is drawn.
    ...(t.kind === 'outline' ? [] : [{ ink: 'hardware' as const, lines: closed(t.edge.rings) }]),
    { ink: 'outline', lines: closed(t.cutOut.rings) },
    { ink: t.kind === 'drawing' ? 'outline' : 'hidden', lines: closed(t.drawn.rings) },
    { ink: t.kind === 'drawing' ? 'outline' : 'axis', lines: [...t.lines, ...middle(t)] },
    { ink: 'axis', lines: crosses }
  ]
}

// The middle lines of an opening: what it is laid on the work by.
function middle(t: Template): Float64Array[] {
  if (t.kind !== 'opening') return []
  const { minX, minY, maxX, maxY } = t.scope
  const [cx, cy] = [(minX + maxX) / 2, (minY + maxY) / 2]
  return [Float64Array.of(minX, cy, maxX, cy), Float64Array.of(cx, minY, cx, maxY)]
}

const ringOf = (w: Bounds) => box(w.minX, w.minY, w.maxX, w.maxY)

function drawn(t: Template, strokes: readonly Stroke[], { window: w }: Tile, L: Lengths): Mark[] {
  const [dx, dy] = [MARGIN.left - w.minX, MARGIN.near - w.minY]
  const out: Mark[] = []
  for (const s of strokes) {
    const lines = clipLines([ringOf(w)], s.lines).map(l => l.map((v, k) => v + (k % 2 === 0 ? dx : dy)))
    if (lines.length > 0) out.push({ kind: 'path', ink: s.ink, lines })
  }
  const corner = bounds(t.edge)
  const from = t.from ?? { x: corner.minX, y: corner.minY }
  // What a machine is told is told to the hundredth.
  const places = t.kind === 'pins' ? 2 : 1
  for (const h of t.holes) {
    const r = h.diameterMm / 2
    if (h.x - r < w.minX || h.x + r > w.maxX || h.y - r < w.minY || h.y + r > w.maxY) continue
    const words = `Ø ${L.of(h.diameterMm, places)}: ${L.of(h.x - from.x, places)} / ${L.of(h.y - from.y, places)}`
    out.push({ kind: 'circle', ink: 'outline', at: [h.x + dx, h.y + dy], radiusMm: r })
    out.push(text([h.x + dx + r + 1.5, h.y + dy + 1.5], words, { heightMm: WORDS_MM }))
  }
  for (const n of t.figures) {
    if (n.x < w.minX || n.x > w.maxX || n.y < w.minY || n.y > w.maxY) continue
    // Figures stand on a line 0.36 of their height under their middle.
    out.push(
      text([n.x + dx, n.y + dy - 0.36 * n.heightMm], n.text, {
        heightMm: n.heightMm,
        anchor: 'middle',
        lettering: 'numeral'
      })
    )
  }
  return out
}

// Crop marks at the corners of the window; where a neighbour joins, the line to cut one of the two along.
function joins({ window: w, left, right, near, far }: Tile): Mark[] {
  const [x0, y0] = [MARGIN.left, MARGIN.near]
  const [x1, y1] = [x0 + w.maxX - w.minX, y0 + w.maxY - w.minY]
  const out: Mark[] = []
  for (const [x, sx] of [
    [x0, 1],
    [x1, -1]
  ] as const)
    for (const [y, sy] of [
      [y0, 1],
      [y1, -1]
    ] as const)
      out.push(line('dimension', [x, y], [x + 5 * sx, y]), line('dimension', [x, y], [x, y + 5 * sy]))
  const half = OVERLAP_MM / 2
  const cut = (from: Spot, to: Spot, number: number, at: Spot, turnDeg: number) =>
    out.push(
      line('cutting-plane', from, to),
      text(at, `joins sheet ${number} along this line`, { heightMm: 2.5, anchor: 'middle', turnDeg })
    )
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2]
  if (left !== null) cut([x0 + half, y0], [x0 + half, y1], left, [x0 + half - 1.2, cy], 90)
  if (right !== null) cut([x1 - half, y0], [x1 - half, y1], right, [x1 - half + 3.4, cy], 90)
  if (near !== null) cut([x0, y0 + half], [x1, y0 + half], near, [cx, y0 + half - 3.4], 0)
  if (far !== null) cut([x0, y1 - half], [x1, y1 - half], far, [cx, y1 - half + 1.2], 0)
  return out
}

// One along each axis: a printer may stretch one of them alone. In the shop's unit: it is what the rule at hand shows.
function checkBars(unit: 'mm' | 'in'): Mark[] {
  const { says, stepMm, steps } = BARS[unit]
  const long = steps * stepMm
  const [x, y] = [MARGIN.left, 9]
  const out: Mark[] = [line('outline', [x, y], [x + long, y])]
  const [vx, vy] = [9, MARGIN.near]
  out.push(line('outline', [vx, vy], [vx, vy + long]))
  for (let k = 0; k <= steps; k++) {
    const tick = k % (steps / 2) === 0 ? 3 : 1.8
    const at = k * stepMm
    out.push(
      line('outline', [x + at, y], [x + at, y + tick]),
      line('outline', [vx, vy + at], [vx + tick, vy + at])
    )
  }
  const words = `this bar is ${says}: measure it first; print without fitting to the page`
  out.push(text([x + long + 3, y], words, { heightMm: 2.4 }))
  out.push(
    text([vx - 1.2, vy + long / 2], `${says} here too`, { heightMm: 2.4, anchor: 'middle', turnDeg: 90 })
  )
  return out
}

const TITLES = {
  opening: 'Template opening',
  slot: 'Template slot',
  outline: 'Outline',
  centres: 'Centres of holes',
  drawing: 'Drawing, sent out',
  pins: 'Pins'
} as const

function wordsOf(t: Template, piece: string, tile: Tile, of: number, widthMm: number): Mark[] {
  const x = MARGIN.left
  let y = MARGIN.near - 6.5
  const out: Mark[] = [
    text([x, y], `${TITLES[t.kind]}: ${t.name}`, { heightMm: TITLE_MM, strong: true }),
    text([widthMm - MARGIN.right, y], `sheet ${tile.number} of ${of}`, { heightMm: WORDS_MM, anchor: 'end' })
  ]
  y -= LEADING_MM + 0.8
  const room = widthMm - x - MARGIN.right
  const lines = [`${piece}; ${t.face} up, as it lies, 1 : 1. ${joinWords(tile)}`.trim(), ...t.says].flatMap(
    s => wrapped(s, room)
  )
  const kept =
    lines.length > MOST_LINES ? [...lines.slice(0, MOST_LINES - 1), 'More stands on the run sheet.'] : lines
  for (const words of kept) {
    out.push(text([x, y], words, { heightMm: WORDS_MM }))
    y -= LEADING_MM
  }
  return out
}

function joinWords({ left, right, near, far }: Tile): string {
  const list = [
    [left, 'on its left'],
    [right, 'on its right'],
    [far, 'beyond it'],
    [near, 'before it']
  ].flatMap(([number, where]) => (number === null ? [] : [`${number} ${where}`]))
  return list.length === 0 ? '' : `Joins ${list.join(', ')}.`
}

/** Mean width of a sign by the height of the type: on the wide side, for type that is not ours. */
const SIGN_SHARE = 0.52

function wrapped(words: string, roomMm: number): string[] {
  const most = Math.floor(roomMm / (WORDS_MM * SIGN_SHARE))
  const out: string[] = []
  let now = ''
  for (const word of words.split(' ')) {
    if (now !== '' && now.length + 1 + word.length > most) {
      out.push(now)
      now = word
    } else now = now === '' ? word : `${now} ${word}`
  }
  return now === '' ? out : [...out, now]
}
