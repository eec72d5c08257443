import type { FaceImage, Paper, Sheet } from '@castwright/engine'
import { GRAPHITE, PAPERS } from '@castwright/engine'
import { drawSheet } from './marks.ts'
import type { Blackboard, PrintedOptions } from './printed.ts'
import { addPage, bytesOf, POINTS_PER_MM, printed } from './printed.ts'

const MARGIN = { left: 16, right: 14, top: 14, bottom: 18 } as const
/** What a dash before words takes, mm. */
const DASH_MM = 3.4
const GREY = '#6b665d'
const RED = '#a3341f'
const AMBER = '#8a5a00'

/** Sizes of writing, mm of the body of the type; a line takes 1.2 times that. */
const SIZE = { title: 8, heading: 5.6, row: 4.6, body: 3.9, small: 3.4 } as const
export type Size = keyof typeof SIZE

export interface Words {
  readonly size?: Size
  readonly strong?: boolean
  readonly slanted?: boolean
  readonly tone?: 'graphite' | 'grey' | 'stop' | 'caution'
  /** Words set strong before the others, on the same line. */
  readonly lead?: string
  readonly indentMm?: number
  /** Space under it, mm. */
  readonly afterMm?: number
}

/** How a drawing stands in the flow, and the pictures that its marks name. */
export interface FigureOptions {
  readonly scale?: number
  readonly indentMm?: number
  readonly pictures?: readonly FaceImage[]
}

/**
 * Writing that runs down a page and on to the next: headings, sentences, tables, boxes to tick, drawings. Measures
 * are mm from the left and from the upper edge. What must stay together is asked for with {@link room}.
 */
export class Flow {
  readonly doc: Blackboard
  readonly widthMm: number
  readonly heightMm: number
  private yMm = 0
  private readonly foot: string

  constructor(paper: Paper, foot: string, options: PrintedOptions) {
    this.doc = printed(options)
    ;[this.widthMm, this.heightMm] = PAPERS[paper]
    this.foot = foot
    this.page()
  }

  /** Width between the margins, mm. */
  get measureMm(): number {
    return this.widthMm - MARGIN.left - MARGIN.right
  }

  page(): void {
    addPage(this.doc, this.widthMm, this.heightMm)
    this.yMm = MARGIN.top
  }

  /** Goes on to the next page unless so much is left on this one, mm. @returns whether it did */
  room(heightMm: number): boolean {
    if (this.yMm + heightMm <= this.heightMm - MARGIN.bottom || this.yMm <= MARGIN.top) return false
    this.page()
    return true
  }

  gap(mm: number): void {
    this.yMm += mm
  }

  /** A heading, together with so much of what stands under it, mm. */
  heading(words: string, withMm = 8): void {
    this.room(14 + withMm)
    this.gap(3.5)
    this.say(words, { size: 'heading', strong: true, afterMm: 0.6 })
    this.rule()
    this.gap(1.8)
  }

  rule(tone = GRAPHITE, indentMm = 0): void {
    const y = this.yMm * POINTS_PER_MM
    this.doc.undash().lineWidth(0.5).strokeColor(tone)
    this.doc.moveTo((MARGIN.left + indentMm) * POINTS_PER_MM, y)
    this.doc.lineTo((this.widthMm - MARGIN.right) * POINTS_PER_MM, y)
    this.doc.stroke()
  }

  /** A paragraph over the whole measure. */
  say(words: string, more: Words = {}): void {
    const indent = more.indentMm ?? 0
    const height = this.heightOf(words, this.measureMm - indent, more)
    this.room(height)
    this.write(words, MARGIN.left + indent, this.measureMm - indent, more)
    this.yMm += height + (more.afterMm ?? 1.2)
  }

  /** One of a list: a dash, and words that hang beside it. */
  item(words: string, more: Words = {}): void {
    const indent = more.indentMm ?? 0
    const width = this.measureMm - indent - DASH_MM
    const height = this.heightOf(words, width, more)
    this.room(height)
    this.write('–', MARGIN.left + indent, DASH_MM, more)
    this.write(words, MARGIN.left + indent + DASH_MM, width, more)
    this.yMm += height + (more.afterMm ?? 1.2)
  }

  /** A line with a box to tick before it. */
  tick(words: string, more: Words = {}): void {
    const height = this.heightOf(words, this.measureMm - (more.indentMm ?? 0) - 6, more)
    this.room(height)
    this.box(MARGIN.left + (more.indentMm ?? 0), this.yMm + 0.5, 3.4)
    this.write(words, MARGIN.left + (more.indentMm ?? 0) + 6, this.measureMm - (more.indentMm ?? 0) - 6, more)
    this.yMm += height + (more.afterMm ?? 1.2)
  }

