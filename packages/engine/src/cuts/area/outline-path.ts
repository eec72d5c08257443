import { area, nearest, ringArea } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region, Ring } from '../../shape/region.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { NO_WAY_DOWN } from './clear-layers.ts'
import type { DepthPass } from './depth-passes.ts'
import { depthPasses } from './depth-passes.ts'
import { downFree, startOfEntry } from './entry.ts'
import { nearestCorner } from './free-way.ts'
import { tooLarge } from './pocket-path.ts'
import { tabPlaces } from './tab-places.ts'
import type { Tabs } from './tabbed-run.ts'
import { tabbedRun } from './tabbed-run.ts'
import type { Track } from './track.ts'
import { placeOn, ringFrom, ringTrack, turnedRound } from './track.ts'

/** How a part is cut out. */
export interface OutlineOptions {
  /** The cutter runs outside the region (the part stays) or inside it (the opening is made). */
  readonly side: 'outside' | 'inside'
  /** Tabs, by count, width along the edge and what is left of the thickness. */
  readonly tabs?: { readonly count: number; readonly widthMm: number; readonly thickMm: number } | null
  /** Left of the thickness all round, mm; 0 or left out: none. */
  readonly skinMm?: number
  /** Height of the face beneath, from which tabs and skin are measured, z mm; left out: the floor of the job. */
  readonly underMm?: number
  /** Where nothing stands, beside the material: the cutter comes down there and moves in; left out: none. */
  readonly free?: Region
}

/** Lengths of the way, in allowances, over which the cutter draws near to the wall before the last pass. */
const NEAR_TIMES = 6
/** Room beside the cutter where it comes down beside the material, mm. */
const FREE_ROOM_MM = 0.5
/** The last pass is run past its start by so much, mm. */
const OVERLAP_MM = 1
/** A cutter goes into an opening just as wide as it is: so much of its radius is not asked for, mm. */
const PLAY_MM = 0.005

/**
 * Cuts along every ring of a region in passes, each come down to on a ramp along the ring: openings in the part
 * first, its outside last, each ring to its full depth before the next, so that the part is held as long as it
 * can be. The last pass of a ring frees it, but for the tabs or the skin left.
 *
 * With `feeds.allowanceMm` the passes keep off the wall by that much, a pass at the depth before the last takes the
 * wall to its size while the part is still whole, and the last pass runs on the wall.
 *
 * Climb: the part that stays to the right of the way (spindle clockwise): clockwise about a part,
 * counter-clockwise in an opening.
 *
 * A tab `widthMm` wide at its top: the cutter is up over its width and a diameter more.
 *
 * No path where the cutter closes an opening or joins two parts; `largestMm` is the largest that does not.
 *
 * Check: test/cuts/area/outline-path.test.ts (side, length, tabs, skin, coverage).
 */
export function outlinePath(job: CutJob, region: Region, options: OutlineOptions): Toolpath | NoPath {
  const { cutter, feeds, tolMm } = job
  const { side, tabs = null, skinMm = 0, underMm = job.floorMm } = options
  if (cutter.form === 'drill' || cutter.form === 'keyhole' || cutter.form === 'v')
    return { says: 'it cuts no upright edge: an outline wants a flat cutter', largestMm: null }
  if (!(area(region) > 0)) return { says: 'the outline encloses nothing', largestMm: null }
  const half = cutter.diameterMm / 2
  const way = (mm: number) =>
    offset(region, side === 'outside' ? mm : PLAY_MM - mm, { join: 'round', tolMm: tolMm / 4 })
  const rings = inOrder(way(half))
  if (rings.length !== region.rings.length) return closes(region, side, cutter.diameterMm)
  const allowance = Math.max(0, feeds.allowanceMm)
  const rough = allowance > 0 ? inOrder(way(half + allowance)) : rings
  const floorMm = skinMm > 0 ? underMm + skinMm : job.floorMm
  if (floorMm >= job.topMm) return { says: 'the skin is as thick as the material', largestMm: null }
  if (tabs !== null && underMm + tabs.thickMm >= job.topMm)
    return { says: 'the tabs are as thick as the material', largestMm: null }
  const passes = depthPasses(job, floorMm, allowance > 0 && skinMm === 0 ? 2 : 1)
  const pen = new PathPen(job.clearMm)
  const entries =
    options.free === undefined
      ? []
      : offset(options.free, -half - FREE_ROOM_MM, { join: 'round', tolMm }).rings
  for (const [i, ring] of rings.entries()) {
    const outside = entryNear(entries, ring, 2 * half)
    const [x, y] = outside === null ? middleOfLongest(ring) : [outside.toX, outside.toY]
    const last = trackAlong(ring, side, job, x, y)
    // A wide allowance can close what the cutter alone does not: there it runs on the wall at once.
    const nearest = rough === rings || rough.length !== rings.length ? ring : nearestRing(rough, x, y)
    const before = nearest === ring ? last : trackAlong(nearest, side, job, x, y)
    const held = {
      tabs,
      topMm: tabs === null ? 0 : underMm + tabs.thickMm,
      named: rings.length > 1 ? `ring ${i + 1}, ` : '',
      outside
    }
    if (!cutRing(pen, job, last, before, passes, held))
      return held.tabs !== null && tabPlaces(last, 1, spanOf(job, held)).length === 0
        ? { says: 'the way round is too short for a tab: leave a skin', largestMm: null }
        : NO_WAY_DOWN
  }
  return pen.done()
}

