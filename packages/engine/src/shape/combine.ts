import type { Rule } from './clip.ts'
import { clipRings, GRID_MM } from './clip.ts'
import { bounds } from './measure.ts'
import type { Bounds, Region, Ring } from './region.ts'
import { EMPTY, regionOfSound } from './region.ts'
import { thinnedRing } from './thin.ts'

/** Regions are oriented: what any of them winds about counts, and a hole in one is no hole in the other. */
const RULE: Rule = 'positive'

/**
 * All regions together. Regions whose boxes stand apart pass through untouched; of a single one the rings are
 * resolved (overlaps merged, points on straight lines left out, slivers dropped).
 */
export function union(...regions: readonly Region[]): Region {
  const filled = regions.filter(r => r.rings.length > 0)
  if (filled.length === 0) return EMPTY
  if (filled.length === 1) return regionOfSound(clipRings('union', filled[0]!.rings, null, RULE))
  const rings: Ring[] = []
  for (const group of groupsOf(filled)) {
    if (group.length === 1) rings.push(...group[0]!.rings)
    else
      for (const ring of clipRings(
        'union',
        group.flatMap(r => r.rings),
        null,
        RULE
      ))
        rings.push(ring)
  }
  return regionOfSound(rings)
}

/** What lies in `a` and not in `b`. */
export function difference(a: Region, b: Region): Region {
  if (a.rings.length === 0) return EMPTY
  if (b.rings.length === 0 || !boxesTouch(bounds(a), bounds(b))) return a
  return regionOfSound(clipRings('difference', a.rings, b.rings, RULE))
}

/** What lies in both. */
export function intersection(a: Region, b: Region): Region {
  if (a.rings.length === 0 || b.rings.length === 0 || !boxesTouch(bounds(a), bounds(b))) return EMPTY
  return regionOfSound(clipRings('intersection', a.rings, b.rings, RULE))
}

/**
 * The region with fewer points: every point left out lay within `tolMm` of the edge that replaces it. Holes and
 * islands smaller than the tolerance vanish. Edges that would then cross are resolved.
 * @throws Error for a negative tolerance
 */
export function simplify(region: Region, tolMm: number): Region {
  if (!(tolMm >= 0)) throw new Error(`a tolerance of ${tolMm} mm; it must be 0 or more`)
  const rings = region.rings.map(r => thinnedRing(r, tolMm)).filter(r => r.length >= 6)
  return regionOfSound(clipRings('union', rings, null, RULE))
}

// Boxes a grid step apart may touch once their points are on the grid.
function boxesTouch(a: Bounds, b: Bounds): boolean {
  return (
    a.minX <= b.maxX + GRID_MM &&
    b.minX <= a.maxX + GRID_MM &&
    a.minY <= b.maxY + GRID_MM &&
    b.minY <= a.maxY + GRID_MM
  )
}

/** Above this many regions all are clipped together: comparing boxes pair by pair would take longer. */
const MOST_COMPARED = 2000

// Regions linked by boxes that touch, in the order of their first member.
function groupsOf(regions: readonly Region[]): Region[][] {
  if (regions.length > MOST_COMPARED) return [[...regions]]
  const boxes = regions.map(bounds)
  const leader = regions.map((_, i) => i)
  const root = (i: number): number => {
    let r = i
    while (leader[r] !== r) r = leader[r]!
    leader[i] = r
    return r
  }
  for (let i = 0; i < regions.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [root(i), root(j)]
      if (a !== b && boxesTouch(boxes[i]!, boxes[j]!)) leader[Math.max(a, b)] = Math.min(a, b)
    }
  }
  const groups = new Map<number, Region[]>()
  regions.forEach((region, i) => {
    const group = groups.get(root(i))
    if (group) group.push(region)
    else groups.set(root(i), [region])
  })
  return [...groups.values()]
}
