import { quote } from './drawing-error.ts'
import { multiply } from './matrix.ts'
import type { Region } from './region.ts'
import type { SvgDocument, SvgNode } from './svg-document.ts'
import { readDocument } from './svg-document.ts'
import { Drawing } from './svg-draw.ts'
import { placed, START, SvgError } from './svg-error.ts'
import type { SvgShape } from './svg-regions.ts'
import { regionsOf } from './svg-regions.ts'
import type { Skipped } from './svg-skipped.ts'
import { pageOf } from './svg-viewport.ts'

export { SvgError } from './svg-error.ts'
export type { SvgShape } from './svg-regions.ts'
export type { Skipped } from './svg-skipped.ts'

/** What an SVG text draws, mm, y up: the SVG point (x, y) of the page comes to (x, −y). */
export interface SvgReading {
  /** In the order they are drawn. */
  readonly shapes: readonly SvgShape[]
  /** All shapes together. */
  readonly region: Region
  /** What was not drawn as SVG would; at most 1000 entries, a last one says how many more. */
  readonly skipped: readonly Skipped[]
  /** Size of the page. */
  readonly widthMm: number
  readonly heightMm: number
  /** What was taken for granted about its size. */
  readonly assumed: readonly string[]
}

export interface SvgOptions {
  /** Most a chord may stray from its curve, mm. */
  readonly tolMm: number
  /** Only the element with this id, and what is in it. */
  readonly id?: string
}

/**
 * Reads the plane shapes of an SVG text (SVG 1.1 with what SVG 2 changed; W3C; memory).
 *
 * Read: path, rect, circle, ellipse, polygon, polyline, line; g, a, switch, nested svg, symbol and `use` within
 * the file; transform; viewBox, preserveAspectRatio and physical units; fill-rule, fill, stroke, display and
 * visibility, from attributes and `style`. Closed lines enclose whether filled or stroked; open ones enclose when
 * filled, closed by a straight line as SVG fills them.
 *
 * Not read, and listed in `skipped`: text, pictures, style sheets, clipping, masks, animation, foreign content.
 * Never loaded: anything outside the text. Refused: DOCTYPE, and whatever goes beyond these bounds: 8 million
 * characters, 50 000 elements (copies by `use` counted), 64 levels, 10 000 expansions of `use`, 2 million points,
 * numbers of 1e7, coordinates of 1 km, 200 000 crossings.
 *
 * Limits: the width of strokes is ignored, a shape is its outline; shapes lying over each other count together, so
 * a hole must be in one path with its outline; nothing is cut off at the edge of the page or of a nested view.
 *
 * @throws SvgError with line and column: not SVG, unreadable attributes, beyond a bound, no drawn element of `id`
 */
export function readSvg(text: string, { tolMm, id }: SvgOptions): SvgReading {
  if (!(tolMm > 0 && Number.isFinite(tolMm))) throw new Error(`a tolerance of ${tolMm} mm; allowed: above 0`)
  const document = readDocument(text)
  const { root } = document
  const page = placed(root, 'svg: ', () => pageOf(root))
  const wanted = id === undefined ? null : elementOf(document, id)
  const drawing = new Drawing(document, tolMm, wanted)
  drawing.run(page, multiply([1, 0, 0, -1, 0, 0], page.toMm))
  if (!drawing.reached) {
    throw new SvgError(
      wanted ?? START,
      `the element ${quote(id ?? '')}, which is not drawn where it stands (it is hidden, or a definition for use); ` +
        'allowed: the id of an element that is drawn, or of the use that draws it'
    )
  }
  const { shapes, region } = regionsOf(drawing.drawn, root)
  return {
    shapes,
    region,
    skipped: drawing.skipped.list(),
    widthMm: page.widthMm,
    heightMm: page.heightMm,
    assumed: page.assumed
  }
}

function elementOf(document: SvgDocument, id: string): SvgNode {
  const found = document.byId.get(id)
  if (found !== undefined) return found
  const ids = [...document.byId.keys()]
  const some = ids.slice(0, 12).map(quote).join(', ')
  throw new SvgError(
    document.root,
    `no element with the id ${quote(id)}; allowed: ${ids.length === 0 ? 'none, the file has no ids' : `one of ${some}${ids.length > 12 ? ' …' : ''}`}`
  )
}
