import { difference, intersection, union } from '../shape/combine.ts'
import { bounds } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import { regionOfSound } from '../shape/region.ts'
import type { Removal } from './event.ts'
import { removalAt, tapers } from './event.ts'

/**
 * Clips regions and remembers what came out. Level cuts of one stack share most of their parts, and clipping is
 * what costs; regions never change, so their identity is the key.
 */
export interface ClipMemo {
  /** What lies in `a` and in none of the others. */
  difference(a: Region, others: readonly Region[]): Region
  intersection(a: Region, b: Region): Region
  union(a: Region, b: Region): Region
  /** Whether the box of one of the regions meets a box. */
  near(box: Bounds, regions: readonly Region[]): boolean
  /** The removal cut level at z. */
  removal(r: Removal, z: number): Region
  removals(list: readonly Removal[], z: number): Region
}

export function clipMemo(): ClipMemo {
  const numbers = new Map<Region, number>()
  const numberOf = (r: Region): number => {
    let n = numbers.get(r)
    if (n === undefined) {
      n = numbers.size
      numbers.set(r, n)
    }
    return n
  }
  const boxes = new Map<Region, Bounds>()
  const boxOf = (r: Region): Bounds => {
    let box = boxes.get(r)
    if (box === undefined) {
      box = bounds(r)
      boxes.set(r, box)
    }
    return box
  }
  const known = new Map<string, Region>()
  const recall = (key: string, make: () => Region): Region => {
    let region = known.get(key)
    if (region === undefined) {
      region = make()
      known.set(key, region)
    }
    return region
  }
  // The last level cut of each removal: of one that does not taper it holds for all heights it reaches.
  const last = new Map<Removal, { readonly z: number; readonly region: Region }>()
  const removal = (r: Removal, z: number): Region => {
    if (r.under !== undefined && r.region !== null) {
      const away = removalAt(r, z)
      // Of a keyhole there are two level cuts, above and below its roof: each is made once.
      return away === r.region || away.rings.length === 0
        ? away
        : recall(`${numberOf(r.region)} ∪ under ${numberOf(r.under.region)}`, () => away)
    }
    if (r.region !== null || (r.side === 'low' ? z >= r.floor : z <= r.floor)) return removalAt(r, z)
    const before = last.get(r)
    if (before !== undefined && (before.z === z || !tapers(r))) return before.region
    const region = removalAt(r, z)
    last.set(r, { z, region })
    return region
  }
  return {
    difference: (a, others) => {
      if (a.rings.length === 0) return a
      const near = others.filter(o => o.rings.length > 0 && meet(boxOf(a), boxOf(o)))
      if (near.length === 0) return a
      return recall(`${numberOf(a)} − ${near.map(numberOf).join(' ')}`, () => difference(a, together(near)))
    },
    near: (box, regions) => regions.some(r => r.rings.length > 0 && meet(boxOf(r), box)),
    union: (a, b) => recall(`${numberOf(a)} ∪ ${numberOf(b)}`, () => union(a, b)),
    intersection: (a, b) => recall(`${numberOf(a)} ∩ ${numberOf(b)}`, () => intersection(a, b)),
    removal,
    removals: (list, z) => {
      if (list.length === 1) return removal(list[0]!, z)
      return recall(`∪ ${list.map(r => numberOf(removal(r, z))).join(' ')}`, () =>
        union(...list.map(r => removal(r, z)))
      )
    }
  }
}

/**
 * Several regions as one operand of a clip: their rings laid together. Where they overlap their winding numbers
 * add up and stay above zero, so clipping takes them as their union.
 */
function together(regions: readonly Region[]): Region {
  return regions.length === 1 ? regions[0]! : regionOfSound(regions.flatMap(r => r.rings))
}

// Boxes a step of the clipping grid apart may touch.
const HAIR_MM = 1e-4

function meet(a: Bounds, b: Bounds): boolean {
  return (
    a.minX <= b.maxX + HAIR_MM &&
    b.minX <= a.maxX + HAIR_MM &&
    a.minY <= b.maxY + HAIR_MM &&
    b.minY <= a.maxY + HAIR_MM
  )
}
