import { union } from '../shape/combine.ts'
import { area, bounds, inside, perimeter, ringArea } from '../shape/measure.ts'
import type { Bounds, Region, Ring } from '../shape/region.ts'
import { EMPTY, regionOfSound } from '../shape/region.ts'
import type { Loft } from './loft.ts'
import { crosses, loft, loftArea, loftAreaIntegral, loftCrossings, loftRing } from './loft.ts'
import { levelSamples } from './sample.ts'
import type { Top } from './top.ts'
import { areaAbove, partsOf, ringsAbove, topAt, topFloor, topRange } from './top.ts'
import type { TopPart } from './top-part.ts'
import { areaAboveOf, volumeUnderOf } from './top-part.ts'

/**
 * A timber as a body over the plan: its side runs straight from the lower to the upper edge (vertical when
 * they are one), then vertically on wherever the top stands above `edge`; its top is flat, crowned or measured.
 * Heights are mm as cast.
 */
export interface Solid {
  readonly upper: Region
  /** null: the side is vertical. */
  readonly lofts: readonly Loft[] | null
  readonly lower: Region
  readonly base: number
  /** Height of the upper edge. */
  readonly edge: number
  readonly top: Top
  /** Lowest and highest place of the top. */
  readonly low: number
  readonly high: number
  /** Below this height the top cuts nothing: the side alone bounds a level cut. */
  readonly clear: number
  /** Area of the upper edge, mm². */
  readonly areaMm2: number
  /** The upper edge parted for its top. */
  readonly parts: readonly TopPart[]
  readonly bounds: Bounds
}

/**
 * Builds a body.
 * @throws Error when the two edges differ in their number of outlines and holes, or the side crosses itself
 */
export function solidOf(upper: Region, lower: Region | null, base: number, edge: number, top: Top): Solid {
  const lofts = lower === null ? null : pair(lower, upper).map(([a, b]) => loft(a, b))
  if (lofts?.some(crosses))
    throw new Error(
      'the side between underside and outline crosses itself: the two edges wander too far apart'
    )
  const { low, high } = topRange(top, upper.rings)
  const u = bounds(upper)
  const l = lower === null ? u : bounds(lower)
  return {
    upper,
    lofts,
    lower: lower ?? upper,
    base,
    edge,
    top,
    low: Math.max(base, low),
    // The foot of a flared side reaches out from under the upper edge, but never above it.
    high: lower === null ? high : Math.max(high, Math.min(edge, topRange(top, lower.rings).high)),
    // Under a flared side the top reaches out of the upper edge: how low, its lowest place anywhere bounds.
    clear: Math.max(base, lower === null ? low : topFloor(top)),
    areaMm2: area(upper),
    parts: partsOf(top, upper.rings),
    bounds: {
      minX: Math.min(u.minX, l.minX),
      minY: Math.min(u.minY, l.minY),
      maxX: Math.max(u.maxX, l.maxX),
      maxY: Math.max(u.maxY, l.maxY)
    }
  }
}

// Each ring of the upper edge with the ring of the lower edge that has its sense and the nearest middle.
function pair(lower: Region, upper: Region): [Ring, Ring][] {
  const free = [...lower.rings]
  if (free.length !== upper.rings.length) {
    throw new Error(
      `the underside has ${free.length} outlines and holes, the upper edge ${upper.rings.length}`
    )
  }
  return upper.rings.map(ring => {
    const c = middleOf(ring)
    let best = -1
    let least = Number.POSITIVE_INFINITY
    free.forEach((other, i) => {
      if (ringArea(other) > 0 !== ringArea(ring) > 0) return
      const o = middleOf(other)
      const d = (o.x - c.x) ** 2 + (o.y - c.y) ** 2
      if (d < least) {
        least = d
        best = i
      }
    })
    if (best < 0) throw new Error('the underside lacks a hole or an outline that the upper edge has')
    return [free.splice(best, 1)[0]!, ring]
  })
}

function middleOf(ring: Ring): { x: number; y: number } {
  const b = bounds({ rings: [ring] })
  return { x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 }
}

function share(s: Solid, z: number): number {
  return s.edge === s.base ? 1 : Math.min(1, Math.max(0, (z - s.base) / (s.edge - s.base)))
}

function sideRings(s: Solid, z: number): readonly Ring[] {
  if (s.lofts === null) return s.upper.rings
  const t = share(s, z)
  return t >= 1 ? s.upper.rings : s.lofts.map(l => loftRing(l, t))
}

/** The body cut level at z. */
export function sectionAt(s: Solid, z: number): Region {
  if (z < s.base || z >= s.high) return EMPTY
  const rings = sideRings(s, z)
  if (z >= s.clear) return regionOfSound(ringsAbove(s.top, rings, z))
  return rings === s.upper.rings ? s.upper : union({ rings })
}

