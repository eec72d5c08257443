import type { Matrix } from './matrix.ts'
import { multiply } from './matrix.ts'
import { place, size } from './svg-basic.ts'
import type { SvgNode } from './svg-document.ts'
import { readTransform, shift, within } from './svg-transform.ts'
import type { Viewport } from './svg-viewport.ts'
import { fit, readViewBox } from './svg-viewport.ts'

/** The view inside an element, and the map from its user units to mm. */
export interface Inside {
  readonly matrix: Matrix
  readonly view: Viewport
}

/**
 * The view a nested `svg`, or a `symbol` or `svg` that a `use` draws, opens within the one `around` it; null
 * when it has no size. A `use` gives it its own width and height; a symbol without them fills the view, and
 * has no place of its own (SVG 1.1, sections 5.5, 5.6 and 7.9; memory).
 *
 * @param user the `use`, or the nested svg itself
 * @throws DrawingError for attributes that cannot be read
 */
export function nestedView(node: SvgNode, user: SvgNode, around: Inside): Inside | null {
  const { view } = around
  const symbol = node.tag === 'symbol'
  const extent = (name: 'width' | 'height'): number =>
    size(user, name, view[name]) ?? (symbol ? null : size(node, name, view[name])) ?? view[name]
  const width = extent('width')
  const height = extent('height')
  const box = readViewBox(node)
  if (width === 0 || height === 0 || box?.width === 0 || box?.height === 0) return null
  // A nested svg that is drawn where it stands has had its transform already.
  const own = user === node ? undefined : node.attributes.get('transform')
  let matrix = own === undefined ? around.matrix : multiply(around.matrix, readTransform(own))
  if (!symbol) matrix = multiply(matrix, shift(place(node, 'x', view.width), place(node, 'y', view.height)))
  if (box !== null) matrix = multiply(matrix, fit(node, box, width, height))
  return { matrix: within(matrix), view: box ?? { width, height } }
}
