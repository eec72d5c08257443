import { hatchLines } from './hatch.ts'
import type { Ink, Mark, Paint, Sheet, Spot } from './mark.ts'
import { helveticaWidthMm, pdfString } from './pdf-type.ts'

/**
 * Sheets as one PDF file, a page each, in true size (ISO 32000-1:2008; memory): uncompressed content streams, type of
 * the fourteen standard fonts, a cross-reference table, no date and no identifier: the same sheets give the same bytes.
 * A unit of a page is 1/72 in: content is scaled by 72/25.4 and written in mm from the lower left, as marks are.
 *
 * Limits: pictures are left out; washes are not drawn, materials' colours are.
 */
export function pdfDocument(sheets: readonly Sheet[], title: string): Uint8Array {
  const objects: string[] = []
  const add = (body: string) => objects.push(body)
  // 1 catalogue, 2 pages, 3 and 4 fonts, 5 information; then page and content in turn.
  const first = 6
  const kids = sheets.map((_, k) => `${first + 2 * k} 0 R`)
  add('<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None >> >>')
  add(`<< /Type /Pages /Kids [${kids.join(' ')}] /Count ${sheets.length} >>`)
  for (const name of ['Helvetica', 'Helvetica-Bold'])
    add(`<< /Type /Font /Subtype /Type1 /BaseFont /${name} /Encoding /WinAnsiEncoding >>`)
  add(`<< /Title ${pdfString(title)} /Producer (Castwright) >>`)
  for (const [k, sheet] of sheets.entries()) {
    const box = `[0 0 ${points(sheet.widthMm)} ${points(sheet.heightMm)}]`
    add(
      `<< /Type /Page /Parent 2 0 R /MediaBox ${box} /Resources << /Font << /F1 3 0 R /F2 4 0 R >> >> /Contents ${first + 2 * k + 1} 0 R >>`
    )
    const content = contentOf(sheet)
    add(`<< /Length ${content.length} >>\nstream\n${content}\nendstream`)
  }
  return bytesOf(objects)
}

const POINTS_PER_MM = 72 / 25.4

function points(mm: number): string {
  return number(mm * POINTS_PER_MM, 4)
}

// Header with four bytes above 127, so that it is carried as binary; bodies; table; trailer. All signs are one byte.
function bytesOf(objects: readonly string[]): Uint8Array {
  let text = '%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n'
  const starts: number[] = []
  for (const [k, body] of objects.entries()) {
    starts.push(text.length)
    text += `${k + 1} 0 obj\n${body}\nendobj\n`
  }
  const table = text.length
  const rows = starts.map(at => `${String(at).padStart(10, '0')} 00000 n \n`).join('')
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows}`
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R /Info 5 0 R >>\nstartxref\n${table}\n%%EOF\n`
  const out = new Uint8Array(text.length)
  for (let k = 0; k < text.length; k++) out[k] = text.charCodeAt(k)
  return out
}

/** Colour of all lines and letters: that of the sheets. */
const GRAPHITE = '#292724'
const WIDE: ReadonlySet<Ink> = new Set(['outline', 'cutting-plane-end'])
/** Dashes in line widths as in svg.ts, mm. */
const DASHES: Partial<Record<Ink, string>> = {
  hidden: '2.16 .54',
  axis: '4.3 .54 .1 .54',
  'cutting-plane': '4.3 .54 .1 .54',
  hardware: '4.3 .54 .1 .54 .1 .54'
}

function contentOf(sheet: Sheet): string {
  const scale = number(POINTS_PER_MM, 8)
  return [`q ${scale} 0 0 ${scale} 0 0 cm 1 j`, ...sheet.marks.flatMap(markOf), 'Q'].join('\n')
}

