import { FIGURE_OUTLINES } from '../catalogue/figure-outlines.ts'
import { FIGURE_STROKES } from '../catalogue/figure-strokes.ts'
import { bounds } from '../shape/measure.ts'
import { parsePath } from '../shape/path.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY, regionOfRings } from '../shape/region.ts'

/** Height of a capital and of a numeral of strokes, and of a numeral of outlines, in the units of their data. */
const STROKE_HEIGHT = 21
const OUTLINE_HEIGHT = 594

/** Characters that figures can be made of. */
export const FIGURE_CHARACTERS: ReadonlySet<string> = new Set(
  FIGURE_STROKES.map(([c]) => c).filter(c => FIGURE_OUTLINES.some(([o]) => o === c))
)

const strokes = new Map<string, { readonly advance: number; readonly lines: readonly Float64Array[] }>()
for (const [character, advance, lines] of FIGURE_STROKES)
  strokes.set(character, {
    advance,
    lines: lines === '' ? [] : lines.split(', ').map(line => Float64Array.from(line.split(' '), Number))
  })

/** Plan lines of a text of single strokes and its region of outlines are laid alike: about a middle. */
interface Place {
  readonly x: number
  readonly y: number
}

/**
 * A text as single lines, x0,y0,x1,y1,... in mm: numerals and capitals `heightMm` high, the middle of the text along x
 * and of its numerals along y at `at`, reading along x. Characters that are not in {@link FIGURE_CHARACTERS} are left
 * out. Check: in the tests, widths and heights against the data and closed forms.
 */
export function textLines(text: string, at: Place, heightMm: number): Float64Array[] {
  const scale = heightMm / STROKE_HEIGHT
  const lines: Float64Array[] = []
  let from = 0
  for (const character of text) {
    const figure = strokes.get(character)
    if (figure === undefined) continue
    for (const line of figure.lines) lines.push(line.map((v, k) => (k % 2 === 0 ? v + from : v) * scale))
    from += figure.advance
  }
  if (lines.length === 0) return []
  const { minX, maxX } = bounds({ rings: lines })
  const [dx, dy] = [at.x - (minX + maxX) / 2, at.y - heightMm / 2]
  return lines.map(line => line.map((v, k) => v + (k % 2 === 0 ? dx : dy)))
}

/**
 * A text as the region of its outlines, laid as {@link textLines}; curves stray at most `tolMm`.
 * Limits: letters are not set closer in pairs.
 */
export function textRegion(text: string, at: Place, heightMm: number, tolMm: number): Region {
  const scale = heightMm / OUTLINE_HEIGHT
  const rings: Float64Array[] = []
  let from = 0
  for (const character of text) {
    const figure = FIGURE_OUTLINES.find(([c]) => c === character)
    if (figure === undefined) continue
    const [, advance, path] = figure
    for (const ring of outlineOf(path, tolMm / scale)) {
      // y points down in the data.
      rings.push(ring.map((v, k) => (k % 2 === 0 ? (v + from) * scale : -v * scale)))
    }
    from += advance
  }
  if (rings.length === 0) return EMPTY
  const { minX, maxX } = bounds({ rings })
  const [dx, dy] = [at.x - (minX + maxX) / 2, at.y - heightMm / 2]
  const laid = rings.map(ring => ring.map((v, k) => v + (k % 2 === 0 ? dx : dy)))
  return regionOfRings(laid)
}

// Subpaths of an outline are filled whether or not they say that they close.
function outlineOf(path: string, tol: number): Float64Array[] {
  if (path === '') return []
  const { rings, open } = parsePath(`${path.replaceAll('M', 'ZM').slice(1)}Z`, tol)
  return [...rings, ...open]
}
