import { hatchLines } from './hatch.ts'
import type { Ink, Mark, Paint, Sheet } from './mark.ts'
import { arrowhead, GRAPHITE, OWN_INKS, penOf, WASHES } from './pen.ts'

/**
 * Marks as SVG (SVG 1.1; memory): one user unit is 1 mm, y turned down, numbers to a hundredth of a millimetre.
 * Pure text; the same marks give the same bytes. Inks become classes `i-...`, lettering `l-...`, washes `w-...`:
 * a stylesheet colours them; material colours are presentation attributes.
 */

/** The body of a drawing, for a page that has its own `<svg>` element. */
export function svgBody(sheet: Sheet): string {
  return new Writer(sheet.heightMm).all(sheet.marks)
}

/** Marks without a sheet, y up from `heightMm` above the upper edge. */
export function svgMarks(marks: readonly Mark[], heightMm: number): string {
  return new Writer(heightMm).all(marks)
}

/** A file of its own: physical size, a title for those who do not see it, and a plain stylesheet. */
export function svgDocument(sheet: Sheet, title: string): string {
  const w = hundredths(sheet.widthMm)
  const h = hundredths(sheet.heightMm)
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" role="img">`,
    `<title>${escapeXml(title)}</title>`,
    `<style>${PLAIN_STYLE}</style>`,
    svgBody(sheet),
    '</svg>\n'
  ].join('')
}

/** What XML takes for something else is written as entities; what XML cannot hold at all is left out. */
export function escapeXml(words: string): string {
  return words
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;')
}

/** A number to a hundredth, in the fewest signs. @throws Error for what is not a finite number */
export function hundredths(mm: number): string {
  if (!Number.isFinite(mm)) throw new Error(`a mark at ${mm}; a sheet holds finite numbers only`)
  return whole(Math.round(mm * 100))
}

// A whole number of hundredths: 1250 -> "12.5", -7 -> "-.07".
function whole(h: number): string {
  const sign = h < 0 ? '-' : ''
  const n = Math.abs(h)
  const rest = n % 100
  const units = Math.floor(n / 100)
  if (rest === 0) return n === 0 ? '0' : `${sign}${units}`
  const tail = rest % 10 === 0 ? `${rest / 10}` : String(rest).padStart(2, '0')
  return `${sign}${units === 0 ? '' : units}.${tail}`
}

const ANCHOR = { start: '', middle: ' text-anchor="middle"', end: ' text-anchor="end"' } as const

class Writer {
  readonly heightMm: number

  constructor(heightMm: number) {
    this.heightMm = heightMm
  }

  all(marks: readonly Mark[]): string {
    return marks.map(m => this.one(m)).join('')
  }

  private x(x: number): string {
    return hundredths(x)
  }

  private y(y: number): string {
    return hundredths(this.heightMm - y)
  }

  private one(m: Mark): string {
    switch (m.kind) {
      case 'line':
        return `<path class="i-${m.ink}" d="${this.path([Float64Array.of(...m.from, ...m.to)], false)}"/>`
      case 'path': {
        const own = m.widthMm === undefined ? '' : ` stroke-width="${hundredths(m.widthMm)}"`
        return `<path class="i-${m.ink}${wash(m.paint)}"${own}${tone('stroke', m.paint)} d="${this.path(m.lines, m.closed ?? false)}"/>`
      }
      case 'region': {
        if (m.rings.length === 0) return ''
        const d = this.path(m.rings, true)
        const area =
          m.paint === null
            ? ''
            : `<path class="area${wash(m.paint)}" fill-rule="evenodd"${tone('fill', m.paint)}${m.bleeds ? `${tone('stroke', m.paint)} stroke-width=".12"` : ''} d="${d}"/>`
        const lines = m.hatch === null ? [] : hatchLines(m.rings, m.hatch)
        const ink = m.hatch?.kind === 'dots' ? 'dot' : 'hatch'
        const hatch = lines.length === 0 ? '' : `<path class="i-${ink}" d="${this.path(lines, false)}"/>`
        const edge = m.edge === null ? '' : `<path class="i-${m.edge}" d="${d}"/>`
        return area + hatch + edge
      }
      case 'text': {
        const [x, y] = [this.x(m.at[0]), this.y(m.at[1])]
        const turn = m.turnDeg ? ` transform="rotate(${hundredths(-m.turnDeg)} ${x} ${y})"` : ''
        const strong = m.strong ? ' font-weight="700"' : ''
        return `<text class="l-${m.lettering}" x="${x}" y="${y}" font-size="${hundredths(m.heightMm)}"${ANCHOR[m.anchor]}${strong}${tone('fill', m.paint)}${turn}>${escapeXml(m.text)}</text>`
      }
      case 'circle':
        return `<circle class="i-${m.ink}${m.filled ? ' full' : ''}" cx="${this.x(m.at[0])}" cy="${this.y(m.at[1])}" r="${hundredths(m.radiusMm)}"/>`
      case 'arrow':
        return `<path class="i-${m.ink} full" d="${this.path([arrowhead(m.at, m.directionDeg, m.lengthMm)], true)}"/>`
      case 'image':
        return `<image x="${this.x(m.at[0])}" y="${this.y(m.at[1] + m.heightMm)}" width="${hundredths(m.widthMm)}" height="${hundredths(m.heightMm)}" preserveAspectRatio="none" href="${escapeXml(m.href)}"/>`
      case 'group':
        return `<g class="${escapeXml(m.name)}">${this.all(m.marks)}</g>`
    }
  }

