import type { Region, Ring } from '../../shape/region.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'
import { NO_WAY_DOWN } from './clear-layers.ts'
import { downFree, rampDown } from './entry.ts'
import type { Ground } from './free-way.ts'
import { freeWay, nearestCorner, onGround } from './free-way.ts'
import type { Track } from './track.ts'
import { placeOn, ringFrom, ringSpan, ringTrack, runAlong, stretch, turnedRound } from './track.ts'

/** Radii of the arc onto the wall that are tried, as shares of the cutter's radius, and places tried along it. */
const LEAD_SHARES = [0.8, 0.4, 0.2] as const
const PLACES = 24
/** The wall is run past its start by so much, that no mark stays there, mm. */
const OVERLAP_MM = 1

/**
 * The pass along the walls, from what is already cleared: onto each ring of `ground` on a quarter circle that touches
 * it, once round and a little more, off on another. Where no arc has room, straight across; where nothing beside
 * the ring is cleared, down a ramp along it.
 */
export function finishWalls(
  pen: PathPen,
  job: CutJob,
  ground: Ground,
  roughed: Ground,
  { fromMm, toMm }: { readonly fromMm: number; readonly toMm: number }
): NoPath | null {
  for (const ring of ground.region.rings) {
    const way = job.feeds.climb ? ring : turnedRound(ring)
    const track = ringTrack(way, job)
    const lead = leadOf(job, track, ground, roughed)
    if (lead !== null) {
      downFree(pen, job, lead.startX, lead.startY, toMm)
      quarter(pen, job, lead, lead.x, lead.y, toMm)
      runAlong(pen, stretch(track, lead.atMm, lead.atMm + track.lengthMm), toMm, job.feeds.feedMmMin)
      quarter(pen, job, lead, lead.endX, lead.endY, toMm)
      pen.lift()
      continue
    }
    const across = clearedBeside(way, ground, roughed.region)
    if (across !== null) {
      downFree(pen, job, across.x, across.y, toMm)
      const from = ringFrom(way, across.x, across.y)
      pen.line(from[0]!, from[1]!, toMm, job.feeds.feedMmMin)
      const straight = ringTrack(from, job)
      const over = Math.min(OVERLAP_MM, straight.lengthMm)
      runAlong(pen, stretch(straight, 0, straight.lengthMm + over), toMm, job.feeds.feedMmMin)
    } else {
      const atMm = rampDown(pen, job, track, ringSpan(way), fromMm, toMm)
      if (atMm === null) return NO_WAY_DOWN
      runAlong(pen, stretch(track, atMm, atMm + track.lengthMm), toMm, job.feeds.feedMmMin)
    }
    pen.lift()
  }
  return null
}

/** Onto a track at a place and off again, on quarter circles about (cx, cy). */
interface Lead {
  readonly atMm: number
  readonly x: number
  readonly y: number
  readonly cx: number
  readonly cy: number
  readonly startX: number
  readonly startY: number
  readonly endX: number
  readonly endY: number
  readonly clockwise: boolean
}

function leadOf(job: CutJob, track: Track, ground: Ground, roughed: Ground): Lead | null {
  const { climb, allowanceMm } = job.feeds
  for (const share of LEAD_SHARES) {
    const radius = (share * job.cutter.diameterMm) / 2
    if (radius <= allowanceMm) break
    for (let k = 0; k < PLACES; k++) {
      // From the middle of the first stretch on: a corner at the start is no place to come in.
      const atMm = (track.lengthMm * (k + 0.5)) / PLACES
      const { x, y, tx, ty } = placeOn(track, atMm)
      // The inside lies to the left of a climbing way, to the right of the other.
      const [nx, ny] = climb ? [-ty, tx] : [ty, -tx]
      const [cx, cy] = [x + nx * radius, y + ny * radius]
      const lead: Lead = {
        atMm,
        x,
        y,
        cx,
        cy,
        startX: cx - tx * radius,
        startY: cy - ty * radius,
        endX: cx + tx * radius,
        endY: cy + ty * radius,
        clockwise: !climb
      }
      if (onGround(roughed, lead.startX, lead.startY) && arcFree(ground, lead, radius, nx, ny, tx, ty))
        return lead
    }
  }
  return null
}

// The half circle from the start of the lead to its end, through the place on the wall.
function arcFree(
  ground: Ground,
  { cx, cy }: Lead,
  radius: number,
  nx: number,
  ny: number,
  tx: number,
  ty: number
): boolean {
  for (let k = 0; k <= 12; k++) {
    const a = (Math.PI * k) / 12
    const [along, away] = [-Math.cos(a) * radius, -Math.sin(a) * radius]
    if (!onGround(ground, cx + tx * along + nx * away, cy + ty * along + ny * away)) return false
  }
  return true
}

function quarter(pen: PathPen, job: CutJob, lead: Lead, x: number, y: number, z: number): void {
  const { feedMmMin } = job.feeds
  if (job.arcs) {
    pen.arc(x, y, z, lead.cx, lead.cy, lead.clockwise, feedMmMin)
    return
  }
  const [ax, ay] = [pen.x - lead.cx, pen.y - lead.cy]
  const turn = lead.clockwise ? -1 : 1
  const radius = Math.hypot(ax, ay)
  const chords = Math.max(3, Math.ceil(Math.PI / 4 / Math.acos(Math.max(0, 1 - job.tolMm / radius))))
  for (let k = 1; k < chords; k++) {
    const a = ((turn * Math.PI) / 2) * (k / chords)
    pen.line(
      lead.cx + ax * Math.cos(a) - ay * Math.sin(a),
      lead.cy + ax * Math.sin(a) + ay * Math.cos(a),
      z,
      feedMmMin
    )
  }
  pen.line(x, y, z, feedMmMin)
}

// The cleared place nearest to the ring with a free way to it.
function clearedBeside(ring: Ring, ground: Ground, roughed: Region): { x: number; y: number } | null {
  let best: { x: number; y: number } | null = null
  let least = Number.POSITIVE_INFINITY
  for (const edge of roughed.rings) {
    for (let k = 0; k < edge.length; k += 2) {
      const [x, y] = [edge[k]!, edge[k + 1]!]
      const near = nearestCorner(ring, x, y)
      if (near.mm >= least || !freeWay(ground, x, y, near.x, near.y)) continue
      least = near.mm
      best = { x, y }
    }
  }
  return best
}
