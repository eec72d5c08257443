import type { ShapeDocument } from '../piece/shape-field.ts'
import { parseQuantity } from '../quantity/parse.ts'

/**
 * Where a shape stands, and moving, turning and mirroring it in its own form: a rectangle stays a rectangle, a
 * path a path. A shape places its own points p (scaled and grown already) as `at` + turn·p, so moving and
 * turning change two keys only and hold for every form.
 */

/** Places are kept to a ten-thousandth of a mm, the grid of the clipper; angles to a millionth of a degree. */
const round = (mm: number, to = 1e4) => Math.round(mm * to) / to + 0

/** A length of a document, mm; NaN for a text that is none. */
export function mmOf(typed: number | string): number {
  return typeof typed === 'number' ? typed : (parseQuantity(typed, 'length')?.value ?? Number.NaN)
}

/** Where the shape's own origin lies on the plan, mm. */
export function placeOf(shape: ShapeDocument): [number, number] {
  return shape.at === undefined ? [0, 0] : [mmOf(shape.at[0]), mmOf(shape.at[1])]
}

/** (x, y) turned counter-clockwise about the origin; quarter turns are exact. */
export function turned(x: number, y: number, deg: number): [number, number] {
  const quarter = deg / 90
  if (Number.isInteger(quarter)) {
    const q = ((quarter % 4) + 4) % 4
    return [
      [x, y],
      [-y, x],
      [-x, -y],
      [y, -x]
    ][q] as [number, number]
  }
  const a = (deg * Math.PI) / 180
  return [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)]
}

/** An angle as a document keeps it: above −180 to 180 degrees. */
export function angleOf(deg: number): number {
  const a = round(deg - 360 * Math.round(deg / 360), 1e6)
  return a === -180 ? 180 : a
}

/** The same shape with its origin at (x, y). A coordinate that does not change stays as it was typed. */
export function shapeAt(shape: ShapeDocument, x: number, y: number): ShapeDocument {
  const [oldX, oldY] = placeOf(shape)
  if (shape.at === undefined && round(x) === 0 && round(y) === 0) return shape
  const at: [number | string, number | string] = [
    round(x) === round(oldX) && shape.at !== undefined ? shape.at[0] : round(x),
    round(y) === round(oldY) && shape.at !== undefined ? shape.at[1] : round(y)
  ]
  return { ...shape, at }
}

/** Moved by (dx, dy), mm. */
export function shapeMoved(shape: ShapeDocument, dx: number, dy: number): ShapeDocument {
  const [x, y] = placeOf(shape)
  return shapeAt(shape, x + dx, y + dy)
}

/** Turned counter-clockwise by `deg` about a place of the plan. */
export function shapeTurned(
  shape: ShapeDocument,
  deg: number,
  about: readonly [number, number]
): ShapeDocument {
  const [x, y] = placeOf(shape)
  const [dx, dy] = turned(x - about[0], y - about[1], deg)
  return withTurn(shapeAt(shape, about[0] + dx, about[1] + dy), (shape.turn ?? 0) + deg)
}

/** The same shape with its turn set; a turn of nothing is left out. */
export function withTurn(shape: ShapeDocument, deg: number): ShapeDocument {
  const turn = angleOf(deg)
  if (turn === (shape.turn ?? 0)) return shape
  const { turn: _, ...rest } = shape
  return turn === 0 ? rest : { ...rest, turn }
}