  /** Words at the left, others at the right end of the same line. */
  ends(left: string, right: string, more: Words = {}): void {
    const width = this.measureMm - (more.indentMm ?? 0)
    const rightMm = right === '' ? 0 : Math.min(width * 0.55, this.widthOf(right, {}) + 4)
    const height = Math.max(
      this.heightOf(left, width - rightMm, more),
      right === '' ? 0 : this.heightOf(right, rightMm, {})
    )
    this.room(height)
    this.write(left, MARGIN.left + (more.indentMm ?? 0), width - rightMm, more)
    if (right !== '') {
      // On the line of the first words, whatever their size.
      const down = (SIZE[more.size ?? 'body'] - SIZE.body) * 0.9
      this.yMm += down
      this.write(right, this.widthMm - MARGIN.right - rightMm, rightMm, { tone: 'grey' }, 'right')
      this.yMm -= down
    }
    this.yMm += height + (more.afterMm ?? 0.8)
  }

  /** The head of a sheet: what it is and of which day, and under it the piece. */
  titled(what: string, day: string, name: string): void {
    this.ends(what, day, { strong: true })
    this.say(name, { size: 'title', strong: true, afterMm: 1.5 })
  }

  /** A drawing in its true size times `scale`, at the left or in the middle. */
  figure(sheet: Sheet, { scale = 1, indentMm = 0, pictures = [] }: FigureOptions = {}): void {
    const fit = Math.min(scale, (this.measureMm - indentMm) / sheet.widthMm)
    this.room(sheet.heightMm * fit)
    drawSheet(this.doc, sheet, MARGIN.left + indentMm, this.yMm, { scale: fit, pictures })
    this.yMm += sheet.heightMm * fit + 2
  }

  /** A JPEG of so many px, as high as said at the most, with room for a line under it. */
  photo(jpeg: Uint8Array, [width, height]: readonly [number, number], mostMm: number): void {
    const wide = Math.min(this.measureMm, (mostMm * width) / height)
    const high = (wide * height) / width
    this.room(high + 8)
    this.doc.image(Buffer.from(jpeg), MARGIN.left * POINTS_PER_MM, this.yMm * POINTS_PER_MM, {
      width: wide * POINTS_PER_MM
    })
    this.yMm += high + 1.5
  }

  /** Widths that columns of a table ask for, mm: each the longest of its words, of its text within `mostMm`. */
  widthsOf(head: readonly string[], rows: readonly (readonly string[])[], mostMm: number): number[] {
    const wide = (words: string, more: Words) => this.widthOf(words, more) + 2.2
    return head.map((h, k) => {
      const cells = rows.map(r => r[k] ?? '')
      const unbroken = [
        ...h.split(' ').map(w => wide(w, { size: 'small' })),
        ...cells.flatMap(c => c.split(' ').map(w => wide(w, {})))
      ]
      const whole = Math.max(wide(h, { size: 'small' }), ...cells.map(c => wide(c, {})))
      return Math.max(...unbroken, Math.min(mostMm, whole))
    })
  }

  /** Rows in columns; `share` are widths as parts of the measure. The head stands again on each page. */
  table(
    head: readonly string[],
    rows: readonly (readonly string[])[],
    share: readonly number[],
    more: {
      readonly indentMm?: number
      readonly right?: readonly number[]
      readonly strong?: readonly number[]
    } = {}
  ): void {
    const indent = more.indentMm ?? 0
    const sum = share.reduce((a, b) => a + b, 0)
    const widths = share.map(s => ((this.measureMm - indent) * s) / sum)
    const tall = (cells: readonly string[], w: Words) =>
      Math.max(...cells.map((c, k) => this.heightOf(c, widths[k]! - 2, w)))
    const put = (cells: readonly string[], style: (k: number) => Words): void => {
      let x = MARGIN.left + indent
      for (const [k, cell] of cells.entries()) {
        this.write(cell, x, widths[k]! - 2, style(k), more.right?.includes(k) ? 'right' : 'left')
        x += widths[k]!
      }
    }
    const heads = (): void => {
      if (head.length === 0) return
      const style: Words = { size: 'small', tone: 'grey' }
      put(head, () => style)
      this.yMm += tall(head, style) + 0.5
      this.rule(GREY, indent)
      this.yMm += 0.8
    }
    this.room(16)
    heads()
    for (const cells of rows) {
      const height = tall(cells, {})
      if (this.room(height)) heads()
      put(cells, k => (more.strong?.includes(k) ? { strong: true } : {}))
      this.yMm += height + 0.7
    }
    this.yMm += 1.2
  }

