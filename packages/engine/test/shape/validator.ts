import type { Region } from '../../src/shape/region.ts'

/**
 * Whether a region keeps its word, judged without any code under test: all edges pair by pair, windings by the
 * sum of angles. Returns what is wrong, or null. O(n²): for small regions.
 *
 * Crossings shallower than two steps of the clipper's grid (2e-4 mm) are within its promise.
 */
export function fault(region: Region, probes: readonly (readonly [number, number])[]): string | null {
  const edges: [number, number, number, number][] = []
  for (const ring of region.rings) {
    if (ring.length < 6 || ring.length % 2 !== 0) return `a ring of ${ring.length} numbers`
    if (ring.some(v => !Number.isFinite(v))) return 'a coordinate that is not finite'
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      edges.push([ring[p]!, ring[p + 1]!, ring[k]!, ring[k + 1]!])
    }
  }
  for (let i = 0; i < edges.length; i++) {
    for (let j = 0; j < i; j++) {
      const deep = crossingDepth(edges[i]!, edges[j]!)
      if (deep > 2e-4) return `edges ${edges[i]} and ${edges[j]} cross by ${deep} mm`
    }
  }
  for (const [x, y] of probes) {
    if (edges.some(e => distance(e, x, y) < 1e-3)) continue
    const winding = edges.reduce((sum, [ax, ay, bx, by]) => {
      return (
        sum + Math.atan2((ax - x) * (by - y) - (ay - y) * (bx - x), (ax - x) * (bx - x) + (ay - y) * (by - y))
      )
    }, 0)
    const turns = Math.round(winding / (2 * Math.PI))
    if (turns !== 0 && turns !== 1) return `winding ${turns} at (${x}, ${y})`
  }
  return null
}

type Edge = [number, number, number, number]

function crossingDepth(e: Edge, f: Edge): number {
  if (
    Math.max(e[0], e[2]) < Math.min(f[0], f[2]) ||
    Math.max(f[0], f[2]) < Math.min(e[0], e[2]) ||
    Math.max(e[1], e[3]) < Math.min(f[1], f[3]) ||
    Math.max(f[1], f[3]) < Math.min(e[1], e[3])
  ) {
    return 0
  }
  const side = (a: Edge, x: number, y: number) =>
    ((a[2] - a[0]) * (y - a[1]) - (a[3] - a[1]) * (x - a[0])) / Math.hypot(a[2] - a[0], a[3] - a[1])
  const [p, q] = [side(e, f[0], f[1]), side(e, f[2], f[3])]
  const [r, s] = [side(f, e[0], e[1]), side(f, e[2], e[3])]
  if (!(p * q < 0 && r * s < 0)) return 0
  return Math.min(Math.abs(p), Math.abs(q), Math.abs(r), Math.abs(s))
}

function distance([ax, ay, bx, by]: Edge, x: number, y: number): number {
  const long = (bx - ax) ** 2 + (by - ay) ** 2
  const t = Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / (long || 1)))
  return Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y)
}
