import { FIGURE_STROKES } from '../catalogue/figure-strokes.ts'
import { bounds } from '../shape/measure.ts'

/** Height of a capital and of a numeral, in the units of the data. */
const STROKE_HEIGHT = 21

const strokes = new Map<string, { readonly advance: number; readonly lines: readonly Float64Array[] }>()
for (const [character, advance, lines] of FIGURE_STROKES)
  strokes.set(character, {
    advance,
    lines: lines === '' ? [] : lines.split(', ').map(line => Float64Array.from(line.split(' '), Number))
  })

/** Where the middle of a text lies on the plan, mm. */
export interface TextPlace {
  readonly x: number
  readonly y: number
}

/**
 * A text as single lines, x0,y0,x1,y1,... in mm: numerals and capitals `heightMm` high, the middle of the text along x
 * and of its numerals along y at `at`, reading along x. Characters without figures are left out. Check: in the tests, widths and heights against the data and closed forms.
 */
export function textLines(text: string, at: TextPlace, heightMm: number): Float64Array[] {
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
