import type { Files } from '../piece/region.ts'
import { regionOf } from '../piece/region.ts'
import type { Shape, ShapeDocument } from '../piece/shape-field.ts'
import { shape as shapeSchema } from '../piece/shape-field.ts'
import { bounds } from '../shape/measure.ts'
import type { Bounds } from '../shape/region.ts'
import { mapped } from './path-map.ts'
import { mmOf, placeOf, shapeAt, turned } from './shape-place.ts'

/** A handle of a shape, in its own frame before it is turned: near is down on the plan, far is up. */
export type Handle = 'left' | 'right' | 'near' | 'far' | 'near left' | 'near right' | 'far left' | 'far right'

export const HANDLES: readonly Handle[] = [
  'near left',
  'near',
  'near right',
  'right',
  'far right',
  'far',
  'far left',
  'left'
]

/** A changed shape, or words why it cannot be. */
export type ShapeChange = { readonly shape: ShapeDocument } | { readonly problem: string }

/** Least size a handle can pull a shape to, mm, and the largest a document takes. */
const LEAST_MM = 0.1
const MOST_MM = 10_000
/** How far the curves of a box may stray, mm: far below what a screen shows. */
const BOX_TOL_MM = 0.01

/** The handles of a shape and where they lie on the plan, mm. @throws InputProblem for a shape that has no region */
export function handlesOf(
  shape: ShapeDocument,
  files: Files = {}
): { handle: Handle; at: [number, number] }[] {
  const box = grownBox(shape, files)
  const [x0, y0] = placeOf(shape)
  return HANDLES.map(handle => {
    const [x, y] = turned(...cornerOf(box, handle), shape.turn ?? 0)
    return { handle, at: [x0 + x, y0 + y] }
  })
}

/**
 * The shape with `handle` pulled to the place `to` of the plan; the opposite side or corner stays where it is.
 *
 * A circle keeps its middle. A rectangle, a polygon, a path take width and height apart; a shape from a file and
 * one made of others keep their proportions. Polygons are kept to 0.001 mm, sizes to 0.0001 mm.
 * `files`: the drawings of the piece, for a shape that needs them.
 */
