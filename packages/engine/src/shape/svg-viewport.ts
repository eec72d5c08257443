import { DrawingError, quote } from './drawing-error.ts'
import type { Matrix } from './matrix.ts'
import { numberList } from './scanner.ts'
import type { SvgNode } from './svg-document.ts'
import type { Length } from './svg-length.ts'
import { lengthMm, MM_PER_PX, readLength } from './svg-length.ts'
import { within } from './svg-transform.ts'

/** Width and height a percentage is of, user units. */
export interface Viewport {
  readonly width: number
  readonly height: number
}

interface ViewBox extends Viewport {
  readonly x: number
  readonly y: number
}

/** Null without a viewBox. @throws DrawingError for other than four numbers, or a size below 0 */
export function readViewBox(node: SvgNode): ViewBox | null {
  const text = node.attributes.get('viewBox')
  if (text === undefined) return null
  const n = numberList(text, 'viewBox')
  const [x, y, width, height] = n
  if (n.length !== 4 || width! < 0 || height! < 0) {
    throw new DrawingError(`viewBox=${quote(text)}; allowed: x y width height, with sizes of 0 or more`)
  }
  return { x: x!, y: y!, width: width!, height: height! }
}

/**
 * The map from a viewBox to a view of `width` by `height` about its upper left corner.
 *
 * preserveAspectRatio: `meet` scales by the lesser of both ratios, `slice` by the greater, `none` each way on
 * its own; min, mid and max put what is left over behind, on both sides, or before (SVG 1.1, section 7.8;
 * memory). Nothing is cut off at the edge of the view.
 */
export function fit(node: SvgNode, box: ViewBox, width: number, height: number): Matrix {
  const text = (node.attributes.get('preserveAspectRatio') ?? '').trim()
  const found = /^(?:(none)|x(Min|Mid|Max)Y(Min|Mid|Max))(?:[\t\n\f\r ]+(meet|slice))?$/.exec(
    text || 'xMidYMid'
  )
  if (found === null) {
    throw new DrawingError(
      `preserveAspectRatio=${quote(text)}; allowed: none, or xMin, xMid, xMax with YMin, YMid, YMax ` +
        '(written together) and meet or slice'
    )
  }
  const sx = width / box.width
  const sy = height / box.height
  if (found[1] === 'none') return [sx, 0, 0, sy, -sx * box.x, -sy * box.y]
  const s = found[4] === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy)
  const spare = { Min: 0, Mid: 0.5, Max: 1 }
  return [
    s,
    0,
    0,
    s,
    (width - s * box.width) * spare[found[2] as keyof typeof spare] - s * box.x,
    (height - s * box.height) * spare[found[3] as keyof typeof spare] - s * box.y
  ]
}

/** The outermost view: its size, the map from its user units to mm (y still down), and what had to be assumed. */
export interface Page extends Viewport {
  readonly widthMm: number
  readonly heightMm: number
  readonly toMm: Matrix
  readonly assumed: readonly string[]
}

/** Size of a drawing that gives none, px (CSS 2.1, section 10.3.2 "inline, replaced elements"; memory). */
const DEFAULT_PX: Viewport = { width: 300, height: 150 }

const PX_SAID = 'taken as px of 1/96 in (some programs meant 1/72 or 1/90 in: give width and height in mm)'

/** @throws DrawingError for sizes that are no length, or not above 0 */
export function pageOf(root: SvgNode): Page {
  const assumed: string[] = []
  const box = readViewBox(root)
  if (box !== null && !(box.width > 0 && box.height > 0)) {
    throw new DrawingError(`viewBox=${quote(root.attributes.get('viewBox')!)}; allowed: sizes above 0`)
  }
  const width = sizeOf(root, 'width')
  const height = sizeOf(root, 'height')
  if (width?.unit === '' || height?.unit === '') assumed.push(`width and height without a unit: ${PX_SAID}`)
  let widthMm = width && lengthMm(width)
  let heightMm = height && lengthMm(height)
  if (widthMm === null && heightMm === null) {
    const given = box ?? DEFAULT_PX
    widthMm = given.width * MM_PER_PX
    heightMm = given.height * MM_PER_PX
    assumed.push(
      box === null
        ? `no size: user units ${PX_SAID}, the page as ${given.width} by ${given.height} px`
        : `no size in a fixed unit: units of the viewBox ${PX_SAID}`
    )
  } else if (widthMm === null || heightMm === null) {
    const given = box ?? DEFAULT_PX
    assumed.push(
      `no ${widthMm === null ? 'width' : 'height'} in a fixed unit: taken in the proportion of ` +
        (box === null ? `${given.width} to ${given.height}` : 'the viewBox')
    )
    if (widthMm === null) widthMm = (heightMm! * given.width) / given.height
    else heightMm = (widthMm * given.height) / given.width
  }
  return {
    widthMm,
    heightMm: heightMm!,
    width: box?.width ?? widthMm / MM_PER_PX,
    height: box?.height ?? heightMm! / MM_PER_PX,
    toMm: box === null ? [MM_PER_PX, 0, 0, MM_PER_PX, 0, 0] : within(fit(root, box, widthMm, heightMm!)),
    assumed
  }
}

function sizeOf(root: SvgNode, name: 'width' | 'height'): Length | null {
  const text = root.attributes.get(name)
  if (text === undefined || text.trim() === 'auto') return null
  const length = readLength(text, name)
  if (!(length.value > 0)) throw new DrawingError(`${name}=${quote(text)}; allowed: above 0`)
  return length
}
