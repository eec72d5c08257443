import type { Join } from './clip.ts'
import { GRID_MM, inflateLine, inflateRings } from './clip.ts'
import { simplify } from './combine.ts'
import { perimeter } from './measure.ts'
import type { Region, Ring } from './region.ts'
import { EMPTY, regionOfSound } from './region.ts'
import { thinnedLine } from './thin.ts'

/**
 * How often the raw offset of a ring may cross itself before it is taken in steps: at every hollow corner it
 * turns back over |δ|, past |δ| over the mean edge others. Beyond this the clipper takes minutes.
 */
const MOST_CROSSINGS = 1_000_000

/**
 * The region with its edges moved outward by `deltaMm` (inward when negative), within `tolMm`.
 *
 * - round: every place within |δ| of the region, or for a negative δ every place farther than |δ| from its
 *   edge: what the middle of a cutter of that radius may or may not reach
 * - square, mitre: outer corners cut square at the distance, or drawn out to a point up to twice the distance
 *   (corners sharper than 60° are then cut square)
 *
 * Round offsets of dense rings go in steps, points being thinned between them; the steps share the tolerance.
 * Arcs lie inside the true offset by up to the tolerance, never outside; thinning adds to either side.
 *
 * @throws Error for a distance or tolerance that is not finite, or a tolerance not above 0
 */
export function offset(
  region: Region,
  deltaMm: number,
  { join, tolMm }: { readonly join: Join; readonly tolMm: number }
): Region {
  if (!Number.isFinite(deltaMm)) throw new Error(`an offset of ${deltaMm} mm; it must be a finite number`)
  refuseTolerance(tolMm)
  if (region.rings.length === 0 || Math.abs(deltaMm) < GRID_MM / 2) return region
  let now = region
  let left = Math.abs(deltaMm)
  while (left > 0 && now.rings.length > 0) {
    const step = join === 'round' ? Math.min(left, longestStep(now, deltaMm)) : left
    // Taken in one go, all of the tolerance is for the arcs; in steps half is for thinning.
    const share = step === Math.abs(deltaMm) ? tolMm : (tolMm * step) / Math.abs(deltaMm) / 2
    if (step < Math.abs(deltaMm)) now = simplify(now, share)
    now = regionOfSound(inflateRings(now.rings, Math.sign(deltaMm) * step, join, share))
    left = left - step < GRID_MM ? 0 : left - step
  }
  return now.rings.length === 0 ? EMPTY : now
}

/** Never more steps than this, so that rounding to the grid stays a small part of the tolerance. */
const MOST_STEPS = 32

function longestStep(region: Region, deltaMm: number): number {
  const points = region.rings.reduce((sum, r) => sum + r.length / 2, 0)
  const edgeMm = perimeter(region) / points
  return Math.max(Math.abs(deltaMm) / MOST_STEPS, (MOST_CROSSINGS / points) * edgeMm)
}

/**
 * What a round cutter `widthMm` wide leaves along a line: a groove's region, with round joins.
 *
 * `line` is x0,y0,x1,y1,...; one that ends where it starts is closed, as is any with `closed: true` (a ring, its
 * first point not repeated). Ends are round (a cutter plunged and lifted) or flat. A line without length is a
 * dot with round ends and nothing with flat ones.
 *
 * @throws Error for a width or tolerance that is not above 0, or a line without points
 */
export function stroke(
  line: Float64Array | Ring,
  widthMm: number,
  {
    ends,
    tolMm,
    closed = false
  }: { readonly ends: 'round' | 'flat'; readonly tolMm: number; readonly closed?: boolean }
): Region {
  if (!(widthMm > 0 && Number.isFinite(widthMm))) {
    throw new Error(`a line ${widthMm} mm wide; the width must be above 0`)
  }
  refuseTolerance(tolMm)
  if (line.length < 2) throw new Error('a line needs at least one point; found none')
  const n = line.length
  const returns = n > 2 && line[0] === line[n - 2] && line[1] === line[n - 1]
  // Half of the tolerance is for points left out, half for the arcs of ends and joins.
  const thin = thinnedLine(returns || !closed ? line : closedLine(line), tolMm / 2)
  const still = thin.length === 4 && thin[0] === thin[2] && thin[1] === thin[3]
  if (thin.length === 2 || still) {
    const dot = thin.slice(0, 2)
    return ends === 'flat' ? EMPTY : regionOfSound(inflateLine(dot, widthMm / 2, 'round', tolMm / 2))
  }
  const joined = (returns || closed) && thin.length >= 8
  const drawn = joined ? thin.subarray(0, thin.length - 2) : thin
  return regionOfSound(inflateLine(drawn, widthMm / 2, joined ? 'joined' : ends, tolMm / 2))
}

function closedLine(ring: Ring): Float64Array {
  const out = new Float64Array(ring.length + 2)
  out.set(ring)
  out.set(ring.subarray(0, 2), ring.length)
  return out
}

function refuseTolerance(tolMm: number): void {
  if (!(tolMm > 0 && Number.isFinite(tolMm)))
    throw new Error(`a tolerance of ${tolMm} mm; it must be above 0`)
}