function markOf(m: Mark): string[] {
  switch (m.kind) {
    case 'line':
      return [...pen(m.ink), `${at(m.from)} m ${at(m.to)} l S`]
    case 'path':
      return [
        ...pen(m.ink, m.widthMm, m.paint),
        `${m.lines.map(l => path(l, m.closed ?? false)).join(' ')} S`
      ]
    case 'region': {
      const d = m.rings.map(r => path(r, true)).join(' ')
      const fill = m.paint?.startsWith('#') ? [`${colour(m.paint)} rg`, `${d} f*`] : []
      const hatch = m.hatch === null ? [] : hatchLines(m.rings, m.hatch)
      const lines =
        hatch.length === 0 ? [] : [...pen('hatch'), `${hatch.map(l => path(l, false)).join(' ')} S`]
      return m.rings.length === 0
        ? []
        : [...fill, ...lines, ...(m.edge === null ? [] : [...pen(m.edge), `${d} S`])]
    }
    case 'circle':
      return [...pen(m.ink), `${colour(GRAPHITE)} rg`, `${circle(m.at, m.radiusMm)} ${m.filled ? 'f' : 'S'}`]
    case 'arrow': {
      const a = (m.directionDeg * Math.PI) / 180
      const back = (off: number): Spot => [
        m.at[0] - m.lengthMm * (Math.cos(a) - off * Math.sin(a)),
        m.at[1] - m.lengthMm * (Math.sin(a) + off * Math.cos(a))
      ]
      return [
        `${colour(GRAPHITE)} rg`,
        `${at(m.at)} m ${at(back(ARROW_SLOPE))} l ${at(back(-ARROW_SLOPE))} l h f`
      ]
    }
    case 'text':
      return [lettered(m.text, m.at, m.heightMm, m.anchor, m.strong ?? false, m.turnDeg ?? 0, m.paint)]
    case 'group':
      return m.marks.flatMap(markOf)
    case 'image':
      return []
  }
}

/** As in svg.ts: 15° on each side. */
const ARROW_SLOPE = 0.26

function pen(ink: Ink, widthMm = WIDE.has(ink) ? 0.35 : 0.18, paint?: Paint): string[] {
  const tone = paint?.startsWith('#') ? paint : GRAPHITE
  return [`${number(widthMm, 3)} w [${DASHES[ink] ?? ''}] 0 d ${colour(tone)} RG`]
}

function path(points: Float64Array, closed: boolean): string {
  if (points.length < 2) return ''
  let out = ''
  for (let k = 0; k + 1 < points.length; k += 2)
    out += `${k === 0 ? '' : ' '}${at([points[k]!, points[k + 1]!])} ${k === 0 ? 'm' : 'l'}`
  return closed ? `${out} h` : out
}

/** Handle of a quarter circle drawn as a cubic: 4/3·(√2 − 1); off by 0.03 % of the radius at most. */
const QUARTER = (4 / 3) * (Math.SQRT2 - 1)

function circle([x, y]: Spot, r: number): string {
  const k = QUARTER * r
  const curve = (a: Spot, b: Spot, end: Spot) => `${at(a)} ${at(b)} ${at(end)} c`
  return [
    `${at([x + r, y])} m`,
    curve([x + r, y + k], [x + k, y + r], [x, y + r]),
    curve([x - k, y + r], [x - r, y + k], [x - r, y]),
    curve([x - r, y - k], [x - k, y - r], [x, y - r]),
    curve([x + k, y - r], [x + r, y - k], [x + r, y]),
    'h'
  ].join(' ')
}

function lettered(
  words: string,
  [x, y]: Spot,
  heightMm: number,
  anchor: 'start' | 'middle' | 'end',
  strong: boolean,
  turnDeg: number,
  paint: Paint | undefined
): string {
  const share = anchor === 'start' ? 0 : anchor === 'middle' ? 0.5 : 1
  const back = share * helveticaWidthMm(words, heightMm)
  const a = (turnDeg * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  const matrix = [c, s, -s, c, x - back * c, y - back * s].map(v => number(v, 4)).join(' ')
  const tone = colour(paint?.startsWith('#') ? paint : GRAPHITE)
  return `BT ${tone} rg /F${strong ? 2 : 1} ${number(heightMm, 3)} Tf ${matrix} Tm ${pdfString(words)} Tj ET`
}

function colour(hex: string): string {
  return [1, 3, 5].map(k => number(Number.parseInt(hex.slice(k, k + 2), 16) / 255, 3)).join(' ')
}

function at([x, y]: Spot): string {
  return `${number(x, 3)} ${number(y, 3)}`
}

/** A number in the fewest signs, never with an exponent. @throws Error for what is not a finite number */
function number(value: number, places: number): string {
  if (!Number.isFinite(value)) throw new Error(`a mark at ${value}; a sheet holds finite numbers only`)
  const text = value.toFixed(places)
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text
  return short === '-0' ? '0' : short
}