  /** Places to write in: a name, a line, a unit. */
  blanks(
    list: readonly { readonly label: string; readonly unit: string; readonly planned: string | null }[],
    indentMm = 0
  ): void {
    const each = (this.measureMm - indentMm) / 2
    for (let k = 0; k < list.length; k += 2) {
      this.room(8)
      for (const [n, b] of list.slice(k, k + 2).entries()) {
        const x = MARGIN.left + indentMm + n * each
        const said = b.planned === null ? b.label : `${b.label} (plan ${b.planned})`
        const wide = Math.min(this.widthOf(said, {}), each * 0.62)
        const unit = this.widthOf(b.unit, {})
        this.yMm += 1.6
        this.write(said, x, each * 0.65, {})
        this.write(b.unit, x + each - unit - 4, unit + 3, { tone: 'grey' })
        const y = (this.yMm + SIZE.body) * POINTS_PER_MM
        this.doc.lineWidth(0.4).strokeColor(GREY)
        this.doc.moveTo((x + wide + 2) * POINTS_PER_MM, y).lineTo((x + each - unit - 5) * POINTS_PER_MM, y)
        this.doc.stroke()
        this.yMm -= 1.6
      }
      this.yMm += 7
    }
  }

  /** A rule down the left of what `body` writes so far from the margin, as long as it stays on one page. */
  besideRule(tone: 'stop' | 'caution' | 'grey', body: () => void, indentMm = 0): void {
    const from = this.yMm
    const page = this.doc.bufferedPageRange().count
    body()
    if (this.doc.bufferedPageRange().count !== page) return
    const x = (MARGIN.left + indentMm - 2.5) * POINTS_PER_MM
    this.doc.lineWidth(1.6).strokeColor(toneOf(tone))
    this.doc.moveTo(x, from * POINTS_PER_MM).lineTo(x, (this.yMm - 1) * POINTS_PER_MM)
    this.doc.stroke()
  }

  /** Foot on every page, then the bytes. */
  bytes(): Uint8Array {
    const { count } = this.doc.bufferedPageRange()
    for (let k = 0; k < count; k++) {
      this.doc.switchToPage(k)
      this.yMm = this.heightMm - 11
      this.write(this.foot, MARGIN.left, this.measureMm - 30, { size: 'small', tone: 'grey' })
      this.write(
        `${k + 1} of ${count}`,
        this.widthMm - MARGIN.right - 28,
        28,
        { size: 'small', tone: 'grey' },
        'right'
      )
    }
    return bytesOf(this.doc)
  }

  private box(xMm: number, yMm: number, sideMm: number): void {
    this.doc.undash().lineWidth(0.7).strokeColor(GRAPHITE)
    this.doc.rect(xMm * POINTS_PER_MM, yMm * POINTS_PER_MM, sideMm * POINTS_PER_MM, sideMm * POINTS_PER_MM)
    this.doc.stroke()
  }

  private face(more: Words): void {
    this.doc.font(more.strong ? 'strong' : more.slanted ? 'slanted' : 'plain')
    this.doc.fontSize(SIZE[more.size ?? 'body'] * POINTS_PER_MM)
  }

  private widthOf(words: string, more: Words): number {
    this.face(more)
    return this.doc.widthOfString(words) / POINTS_PER_MM
  }

  // A strong lead takes its width from the first line: an indent as long is what the words after it meet.
  private heightOf(words: string, widthMm: number, more: Words): number {
    const width = widthMm * POINTS_PER_MM
    if (more.lead === undefined) {
      this.face(more)
      return this.doc.heightOfString(words, { width }) / POINTS_PER_MM
    }
    this.face({ ...more, strong: true })
    const lead = this.doc.widthOfString(`${more.lead} `)
    // A lead of more than a line is measured strong with all that follows: never too little.
    if (lead > width * 0.9) return this.doc.heightOfString(`${more.lead} ${words}`, { width }) / POINTS_PER_MM
    this.face(more)
    return this.doc.heightOfString(words, { width, indent: lead }) / POINTS_PER_MM
  }

  private write(
    words: string,
    xMm: number,
    widthMm: number,
    more: Words,
    align: 'left' | 'right' = 'left'
  ): void {
    const [x, y] = [xMm * POINTS_PER_MM, this.yMm * POINTS_PER_MM]
    const options = { width: widthMm * POINTS_PER_MM, align }
    this.doc.fillColor(toneOf(more.tone ?? 'graphite'))
    if (more.lead !== undefined) {
      this.face({ ...more, strong: true })
      this.doc.text(`${more.lead} `, x, y, { ...options, continued: true })
      this.face(more)
      this.doc.text(words, options)
      return
    }
    this.face(more)
    this.doc.text(words, x, y, options)
  }
}

function toneOf(tone: NonNullable<Words['tone']>): string {
  return { graphite: GRAPHITE, grey: GREY, stop: RED, caution: AMBER }[tone]
}
