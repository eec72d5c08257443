import type { Patch } from '../piece/patch.ts'
import type { PieceDocument } from '../piece/piece-schema.ts'
import type { Files } from '../piece/region.ts'
import type { ShapeDocument } from '../piece/shape-field.ts'
import type { Change } from './board.ts'
import type { Handle, ShapeChange } from './shape-resize.ts'
import { handlesOf, shapeResized } from './shape-resize.ts'

/**
 * The frame of a shape: the upright box about it in its own position before it is turned, as numbers that can be
 * read and typed. Middle and sizes mm on the plan, what `grow` adds included; turn in degrees counter-clockwise.
 */
export interface Frame {
  readonly x: number
  readonly y: number
  readonly widthMm: number
  readonly heightMm: number
  readonly turnDeg: number
}

type Pair = readonly [number, number]

/** @throws InputProblem for a shape that has no region */
export function frameOf(shape: ShapeDocument, files: Files = {}): Frame {
  const at = placesOf(shape, files)
  const [left, right, near, far] = [at('left'), at('right'), at('near'), at('far')]
  return {
    x: (left[0] + right[0]) / 2,
    y: (left[1] + right[1]) / 2,
    widthMm: Math.hypot(right[0] - left[0], right[1] - left[1]),
    heightMm: Math.hypot(far[0] - near[0], far[1] - near[1]),
    turnDeg: shape.turn ?? 0
  }
}

/**
 * The shape made `mm` wide or high in its own frame, its middle where it was. What keeps its proportions when it
 * is pulled (a circle, a drawing of a file, a shape made of others) keeps them here.
 */
export function shapeSized(
  shape: ShapeDocument,
  side: 'width' | 'height',
  mm: number,
  files: Files = {}
): ShapeChange {
  if (!(mm > 0)) return { problem: `a size of ${mm} mm; allowed: more than 0 mm` }
  const [low, high]: readonly [Handle, Handle] = side === 'width' ? ['left', 'right'] : ['near', 'far']
  const at = placesOf(shape, files)
  const [a, b] = [at(low), at(high)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const middle: Pair = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const half: Pair = [((b[0] - a[0]) / length) * (mm / 2), ((b[1] - a[1]) / length) * (mm / 2)]
  // One side after the other: the second pull finds the first side where it is to stay.
  const first = shapeResized(shape, high, [middle[0] + half[0], middle[1] + half[1]], files)
  if ('problem' in first) return first
  return shapeResized(first.shape, low, [middle[0] - half[0], middle[1] - half[1]], files)
}

/**
 * Timber `index` pulled by a handle of its outline. Where it has an underside, that is pulled by as much at the same
 * side: a slanted edge keeps its slant.
 */
export function timberResized(
  document: PieceDocument,
  index: number,
  handle: Handle,
  to: Pair,
  files: Files = {}
): Change {
  const outline = document.timbers?.[index]?.outline
  if (outline === undefined) return { problem: `no timber ${index + 1} in this piece` }
  const from = placesOf(outline, files)(handle)
  const by: Pair = [to[0] - from[0], to[1] - from[1]]
  return bothOutlines(document, index, shape => {
    const own = placesOf(shape, files)(handle)
    return shapeResized(shape, handle, [own[0] + by[0], own[1] + by[1]], files)
  })
}

/** Timber `index` made `mm` wide or high, its middle where it was; the underside by as much as the outline. */
export function timberSized(
  document: PieceDocument,
  index: number,
  side: 'width' | 'height',
  mm: number,
  files: Files = {}
): Change {
  const outline = document.timbers?.[index]?.outline
  if (outline === undefined) return { problem: `no timber ${index + 1} in this piece` }
  const sizeOf = (shape: ShapeDocument) => {
    const frame = frameOf(shape, files)
    return side === 'width' ? frame.widthMm : frame.heightMm
  }
  const more = mm - sizeOf(outline)
  return bothOutlines(document, index, shape => shapeSized(shape, side, sizeOf(shape) + more, files))
}

function bothOutlines(
  document: PieceDocument,
  index: number,
  change: (shape: ShapeDocument) => ShapeChange
): Change {
  const timber = document.timbers![index]!
  const patch: Patch[number][] = []
  for (const key of ['outline', 'underside'] as const) {
    const shape = timber[key]
    if (shape === undefined) continue
    const got = change(shape)
    if ('problem' in got)
      return { problem: key === 'outline' ? got.problem : `the underside: ${got.problem}` }
    patch.push({ op: 'replace', path: `/timbers/${index}/${key}`, value: got.shape })
  }
  return { patch }
}

function placesOf(shape: ShapeDocument, files: Files): (handle: Handle) => Pair {
  const all = new Map(handlesOf(shape, files).map(h => [h.handle, h.at]))
  return handle => all.get(handle)!
}
