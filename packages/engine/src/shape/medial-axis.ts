import type { Samples } from './boundary-samples.ts'
import { circleAt, isCorner, samplesOf, sharesEdge } from './boundary-samples.ts'
import type { EdgeTree } from './edge-tree.ts'
import { edgeDistance, edgeTree } from './edge-tree.ts'
import { equidistant, featuresOf } from './equidistant.ts'
import { inside } from './measure.ts'
import type { MedialBranch, MedialGraph } from './medial-graph.ts'
import { branchesOf, prune } from './medial-graph.ts'
import type { Region } from './region.ts'

export type { MedialBranch } from './medial-graph.ts'

/** Never divides an edge of the axis more often than this: 2⁸ parts. */
const MOST_HALVINGS = 8

/**
 * The middle lines of a region: all places that have two or more nearest places on its edge, with the radius of the
 * circle that fits there, as branches x0,y0,r0,x1,y1,r1,... in mm that meet at their ends. A disc has the one point.
 *
 * Method: the Voronoi diagram of samples of the edges (Delaunay's dual; samples are denser where the region is narrow);
 * of it the part inside that parts different edges. Every vertex is moved to the place as far from two edges as from a
 * third (from two, on a branch) by Newton's method and its radius is the exact distance from the edges, so that no
 * circle leaves the region by more than rounding. Corners below 180° end their branches, with radius 0.
 * Branches without which the circles still cover the region within `tolMm` are pruned: those of the chords of a curve.
 *
 * Check: rectangle, square, disc (its middle), triangle (incentre), annulus, L shape against their exact axes; the
 * union of its circles against the region. Source: Blum 1967 (memory) for the notion, the rest derived.
 *
 * Limits: the chords of a flattened curve must stray less than `tolMm`, else their corners remain.
 *
 * @throws Error for a tolerance not above 0
 */
export function medialAxis(region: Region, tolMm: number): MedialBranch[] {
  if (!(tolMm > 0)) throw new Error(`a tolerance of ${tolMm} mm; it must be above 0`)
  if (region.rings.length === 0) return []
  const samples = samplesOf(region, 2 * tolMm)
  const tree = edgeTree(region.rings)
  const graph = graphOf(samples, region, tree, tolMm)
  prune(graph, tolMm)
  return branchesOf(graph, tolMm / 2)
}

function graphOf(s: Samples, region: Region, tree: EdgeTree, tolMm: number): MedialGraph {
  const { triangles, halfedges } = s.mesh
  const count = triangles.length / 3
  const graph: MedialGraph = { x: [], y: [], r: [], links: [] }
  const add = (x: number, y: number): number => {
    graph.x.push(x)
    graph.y.push(y)
    graph.r.push(edgeDistance(tree, x, y))
    graph.links.push([])
    return graph.x.length - 1
  }
  const link = (a: number, b: number) => {
    if (a === b) return
    graph.links[a]!.push(b)
    graph.links[b]!.push(a)
  }
  // Vertex of each triangle whose circle has its middle inside; −1 for the others.
  const vertex = new Int32Array(count).fill(-1)
  for (let t = 0; t < count; t++) {
    const c = circleAt(s, t)
    if (!Number.isFinite(c.radius2) || !inside(region, c.x, c.y)) continue
    const features = featuresOf(s, [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!])
    if (features.length < 2) continue
    const p = equidistant(s, features, c.x, c.y, Math.sqrt(c.radius2)) ?? c
    vertex[t] = inside(region, p.x, p.y) ? add(p.x, p.y) : add(c.x, c.y)
    // The corner itself ends the branch.
    if (isCorner(s, t)) {
      const v = [0, 1, 2]
        .map(k => triangles[3 * t + k]!)
        .find(i => s.before[i]! >= 0 && s.hollow[i] === 0 && features.every(f => sharesEdge(s, f, i)))!
      link(vertex[t]!, add(s.at[2 * v]!, s.at[2 * v + 1]!))
    }
  }
  const between = (a: number, b: number, features: readonly number[], deep: number): void => {
    const [mx, my] = [(graph.x[a]! + graph.x[b]!) / 2, (graph.y[a]! + graph.y[b]!) / 2]
    const long = Math.hypot(graph.x[a]! - graph.x[b]!, graph.y[a]! - graph.y[b]!)
    const p = long < tolMm || deep === 0 ? null : equidistant(s, features, mx, my, long)
    if (p === null || !inside(region, p.x, p.y)) {
      link(a, b)
      return
    }
    const strays = Math.hypot(p.x - mx, p.y - my)
    const swells = Math.abs(edgeDistance(tree, p.x, p.y) - (graph.r[a]! + graph.r[b]!) / 2)
    if (strays < tolMm / 4 && swells < tolMm / 4) {
      link(a, b)
      return
    }
    const m = add(p.x, p.y)
    between(a, m, features, deep - 1)
    between(m, b, features, deep - 1)
  }
  for (let h = 0; h < triangles.length; h++) {
    const o = halfedges[h]!
    if (o < h) continue
    const [a, b] = [vertex[Math.floor(h / 3)]!, vertex[Math.floor(o / 3)]!]
    if (a < 0 || b < 0) continue
    const [i, j] = [triangles[h]!, triangles[o]!]
    if (sharesEdge(s, i, j)) continue
    between(a, b, featuresOf(s, [i, j]), MOST_HALVINGS)
  }
  return graph
}
