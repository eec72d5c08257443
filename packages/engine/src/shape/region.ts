/** A closed ring: x0, y0, x1, y1, ... in mm; the first point is not repeated. */
export type Ring = Float64Array

/**
 * A plane region: outer rings run counter-clockwise (positive area), holes clockwise; rings never cross.
 * x to the right, y away from the maker, mm.
 */
export interface Region {
  readonly rings: readonly Ring[]
}

export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** Nothing at all. */
export const EMPTY: Region = { rings: [] }
