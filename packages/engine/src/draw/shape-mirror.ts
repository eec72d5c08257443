import type { ShapeDocument } from '../piece/shape-field.ts'
import { mapped } from './path-map.ts'
import { placeOf, shapeAt, withTurn } from './shape-place.ts'

/** Across which line to mirror: `x` the upright line x = c, `y` the level line y = c. */
export type MirrorAxis = 'x' | 'y'

/**
 * Mirrored across x = `c` or y = `c`, mm. null for a shape from a file: no key of a document mirrors a drawing
 * (make a polygon of it first).
 *
 * A mirror image of at + turn·p is mirror(at) + (−turn)·mirror(p), so the shape's own points are mirrored about
 * its own axis, its place about the line, and its turn goes the other way.
 */
export function shapeMirrored(shape: ShapeDocument, axis: MirrorAxis, c: number): ShapeDocument | null {
  const own = mirroredAboutItself(shape, axis)
  if (own === null) return null
  const [x, y] = placeOf(shape)
  const placed = axis === 'x' ? shapeAt(own, 2 * c - x, y) : shapeAt(own, x, 2 * c - y)
  return withTurn(placed, -(shape.turn ?? 0))
}

function mirroredAboutItself(shape: ShapeDocument, axis: MirrorAxis): ShapeDocument | null {
  if (shape.polygon !== undefined) {
    const holes = shape.holes?.map(ring => mirroredPoints(ring, axis))
    return {
      ...shape,
      polygon: mirroredPoints(shape.polygon, axis),
      ...(holes === undefined ? {} : { holes })
    }
  }
  if (shape.path !== undefined) {
    const m = axis === 'x' ? ([-1, 0, 0, 1, 0, 0] as const) : ([1, 0, 0, -1, 0, 0] as const)
    return { ...shape, path: mapped(shape.path, m) }
  }
  if (shape.file !== undefined) return null
  for (const key of ['union', 'difference', 'common'] as const) {
    const parts = shape[key]?.map(part => shapeMirrored(part, axis, 0))
    if (parts === undefined) continue
    return parts.includes(null) ? null : { ...shape, [key]: parts as ShapeDocument[] }
  }
  return shape
}

type Points = [number | string, number | string][]

// In reverse order, so that an outline keeps its sense of turning.
function mirroredPoints(points: Points, axis: MirrorAxis): Points {
  return points
    .map(([x, y]): [number | string, number | string] => (axis === 'x' ? [negated(x), y] : [x, negated(y)]))
    .reverse()
}

// A string stays a string: "-1 1/2 in" is the other side of "1 1/2 in".
function negated(typed: number | string): number | string {
  if (typeof typed === 'number') return -typed + 0
  return typed.startsWith('-') ? typed.slice(1) : `-${typed}`
}
