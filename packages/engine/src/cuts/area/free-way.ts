import type { EdgeTree } from '../../shape/edge-tree.ts'
import { edgeDistance, edgeTree } from '../../shape/edge-tree.ts'
import { inside } from '../../shape/measure.ts'
import type { Region, Ring } from '../../shape/region.ts'

/** Where the middle of the cutter may go, asked many times. */
export interface Ground {
  readonly region: Region
  readonly tree: EdgeTree
  readonly tolMm: number
}

/** Places asked along a way: so close that what lies between them strays by less than a tenth of it. */
const ASKED_MM = 0.25

export function groundOf(region: Region, tolMm: number): Ground {
  return { region, tree: edgeTree(region.rings), tolMm }
}

/** Whether a place lies in the ground, or past its edge by no more than its tolerance. */
export function onGround(ground: Ground, x: number, y: number): boolean {
  return inside(ground.region, x, y) || edgeDistance(ground.tree, x, y) <= ground.tolMm
}

/** Whether the straight way from a to b stays on the ground. */
export function freeWay(ground: Ground, ax: number, ay: number, bx: number, by: number): boolean {
  const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / ASKED_MM))
  for (let k = 0; k <= count; k++) {
    const t = k / count
    if (!onGround(ground, ax + t * (bx - ax), ay + t * (by - ay))) return false
  }
  return true
}

/** The corner of a ring that is nearest to a place. */
export function nearestCorner(ring: Ring, x: number, y: number): { x: number; y: number; mm: number } {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < ring.length; k += 2) {
    const d = (ring[k]! - x) ** 2 + (ring[k + 1]! - y) ** 2
    if (d < least) {
      least = d
      best = k
    }
  }
  return { x: ring[best]!, y: ring[best + 1]!, mm: Math.sqrt(least) }
}
