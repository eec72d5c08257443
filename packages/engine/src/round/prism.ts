import { simplify } from '../shape/combine.ts'
import { area, perimeter } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { rimsOf } from './rim.ts'
import type { Slab } from './slab.ts'
import { triangulate } from './triangulate.ts'

/** A closed surface of triangles, counter-clockwise seen from outside. */
export interface Mesh {
  /** x, y, z of each point, mm; z from the finished back. */
  readonly positions: Float32Array
  readonly indices: Uint32Array
  /** Per prism: its first point, the end of its points, its first index, the end of its indices. */
  readonly prisms: Uint32Array
  /** Lower and upper height of each prism, mm. */
  readonly heights: Float32Array
  /** Outlines of each prism as seen on the plan: number of the prism, first point, end of its points. */
  readonly rings: Uint32Array
  /** Edges worth drawing: x, y, z of both ends of each, mm. */
  readonly rims: Float32Array
}

/** How far an outline may stray, mm, and as a share of the mean width of what it encloses. */
const STRAY_MM = 0.03
const STRAY_SHARE = 0.0005

/**
 * Prisms as one mesh, each closed in itself: a floor, a top, and a wall of two triangles under every edge. Two that
 * lie on each other share no points, so that each can be shown or left away, and every edge is the edge of exactly
 * two triangles.
 */
export function prismMesh(slabs: readonly Slab[], coarser: number): Mesh {
  const thin = new Map<Region, Region>()
  const regions = slabs.map(s => {
    let r = thin.get(s.region)
    if (r === undefined) {
      r = simplify(s.region, strayOf(s.region) * coarser)
      thin.set(s.region, r)
    }
    return { ...s, region: r }
  })
  const kept = regions.filter(s => s.region.rings.length > 0)
  const caps = new Map<Region, Uint32Array>()
  let points = 0
  let indices = 0
  for (const { region } of kept) {
    let cap = caps.get(region)
    if (cap === undefined) {
      cap = triangulate(region.rings)
      caps.set(region, cap)
    }
    const n = pointsOf(region)
    points += 2 * n
    indices += 2 * cap.length + 6 * n
  }
  const mesh: Mesh = {
    positions: new Float32Array(3 * points),
    indices: new Uint32Array(indices),
    prisms: new Uint32Array(4 * kept.length),
    heights: new Float32Array(2 * kept.length),
    rings: new Uint32Array(3 * kept.reduce((sum, s) => sum + s.region.rings.length, 0)),
    rims: rimsOf(kept)
  }
  let ring = 0
  let p = 0
  let i = 0
  kept.forEach((slab, k) => {
    const n = pointsOf(slab.region)
    const cap = caps.get(slab.region)!
    mesh.prisms.set([p, p + 2 * n, i, i + 2 * cap.length + 6 * n], 4 * k)
    mesh.heights.set([slab.from, slab.to], 2 * k)
    let start = p
    for (const r of slab.region.rings) {
      mesh.rings.set([k, start, start + r.length / 2], ring)
      start += r.length / 2
      ring += 3
    }
    writePrism(mesh, slab, cap, p, i)
    p += 2 * n
    i += 2 * cap.length + 6 * n
  })
  return mesh
}

// Floor points first, then those of the top, ring after ring.
function writePrism(mesh: Mesh, { region, from, to }: Slab, cap: Uint32Array, p0: number, i0: number): void {
  const n = pointsOf(region)
  let p = p0
  let i = i0
  const put = (a: number, b: number, c: number) => {
    mesh.indices[i++] = a
    mesh.indices[i++] = b
    mesh.indices[i++] = c
  }
  for (const ring of region.rings) {
    const m = ring.length / 2
    for (let k = 0; k < m; k++) {
      mesh.positions.set([ring[2 * k]!, ring[2 * k + 1]!, from], 3 * (p + k))
      mesh.positions.set([ring[2 * k]!, ring[2 * k + 1]!, to], 3 * (p + k + n))
      const a = p + k
      const b = p + ((k + 1) % m)
      put(a, b, b + n)
      put(a, b + n, a + n)
    }
    p += m
  }
  for (let t = 0; t < cap.length; t += 3) {
    const [a, b, c] = [p0 + cap[t]!, p0 + cap[t + 1]!, p0 + cap[t + 2]!]
    put(a, c, b)
    put(a + n, b + n, c + n)
  }
}

function pointsOf(region: Region): number {
  return region.rings.reduce((sum, r) => sum + r.length / 2, 0)
}

function strayOf(region: Region): number {
  return Math.min(STRAY_MM, (STRAY_SHARE * 2 * area(region)) / perimeter(region))
}

/** Volume a mesh encloses, ml: the sum of the tetrahedra from the origin to each triangle (divergence theorem). */
export function meshVolumeMl({ positions: v, indices }: Pick<Mesh, 'positions' | 'indices'>): number {
  let six = 0
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [3 * indices[t]!, 3 * indices[t + 1]!, 3 * indices[t + 2]!]
    six +=
      v[a]! * (v[b + 1]! * v[c + 2]! - v[b + 2]! * v[c + 1]!) +
      v[a + 1]! * (v[b + 2]! * v[c]! - v[b]! * v[c + 2]!) +
      v[a + 2]! * (v[b]! * v[c + 1]! - v[b + 1]! * v[c]!)
  }
  return six / 6000
}
