import { difference } from '../../shape/combine.ts'
import { area, bounds, centroid } from '../../shape/measure.ts'
import type { Region, Ring } from '../../shape/region.ts'

/** A round hole on the plan, mm. */
export interface Round {
  readonly x: number
  readonly y: number
  readonly diameterMm: number
}

/** Corners of a circle are met to this share of its radius when it was flattened, and at least this, mm. */
const ROUND_SHARE = 0.004
const ROUND_MM = 0.03

/** The holes of a region that is nothing but circles; null when any of it is not round. */
export function roundsOf(region: Region): readonly Round[] | null {
  const out: Round[] = []
  for (const ring of region.rings) {
    const round = roundOf(ring)
    if (round === null) return null
    out.push(round)
  }
  return out.length === 0 ? null : out
}

function roundOf(ring: Ring): Round | null {
  const n = ring.length / 2
  const whole: Region = { rings: [ring] }
  // Fewer corners are a polygon that is meant; a negative area is a hole in something.
  if (n < 8 || !(area(whole) > 0)) return null
  const { x, y } = centroid(whole)
  let least = Number.POSITIVE_INFINITY
  let most = 0
  for (let k = 0; k < ring.length; k += 2) {
    const r = Math.hypot(ring[k]! - x, ring[k + 1]! - y)
    least = Math.min(least, r)
    most = Math.max(most, r)
  }
  if (most - least > Math.max(ROUND_MM, ROUND_SHARE * most)) return null
  // Flattened circles keep their area; places and sizes to what their digits hold.
  const diameterMm = Math.round(200 * Math.sqrt(area(whole) / Math.PI)) / 100
  return { x: tidy(x), y: tidy(y), diameterMm }
}

function tidy(mm: number): number {
  // The last + 0 turns -0 into 0.
  return Math.round(mm * 1e4) / 1e4 + 0
}

/** Less than this beyond the edge is a matter of rounding, mm². */
const LEAST_OPEN_MM2 = 0.5

/** Whether a cut comes out at the edge of the piece. */
export function opensAtEdge(region: Region, outline: Region): boolean {
  const [b, o] = [bounds(region), bounds(outline)]
  if (b.minX < o.minX || b.maxX > o.maxX || b.minY < o.minY || b.maxY > o.maxY) return true
  return area(difference(region, outline)) > LEAST_OPEN_MM2
}

/** Whether a cut takes the whole of a face. */
export function coversFace(region: Region, outline: Region): boolean {
  return area(difference(outline, region)) < LEAST_OPEN_MM2
}

/** Whether a line is straight from end to end. */
export function isStraight(line: Float64Array): boolean {
  const n = line.length
  const [ax, ay, bx, by] = [line[0]!, line[1]!, line[n - 2]!, line[n - 1]!]
  const long = Math.hypot(bx - ax, by - ay)
  if (long === 0) return false
  for (let k = 2; k < n - 2; k += 2) {
    const off = Math.abs((bx - ax) * (line[k + 1]! - ay) - (by - ay) * (line[k]! - ax)) / long
    if (off > ROUND_MM) return false
  }
  return true
}

/** Length of a line, mm. */
export function lineLengthMm(line: Float64Array): number {
  let sum = 0
  for (let k = 2; k < line.length; k += 2)
    sum += Math.hypot(line[k]! - line[k - 2]!, line[k + 1]! - line[k - 1]!)
  return sum
}
