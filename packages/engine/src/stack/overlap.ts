import { area, bounds, ringArea } from '../shape/measure.ts'
import type { Bounds, Region, Ring } from '../shape/region.ts'
import type { ClipMemo } from './clip-memo.ts'
import { boxInside } from './placement.ts'

/** Cuts at one height that may lie over each other; those of different groups do not. */
export type CutGroup = readonly Region[]

/** Cuts at one height inside an outline, in groups whose boxes stay clear of each other. */
export function groupsOf(cuts: readonly Region[], outline: Region, memo: ClipMemo): CutGroup[] {
  const groups: { box: Bounds; cuts: Region[] }[] = []
  for (const cut of cuts) {
    const inside = boxInside(bounds(cut), outline) ? cut : memo.intersection(cut, outline)
    if (inside.rings.length === 0) continue
    let own = { box: bounds(inside), cuts: [inside] }
    for (let k = groups.length - 1; k >= 0; k--) {
      const other = groups[k]!
      if (apart(own.box, other.box)) continue
      own = { box: both(own.box, other.box), cuts: [...other.cuts, ...own.cuts] }
      groups.splice(k, 1)
      // The larger box may meet groups that were passed already.
      k = groups.length
    }
    groups.push(own)
  }
  return groups.map(g => g.cuts)
}

/** Area of a region that the cuts take away, mm². Cuts wholly inside or outside it are not clipped. */
export function lostArea(region: Region, groups: readonly CutGroup[], memo: ClipMemo): number {
  let sum = 0
  for (const group of groups) {
    const [first] = group
    if (group.length > 1) {
      // Grown one by one: the levels of a stack share the beginning of the list, and so its unions.
      const all = group.reduce((grown, cut) => memo.union(grown, cut))
      if (memo.near(bounds(region), [all])) sum += area(memo.intersection(region, all))
    } else if (first !== undefined) sum += overlapArea(region, first, memo)
  }
  return sum
}

function overlapArea(region: Region, cut: Region, memo: ClipMemo): number {
  const box = bounds(region)
  let sum = 0
  for (const ring of cut.rings) {
    const own = ringBox(ring)
    if (apart(own, box)) continue
    if (!boxInside(own, region)) return area(memo.intersection(region, cut))
    // A ring inside the region with its holes: those count against it.
    sum += ringArea(ring)
  }
  return sum
}

function ringBox(ring: Ring): Bounds {
  return bounds({ rings: [ring] })
}

function apart(a: Bounds, b: Bounds): boolean {
  return a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY
}

function both(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY)
  }
}