export function shapeResized(
  shape: ShapeDocument,
  handle: Handle,
  to: readonly [number, number],
  files: Files = {}
): ShapeChange {
  if (!to.every(c => Number.isFinite(c) && Math.abs(c) <= MOST_MM))
    return { problem: `a place beyond ${MOST_MM} mm; allowed: −${MOST_MM} to ${MOST_MM} mm` }
  let grown: Bounds
  try {
    grown = grownBox(shape, files)
  } catch (e) {
    return { problem: e instanceof Error ? e.message : String(e) }
  }
  const [x0, y0] = placeOf(shape)
  const [u, v] = turned(to[0] - x0, to[1] - y0, -(shape.turn ?? 0))
  const grow = shape.grow === undefined ? 0 : mmOf(shape.grow)
  const factor = shape.scale ?? 1
  if (shape.circle !== undefined) {
    const radius = Math.max(
      handle.includes('left') || handle.includes('right') ? Math.abs(u) : 0,
      /near|far/.test(handle) ? Math.abs(v) : 0
    )
    return { shape: { ...shape, circle: sized((2 * (radius - grow)) / factor) } }
  }
  const old = shrunk(grown, grow)
  const wanted = pulled(grown, handle, u, v, 2 * grow + LEAST_MM * factor)
  const box = shrunk(wanted, grow)
  if (shape.rectangle !== undefined) {
    const w = sized((box.maxX - box.minX) / factor)
    const h = sized((box.maxY - box.minY) / factor)
    const middle = turned((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2, shape.turn ?? 0)
    const kept = (was: number | string, is: number) => (sized(mmOf(was)) === is ? was : is)
    const [oldW, oldH] = shape.rectangle
    const corner =
      shape.corner !== undefined && mmOf(shape.corner) > Math.min(w, h) / 2
        ? { corner: Math.min(w, h) / 2 }
        : {}
    const next: ShapeDocument = { ...shape, rectangle: [kept(oldW, w), kept(oldH, h)], ...corner }
    return { shape: shapeAt(next, x0 + middle[0], y0 + middle[1]) }
  }
  const sx = (box.maxX - box.minX) / (old.maxX - old.minX)
  const sy = (box.maxY - box.minY) / (old.maxY - old.minY)
  const tx = (box.minX - sx * old.minX) / factor
  const ty = (box.minY - sy * old.minY) / factor
  if (shape.polygon !== undefined) {
    const through = (points: NonNullable<ShapeDocument['polygon']>) =>
      points.map(([x, y]): [number | string, number | string] => [
        sx === 1 && tx === 0 ? x : Math.round((sx * mmOf(x) + tx) * 1000) / 1000,
        sy === 1 && ty === 0 ? y : Math.round((sy * mmOf(y) + ty) * 1000) / 1000
      ])
    const holes = shape.holes === undefined ? {} : { holes: shape.holes.map(through) }
    return { shape: { ...shape, polygon: through(shape.polygon), ...holes } }
  }
  if (shape.path !== undefined) {
    // The path's own y runs down.
    return { shape: { ...shape, path: mapped(shape.path, [sx, 0, 0, sy, tx, -ty]) } }
  }
  const k = handle.includes(' ') ? Math.max(sx, sy) : /near|far/.test(handle) ? sy : sx
  const scale = Math.min(1000, Math.max(0.001, Math.round(factor * k * 1e6) / 1e6))
  const still = cornerOf(old, opposite(handle))
  const shift = turned(still[0] * (1 - scale / factor), still[1] * (1 - scale / factor), shape.turn ?? 0)
  return { shape: shapeAt({ ...shape, scale }, x0 + shift[0], y0 + shift[1]) }
}

// The box of the shape in its own frame: scaled and grown, neither turned nor placed.
function grownBox(shape: ShapeDocument, files: Files): Bounds {
  const { at: _at, turn: _turn, grow, ...own } = shape
  const region = regionOf(shapeSchema.parse(own) as Shape, BOX_TOL_MM, files, '', 'this shape')
  return shrunk(bounds(region), grow === undefined ? 0 : -mmOf(grow))
}

function shrunk(box: Bounds, by: number): Bounds {
  return { minX: box.minX + by, minY: box.minY + by, maxX: box.maxX - by, maxY: box.maxY - by }
}

// A side pulled past the opposite one stops a little before it.
function pulled(box: Bounds, handle: Handle, u: number, v: number, least: number): Bounds {
  const gap = Math.max(least, LEAST_MM)
  return {
    minX: handle.includes('left') ? Math.min(u, box.maxX - gap) : box.minX,
    maxX: handle.includes('right') ? Math.max(u, box.minX + gap) : box.maxX,
    minY: handle.includes('near') ? Math.min(v, box.maxY - gap) : box.minY,
    maxY: handle.includes('far') ? Math.max(v, box.minY + gap) : box.maxY
  }
}

function cornerOf(box: Bounds, handle: Handle): [number, number] {
  const x = handle.includes('left')
    ? box.minX
    : handle.includes('right')
      ? box.maxX
      : (box.minX + box.maxX) / 2
  const y = handle.includes('near') ? box.minY : handle.includes('far') ? box.maxY : (box.minY + box.maxY) / 2
  return [x, y]
}

function opposite(handle: Handle): Handle {
  const other = { left: 'right', right: 'left', near: 'far', far: 'near' } as const
  return handle.replace(/left|right|near|far/g, word => other[word as keyof typeof other]) as Handle
}

function sized(mm: number): number {
  return Math.min(MOST_MM, Math.max(LEAST_MM, Math.round(mm * 1e4) / 1e4))
}
