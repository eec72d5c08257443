import type { Samples } from './boundary-samples.ts'
import { sharesEdge } from './boundary-samples.ts'
import { segmentShare } from './edge-tree.ts'

/** Newton steps: each doubles the digits. */
const STEPS = 6

/**
 * What sites stand for, each edge once: a corner beside a site of one of its own edges adds nothing to that edge.
 */
export function featuresOf(s: Samples, sites: readonly number[]): number[] {
  const kept: number[] = []
  // Sites within an edge first: they name their edge.
  for (const i of [...sites].sort((p, q) => rank(s, p) - rank(s, q)))
    if (!kept.some(k => (s.before[k]! < 0 || s.before[i]! < 0 || i === k) && sharesEdge(s, k, i)))
      kept.push(i)
  return kept
}

function rank(s: Samples, i: number): number {
  return s.before[i]! < 0 ? 0 : 1
}

/**
 * The place near (x, y) that is as far from two features as from each other, or from three, by Newton's method; a
 * feature is the edge of a site, at a corner the nearer of its two edges. Null where it does not settle within `mostMm`.
 */
export function equidistant(
  s: Samples,
  features: readonly number[],
  x0: number,
  y0: number,
  mostMm: number
): { readonly x: number; readonly y: number } | null {
  let [x, y] = [x0, y0]
  if (features.length < 2) return null
  for (let step = 0; step < STEPS; step++) {
    const [a, b, c] = features.slice(0, 3).map(f => toward(s, f, x, y))
    const [ux, uy, u] = [a!.ux - b!.ux, a!.uy - b!.uy, a!.d - b!.d]
    let [dx, dy] = [0, 0]
    const solved = c === undefined ? 0 : ux * (a!.uy - c.uy) - uy * (a!.ux - c.ux)
    if (c !== undefined && Math.abs(solved) > 1e-3) {
      const [vx, vy, v] = [a!.ux - c.ux, a!.uy - c.uy, a!.d - c.d]
      dx = -(u * vy - v * uy) / solved
      dy = -(ux * v - vx * u) / solved
    } else {
      const square = ux * ux + uy * uy
      if (square < 1e-6) return null
      dx = (-u * ux) / square
      dy = (-u * uy) / square
    }
    x += dx
    y += dy
    if (!(Math.hypot(x - x0, y - y0) <= mostMm)) return null
    if (Math.hypot(dx, dy) < 1e-10) break
  }
  return { x, y }
}

// Distance from a feature and the direction away from it.
function toward(s: Samples, site: number, x: number, y: number) {
  const own = away(s, s.edge[site]!, x, y)
  const before = s.before[site]!
  if (before < 0) return own
  const other = away(s, before, x, y)
  return other.d < own.d ? other : own
}

function away({ ends }: Samples, e: number, x: number, y: number) {
  const [ax, ay, bx, by] = [ends[4 * e]!, ends[4 * e + 1]!, ends[4 * e + 2]!, ends[4 * e + 3]!]
  const t = segmentShare(ax, ay, bx, by, x, y)
  const [dx, dy] = [x - ax - t * (bx - ax), y - ay - t * (by - ay)]
  const d = Math.hypot(dx, dy)
  return d === 0 ? { d, ux: 0, uy: 0 } : { d, ux: dx / d, uy: dy / d }
}