/**
 * The same, with the rings of a slanted side as they come: where they overlap they wind twice. Clipping takes what
 * any of them winds about, so as an operand of a clip it is as good, and one clip less.
 */
export function sectionOperand(s: Solid, z: number): Region {
  if (z < s.base || z >= s.high) return EMPTY
  const rings = sideRings(s, z)
  if (z >= s.clear) return regionOfSound(ringsAbove(s.top, rings, z))
  return rings === s.upper.rings ? s.upper : regionOfSound(rings)
}

/** Area of the body cut level at z, mm². */
export function sectionArea(s: Solid, z: number): number {
  if (z < s.base || z >= s.high) return 0
  if (z >= s.clear) return topArea(s, z)
  return s.lofts === null ? s.areaMm2 : s.lofts.reduce((sum, l) => sum + loftArea(l, share(s, z)), 0)
}

// Area of a level cut that the top bounds too.
function topArea(s: Solid, z: number): number {
  const rings = sideRings(s, z)
  return rings === s.upper.rings ? areaAboveOf(s.parts, z) : areaAbove(s.top, rings, z)
}

/**
 * Volume of the body between two heights, mm³. Exact for the shape as defined; only where the top dips below
 * the edge beside a slanted side is it a sum of level cuts (error below 1e-4 of that part).
 */
export function volumeBetween(s: Solid, z0: number, z1: number): number {
  const from = Math.max(z0, s.base)
  const to = Math.min(z1, s.high)
  if (to <= from) return 0
  let sum = 0
  const sideTop = Math.min(to, s.clear)
  if (sideTop > from) {
    if (s.lofts === null) sum += s.areaMm2 * (sideTop - from)
    else {
      const height = s.edge - s.base
      const straight = Math.min(sideTop, s.edge)
      for (const l of s.lofts) sum += height * loftAreaIntegral(l, share(s, from), share(s, straight))
      if (sideTop > straight) sum += s.areaMm2 * (sideTop - Math.max(from, straight))
    }
  }
  const start = Math.max(from, s.clear)
  if (to > start) {
    const vertical = s.lofts === null ? start : Math.max(start, Math.min(to, s.edge))
    for (const { at, weight } of vertical > start ? levelSamples([s], start, vertical, false) : [])
      sum += weight * topArea(s, at)
    if (to > vertical) sum += volumeUnderOf(s.parts, to) - volumeUnderOf(s.parts, vertical)
  }
  return sum
}

/** How far a point on an edge is moved aside, mm. */
const ASIDE_MM = 1e-6

/** What the vertical line through (x, y) has of the body: pairs of heights from low to high. */
export function intervalsAt(s: Solid, x: number, y: number): [number, number][] {
  if (x < s.bounds.minX || x > s.bounds.maxX || y < s.bounds.minY || y > s.bounds.maxY) return []
  const top = topAt(s.top, x, y)
  if (s.lofts === null) return inside(s.upper, x, y) && top > s.base ? [[s.base, top]] : []
  const shares: number[] = []
  let below = false
  // A line through a point or line of an edge itself may count for neither side: then look just beside it.
  for (let aside = 0; aside < 4; aside++) {
    const px = x + aside * ASIDE_MM
    const py = y + 0.7 * aside * ASIDE_MM
    below = inside(s.lower, px, py)
    shares.length = 0
    const hits: number[] = []
    for (const l of s.lofts) {
      loftCrossings(l, px, py, hits)
      shares.push(...hits)
    }
    if ((shares.length % 2 === 1) === (below !== inside(s.upper, px, py))) break
  }
  shares.sort((a, b) => a - b)
  const out: [number, number][] = []
  let from: number | null = below ? s.base : null
  for (const t of shares) {
    const z = s.base + t * (s.edge - s.base)
    if (from === null) from = z
    else {
      out.push([from, Math.min(z, top)])
      from = null
    }
  }
  // Above the upper edge the side goes on vertically.
  if (from !== null) out.push([from, top])
  return out.filter(([a, b]) => b > a)
}

/** Surface that resin can reach: sides and top, mm² (for seal coats). The slant of an undercut is counted. */
export function coatedArea(s: Solid): number {
  const sides = perimeter(s.upper)
  if (s.lofts !== null) {
    const below = perimeter(s.lower)
    // A strip between two edges: mean length times mean slant height.
    const spread = Math.abs(area(s.upper) - area(s.lower)) / Math.max(1, (sides + below) / 2)
    return ((sides + below) / 2) * Math.hypot(s.edge - s.base, spread) + s.areaMm2
  }
  return sides * (s.edge - s.base) + s.areaMm2
}
