import type { Track } from './track.ts'
import { placeOn } from './track.ts'

/** Places along a ring that are looked at for each tab. */
const LOOKED = 60
/** A stretch that strays more than this from a straight line is a corner, mm. */
const STRAIGHT_MM = 0.05
/** Most of the way round that tabs and the ways down beside them may take. */
const MOST_SHARE = 0.6

/**
 * Where the middles of tabs lie along a closed track, in order: evenly about it, each shifted within its share of
 * the way to where the track is straight for `spanMm` (away from corners; round shapes have none: then where it
 * bends least). Fewer than asked for where they would take more than 60 % of the way; none where not one fits.
 * The start of the track stays free.
 */
export function tabPlaces(track: Track, count: number, spanMm: number): number[] {
  const { lengthMm } = track
  const most = Math.floor((MOST_SHARE * lengthMm) / spanMm)
  const n = Math.min(count, most)
  const share = lengthMm / Math.max(1, n)
  return Array.from({ length: Math.max(0, n) }, (_, i) => {
    const middle = share * (i + 0.5)
    let best = middle
    let least = Number.POSITIVE_INFINITY
    for (let k = 0; k <= LOOKED; k++) {
      // From the middle of the share outward, so that the first of equals is the nearest to even.
      const shift = ((k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2)) / LOOKED
      const at = middle + shift * Math.max(0, share - spanMm)
      const cost = Math.max(STRAIGHT_MM, bend(track, at, spanMm)) + Math.abs(shift) * STRAIGHT_MM
      if (cost < least - 1e-9) {
        least = cost
        best = at
      }
    }
    return best
  })
}

// How far a stretch of the track strays from the straight line between its ends, mm.
function bend(track: Track, atMm: number, spanMm: number): number {
  const a = placeOn(track, atMm - spanMm / 2)
  const b = placeOn(track, atMm + spanMm / 2)
  const [ux, uy] = [b.x - a.x, b.y - a.y]
  const long = Math.hypot(ux, uy)
  if (long < spanMm / 2) return spanMm
  let most = 0
  for (let k = 1; k < 8; k++) {
    const p = placeOn(track, atMm + spanMm * (k / 8 - 0.5))
    most = Math.max(most, Math.abs((p.x - a.x) * uy - (p.y - a.y) * ux) / long)
  }
  return most
}
