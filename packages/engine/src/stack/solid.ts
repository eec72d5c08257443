import { union } from '../shape/combine.ts'
import { area, bounds, centroid, inside, ringArea } from '../shape/measure.ts'
import type { Bounds, Region, Ring } from '../shape/region.ts'
import type { Loft } from './loft.ts'
import { loft, loftArea, loftAreaIntegral, loftCrossings, loftRing } from './loft.ts'
import type { Top } from './top.ts'
import { areaAbove, ringsAbove, topAt, topRange, volumeUnder } from './top.ts'

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
  readonly bounds: Bounds
}

/** Builds a body. Throws when the two edges differ in their number of outlines and holes. */
export function solidOf(upper: Region, lower: Region | null, base: number, edge: number, top: Top): Solid {
  const lofts = lower === null ? null : pair(lower, upper).map(([a, b]) => loft(a, b))
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
    high,
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
    const c = centroid({ rings: [ring] })
    let best = -1
    let least = Number.POSITIVE_INFINITY
    free.forEach((other, i) => {
      if (ringArea(other) > 0 !== ringArea(ring) > 0) return
      const o = centroid({ rings: [other] })
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
  if (z < s.base || z >= s.high) return { rings: [] }
  const rings = sideRings(s, z)
  if (z < s.low) return s.lofts === null ? s.upper : union({ rings })
  return union({ rings: ringsAbove(s.top, rings, z) })
}

/** Area of the body cut level at z, mm². */
export function sectionArea(s: Solid, z: number): number {
  if (z < s.base || z >= s.high) return 0
  if (z < s.low)
    return s.lofts === null ? area(s.upper) : s.lofts.reduce((sum, l) => sum + loftArea(l, share(s, z)), 0)
  return areaAbove(s.top, sideRings(s, z), z)
}

/** Volume of the body between two heights, mm³; exact for the shape as defined. */
export function volumeBetween(s: Solid, z0: number, z1: number): number {
  const from = Math.max(z0, s.base)
  const to = Math.min(z1, s.high)
  if (to <= from) return 0
  // Below the lowest place of the top the level cut is the side's alone.
  const sideTop = Math.min(to, s.low)
  let sum = 0
  if (sideTop > from) {
    if (s.lofts === null) sum += area(s.upper) * (sideTop - from)
    else {
      const height = s.edge - s.base
      const straight = Math.min(sideTop, s.edge)
      for (const l of s.lofts) sum += height * loftAreaIntegral(l, share(s, from), share(s, straight))
      if (sideTop > straight) sum += area(s.upper) * (sideTop - Math.max(from, straight))
    }
  }
  const start = Math.max(from, s.low)
  if (to > start) {
    // Where the side is vertical the integral is exact; under a hollow top beside a slanted side it is sampled.
    const vertical = s.lofts === null ? start : Math.max(start, Math.min(to, s.edge))
    if (vertical > start) sum += gauss(z => areaAbove(s.top, sideRings(s, z), z), start, vertical, 6)
    if (to > vertical)
      sum += volumeUnder(s.top, s.upper.rings, to) - volumeUnder(s.top, s.upper.rings, vertical)
  }
  return sum
}

/** What the vertical line through (x, y) has of the body: pairs of heights from low to high. */
export function intervalsAt(s: Solid, x: number, y: number): [number, number][] {
  if (x < s.bounds.minX || x > s.bounds.maxX || y < s.bounds.minY || y > s.bounds.maxY) return []
  const top = topAt(s.top, x, y)
  if (s.lofts === null) return inside(s.upper, x, y) && top > s.base ? [[s.base, top]] : []
  const hits: number[] = []
  const shares: number[] = []
  for (const l of s.lofts) {
    loftCrossings(l, x, y, hits)
    shares.push(...hits)
  }
  shares.sort((a, b) => a - b)
  const out: [number, number][] = []
  let from: number | null = inside(s.lower, x, y) ? s.base : null
  for (const t of shares) {
    const z = s.base + t * (s.edge - s.base)
    if (from === null) from = z
    else {
      if (z > from) out.push([from, Math.min(z, top)])
      from = null
    }
  }
  // Above the upper edge the side goes on vertically.
  if (from !== null && top > from) out.push([from, top])
  return out.filter(([a, b]) => b > a)
}

/** Surface that resin can reach: sides and top, mm² (for seal coats). The slant of an undercut is counted. */
export function coatedArea(s: Solid): number {
  let sides = 0
  for (const ring of s.upper.rings) sides += ringLength(ring)
  if (s.lofts !== null) {
    let below = 0
    for (const ring of s.lower.rings) below += ringLength(ring)
    // A strip between two edges: mean length times mean slant height.
    const spread = Math.abs(area(s.upper) - area(s.lower)) / Math.max(1, (sides + below) / 2)
    return ((sides + below) / 2) * Math.hypot(s.edge - s.base, spread) + area(s.upper)
  }
  return sides * (s.edge - s.base) + area(s.upper)
}

function ringLength(ring: Ring): number {
  let sum = 0
  for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2)
    sum += Math.hypot(ring[k]! - ring[p]!, ring[k + 1]! - ring[p + 1]!)
  return sum
}

/** Gauss-Legendre nodes and weights on [-1, 1], five points (Abramowitz & Stegun, table 25.4; exact to degree 9). */
const NODES = [0, 0.5384693101056831, 0.906179845938664] as const
const WEIGHTS = [0.5688888888888889, 0.47862867049936647, 0.23692688505618908] as const

/** ∫ f from a to b by `pieces` panels of five Gauss points. */
export function gauss(f: (x: number) => number, a: number, b: number, pieces: number): number {
  const h = (b - a) / pieces
  let sum = 0
  for (let p = 0; p < pieces; p++) {
    const mid = a + (p + 0.5) * h
    sum += WEIGHTS[0] * f(mid)
    for (const k of [1, 2] as const)
      sum += WEIGHTS[k] * (f(mid - (NODES[k] * h) / 2) + f(mid + (NODES[k] * h) / 2))
  }
  return (sum * h) / 2
}
