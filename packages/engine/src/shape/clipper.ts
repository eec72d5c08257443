import type { Path64, Paths64 } from 'clipper2-ts'
import type { Region, Ring } from './region.ts'

/**
 * The one door to the clipping library (clipper2-ts, a port checked against the C++ build in the tests).
 *
 * It works on integers: a grid of 1e-4 mm. At 30 m, the farthest a placed shape may reach, a coordinate is
 * 3e8 and a cross product below 2^63; the library turns to big integers past 2^53.
 */
export const GRID_PER_MM = 10_000

/** Rings to the library's paths. */
export function toPaths(rings: readonly Ring[]): Paths64 {
  return rings.map(toPath)
}

/** One ring or line to a path. */
export function toPath(ring: Float64Array): Path64 {
  const path: Path64 = new Array(ring.length / 2)
  for (let k = 0; k < path.length; k++) {
    path[k] = { x: Math.round(ring[2 * k]! * GRID_PER_MM), y: Math.round(ring[2 * k + 1]! * GRID_PER_MM) }
  }
  return path
}

/** The library's answer as a region: it gives outer rings counter-clockwise and holes clockwise. */
export function toRegion(paths: Paths64): Region {
  const rings: Ring[] = []
  for (const path of paths) {
    if (path.length < 3) continue
    const ring = new Float64Array(path.length * 2)
    for (let k = 0; k < path.length; k++) {
      ring[2 * k] = path[k]!.x / GRID_PER_MM
      ring[2 * k + 1] = path[k]!.y / GRID_PER_MM
    }
    rings.push(ring)
  }
  return { rings }
}
