import type { ShapeDocument } from '../piece/shape-field.ts'
import { holesOutside, outlineFault } from '../shape/check.ts'
import { parsePath } from '../shape/path.ts'
import type { Ring } from '../shape/region.ts'
import * as paths from './path-point.ts'
import { mmOf, placeOf, turned } from './shape-place.ts'
import type { ShapeChange } from './shape-resize.ts'

/**
 * The points of an outline, edited one at a time. A shape is taken as the document holds it: `polygon` with its
 * holes, or `path`; any other form has no points of its own. Points are shown and given on the plan, mm (as placed,
 * turned and scaled, not grown), and kept to 0.001 mm in the shape's own frame. Points that are not touched stay
 * as they were typed. Every change is checked: an outline that would cross itself is refused with words.
 */
export interface Vertex {
  /** 0 is the outline; 1 and on are its holes, or the further lines of a path. */
  readonly ring: number
  readonly index: number
  readonly x: number
  readonly y: number
  /** Whether the stretch after this point is a curve. */
  readonly curved: boolean
}

type Typed = [number | string, number | string]

/** Most points of an outline, as the documents allow. */
const MOST_POINTS = 30_000
/** How far a curve may stray when a path is checked, mm. */
const CHECK_TOL_MM = 0.05

/** Every point of a polygon or path, in order; none for other forms and for paths that cannot be read. */
export function verticesOf(shape: ShapeDocument): Vertex[] {
  const rings =
    shape.polygon !== undefined
      ? ringsOf(shape).map(ring => ring.map(([x, y]) => ({ x: mmOf(x), y: mmOf(y), curved: false })))
      : shape.path !== undefined
        ? paths.pointsOf(shape.path).map(ring => ring.map(p => ({ ...p, y: -p.y })))
        : []
  const place = placer(shape)
  return rings.flatMap((points, ring) =>
    points.map((p, index): Vertex => {
      const [x, y] = place(p.x, p.y)
      return { ring, index, x, y, curved: p.curved }
    })
  )
}

/** One point moved to a place of the plan; the handles of curves at it go with it. */
export function vertexMoved(
  shape: ShapeDocument,
  ring: number,
  index: number,
  to: readonly [number, number]
): ShapeChange {
  const own = ownPlace(shape, to)
  if ('problem' in own) return own
  if (shape.path !== undefined) return checkedPath(shape, paths.moved(shape.path, ring, index, own.x, -own.y))
  return withRing(shape, ring, index, points => points.splice(index, 1, [own.x, own.y]))
}

/**
 * A new point on the stretch after point `index`, at the share `t` (above 0, below 1) of it; with `to`, there
 * instead. On a curve the new point lies on it and changes nothing of its course.
 */
export function vertexAdded(
  shape: ShapeDocument,
  ring: number,
  index: number,
  t = 0.5,
  to?: readonly [number, number]
): ShapeChange {
  if (!(t > 0 && t < 1)) return { problem: `a share of ${t}; allowed: between 0 and 1` }
  if (shape.path !== undefined) {
    const path = paths.added(shape.path, ring, index, t)
    if (path === null || to === undefined) return checkedPath(shape, path)
    return vertexMoved({ ...shape, path }, ring, index + 1, to)
  }
  const own = to === undefined ? null : ownPlace(shape, to)
  if (own !== null && 'problem' in own) return own
  return withRing(shape, ring, index, points => {
    const [a, b] = [points[index]!, points[(index + 1) % points.length]!]
    const between = (k: 0 | 1) => round(mmOf(a[k]) + t * (mmOf(b[k]) - mmOf(a[k])))
    points.splice(index + 1, 0, own === null ? [between(0), between(1)] : [own.x, own.y])
  })
}

/** One point taken away; at least three stay. */
export function vertexRemoved(shape: ShapeDocument, ring: number, index: number): ShapeChange {
  const rest = verticesOf(shape).filter(v => v.ring === ring).length
  if (rest === 3) return { problem: 'an outline of three points; at least three must stay' }
  if (shape.path !== undefined) return checkedPath(shape, paths.removed(shape.path, ring, index))
  return withRing(shape, ring, index, points => points.splice(index, 1))
}

function ringsOf(shape: ShapeDocument): Typed[][] {
  return [shape.polygon!, ...(shape.holes ?? [])]
}

const round = (mm: number) => Math.round(mm * 1000) / 1000 + 0

function placer(shape: ShapeDocument): (x: number, y: number) => [number, number] {
  const [x0, y0] = placeOf(shape)
  const [scale, turn] = [shape.scale ?? 1, shape.turn ?? 0]
  return (x, y) => {
    const [u, v] = turned(scale * x, scale * y, turn)
    return [x0 + u, y0 + v]
  }
}

function ownPlace(
  shape: ShapeDocument,
  to: readonly [number, number]
): { readonly x: number; readonly y: number } | { readonly problem: string } {
  if (!to.every(c => Math.abs(c) <= 10_000))
    return { problem: `a place at (${to.join(', ')}); allowed: within 10000 mm` }
  const [x0, y0] = placeOf(shape)
  const [u, v] = turned(to[0] - x0, to[1] - y0, -(shape.turn ?? 0))
  return { x: round(u / (shape.scale ?? 1)), y: round(v / (shape.scale ?? 1)) }
}

const NO_POINT = { problem: 'no such point in this outline' }

function withRing(
  shape: ShapeDocument,
  ring: number,
  index: number,
  edit: (points: Typed[]) => void
): ShapeChange {
  if (shape.polygon === undefined) return { problem: 'this shape has no points; make a polygon of it first' }
  const rings = ringsOf(shape)
  const old = rings[ring]
  if (old?.[index] === undefined) return NO_POINT
  const points = [...old]
  edit(points)
  if (points.length > MOST_POINTS)
    return { problem: `${points.length} points; allowed: at most ${MOST_POINTS}` }
  const fault = outlineFault(flat(points))
  if (fault !== null) return { problem: fault }
  const next = rings.map((r, k) => (k === ring ? points : r))
  if (next.length > 1 && holesOutside(flat(next[0]!), next.slice(1).map(flat)) !== null)
    return { problem: 'a hole would leave the outline, or cut another hole' }
  const [polygon, ...holes] = next
  return { shape: { ...shape, polygon: polygon!, ...(shape.holes === undefined ? {} : { holes }) } }
}

function checkedPath(shape: ShapeDocument, path: string | null): ShapeChange {
  if (path === null) return NO_POINT
  let rings: Ring[]
  try {
    rings = parsePath(path, CHECK_TOL_MM / (shape.scale ?? 1)).rings
  } catch (e) {
    return { problem: e instanceof Error ? e.message : String(e) }
  }
  for (const ring of rings) {
    const upright = ring.map((c, k) => (k % 2 === 1 ? -c : c))
    const fault = outlineFault(upright)
    if (fault !== null) return { problem: fault }
  }
  return { shape: { ...shape, path } }
}

function flat(points: readonly Typed[]): Ring {
  const out = new Float64Array(2 * points.length)
  points.forEach(([x, y], k) => {
    out[2 * k] = mmOf(x)
    out[2 * k + 1] = mmOf(y)
  })
  return out
}
