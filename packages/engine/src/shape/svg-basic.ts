import { DrawingError, quote } from './drawing-error.ts'
import { drawPath } from './path.ts'
import type { Pen } from './pen.ts'
import { numberList } from './scanner.ts'
import type { SvgNode } from './svg-document.ts'
import { readLength, userLength } from './svg-length.ts'
import type { Viewport } from './svg-viewport.ts'

/** Tags that draw a shape. */
export const SHAPES: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'polygon',
  'polyline',
  'line'
])

/**
 * Draws a basic shape or a path (SVG 1.1, chapters 8 and 9; memory). One without size draws nothing, as SVG
 * has it.
 * @throws DrawingError for attributes that cannot be read, and sizes below 0
 */
export function drawShape(node: SvgNode, view: Viewport, pen: Pen): void {
  switch (node.tag) {
    case 'path':
      drawPath(node.attributes.get('d') ?? '', pen)
      break
    case 'rect':
      rectangle(node, view, pen)
      break
    case 'circle': {
      const r = size(node, 'r', diagonal(view)) ?? 0
      ellipse(place(node, 'cx', view.width), place(node, 'cy', view.height), r, r, pen)
      break
    }
    case 'ellipse': {
      const rx = size(node, 'rx', view.width)
      const ry = size(node, 'ry', view.height)
      // SVG 2: one that is missing is as the other.
      ellipse(
        place(node, 'cx', view.width),
        place(node, 'cy', view.height),
        rx ?? ry ?? 0,
        ry ?? rx ?? 0,
        pen
      )
      break
    }
    case 'line':
      pen.moveTo(place(node, 'x1', view.width), place(node, 'y1', view.height))
      pen.lineTo(place(node, 'x2', view.width), place(node, 'y2', view.height))
      pen.finish()
      break
    default:
      corners(node, pen)
  }
}

/** A place along an axis, user units; 0 when not given. @throws DrawingError for what is no length */
export function place(node: SvgNode, name: string, whole: number): number {
  const text = node.attributes.get(name)
  return text === undefined ? 0 : userLength(readLength(text, name), whole)
}

/** A size, user units; null when not given or "auto". @throws DrawingError for what is no length, or below 0 */
export function size(node: SvgNode, name: string, whole: number): number | null {
  const text = node.attributes.get(name)
  if (text === undefined || text.trim() === 'auto') return null
  const value = userLength(readLength(text, name), whole)
  if (value < 0) throw new DrawingError(`${name}=${quote(text)}; allowed: 0 or more`)
  return value
}

// What a percentage that belongs to neither axis is of.
function diagonal(view: Viewport): number {
  return Math.sqrt((view.width ** 2 + view.height ** 2) / 2)
}

function ellipse(cx: number, cy: number, rx: number, ry: number, pen: Pen): void {
  if (rx === 0 || ry === 0) return
  pen.moveTo(cx + rx, cy)
  pen.quarterTo(cx, cy, rx, ry, cx, cy + ry)
  pen.quarterTo(cx, cy, rx, ry, cx - rx, cy)
  pen.quarterTo(cx, cy, rx, ry, cx, cy - ry)
  pen.quarterTo(cx, cy, rx, ry, cx + rx, cy)
  pen.close()
}

function rectangle(node: SvgNode, view: Viewport, pen: Pen): void {
  const x = place(node, 'x', view.width)
  const y = place(node, 'y', view.height)
  const w = size(node, 'width', view.width) ?? 0
  const h = size(node, 'height', view.height) ?? 0
  if (w === 0 || h === 0) return
  const givenX = size(node, 'rx', view.width)
  const givenY = size(node, 'ry', view.height)
  // One that is missing is as the other; neither is more than half a side.
  const rx = Math.min(givenX ?? givenY ?? 0, w / 2)
  const ry = Math.min(givenY ?? givenX ?? 0, h / 2)
  if (rx === 0 || ry === 0) {
    pen.moveTo(x, y)
    pen.lineTo(x + w, y)
    pen.lineTo(x + w, y + h)
    pen.lineTo(x, y + h)
    pen.close()
    return
  }
  const corner = (cx: number, cy: number, toX: number, toY: number) => pen.quarterTo(cx, cy, rx, ry, toX, toY)
  pen.moveTo(x + rx, y)
  pen.lineTo(x + w - rx, y)
  corner(x + w - rx, y + ry, x + w, y + ry)
  pen.lineTo(x + w, y + h - ry)
  corner(x + w - rx, y + h - ry, x + w - rx, y + h)
  pen.lineTo(x + rx, y + h)
  corner(x + rx, y + h - ry, x, y + h - ry)
  pen.lineTo(x, y + ry)
  corner(x + rx, y + ry, x + rx, y)
  pen.close()
}

function corners(node: SvgNode, pen: Pen): void {
  const n = numberList(node.attributes.get('points') ?? '', 'points')
  if (n.length % 2 !== 0) throw new DrawingError(`points with ${n.length} numbers; allowed: pairs`)
  for (let k = 0; k < n.length; k += 2) {
    if (k === 0) pen.moveTo(n[0]!, n[1]!)
    else pen.lineTo(n[k]!, n[k + 1]!)
  }
  if (node.tag === 'polygon' && n.length > 2) pen.close()
  else pen.finish()
}
