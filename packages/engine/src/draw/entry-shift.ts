import type { ShapeDocument } from '../piece/shape-field.ts'
import { mapped } from './path-map.ts'
import { mmOf, shapeMoved } from './shape-place.ts'

/**
 * Moves all that has a place in an entry of a piece (timber, pour, cut, hardware, marking): its shapes, points and
 * lines. The entry must be sound by its schema; it is changed in place.
 */
export function shiftEntry(entry: Record<string, unknown>, dx: number, dy: number): void {
  if (dx === 0 && dy === 0) return
  for (const [key, value] of Object.entries(entry)) {
    if (value === null || value === undefined) continue
    if (SHAPES.has(key)) entry[key] = shapeMoved(value as ShapeDocument, dx, dy)
    // `at` of a scale is a list of angles or shares; a point is a pair of lengths beside them.
    else if (POINTS.has(key)) entry[key] = movedPoint(value as Point, dx, dy)
    else if (key === 'lines')
      entry[key] = (value as Point[][]).map(line => line.map(p => movedPoint(p, dx, dy)))
    else if (key === 'along' && typeof value === 'object') entry[key] = movedLine(value as Line, dx, dy)
    else if (key === 'measured') shiftInner(value, ['from'], dx, dy)
    else if (key === 'radial') {
      const radial = value as { centre?: Point }
      radial.centre = movedPoint(radial.centre ?? [0, 0], dx, dy)
    } else if (key === 'linear') shiftInner(value, ['from', 'to'], dx, dy)
    else if (key === 'islands')
      entry[key] = (value as ShapeDocument[]).map(island => shapeMoved(island, dx, dy))
    else if (key === 'numerals' || key === 'placed')
      for (const one of value as unknown[]) shiftInner(one, ['at'], dx, dy)
    else if (key === 'stones') for (const one of value as Record<string, unknown>[]) shiftEntry(one, dx, dy)
  }
}

const SHAPES = new Set(['outline', 'underside', 'shape', 'region', 'zone'])
const POINTS = new Set(['at'])

type Point = [number | string, number | string]
interface Line {
  points?: Point[]
  path?: string
}

const round = (mm: number) => Math.round(mm * 1e4) / 1e4 + 0

function movedPoint([x, y]: Point, dx: number, dy: number): Point {
  return [dx === 0 ? x : round(mmOf(x) + dx), dy === 0 ? y : round(mmOf(y) + dy)]
}

function shiftInner(value: unknown, keys: readonly string[], dx: number, dy: number): void {
  const holder = value as Record<string, Point>
  for (const key of keys) holder[key] = movedPoint(holder[key]!, dx, dy)
}

function movedLine(line: Line, dx: number, dy: number): Line {
  if (line.points !== undefined) return { points: line.points.map(p => movedPoint(p, dx, dy)) }
  // The path's own y runs down. One that cannot be read stays as it is: the check of the piece names it.
  try {
    return { path: mapped(line.path!, [1, 0, 0, 1, dx, -dy]) }
  } catch {
    return line
  }
}
