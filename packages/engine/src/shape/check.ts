import { decimals } from '../quantity/format.ts'
import { clipRings, GRID_MM } from './clip.ts'
import { perimeter, ringArea } from './measure.ts'
import type { Ring } from './region.ts'
import { selfCrossing } from './self-crossing.ts'

/**
 * The first hole that leaves its outline or overlaps another hole, by its index; null when all are sound.
 * Touching is allowed. All rings may turn either way; less than a grid step (1e-4 mm) of overlap is not seen.
 */
export function holesOutside(outer: Ring, holesGiven: readonly Ring[]): number | null {
  // Turned alike, so that two holes that overlap cannot cancel out.
  const holes = holesGiven.map(hole => (ringArea(hole) < 0 ? backwards(hole) : hole))
  const strays = (hole: readonly Ring[]) => clipRings('difference', hole, [outer], 'nonzero').length > 0
  if (strays(holes)) return holes.findIndex(hole => strays([hole]))
  // One after the other into what is taken already; the sum of areas tells at once whether that is needed.
  const all = clipRings('union', holes, null, 'nonzero')
  const sum = (rings: readonly Ring[]) => rings.reduce((a, r) => a + ringArea(r), 0)
  const lost = sum(holes) - sum(all)
  if (lost <= GRID_MM * perimeter({ rings: holes })) return null
  const second = holes.findIndex((hole, i) =>
    holes.slice(0, i).some(other => clipRings('intersection', [hole], [other], 'nonzero').length > 0)
  )
  return second < 0 ? null : second
}

function backwards(ring: Ring): Ring {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = ring[ring.length - 2 - k]!
    out[k + 1] = ring[ring.length - 1 - k]!
  }
  return out
}

/** The first point that stands in the same place as the one before it (the last before the first), or null. */
export function repeatedPoint(ring: Ring): number | null {
  const n = ring.length
  for (let k = 0, p = n - 2; k < n; p = k, k += 2) {
    if (n > 2 && ring[k] === ring[p] && ring[k + 1] === ring[p + 1]) return k / 2
  }
  return null
}

/** What is wrong with an outline, in words for a message; null when it is sound. */
export function outlineFault(ring: Ring): string | null {
  const spot = (x: number, y: number) => `(${decimals(x, 2)}, ${decimals(y, 2)})`
  for (let k = 0; k < ring.length; k++) {
    if (!Number.isFinite(ring[k])) return `point ${Math.floor(k / 2) + 1} is not a number`
  }
  if (ring.length < 6) return `an outline of ${ring.length / 2} points; at least three are needed`
  const twice = repeatedPoint(ring)
  if (twice !== null) return `two points in the same place at ${spot(ring[2 * twice]!, ring[2 * twice + 1]!)}`
  const cross = selfCrossing(ring)
  if (cross) return `outline crosses itself at ${spot(cross.x, cross.y)}`
  if (Math.abs(ringArea(ring)) <= (GRID_MM / 2) * perimeter({ rings: [ring] })) {
    return 'outline encloses nothing: it is thinner than 0.0001 mm'
  }
  return null
}
