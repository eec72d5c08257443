import type { Mark, Sheet } from './mark.ts'
import { box, line, text, textWidthMm } from './mark.ts'
import { mlWords } from './run-mix.ts'
import type { RunSheet } from './run-sheet.ts'
import type { Paper } from './tile.ts'
import { PAPERS } from './tile.ts'

/** Labels on a sheet: columns, rows, and what is left free round them, mm. Cut along the lines. */
const GRID = { columns: 2, rows: 5, marginMm: 8 } as const
const BODY_MM = 3.6
/** Grams and names: as large as four shares leave room for. */
const SHARE_MM = 4.6

interface Label {
  readonly title: string
  readonly cup: string
  readonly shares: readonly (readonly [name: string, words: string])[]
  readonly total: string
  readonly lot: string | null
  readonly foot: string
}

/**
 * A label for each cup that is mixed, in the order of doing: what it is for, what is weighed into it, when it must be out
 * of it, the lot where the shelf leaves no choice, and lines for the lot otherwise and for the time it was mixed. Empty where nothing is mixed, or while a stop stands.
 */
export function cupLabels(sheet: RunSheet, paper: Paper): Sheet[] {
  if (!sheet.written) return []
  const [widthMm, heightMm] = PAPERS[paper]
  const labels = sheet.steps.flatMap(s => {
    const a = s.amounts
    if (a === null) return []
    const out = s.facts.find(f => f.label === 'Out of the vessel within')
    return Array.from(
      { length: a.batches },
      (_, k): Label => ({
        title: `${s.number}  ${s.title}`,
        cup: [
          ...(a.batches === 1 ? [] : [`cup ${k + 1} of ${a.batches}`]),
          ...(a.blanks === 1 ? [] : [`for ${a.blanks} blanks`])
        ].join(' '),
        shares: a.shares.map(
          x => [x.name, `${x.words} g${x.ml === null ? '' : `  (${mlWords(x.ml)} ml)`}`] as const
        ),
        lot: a.lot,
        total: `${a.totalG.toFixed(a.places)} g`,
        foot: out === undefined ? '' : `out of the cup within ${out.value}`
      })
    )
  })
  const each = GRID.columns * GRID.rows
  const w = (widthMm - 2 * GRID.marginMm) / GRID.columns
  const h = (heightMm - 2 * GRID.marginMm) / GRID.rows
  return Array.from({ length: Math.ceil(labels.length / each) }, (_, page) => {
    const own = labels.slice(page * each, (page + 1) * each)
    const marks = own.flatMap((label, k) => {
      const x = GRID.marginMm + (k % GRID.columns) * w
      const y = heightMm - GRID.marginMm - (Math.floor(k / GRID.columns) + 1) * h
      return [
        { kind: 'path', ink: 'dimension', lines: [box(x, y, x + w, y + h)], closed: true } satisfies Mark,
        ...labelMarks(label, sheet.name, x + 4, y + 4, w - 8, h - 8)
      ]
    })
    return { widthMm, heightMm, marks }
  })
}

function labelMarks(l: Label, piece: string, x: number, y: number, w: number, h: number): Mark[] {
  const within = (words: string, mm: number, room: number, strong = false) =>
    Math.min(mm, (mm * room) / Math.max(1, textWidthMm(words, mm, strong)))
  const top = y + h
  const room = l.cup === '' ? w : w - textWidthMm(l.cup, BODY_MM) - 4
  const marks: Mark[] = [
    text([x, top - 5], l.title, { heightMm: within(l.title, 5.5, room, true), strong: true }),
    text([x + w, top - 5], l.cup, { heightMm: BODY_MM, anchor: 'end' }),
    text([x, top - 9.5], piece, { heightMm: within(piece, BODY_MM, w), lettering: 'caption' })
  ]
  const rowMm = Math.min(5.6, (h - 23.5) / (l.shares.length + 1))
  const size = Math.min(SHARE_MM, rowMm * 0.85)
  let at = top - 11.5
  for (const [name, words] of [...l.shares, ['Total', l.total] as const]) {
    at -= rowMm
    marks.push(
      text([x, at], name, { heightMm: within(name, size, w * 0.5), strong: name === 'Total' }),
      text([x + w, at], words, { heightMm: size, anchor: 'end', strong: true })
    )
  }
  const line2 = y + 1.2
  marks.push(
    ...(l.foot === '' ? [] : [text([x, y + 6.4], l.foot, { heightMm: within(l.foot, BODY_MM, w) })]),
    text([x, line2], 'lot', { heightMm: 3, lettering: 'caption' }),
    l.lot === null
      ? line('dimension', [x + 6, line2 - 0.4], [x + w * 0.48, line2 - 0.4])
      : text([x + 6, line2], l.lot, { heightMm: within(l.lot, BODY_MM, w * 0.48 - 6, true), strong: true }),
    text([x + w * 0.52, line2], 'mixed at', { heightMm: 3, lettering: 'caption' }),
    line('dimension', [x + w * 0.52 + 12, line2 - 0.4], [x + w, line2 - 0.4])
  )
  return marks
}
