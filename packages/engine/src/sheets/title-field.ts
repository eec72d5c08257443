import type { Mark } from './mark.ts'
import { box, CAPTION_MM, line, text, textWidthMm } from './mark.ts'

/** Margins of a drawing sheet, mm: left for binding, the others (ISO 5457; memory). */
export const FRAME = { left: 20, other: 10 } as const
/** Size of the title block, mm: as wide as ISO 7200 asks for (180; memory), four rows. */
export const TITLE = { widthMm: 180, heightMm: 30 } as const

/** One field of a title block: what it is and what stands in it. */
export interface TitleField {
  readonly label: string
  readonly value: string
}

/** Frame of a sheet, and the title block in its lower right corner; the first field is the title. */
export function framed(widthMm: number, heightMm: number, fields: readonly TitleField[]): Mark[] {
  const [x1, y0] = [widthMm - FRAME.other, FRAME.other]
  const x0 = x1 - TITLE.widthMm
  const y1 = y0 + TITLE.heightMm
  const marks: Mark[] = [
    {
      kind: 'path',
      ink: 'outline',
      closed: true,
      lines: [box(FRAME.left, FRAME.other, x1, heightMm - FRAME.other), box(x0, y0, x1, y1)]
    }
  ]
  const [title, ...rest] = fields
  const columns = 4
  const rows = Math.ceil(rest.length / columns)
  const rowMm = (TITLE.heightMm - 11) / Math.max(1, rows)
  marks.push(line('dimension', [x0, y1 - 11], [x1, y1 - 11]))
  if (title !== undefined) marks.push(...field(title, x0, y1 - 11, TITLE.widthMm, 5.5))
  for (const [k, f] of rest.entries()) {
    const column = k % columns
    const x = x0 + (column * TITLE.widthMm) / columns
    const y = y1 - 11 - rowMm * (Math.floor(k / columns) + 1)
    if (column > 0) marks.push(line('dimension', [x, y], [x, y + rowMm]))
    if (column === 0 && k > 0) marks.push(line('dimension', [x0, y + rowMm], [x1, y + rowMm]))
    marks.push(...field(f, x, y, TITLE.widthMm / columns, 3.5))
  }
  return marks
}

function field({ label, value }: TitleField, x: number, y: number, wide: number, heightMm: number): Mark[] {
  const room = wide - 4
  const fits = Math.min(heightMm, (heightMm * room) / Math.max(1, textWidthMm(value, heightMm, heightMm > 4)))
  return [
    text([x + 2, y + heightMm + 2.4], label, { lettering: 'caption', heightMm: CAPTION_MM * 0.75 }),
    text([x + 2, y + 1.6], value, { heightMm: fits, strong: heightMm > 4 })
  ]
}
