import type { Rule } from './clip.ts'
import { clipRings } from './clip.ts'
import { refuseTangle } from './tangle.ts'

/** A closed ring: x0,y0,x1,y1,... in mm, not repeating the first point. */
export type Ring = Float64Array

/**
 * Plane region: outer rings counter-clockwise (positive area), holes clockwise; rings never cross.
 * x points to the right, y away from the maker (up). Rings may touch at points. "Never cross" holds to the
 * grid of the clipper (1e-4 mm): a point moved onto the grid can step over a neighbouring edge by that much.
 */
export interface Region {
  readonly rings: readonly Ring[]
}

/** The least upright box about something, mm. Of nothing: min +Infinity, max −Infinity. */
export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** What counts as inside where rings overlap: SVG's `fill-rule`. */
export type FillRule = Extract<Rule, 'nonzero' | 'evenodd'>

/** The region that holds nothing. */
export const EMPTY: Region = Object.freeze({ rings: [] })

/** Wraps rings that already meet the invariant of {@link Region}; EMPTY when there are none. */
export function regionOfSound(rings: readonly Ring[]): Region {
  return rings.length === 0 ? EMPTY : { rings }
}

/**
 * The region that rings of any orientation enclose, crossings resolved by `fillRule`. Points move onto the
 * clipper's grid of 1e-4 mm.
 * @throws Error for coordinates beyond the clipper's range, DrawingError for hopelessly tangled rings
 */
export function regionOfRings(rings: readonly Ring[], fillRule: FillRule = 'nonzero'): Region {
  refuseTangle(rings)
  return regionOfSound(clipRings('union', rings, null, fillRule))
}
