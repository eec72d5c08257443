import type { Files } from '../piece/region.ts'
import { regionOf } from '../piece/region.ts'
import type { Shape, ShapeDocument } from '../piece/shape-field.ts'
import { shape as shapeSchema } from '../piece/shape-field.ts'
import { intersection } from '../shape/combine.ts'
import { bounds, ringArea } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { regionOfSound } from '../shape/region.ts'
import { mmOf, placeOf, shapeAt, turned } from './shape-place.ts'

type Line = readonly [readonly [number, number], readonly [number, number]]

/** The two parts of a shape, to the left and to the right of the line as it runs; or words why not. */
export type Split = { readonly parts: readonly [ShapeDocument, ShapeDocument] } | { readonly problem: string }

/** Least distance of the two places that give the line, mm. */
const LEAST_LINE_MM = 1
/** Widest kerf, mm. */
const MOST_KERF_MM = 20
/** How far the line reaches past the shape, mm: so that the cutting polygons surely hold it. */
const PAST_MM = 10

/**
 * A shape parted by a straight line, less half the kerf on either side. A rectangle parted along its sides gives
 * rectangles, a polygon polygons; any other stays what it is, in common with the half plane, so curves stay exact.
 * Each part must be of one piece.
 */
export function splitShape(shape: ShapeDocument, line: Line, kerfMm: number, files: Files): Split {
  const [[ax, ay], [bx, by]] = line
  const long = Math.hypot(bx - ax, by - ay)
  if (!(long >= LEAST_LINE_MM && [ax, ay, bx, by].every(c => Math.abs(c) <= 10_000)))
    return {
      problem: `a line of ${long.toFixed(2)} mm; allowed: two places at least ${LEAST_LINE_MM} mm apart`
    }
  if (!(kerfMm >= 0 && kerfMm <= MOST_KERF_MM))
    return { problem: `a kerf of ${kerfMm} mm; allowed: 0 to ${MOST_KERF_MM} mm` }
  let region: Region
  try {
    region = regionOf(shapeSchema.parse(shape) as Shape, 0.01, files, '', 'this shape')
  } catch (e) {
    return { problem: e instanceof Error ? e.message : String(e) }
  }
  const [ux, uy] = [(bx - ax) / long, (by - ay) / long]
  const box = bounds(region)
  const reach = Math.hypot(box.maxX - box.minX, box.maxY - box.minY) + PAST_MM
  // The foot of the middle of the box on the line: half planes about it reach beyond the whole shape.
  const [mx, my] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  const along = (mx - ax) * ux + (my - ay) * uy
  const off = (mx - ax) * -uy + (my - ay) * ux
  const far = reach + Math.abs(off)
  const [fx, fy] = [ax + along * ux, ay + along * uy]
  const half = (side: 1 | -1): [number, number][] => {
    const at = (t: number, s: number): [number, number] => [fx + t * ux - s * uy, fy + t * uy + s * ux]
    const near = (side * kerfMm) / 2
    const corners = [at(-far, near), at(far, near), at(far, side * far), at(-far, side * far)]
    return side > 0 ? corners : corners.reverse()
  }
  const made: ShapeDocument[] = []
  for (const side of [1, -1] as const) {
    const plane = half(side)
    const part = intersection(region, regionOfSound([Float64Array.from(plane.flat())]))
    const outer = part.rings.filter(r => ringArea(r) > 0)
    if (outer.length === 0) return { problem: 'the line does not part the shape: it passes beside it' }
    if (outer.length > 1)
      return {
        problem: `one side of the line would be of ${outer.length} pieces; allowed: one piece on each side`
      }
    made.push(
      rectangleHalf(shape, [ux, uy], [ax, ay], side, kerfMm) ??
        (shape.polygon === undefined
          ? { common: [shape, { polygon: plane.map(([x, y]): [number, number] => [round(x), round(y)]) }] }
          : polygonOf(part))
    )
  }
  return { parts: [made[0]!, made[1]!] }
}

const round = (mm: number) => Math.round(mm * 1e4) / 1e4 + 0

/** A region of one outer ring as a polygon with its holes, to 0.0001 mm. */
export function polygonOf(region: Region): ShapeDocument {
  const points = (ring: Float64Array): [number, number][] => {
    const out: [number, number][] = []
    for (let k = 0; k < ring.length; k += 2) out.push([round(ring[k]!), round(ring[k + 1]!)])
    return out
  }
  const holes = region.rings.filter(r => ringArea(r) < 0).map(points)
  const polygon = points(region.rings.find(r => ringArea(r) > 0)!)
  return holes.length === 0 ? { polygon } : { polygon, holes }
}

// A plain rectangle whose side the line runs along stays a rectangle.
function rectangleHalf(
  shape: ShapeDocument,
  direction: readonly [number, number],
  on: readonly [number, number],
  side: 1 | -1,
  kerfMm: number
): ShapeDocument | null {
  const plain = !shape.corner && !shape.grow && shape.scale === undefined
  if (shape.rectangle === undefined || !plain) return null
  const turn = shape.turn ?? 0
  const [x0, y0] = placeOf(shape)
  const [du, dv] = turned(direction[0], direction[1], -turn)
  const [u, v] = turned(on[0] - x0, on[1] - y0, -turn)
  const upright = Math.abs(du) < 1e-9
  if (!upright && Math.abs(dv) >= 1e-9) return null
  const [w, h] = [mmOf(shape.rectangle[0]), mmOf(shape.rectangle[1])]
  // To the left of a line that runs up lies less x; to the left of one that runs right, more y.
  const more = upright ? (dv > 0 ? -side : side) : du > 0 ? side : -side
  const edge = (upright ? u : v) + (more * kerfMm) / 2
  const end = (more * (upright ? w : h)) / 2
  const size = round(Math.abs(end - edge))
  const middle = turned(upright ? (edge + end) / 2 : 0, upright ? 0 : (edge + end) / 2, turn)
  const rectangle: ShapeDocument['rectangle'] = upright
    ? [size, shape.rectangle[1]]
    : [shape.rectangle[0], size]
  return shapeAt({ ...shape, rectangle }, x0 + middle[0], y0 + middle[1])
}
