import { bounds, inside, ringArea } from '../shape/measure.ts'
import type { Bounds, Ring } from '../shape/region.ts'

/** An outer ring with the holes straight inside it: numbers of rings. */
export interface Nest {
  readonly outer: number
  readonly holes: readonly number[]
}

/**
 * The rings of a region as outlines with their holes: a hole belongs to the smallest outline about it. A hole that
 * lies in none (which no sound region has) is left out.
 */
export function nestsOf(rings: readonly Ring[]): Nest[] {
  const areas = rings.map(ringArea)
  const boxes = rings.map(r => bounds({ rings: [r] }))
  const holes = new Map<number, number[]>()
  areas.forEach((a, k) => {
    if (a > 0) holes.set(k, [])
  })
  areas.forEach((a, k) => {
    if (a > 0) return
    let best = -1
    for (const outer of holes.keys()) {
      if (areas[outer]! < -a || (best >= 0 && areas[outer]! >= areas[best]!)) continue
      if (within(boxes[k]!, boxes[outer]!) && encloses(rings[outer]!, rings[k]!)) best = outer
    }
    if (best >= 0) holes.get(best)!.push(k)
  })
  return [...holes].map(([outer, list]) => ({ outer, holes: list }))
}

function within(a: Bounds, b: Bounds): boolean {
  return a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY
}

// Rings may touch at points, so that one point of the hole alone could mislead: most of a few must lie inside.
function encloses(outer: Ring, hole: Ring): boolean {
  const region = { rings: [outer] }
  const points = hole.length / 2
  const looks = Math.min(5, points)
  let found = 0
  for (let k = 0; k < looks; k++) {
    const at = 2 * Math.floor((k * points) / looks)
    const next = (at + 2) % hole.length
    if (inside(region, (hole[at]! + hole[next]!) / 2, (hole[at + 1]! + hole[next + 1]!) / 2)) found++
  }
  return 2 * found > looks
}
