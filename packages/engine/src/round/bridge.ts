import type { Loop } from './loop.ts'

/**
 * Joins every hole of a loop to its outline and returns a node of the one ring that comes of it.
 *
 * From the rightmost point of a hole a ray to the right meets the outline first at some edge; the bridge goes to
 * the end of that edge, or to the point that hides it (Eberly 2002; memory). Holes farther right come first, so
 * that those to their left may be joined to them.
 */
export function bridged(loop: Loop): number {
  const { x } = loop
  const holes = loop.holes.map(first => rightmost(loop, first)).sort((a, b) => x[b]! - x[a]!)
  for (const hole of holes) loop.bridge(hole, target(loop, hole))
  return loop.outer
}

function rightmost(loop: Loop, first: number): number {
  let best = first
  for (let k = loop.after[first]!; k !== first; k = loop.after[k]!) {
    if (loop.x[k]! > loop.x[best]! || (loop.x[k] === loop.x[best] && loop.y[k]! < loop.y[best]!)) best = k
  }
  return best
}

function target(loop: Loop, hole: number): number {
  const { x, y, after } = loop
  const hx = x[hole]!
  const hy = y[hole]!
  let met = -1
  let metX = Number.POSITIVE_INFINITY
  let k = loop.outer
  do {
    const n = after[k]!
    // The hole touches the outline here.
    if (x[k] === hx && y[k] === hy && leadsIn(loop, k, hole)) return k
    // Inside lies to the left of an edge, so the ray leaves through one that goes up.
    if (y[k]! <= hy && y[n]! >= hy && y[k] !== y[n]) {
      const at = x[k]! + ((hy - y[k]!) / (y[n]! - y[k]!)) * (x[n]! - x[k]!)
      if (at >= hx && at < metX) {
        metX = at
        met = x[k]! > x[n]! ? k : n
      }
    }
    k = n
  } while (k !== loop.outer)
  if (met < 0) return nearest(loop, hole)
  return unhidden(loop, hole, met, metX)
}

// Of the points in the triangle hole, crossing, end of the edge, the one nearest the ray's direction is in sight.
function unhidden(loop: Loop, hole: number, met: number, metX: number): number {
  const { x, y, after } = loop
  const hx = x[hole]!
  const hy = y[hole]!
  const up = y[met]! >= hy
  let best = -1
  let flattest = Number.POSITIVE_INFINITY
  let nearestX = Number.POSITIVE_INFINITY
  let k = loop.outer
  do {
    const dx = x[k]! - hx
    const dy = Math.abs(y[k]! - hy)
    if (
      dx > 0 &&
      x[k]! <= Math.max(metX, x[met]!) &&
      y[k]! >= hy === up &&
      inTriangle(hx, hy, metX, hy, x[met]!, y[met]!, x[k]!, y[k]!)
    ) {
      const slope = dy / dx
      if ((slope < flattest || (slope === flattest && x[k]! < nearestX)) && leadsIn(loop, k, hole)) {
        best = k
        flattest = slope
        nearestX = x[k]!
      }
    }
    k = after[k]!
  } while (k !== loop.outer)
  return best < 0 ? met : best
}

function inTriangle(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  px: number,
  py: number
): boolean {
  const ab = (bx - ax) * (py - ay) - (px - ax) * (by - ay)
  const bc = (cx - bx) * (py - by) - (px - bx) * (cy - by)
  const ca = (ax - cx) * (py - cy) - (px - cx) * (ay - cy)
  return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0)
}

// Whether the way from node k to the hole starts into the inside: a doubled point has two sides.
function leadsIn(loop: Loop, k: number, hole: number): boolean {
  const p = loop.before[k]!
  const n = loop.after[k]!
  const to = loop.x[k] === loop.x[hole] && loop.y[k] === loop.y[hole] ? loop.after[hole]! : hole
  if (loop.turn(k) > 0) return loop.cross(k, n, to) >= 0 && loop.cross(p, k, to) >= 0
  return loop.cross(k, n, to) > 0 || loop.cross(p, k, to) > 0
}

function nearest(loop: Loop, hole: number): number {
  let best = loop.outer
  let least = Number.POSITIVE_INFINITY
  let k = loop.outer
  do {
    const d = (loop.x[k]! - loop.x[hole]!) ** 2 + (loop.y[k]! - loop.y[hole]!) ** 2
    if (d < least) {
      least = d
      best = k
    }
    k = loop.after[k]!
  } while (k !== loop.outer)
  return best
}