interface Held {
  readonly tabs: OutlineOptions['tabs'] | null
  readonly topMm: number
  readonly named: string
  /** Where the cutter comes down beside the material and the place of the way it moves in to; null: on a ramp. */
  readonly outside: Outside | null
}

interface Outside {
  readonly x: number
  readonly y: number
  readonly toX: number
  readonly toY: number
}

function cutRing(
  pen: PathPen,
  job: CutJob,
  last: Track,
  before: Track,
  passes: readonly DepthPass[],
  held: Held
): boolean {
  const own = tabsOn(last, job, held)
  const other = before === last ? own : tabsOn(before, job, held)
  if (own === 'none' || other === 'none') return false
  for (const [i, pass] of passes.entries()) {
    const frees = i === passes.length - 1
    // The wall is taken to its size before the pass that frees the part.
    if (frees && before !== last && i > 0) {
      pen.pass(`${held.named}the wall, ${passes[i - 1]!.name.split(', ')[1]}`)
      alongWall(pen, job, before, last, passes[i - 1]!.toMm, own)
    }
    pen.pass(held.named + pass.name)
    const track = frees ? last : before
    if (!descend(pen, job, track, pass, frees ? own : other, held.outside)) return false
  }
  return true
}

function descend(
  pen: PathPen,
  job: CutJob,
  track: Track,
  pass: DepthPass,
  tabs: Tabs | null,
  outside: Outside | null
): boolean {
  const { rampDeg, plungeMmMin, feedMmMin } = job.feeds
  const start = track.spans[0]!
  const z = pass.toMm
  if (outside !== null) {
    downFree(pen, job, outside.x, outside.y, z)
    pen.line(start.x0, start.y0, z, feedMmMin)
    tabbedRun(pen, job, track, { startMm: z, floorMm: z, rampMm: 0, fromMm: 0, endMm: track.lengthMm }, tabs)
    return true
  }
  const startMm = startOfEntry(job, pass.fromMm)
  if (rampDeg >= 90 && !job.cutter.plunges) return false
  const rampMm = rampDeg >= 90 ? 0 : (startMm - pass.toMm) / Math.tan((rampDeg * Math.PI) / 180)
  downFree(pen, job, start.x0, start.y0, startMm)
  if (rampMm === 0) pen.line(start.x0, start.y0, pass.toMm, plungeMmMin)
  tabbedRun(
    pen,
    job,
    track,
    { startMm, floorMm: pass.toMm, rampMm, fromMm: 0, endMm: rampMm + track.lengthMm },
    tabs
  )
  return true
}

