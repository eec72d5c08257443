import { decimals } from '../../quantity/format.ts'
import { difference, intersection, union } from '../../shape/combine.ts'
import { inradius } from '../../shape/inradius.ts'
import { area } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { clearLayers } from './clear-layers.ts'
import { clearingTree } from './clearing-tree.ts'
import { depthPasses, flatRadius } from './depth-passes.ts'
import { finishWalls } from './finish-walls.ts'
import { groundOf } from './free-way.ts'

/** What else a pocket is cut by. */
export interface PocketOptions {
  /**
   * Where nothing stands any more down to the floor: air beside the stock at an open edge, or what a larger cutter
   * has cleared. The cutter may go there and comes down there. Else empty.
   */
  readonly free?: Region
}

/** Most of the flat radius that a side step may be: the rest is for the tolerances of the rings. */
const MOST_STEP = 0.95
/** How far beyond the cutter free ground is used, mm: room to come down in it. */
const FREE_ROOM_MM = 1
/** A cutter goes into a slot just as wide as it is: so much of its radius is not asked for, mm. */
const PLAY_MM = 0.005

/**
 * Clears a region to the floor in passes, islands (holes of the region) left standing, as rings from the middle out
 * to the wall.
 *
 * - the middle of the cutter stays its radius inside the region (and free ground); its rings are insets of that
 *   by one side step, so nothing stands between them (clearing-tree.ts)
 * - down by a helix where it fits, else by a ramp along the ring, else straight where the cutter may; in free
 *   ground where there is some, or where this pass has already cut
 * - from ring to ring straight at depth where that stays on the ground, else lifted
 * - with `feeds.allowanceMm` the rings stop that far from the wall and a last pass goes along it at full depth
 *   (in each pass where its edges are too short, or where only that pass gets into a narrow place)
 * - climb: the wall to the right of the way (spindle clockwise): counter-clockwise along the outside wall,
 *   clockwise about islands
 *
 * No path for a cutter that leaves no flat floor, does not fit, or cannot get down; `largestMm` then is the
 * largest that does fit.
 *
 * Check: test/cuts/area/pocket-path.test.ts: coverage by painting discs, lengths of a ring, sides, heights.
 * Limits: the engagement of the cutter is not held even in corners; what it is too large for stays
 * (rest-region.ts).
 */
export function pocketPath(job: CutJob, region: Region, options: PocketOptions = {}): Toolpath | NoPath {
  const { cutter, feeds, tolMm } = job
  const half = cutter.diameterMm / 2
  if (cutter.form === 'v' || cutter.form === 'drill' || cutter.form === 'keyhole')
    return {
      says: 'it leaves no flat floor: a pocket wants a flat, ball or bull-nose cutter',
      largestMm: null
    }
  if (!(area(region) > 0)) return { says: 'the pocket has no width', largestMm: null }
  const shape = { join: 'round', tolMm: tolMm / 4 } as const
  const near = offset(region, 2 * half + FREE_ROOM_MM, shape)
  const free = options.free === undefined ? EMPTY : intersection(options.free, near)
  const open = free.rings.length > 0
  const ground = open ? union(region, free) : region
  const centres = offset(ground, -(half - PLAY_MM), shape)
  // Ground from which nothing of the region is reached is no part of the work.
  const reached = open ? intersection(offset(centres, half, shape), region) : centres
  if (!(area(reached) > 0)) return tooLarge(region, cutter.diameterMm)
  const allowance = Math.max(0, feeds.allowanceMm)
  const roughed = allowance > 0 ? offset(centres, -allowance, shape) : centres
  const narrow = allowance > 0 && leavesNarrow(centres, roughed, allowance)
  const flat = flatRadius(cutter)
  const stepMm = Math.min(feeds.stepMm, MOST_STEP * (flat > 0 ? flat : half))
  const entries = open ? offset(free, -half - FREE_ROOM_MM / 4, shape) : EMPTY
  const layers = roughed.rings.length > 0 ? clearingTree(roughed, stepMm, tolMm / 4) : []
  const field = { ground: groundOf(centres, tolMm / 2), entries, stepMm }
  const cleared = groundOf(roughed, tolMm / 2)
  const pen = new PathPen(job.clearMm)
  const eachPass = allowance > 0 && (narrow || cutter.fluteMm < job.topMm - job.floorMm)
  for (const pass of depthPasses(job)) {
    pen.pass(pass.name)
    const failed =
      clearLayers(pen, job, layers, field, pass) ??
      (eachPass ? finishWalls(pen, job, field.ground, cleared, pass) : null)
    if (failed !== null) return failed
  }
  if (allowance > 0 && !eachPass) {
    pen.pass('walls, the last pass')
    const whole = { fromMm: job.topMm, toMm: job.floorMm }
    const failed = finishWalls(pen, job, field.ground, cleared, whole)
    if (failed !== null) return failed
  }
  return pen.done()
}

/** No path: the cutter does not go in, and the largest that does. */
export function tooLarge(region: Region, diameterMm: number): NoPath {
  const largestMm = Math.max(0, Math.floor(200 * inradius(region, 0.005).radiusMm) / 100)
  return {
    says: `a cutter ${decimals(diameterMm, 2)} mm across does not go in: at its widest place it is ${decimals(largestMm, 2)} mm wide`,
    largestMm: largestMm > 0 ? largestMm : null
  }
}

// Whether places are left that only the pass along the wall gets into: narrower than the allowance on both sides,
// and more than what a square corner keeps.
function leavesNarrow(centres: Region, roughed: Region, allowance: number): boolean {
  const shape = { join: 'round', tolMm: allowance / 50 } as const
  const left = difference(centres, offset(roughed, allowance * 1.05, shape))
  return offset(left, -allowance * 0.3, shape).rings.length > 0
}
