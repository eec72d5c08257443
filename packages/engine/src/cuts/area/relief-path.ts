import { offset } from '../../shape/offset.ts'
import type { Region, Ring } from '../../shape/region.ts'
import type { CutJob } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { depthPasses } from './depth-passes.ts'
import { downFree } from './entry.ts'
import { groundOf, onGround } from './free-way.ts'

/** A corner of a pocket that is bored out. */
export interface Relief {
  /** The corner itself, and the middle of the bore, mm. */
  readonly x: number
  readonly y: number
  readonly cx: number
  readonly cy: number
  /** Where the cutter stands in the pocket, touching both sides. */
  readonly fromX: number
  readonly fromY: number
}

/** Turns smaller than this are chords of a curve, degrees; and the least side, in radii, that a corner has. */
const LEAST_TURN_DEG = 20
const LEAST_SIDE = 0.2

/**
 * The inner corners of a pocket that a cutter of a diameter leaves round, and the bores that clear them: on the
 * bisector, the corner on the circle, so that a square part goes in. A corner of angle θ: the cutter stands
 * r/sin(θ/2) from it when it touches both sides, its bore r from it.
 *
 * Check: test/cuts/area/relief-path.test.ts: of a square corner the bore's middle lies r/√2 from both sides.
 * Limits: corners drawn round have none; corners whose bore does not lie beside the cleared pocket are left.
 */
export function reliefs(region: Region, diameterMm: number, tolMm: number): Relief[] {
  const half = diameterMm / 2
  const ground = groundOf(offset(region, -half, { join: 'round', tolMm: tolMm / 4 }), tolMm)
  return region.rings.flatMap(ring => cornersOf(ring, half)).filter(r => onGround(ground, r.fromX, r.fromY))
}

/**
 * Bores the corners out of a pocket that is already cleared: down in the pocket, sideways into the corner and back,
 * pass by pass, so that no cutter has to go straight down.
 */
export function reliefPath(job: CutJob, corners: readonly Relief[]): Toolpath {
  const pen = new PathPen(job.clearMm)
  for (const [i, { cx, cy, fromX, fromY }] of corners.entries()) {
    pen.pass(`corner ${i + 1} of ${corners.length}`)
    for (const pass of depthPasses(job)) {
      if (pen.z >= job.clearMm || Number.isNaN(pen.z)) downFree(pen, job, fromX, fromY, pass.toMm)
      else pen.line(fromX, fromY, pass.toMm, job.feeds.plungeMmMin)
      pen.line(cx, cy, pass.toMm, job.feeds.rampMmMin)
      pen.line(fromX, fromY, pass.toMm, job.feeds.feedMmMin)
    }
  }
  return pen.done()
}

function cornersOf(ring: Ring, half: number): Relief[] {
  const n = ring.length
  const out: Relief[] = []
  for (let k = 0; k < n; k += 2) {
    const [p, e] = [(k + n - 2) % n, (k + 2) % n]
    const [x, y] = [ring[k]!, ring[k + 1]!]
    const [ax, ay, bx, by] = [x - ring[p]!, y - ring[p + 1]!, ring[e]! - x, ring[e + 1]! - y]
    const [la, lb] = [Math.hypot(ax, ay), Math.hypot(bx, by)]
    if (Math.min(la, lb) < LEAST_SIDE * half) continue
    // Region to the left: a left turn is a corner that the cutter does not get into.
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
    if (turn < (LEAST_TURN_DEG * Math.PI) / 180) continue
    const [mx, my] = [bx / lb - ax / la, by / lb - ay / la]
    const long = Math.hypot(mx, my)
    const stand = half / Math.sin((Math.PI - turn) / 2)
    out.push({
      x,
      y,
      cx: x + (mx / long) * half,
      cy: y + (my / long) * half,
      fromX: x + (mx / long) * stand,
      fromY: y + (my / long) * stand
    })
  }
  return out
}