// From the middle of the slot, which stands off the wall, slowly nearer and once round on it.
function alongWall(
  pen: PathPen,
  job: CutJob,
  before: Track,
  last: Track,
  z: number,
  tabs: Tabs | null
): void {
  const start = before.spans[0]!
  downFree(pen, job, start.x0, start.y0, z)
  const first = tabs?.spans[0]?.fromMm ?? Number.POSITIVE_INFINITY
  const near = Math.min(NEAR_TIMES * job.feeds.allowanceMm, last.lengthMm / 4, first)
  const onto = placeOn(last, near)
  pen.line(onto.x, onto.y, z, job.feeds.feedMmMin)
  const endMm = near + last.lengthMm + OVERLAP_MM
  tabbedRun(pen, job, last, { startMm: z, floorMm: z, rampMm: 0, fromMm: near, endMm }, tabs)
}

function spanOf(job: CutJob, held: Held): number {
  // A little more than the width and the cutter, for the slope beside it.
  return (held.tabs?.widthMm ?? 0) + job.cutter.diameterMm + (held.tabs?.thickMm ?? 0)
}

function tabsOn(track: Track, job: CutJob, held: Held): Tabs | null | 'none' {
  if (held.tabs === null || held.tabs === undefined) return null
  const wide = held.tabs.widthMm + job.cutter.diameterMm
  const places = tabPlaces(track, held.tabs.count, spanOf(job, held))
  if (places.length === 0) return 'none'
  return { topMm: held.topMm, spans: places.map(at => ({ fromMm: at - wide / 2, toMm: at + wide / 2 })) }
}

// Openings (holes of a part) before outsides, small before large.
function inOrder(region: Region): Ring[] {
  return [...region.rings].sort((a, b) => {
    const [p, q] = [ringArea(a), ringArea(b)]
    return p < 0 === q < 0 ? Math.abs(p) - Math.abs(q) : p < 0 ? -1 : 1
  })
}

function trackAlong(ring: Ring, side: 'outside' | 'inside', job: CutJob, x: number, y: number): Track {
  // The region lies to the left of its rings: the part of an outside cut, the opening of an inside one.
  const asIs = (side === 'inside') === job.feeds.climb
  return ringTrack(ringFrom(asIs ? ring : turnedRound(ring), x, y), job)
}

// The shortest way in from beside the material; null where there is none of at most `mostMm`.
function entryNear(entries: readonly Ring[], ring: Ring, mostMm: number): Outside | null {
  let best: Outside | null = null
  let least = mostMm
  for (const edge of entries)
    for (let k = 0; k < edge.length; k += 2) {
      const [x, y] = [edge[k]!, edge[k + 1]!]
      const { distanceMm } = nearest({ rings: [ring] }, x, y)
      const off = Math.abs(distanceMm)
      if (off >= least) continue
      const from = ringFrom(ring, x, y)
      least = off
      best = { x, y, toX: from[0]!, toY: from[1]! }
    }
  return best
}

// Away from corners: where the way begins and ends a mark is seen least.
function middleOfLongest(ring: Ring): readonly [number, number] {
  let best = 0
  let most = -1
  const n = ring.length
  for (let k = 0; k < n; k += 2) {
    const e = (k + 2) % n
    const long = Math.hypot(ring[e]! - ring[k]!, ring[e + 1]! - ring[k + 1]!)
    if (long > most) {
      most = long
      best = k
    }
  }
  const next = (best + 2) % n
  return [(ring[best]! + ring[next]!) / 2, (ring[best + 1]! + ring[next + 1]!) / 2]
}

function nearestRing(rings: readonly Ring[], x: number, y: number): Ring {
  return rings.reduce((a, b) => (nearestCorner(b, x, y).mm < nearestCorner(a, x, y).mm ? b : a))
}

function closes(region: Region, side: 'outside' | 'inside', diameterMm: number): NoPath {
  if (side === 'inside' && region.rings.length === 1) return tooLarge(region, diameterMm)
  let low = 0
  let high = diameterMm
  for (let k = 0; k < 14; k++) {
    const mid = (low + high) / 2
    const there = offset(region, ((side === 'outside' ? 1 : -1) * mid) / 2, { join: 'round', tolMm: 0.01 })
    if (there.rings.length === region.rings.length) low = mid
    else high = mid
  }
  const largestMm = Math.floor(100 * low) / 100
  return {
    says: `a cutter ${diameterMm} mm across does not pass everywhere along it; one of ${largestMm} mm does`,
    largestMm: largestMm > 0 ? largestMm : null
  }
}
