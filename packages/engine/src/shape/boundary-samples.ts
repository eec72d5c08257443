import { Delaunay } from 'd3-delaunay'
import type { Region } from './region.ts'

/**
 * Places on the edges of a region, close where the region is narrow, with their triangulation. Site i lies at
 * (at[2i], at[2i+1]) on edge `edge[i]`, which runs from (ends[4e], ends[4e+1]) to (ends[4e+2], ends[4e+3]). A site that
 * is a corner lies at the start of its edge; `before[i]` is the edge that ends there, else −1.
 */
export interface Samples {
  readonly at: Float64Array
  readonly edge: Int32Array
  readonly before: Int32Array
  readonly ends: Float64Array
  /** Of a corner: whether the region is wider than 180° there. By site; else 0. */
  readonly hollow: Uint8Array
  readonly mesh: Delaunay<never>
}

/** Beyond this many sites nothing more is divided. */
const MOST_SITES = 60_000
/** Rounds of halving: a thousandth of the first distance. */
const MOST_ROUNDS = 12

/**
 * Samples a region. Two neighbours on an edge are parted until they are neighbours in the triangulation too and stand
 * no farther apart than the circle through them and the site across is wide at half: then circles that touch the edge
 * on both sides of the middle line are told apart. At a corner the triangle of the corner and its two neighbours is
 * left as it is: what comes of it lies on the line that halves the corner.
 *
 * @param leastMm neighbours closer than this are not parted
 */
export function samplesOf(region: Region, leastMm: number): Samples {
  const edges = edgesOf(region)
  const count = edges.ends.length / 4
  const long = (e: number) =>
    Math.hypot(edges.ends[4 * e + 2]! - edges.ends[4 * e]!, edges.ends[4 * e + 3]! - edges.ends[4 * e + 1]!)
  let all = 0
  for (let e = 0; e < count; e++) all += long(e)
  const first = all / 120
  // shares[e]: ascending places along edge e, 0 first.
  const shares: number[][] = Array.from({ length: count }, (_, e) => {
    const n = Math.max(1, Math.ceil(long(e) / first))
    return Array.from({ length: n }, (_, k) => k / n)
  })
  for (let round = 0; ; round++) {
    const samples = built(edges, shares)
    const sites = samples.edge.length
    if (round === MOST_ROUNDS || sites > MOST_SITES || !parted(samples, edges, shares, long, leastMm))
      return samples
  }
}

interface Edges {
  readonly ends: Float64Array
  readonly next: Int32Array
  readonly previous: Int32Array
}

function edgesOf(region: Region): Edges {
  const count = region.rings.reduce((sum, r) => sum + r.length / 2, 0)
  const ends = new Float64Array(4 * count)
  const next = new Int32Array(count)
  const previous = new Int32Array(count)
  let e = 0
  for (const ring of region.rings) {
    const n = ring.length / 2
    for (let k = 0; k < n; k++) {
      const j = (k + 1) % n
      ends.set([ring[2 * k]!, ring[2 * k + 1]!, ring[2 * j]!, ring[2 * j + 1]!], 4 * (e + k))
      next[e + k] = e + j
      previous[e + j] = e + k
    }
    e += n
  }
  return { ends, next, previous }
}

function built(edges: Edges, shares: readonly (readonly number[])[]): Samples {
  const { ends, previous } = edges
  const count = shares.reduce((sum, s) => sum + s.length, 0)
  const at = new Float64Array(2 * count)
  const edge = new Int32Array(count)
  const before = new Int32Array(count).fill(-1)
  const hollow = new Uint8Array(count)
  let i = 0
  shares.forEach((places, e) => {
    for (const t of places) {
      at[2 * i] = ends[4 * e]! + t * (ends[4 * e + 2]! - ends[4 * e]!)
      at[2 * i + 1] = ends[4 * e + 1]! + t * (ends[4 * e + 3]! - ends[4 * e + 1]!)
      edge[i] = e
      if (t === 0) {
        const p = previous[e]!
        before[i] = p
        const turn =
          (ends[4 * p + 2]! - ends[4 * p]!) * (ends[4 * e + 3]! - ends[4 * e + 1]!) -
          (ends[4 * p + 3]! - ends[4 * p + 1]!) * (ends[4 * e + 2]! - ends[4 * e]!)
        hollow[i] = turn < 0 ? 1 : 0
      }
      i++
    }
  })
  return { at, edge, before, ends, hollow, mesh: new Delaunay<never>(at) }
}

