import type { Paths64 } from 'clipper2-ts'
import { ClipperOffset, EndType, JoinType } from 'clipper2-ts'
import { GRID_PER_MM, toPath, toPaths, toRegion } from './clipper.ts'
import { union } from './combine.ts'
import type { Region } from './region.ts'
import { EMPTY } from './region.ts'

export interface OffsetOptions {
  readonly join: 'round' | 'square' | 'mitre'
  /** How far a rounded corner may stray from its arc, mm. */
  readonly tolMm: number
}

const JOIN = { round: JoinType.Round, square: JoinType.Square, mitre: JoinType.Miter } as const
/** A mitre longer than this many offsets is cut square. */
const MITRE_LIMIT = 4

/** The edge moved outward by `deltaMm` (negative: inward); what vanishes is gone. */
export function offset(region: Region, deltaMm: number, options: OffsetOptions): Region {
  if (region.rings.length === 0) return EMPTY
  if (deltaMm === 0) return region
  const work = new ClipperOffset(MITRE_LIMIT, options.tolMm * GRID_PER_MM)
  work.addPaths(toPaths(region.rings), JOIN[options.join], EndType.Polygon)
  const out: Paths64 = []
  work.execute(deltaMm * GRID_PER_MM, out)
  return toRegion(out)
}

/** What a cutter `widthMm` wide takes along an open line (or round a closed one, first point repeated). */
export function stroke(
  line: Float64Array,
  widthMm: number,
  options: { readonly ends: 'round' | 'flat'; readonly tolMm: number }
): Region {
  if (widthMm <= 0 || line.length < 4) return EMPTY
  const work = new ClipperOffset(MITRE_LIMIT, options.tolMm * GRID_PER_MM)
  const n = line.length
  const closed = n > 6 && line[0] === line[n - 2] && line[1] === line[n - 1]
  const path = toPath(closed ? line.subarray(0, n - 2) : line)
  work.addPath(
    path,
    JoinType.Round,
    closed ? EndType.Joined : options.ends === 'round' ? EndType.Round : EndType.Butt
  )
  const out: Paths64 = []
  work.execute((widthMm / 2) * GRID_PER_MM, out)
  return union(toRegion(out))
}
