import { grainDegOf } from '../piece/grain.ts'
import type { PieceDocument } from '../piece/piece-schema.ts'
import type { Files } from '../piece/region.ts'
import { regionOf } from '../piece/region.ts'
import type { Shape } from '../piece/shape-field.ts'
import { shape as shapeSchema } from '../piece/shape-field.ts'
import type { MirrorAxis } from './shape-mirror.ts'
import { mmOf, turned } from './shape-place.ts'

/** The measured top and the grain of a timber, when the timber is moved, turned or mirrored. */
type TimberDocument = NonNullable<PieceDocument['timbers']>[number]
type Grid = NonNullable<TimberDocument['measured']>

const round = (mm: number) => Math.round(mm * 1e4) / 1e4 + 0

/** Direction of the grain, degrees from x, as the engine takes it. @throws InputProblem for an outline that is none */
export function grainOf(timber: TimberDocument, files: Files): number {
  if (timber.grain !== undefined) return timber.grain
  const region = regionOf(shapeSchema.parse(timber.outline) as Shape, 0.01, files, '/outline', 'this timber')
  return grainDegOf({ grain: undefined }, region)
}

/** Mirrored: columns (x) or rows (y) in reverse order; the first point is the image of the last. */
export function measuredMirrored(grid: Grid, axis: MirrorAxis, c: number): Grid {
  const [x, y] = [mmOf(grid.from[0]), mmOf(grid.from[1])]
  const [stepX, stepY] = [mmOf(grid.step[0]), mmOf(grid.step[1])]
  if (axis === 'x')
    return {
      ...grid,
      from: [round(2 * c - x - stepX * (grid.rises[0]!.length - 1)), grid.from[1]],
      rises: grid.rises.map(row => [...row].reverse())
    }
  return {
    ...grid,
    from: [grid.from[0], round(2 * c - y - stepY * (grid.rises.length - 1))],
    rises: [...grid.rises].reverse()
  }
}

/** Turned by quarter turns about a place: each quarter makes rows of the columns. `deg` a multiple of 90. */
export function measuredTurned(grid: Grid, deg: number, about: readonly [number, number]): Grid {
  let out = grid
  const quarters = (((deg / 90) % 4) + 4) % 4
  for (let q = 0; q < quarters; q++) {
    const rows = out.rises.length
    const columns = out.rises[0]!.length
    // (x, y) goes to (−y, x): the rows in reverse order become the columns from left to right.
    const top = mmOf(out.from[1]) + mmOf(out.step[1]) * (rows - 1)
    const [fx, fy] = turned(mmOf(out.from[0]) - about[0], top - about[1], 90)
    const rises = Array.from({ length: columns }, (_, i) =>
      Array.from({ length: rows }, (_, j) => out.rises[rows - 1 - j]![i]!)
    )
    out = {
      ...out,
      from: [round(about[0] + fx), round(about[1] + fy)],
      step: [out.step[1], out.step[0]],
      rises
    }
  }
  return out
}

/**
 * The timber as its parts keep it when it is parted along a line. A crown rises over the whole width: parts of a cut
 * square across its ridge have it still, parts of any other do not, so it is taken off there and said so.
 */
export function partedTop(
  timber: TimberDocument,
  direction: readonly [number, number]
): { readonly timber: TimberDocument; readonly says: readonly string[] } {
  if (timber.crown === undefined) return { timber, says: [] }
  const along = ((timber.crown.along ?? 0) * Math.PI) / 180
  const share = (direction[0] * Math.cos(along) + direction[1] * Math.sin(along)) / Math.hypot(...direction)
  // Within a degree of square.
  if (Math.abs(share) < Math.sin(Math.PI / 180)) return { timber, says: [] }
  const { crown: _, ...flat } = timber
  return { timber: flat, says: ['the crown of the top was taken off: measure the tops of both parts'] }
}
