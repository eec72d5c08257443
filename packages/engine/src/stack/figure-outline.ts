import { FIGURE_OUTLINES } from '../catalogue/figure-outlines.ts'
import { FIGURE_STROKES } from '../catalogue/figure-strokes.ts'
import { bounds } from '../shape/measure.ts'
import { parsePath } from '../shape/path.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY, regionOfRings } from '../shape/region.ts'
import type { TextPlace } from './figure-text.ts'

/** Height of a numeral, in the units of the data. */
const OUTLINE_HEIGHT = 594

/** Characters that figures of both kinds can be made of. */
export const FIGURE_CHARACTERS: ReadonlySet<string> = new Set(
  FIGURE_STROKES.map(([c]) => c).filter(c => FIGURE_OUTLINES.some(([o]) => o === c))
)

/**
 * A text as the region of its outlines, laid as `textLines`; curves stray at most `tolMm`.
 * Limits: letters are not set closer in pairs.
 */
export function textRegion(text: string, at: TextPlace, heightMm: number, tolMm: number): Region {
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