  // Absolute starts and relative steps between rounded points: short, and rounding does not add up.
  private path(lines: readonly Float64Array[], closed: boolean): string {
    let d = ''
    for (const points of lines) {
      if (points.length < 2) continue
      let px = Math.round(finite(points[0]!) * 100)
      let py = Math.round((this.heightMm - finite(points[1]!)) * 100)
      d += `M${whole(px)} ${whole(py)}`
      let steps = ''
      for (let k = 2; k + 1 < points.length; k += 2) {
        const x = Math.round(finite(points[k]!) * 100)
        const y = Math.round((this.heightMm - finite(points[k + 1]!)) * 100)
        if (x === px && y === py) continue
        steps += `${steps === '' ? '' : ' '}${whole(x - px)} ${whole(y - py)}`
        px = x
        py = y
      }
      // A dot: a step of nothing, which round ends make visible.
      d += steps === '' ? (closed ? '' : 'h0') : `l${steps}`
      if (closed) d += 'z'
    }
    return d
  }
}

function finite(mm: number): number {
  if (!Number.isFinite(mm)) throw new Error(`a mark at ${mm}; a sheet holds finite numbers only`)
  return mm
}

function wash(paint: Paint | null | undefined): string {
  return paint === null || paint === undefined || paint.startsWith('#') ? '' : ` w-${paint}`
}

function tone(attribute: 'fill' | 'stroke', paint: Paint | null | undefined): string {
  return paint?.startsWith('#') ? ` ${attribute}="${escapeXml(paint)}"` : ''
}

// What a pen does otherwise than a narrow continuous line. Widths and colours that stand at the mark itself stay.
function penStyle(ink: Ink): string {
  const { widthMm, dashesMm, colour, strength, roundEnds } = penOf(ink)
  const rules = [
    ['stroke-dasharray', dashesMm?.map(hundredths).join(' ')],
    ['stroke-linecap', roundEnds ? 'round' : undefined],
    ['opacity', strength === 1 ? undefined : hundredths(strength)]
  ].flatMap(([name, value]) => (value === undefined ? [] : [`${name}:${value}`]))
  return [
    colour === GRAPHITE ? '' : `.i-${ink}:not([stroke]){stroke:${colour}}`,
    `.i-${ink}:not([stroke-width]){stroke-width:${hundredths(widthMm)}}`,
    rules.length === 0 ? '' : `.i-${ink}{${rules.join(';')}}`
  ].join('')
}

// A rule for a class counts for more than those for elements without an attribute only when it names two things.
const PLAIN_STYLE = [
  `path:not([fill]),circle{fill:none}path:not([stroke]),circle{stroke:${GRAPHITE}}path:not([stroke-width]),circle{stroke-width:${hundredths(penOf('edge').widthMm)}}`,
  `.area:not([stroke]){stroke:none}path.full,circle.full{fill:${GRAPHITE};stroke:none}text{font-family:sans-serif;fill:${GRAPHITE}}`,
  ...OWN_INKS.map(penStyle),
  ...[...WASHES].map(
    ([name, { colour, strength }]) =>
      `.area.w-${name}{fill:${colour}${strength === 1 ? '' : `;opacity:${hundredths(strength)}`}}`
  )
].join('')
