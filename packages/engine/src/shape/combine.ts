import { Clipper, FillRule } from 'clipper2-ts'
import { GRID_PER_MM, toPaths, toRegion } from './clipper.ts'
import { apart, bounds } from './measure.ts'
import type { Region, Ring } from './region.ts'
import { EMPTY } from './region.ts'

/** How rings that overlap enclose: by turns counted (non-zero) or by every second crossing (even-odd). */
export type Fill = 'nonzero' | 'evenodd'

/** A region of rings in any order and sense. */
export function regionOfRings(rings: readonly Ring[], fill: Fill = 'nonzero'): Region {
  const long = rings.filter(r => r.length >= 6)
  if (long.length === 0) return EMPTY
  return toRegion(Clipper.union(toPaths(long), fill === 'nonzero' ? FillRule.NonZero : FillRule.EvenOdd))
}

/** All regions together. */
export function union(...regions: readonly Region[]): Region {
  const full = regions.filter(r => r.rings.length > 0)
  if (full.length === 0) return EMPTY
  if (full.length === 1) return regionOfRings(full[0]!.rings)
  return regionOfRings(full.flatMap(r => r.rings))
}

/** What `a` has and `b` has not. */
export function difference(a: Region, b: Region): Region {
  if (a.rings.length === 0 || b.rings.length === 0 || apart(bounds(a), bounds(b))) return a
  return toRegion(Clipper.difference(toPaths(a.rings), toPaths(b.rings), FillRule.NonZero))
}

/** What both have. */
export function intersection(a: Region, b: Region): Region {
  if (a.rings.length === 0 || b.rings.length === 0 || apart(bounds(a), bounds(b))) return EMPTY
  return toRegion(Clipper.intersect(toPaths(a.rings), toPaths(b.rings), FillRule.NonZero))
}

/** The region with points left out that stray at most `tolMm` from the edge without them. */
export function simplify(region: Region, tolMm: number): Region {
  if (region.rings.length === 0) return EMPTY
  return toRegion(Clipper.simplifyPaths(toPaths(region.rings), tolMm * GRID_PER_MM, true))
}
