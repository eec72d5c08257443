import { union } from './combine.ts'
import { DrawingError } from './drawing-error.ts'
import type { FillRule, Region, Ring } from './region.ts'
import { EMPTY, regionOfRings } from './region.ts'
import type { Place } from './svg-error.ts'
import { placed, SvgError } from './svg-error.ts'
import { refuseTangle } from './tangle.ts'

/** Most points of all shapes that are resolved together: lines drawn to confuse cost the square of them. */
const MOST_RESOLVED_POINTS = 40_000

/** A drawn path or basic shape as lines, mm, y up. */
export interface SvgLines {
  readonly id: string | null
  readonly name: string
  readonly at: Place
  /** What encloses, by `fillRule`; in either sense, crossings not yet resolved. */
  readonly rings: readonly Ring[]
  readonly fillRule: FillRule
  readonly open: readonly Float64Array[]
}

/** One drawn path or basic shape, mm, y up. */
export interface SvgShape {
  /** Its own id; of a copy the id of the outermost `use`. */
  readonly id: string | null
  /** Its title, else what it is and where. */
  readonly name: string
  readonly region: Region
  /** Its open lines, those of filled shapes too (the region then holds them closed by a straight line). */
  readonly open: readonly Float64Array[]
}

/**
 * The regions of all shapes, and of all together.
 *
 * Crossings are counted over the whole drawing before any is resolved, so that many shapes, each just within
 * bounds, cannot take longer than one.
 * @throws SvgError for lines that cross too often, and for more points than {@link MOST_RESOLVED_POINTS}
 */
export function regionsOf(
  drawn: readonly SvgLines[],
  whole: Place
): { readonly shapes: readonly SvgShape[]; readonly region: Region } {
  const points = drawn.reduce((sum, s) => sum + s.rings.reduce((n, r) => n + r.length / 2, 0), 0)
  if (points > MOST_RESOLVED_POINTS)
    throw new SvgError(
      whole,
      `shapes of ${points} points once curves are flattened; allowed: up to ${MOST_RESOLVED_POINTS}, ask for one of them by its id`
    )
  try {
    refuseTangle(drawn.flatMap(s => s.rings))
  } catch (e) {
    if (!(e instanceof DrawingError)) throw e
    // Perhaps it is all one shape's doing; then that one is named.
    for (const { rings, at } of drawn) placed(at, '', () => refuseTangle(rings))
    placed(whole, 'shapes whose ', () => {
      throw e
    })
  }
  const shapes = drawn.map(
    ({ id, name, at, rings, fillRule, open }): SvgShape => ({
      id,
      name,
      region: rings.length === 0 ? EMPTY : placed(at, '', () => regionOfRings(rings, fillRule)),
      open
    })
  )
  const full = shapes.map(s => s.region).filter(r => r.rings.length > 0)
  return { shapes, region: full.length === 0 ? EMPTY : full.length === 1 ? full[0]! : union(...full) }
}