// Halves what is too long; whether there was any.
function parted(
  s: Samples,
  edges: Edges,
  shares: number[][],
  long: (e: number) => number,
  leastMm: number
): boolean {
  const { triangles, halfedges } = s.mesh
  // The site after each along its ring.
  const count = s.edge.length
  const firstOf = new Int32Array(shares.length)
  for (let e = 0, i = 0; e < shares.length; e++) {
    firstOf[e] = i
    i += shares[e]!.length
  }
  const after = (i: number) => {
    const e = s.edge[i]!
    return i + 1 < firstOf[e]! + shares[e]!.length ? i + 1 : firstOf[edges.next[e]!]!
  }
  // Square of the radius of the circle on the inner side (left) of each stretch; 0 where it is no edge of a triangle.
  const radius2 = new Float64Array(count)
  for (let h = 0; h < triangles.length; h++) {
    const [i, j] = [triangles[h]!, triangles[nextOf(h)]!]
    // The triangulation turns the other way round than regions do: its edge from b to a has the triangle on the left
    // of a to b.
    for (const [a, b, half] of [
      [i, j, halfedges[h]!],
      [j, i, h]
    ] as const) {
      if (after(a) !== b) continue
      const inner = leftOf(s, a, b, half, h)
      if (inner < 0) continue
      radius2[a] = circleAt(s, inner).radius2
      if (isCorner(s, inner)) radius2[a] = Number.POSITIVE_INFINITY
    }
  }
  let any = false
  const wanted: number[][] = shares.map(() => [])
  for (let i = 0; i < count; i++) {
    const e = s.edge[i]!
    const k = i - firstOf[e]!
    const from = shares[e]![k]!
    const to = shares[e]![k + 1] ?? 1
    const mm = (to - from) * long(e)
    if (mm <= leastMm || mm * mm <= radius2[i]!) continue
    wanted[e]!.push((from + to) / 2)
    any = true
  }
  wanted.forEach((more, e) => {
    if (more.length > 0) shares[e] = [...shares[e]!, ...more].sort((a, b) => a - b)
  })
  return any
}

// The triangle on the left of a to b among the two at an edge; −1 for none.
function leftOf(s: Samples, a: number, b: number, one: number, other: number): number {
  for (const h of [one, other]) {
    if (h < 0) continue
    const t = Math.floor(h / 3)
    for (let k = 3 * t; k < 3 * t + 3; k++) {
      const c = s.mesh.triangles[k]!
      if (c === a || c === b) continue
      const [ax, ay] = [s.at[2 * a]!, s.at[2 * a + 1]!]
      const side =
        (s.at[2 * b]! - ax) * (s.at[2 * c + 1]! - ay) - (s.at[2 * b + 1]! - ay) * (s.at[2 * c]! - ax)
      if (side > 0) return t
    }
  }
  return -1
}

// The half-edge after another in its triangle.
function nextOf(h: number): number {
  return h % 3 === 2 ? h - 2 : h + 1
}

/** Middle and squared radius of the circle through the corners of a triangle. */
export function circleAt(s: Samples, t: number): { x: number; y: number; radius2: number } {
  const [i, j, k] = [s.mesh.triangles[3 * t]!, s.mesh.triangles[3 * t + 1]!, s.mesh.triangles[3 * t + 2]!]
  const [ax, ay] = [s.at[2 * i]!, s.at[2 * i + 1]!]
  const [bx, by] = [s.at[2 * j]! - ax, s.at[2 * j + 1]! - ay]
  const [cx, cy] = [s.at[2 * k]! - ax, s.at[2 * k + 1]! - ay]
  const d = 2 * (bx * cy - by * cx)
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy]
  const x = (cy * b2 - by * c2) / d
  const y = (bx * c2 - cx * b2) / d
  return { x: ax + x, y: ay + y, radius2: x * x + y * y }
}

/** Whether a triangle is a corner of the region that is no wider than 180°, with its two neighbours. */
export function isCorner(s: Samples, t: number): boolean {
  const sites = [0, 1, 2].map(k => s.mesh.triangles[3 * t + k]!)
  return sites.some(v => {
    if (s.before[v]! < 0 || s.hollow[v] === 1) return false
    return sites.every(o => o === v || sharesEdge(s, o, v)) && !apart(s, sites, v)
  })
}

// Whether the two others of a corner lie on the same edge: then it is no corner.
function apart(s: Samples, sites: readonly number[], v: number): boolean {
  const [a, b] = sites.filter(o => o !== v)
  return sharesEdge(s, a!, b!)
}

/** Whether two sites lie on one edge. */
export function sharesEdge(s: Samples, i: number, j: number): boolean {
  const [a, b] = [s.edge[i]!, s.edge[j]!]
  const [p, q] = [s.before[i]!, s.before[j]!]
  return a === b || (p >= 0 && p === b) || (q >= 0 && q === a) || (p >= 0 && p === q)
}
