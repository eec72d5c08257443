import type { CutJob } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'
import type { Track } from './track.ts'
import { runAlong, stretch } from './track.ts'

/** Room over the material to which the cutter comes down at rapid speed, mm. */
const OVER_MM = 1
/** Room over a floor that is already cut, from which the entry begins, mm. */
const ABOVE_FLOOR_MM = 0.2
/** Radius of the helix as a share of the cutter's: under 1, so that no post is left in its middle. */
const HELIX_SHARE = 0.7
/** Least share: of a cutter that may go straight down, and of one whose middle does not cut (practice). */
const LEAST_PLUNGING = 0.2
const LEAST_HOLLOW = 0.5
/** Turns of a ramp round one small ring beyond which a cutter that may goes straight down. */
const MOST_TURNS = 12

/** Height to which the cutter may come down at rapid speed: above all material. */
export function overTop(job: CutJob): number {
  return job.topMm + Math.min(OVER_MM, (job.clearMm - job.topMm) / 2)
}

/** Over a place that is free down to `freeMm`, then down into it at the feed for going down. */
export function downFree(pen: PathPen, job: CutJob, x: number, y: number, freeMm: number): void {
  pen.over(x, y)
  pen.down(overTop(job))
  if (freeMm < pen.z) pen.line(x, y, freeMm, job.feeds.plungeMmMin)
}

/** Height at which an entry begins: over the top, or a little over the floor of the pass before. */
export function startOfEntry(job: CutJob, fromMm: number): number {
  return fromMm >= job.topMm ? overTop(job) : fromMm + ABOVE_FLOOR_MM
}

/** Radii of a helix that are tried, the wider first; null: no helix is wanted. */
export function helixSizes(job: CutJob): readonly [wide: number, narrow: number] | null {
  if (!(job.feeds.rampDeg < 90)) return null
  const half = job.cutter.diameterMm / 2
  return [HELIX_SHARE * half, (job.cutter.plunges ? LEAST_PLUNGING : LEAST_HOLLOW) * half]
}

/**
 * Down a helix about (cx, cy) to `toMm`, one flat turn at its end. Seen from above counter-clockwise when it climbs
 * (the material lies outside, to the right), else clockwise.
 */
export function helixDown(
  pen: PathPen,
  job: CutJob,
  { cx, cy, radius }: { readonly cx: number; readonly cy: number; readonly radius: number },
  fromMm: number,
  toMm: number
): void {
  const { rampDeg, rampMmMin, feedMmMin, climb } = job.feeds
  downFree(pen, job, cx + radius, cy, startOfEntry(job, fromMm))
  const from = pen.z
  const perTurn = 2 * Math.PI * radius * Math.tan((rampDeg * Math.PI) / 180)
  const turns = Math.max(1, Math.ceil((from - toMm) / perTurn))
  for (let k = 1; k <= turns; k++)
    turn(pen, job, cx, cy, radius, from + ((toMm - from) * k) / turns, !climb, rampMmMin)
  turn(pen, job, cx, cy, radius, toMm, !climb, feedMmMin)
}

// A full turn about (cx, cy), ending at height z.
function turn(
  pen: PathPen,
  job: CutJob,
  cx: number,
  cy: number,
  radius: number,
  z: number,
  clockwise: boolean,
  feed: number
): void {
  const from = pen.z
  if (job.arcs) {
    pen.arc(cx + radius, cy, z, cx, cy, clockwise, feed)
    return
  }
  const chords = Math.max(8, Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - job.tolMm / radius))))
  for (let k = 1; k <= chords; k++) {
    const a = ((clockwise ? -2 : 2) * Math.PI * k) / chords
    const [x, y] = k === chords ? [cx + radius, cy] : [cx + radius * Math.cos(a), cy + radius * Math.sin(a)]
    pen.line(x, y, k === chords ? z : from + ((z - from) * k) / chords, feed)
  }
}

/**
 * Down along a closed track to `toMm`, from its start; straight down where the cutter may and the way round is too
 * short. Returns how far along the track it ends, or null where it can neither ramp nor plunge. `spanMm` is how
 * wide the ring is at its widest: a cutter that does not cut in its middle needs half its diameter of way.
 */
export function rampDown(
  pen: PathPen,
  job: CutJob,
  track: Track,
  spanMm: number,
  fromMm: number,
  toMm: number
): number | null {
  const { rampDeg, rampMmMin, plungeMmMin } = job.feeds
  const start = track.spans[0]!
  const from = startOfEntry(job, fromMm)
  const long = rampDeg < 90 ? (from - toMm) / Math.tan((rampDeg * Math.PI) / 180) : 0
  const plunge = rampDeg >= 90 || long > MOST_TURNS * track.lengthMm
  if (plunge && job.cutter.plunges) {
    downFree(pen, job, start.x0, start.y0, from)
    pen.line(start.x0, start.y0, toMm, plungeMmMin)
    return 0
  }
  if (rampDeg >= 90 || (!job.cutter.plunges && spanMm < job.cutter.diameterMm / 2)) return null
  downFree(pen, job, start.x0, start.y0, from)
  runAlong(pen, stretch(track, 0, long), toMm, rampMmMin)
  return long % track.lengthMm
}
