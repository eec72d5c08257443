import type { Ring } from '../shape/region.ts'
import { bridged } from './bridge.ts'
import { Loop } from './loop.ts'
import { nestsOf } from './ring-nest.ts'

/**
 * Triangles that fill a region: triples of point numbers, counter-clockwise, points numbered ring after ring.
 *
 * Ears are cut off one after another, holes joined to their outline by bridges first (Eberly 2002, "Triangulation
 * by ear clipping"; Meisters 1975, Am. Math. Monthly 82:648, two ears; memory). Only reflex points can lie in an
 * ear; they are looked up in a grid.
 *
 * No point is left out, not even one on a straight line, so that every edge of a ring is the edge of exactly one
 * triangle: walls that stand on the rings close with it. Where points lie on a line a triangle may have no area.
 * The signed areas add up to the area of the region whatever happens; that none is negative holds for sound
 * regions, and the tests say how far. Coordinates count to the clipper's grid, 1e-4 mm, exactly up to 6 m across.
 */
export function triangulate(rings: readonly Ring[]): Uint32Array {
  const starts: number[] = []
  let count = 0
  for (const ring of rings) {
    starts.push(count)
    count += ring.length / 2
  }
  const out: number[] = []
  for (const { outer, holes } of nestsOf(rings)) {
    const loop = new Loop(rings, starts, outer, holes)
    clipEars(loop, bridged(loop), out)
  }
  return Uint32Array.from(out)
}

function clipEars(loop: Loop, start: number, out: number[]): void {
  loop.sortReflex(start)
  let left = loop.length(start)
  let at = start
  let stop = at
  // How forgiving the search is: true ears; then points on a line; then whatever is least wrong.
  let pass: 0 | 1 = 0
  const cut = (k: number): void => {
    const p = loop.before[k]!
    const n = loop.after[k]!
    out.push(loop.point[p]!, loop.point[k]!, loop.point[n]!)
    loop.drop(k)
    left--
  }
  while (left > 2) {
    const turn = loop.turn(at)
    if (turn > 0 ? loop.isEar(at) : turn === 0 && pass === 1) {
      const next = loop.after[at]!
      cut(at)
      // Passing over a point keeps the triangles of a round edge from all meeting in one corner.
      at = pass === 0 ? loop.after[next]! : next
      stop = at
      pass = 0
      continue
    }
    at = loop.after[at]!
    if (at !== stop) continue
    if (pass === 0) pass = 1
    else {
      at = loop.leastWrong(at)
      const next = loop.after[at]!
      cut(at)
      at = next
      stop = at
      pass = 0
    }
  }
}
