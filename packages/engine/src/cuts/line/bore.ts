import { decimals } from '../../quantity/format.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { arcTo } from './arc-move.ts'
import { aboveMm, depthsOf, tooDeep } from './depth-pass.ts'
import { shortWay } from './short-way.ts'

/** A round hole down to the floor of its job. */
export interface Bore {
  readonly x: number
  readonly y: number
  readonly diameterMm: number
  /** Open at the foot: a drill goes on until its whole width has left the work. */
  readonly through: boolean
  /** "bore", "pin hole": for the names of the passes. */
  readonly name?: string
}

/** A cutter this near the size of a hole makes it by going straight down, mm. */
const SAME_MM = 0.05
/** Of a cutter that cannot go straight down, at least this share of its diameter it must circle (practice). */
const CIRCLE_SHARE = 0.15
/** More turns of a helix than this take too long: a cutter that may goes straight down instead. */
const MOST_TURNS = 200

/** Height of the point of a drill, mm: h = D/(2·tan(σ/2)). Check: 118° 0.300·D, 90° 0.5·D. */
export function pointMm(diameterMm: number, angleDeg: number): number {
  return diameterMm / (2 * Math.tan((angleDeg * Math.PI) / 360))
}

/**
 * Bores of one floor with one cutter, in a short order.
 *
 * - a drill of the size: pecks, each no deeper than `feeds.depthMm`, up above the work between them. In a blind hole
 *   its point stops at the floor; right through it goes its point's height past it
 * - a flat cutter of the size: pecks, if its edges meet in the middle
 * - a smaller flat cutter: down a helix no steeper than `feeds.rampDeg` and no more than `feeds.depthMm` a turn, a level
 *   turn at the foot. What the cutter does not cover in one turn is cleared in rings from the middle outward, pass by
 *   pass, no farther apart than `feeds.stepMm`
 *
 * Rings run counter-clockwise with climb cutting: the wall is on the right hand of a cutter that turns clockwise.
 * A counterbore is a wider bore about the same middle, with its own floor.
 *
 * Limits: floors of bores are flat, so that ball, V and bull-nosed cutters are refused; a blind hole that is drilled
 * keeps the cone of the point.
 */
export function borePath(job: CutJob, bores: readonly Bore[]): Toolpath | NoPath {
  for (const bore of bores) {
    const fault = boreFault(job, bore)
    if (fault !== null) return fault
  }
  const pen = new PathPen(job.clearMm)
  const order = shortWay(bores.map(b => Float64Array.of(b.x, b.y)))
  order.forEach(({ index }, k) => {
    const bore = bores[index]!
    const label = `${bore.name ?? 'bore'} ${k + 1} of ${bores.length}`
    const circleMm = (bore.diameterMm - job.cutter.diameterMm) / 2
    if (circleMm <= SAME_MM / 2) peck(pen, job, bore, label)
    else clear(pen, job, bore, circleMm, label)
  })
  return pen.done()
}

function boreFault(job: CutJob, bore: Bore): NoPath | null {
  const { cutter } = job
  const across = `${decimals(bore.diameterMm, 2)} mm`
  if (cutter.diameterMm > bore.diameterMm + SAME_MM)
    return {
      says: `The hole is ${across} across; the cutter is ${decimals(cutter.diameterMm, 2)} mm.`,
      largestMm: bore.diameterMm
    }
  const same = bore.diameterMm - cutter.diameterMm <= SAME_MM
  if (cutter.form === 'drill' && !same)
    return {
      says: `A drill of ${decimals(cutter.diameterMm, 2)} mm makes no hole of ${across}.`,
      largestMm: bore.diameterMm
    }
  if (cutter.form !== 'drill' && cutter.form !== 'flat' && cutter.form !== 'surfacing')
    return { says: 'A bore wants a drill or a flat cutter.', largestMm: bore.diameterMm }
  if (!cutter.plunges && (bore.diameterMm - cutter.diameterMm) / 2 < CIRCLE_SHARE * cutter.diameterMm)
    return {
      says: `The cutter does not cut in its middle: in a hole of ${across} it has no room to circle.`,
      largestMm: bore.diameterMm / (1 + 2 * CIRCLE_SHARE)
    }
  return tooDeep(job)
}

/** Where the tip of a cutter ends in a bore, z mm. */
function endMm(job: CutJob, bore: Bore): number {
  const { form, diameterMm, angleDeg } = job.cutter
  return form === 'drill' && bore.through ? job.floorMm - pointMm(diameterMm, angleDeg) : job.floorMm
}

// How far above the last peck's floor a drill goes at rapid speed again, mm (practice).
const CLEAR_OF_CHIPS_MM = 0.5

function peck(pen: PathPen, job: CutJob, bore: Bore, label: string): void {
  pen.pass(`${label}, ${decimals(job.topMm - job.floorMm, 1)} deep`)
  pen.over(bore.x, bore.y)
  const above = aboveMm(job)
  pen.down(above)
  let made = job.topMm
  for (const z of depthsOf(job.topMm, endMm(job, bore), job.feeds.depthMm)) {
    if (made < job.topMm) pen.down(Math.min(above, made + CLEAR_OF_CHIPS_MM))
    pen.line(bore.x, bore.y, z, job.feeds.plungeMmMin)
    // Up above the work, so that the chips come out; at rapid speed, as the cutter stands free in its own hole.
    pen.over(bore.x, bore.y)
    made = z
  }
}

function clear(pen: PathPen, job: CutJob, bore: Bore, circleMm: number, label: string): void {
  const { cutter, feeds, topMm, floorMm } = job
  const deep = `${decimals(topMm - floorMm, 1)} deep`
  const allowance = Math.min(feeds.allowanceMm, circleMm / 2)
  // Half a diameter is the widest circle that leaves no post in the middle; a little less covers it surely.
  const first = Math.min(circleMm - allowance, 0.45 * cutter.diameterMm)
  const oneRing = circleMm - allowance <= first + 1e-9
  if (oneRing) {
    pen.pass(`${label}, ${deep}`)
    pen.over(bore.x + first, bore.y)
    pen.down(aboveMm(job))
    down(pen, job, bore, first, topMm, floorMm)
  } else {
    const depths = depthsOf(topMm, floorMm, feeds.depthMm)
    let from = topMm
    depths.forEach((z, k) => {
      pen.pass(`${label}, pass ${k + 1} of ${depths.length}, ${decimals(topMm - z, 1)} deep`)
      pen.over(bore.x + first, bore.y)
      pen.down(aboveMm(job))
      // Through what the pass before cleared: at feed speed, in air.
      pen.line(bore.x + first, bore.y, from, feeds.plungeMmMin)
      down(pen, job, bore, first, from, z)
      const last = circleMm - allowance
      const count = Math.ceil((last - first) / Math.min(feeds.stepMm, 0.9 * cutter.diameterMm) - 1e-9)
      for (let n = 1; n <= count; n++) ring(pen, job, bore, first + ((last - first) * n) / count)
      leave(pen, job, bore)
      from = z
    })
  }
  if (allowance > 0) {
    const depths = depthsOf(topMm, floorMm, feeds.depthMm)
    for (const [k, z] of depths.entries()) {
      pen.pass(`${label}, wall ${k + 1} of ${depths.length}, ${decimals(topMm - z, 1)} deep`)
      pen.over(bore.x, bore.y)
      pen.down(aboveMm(job))
      pen.line(bore.x, bore.y, z, feeds.plungeMmMin)
      ring(pen, job, bore, circleMm)
      leave(pen, job, bore)
    }
  } else leave(pen, job, bore)
}

// Down from one height to another at a circle of the radius, then level round at the foot.
function down(pen: PathPen, job: CutJob, bore: Bore, radius: number, from: number, to: number): void {
  const { feeds, cutter } = job
  const { x, y } = bore
  const steep = feeds.rampDeg >= 80 ? Number.POSITIVE_INFINITY : Math.tan((feeds.rampDeg * Math.PI) / 180)
  const perTurn = Math.min(feeds.depthMm, 2 * Math.PI * radius * steep)
  const turns = Math.max(1, Math.ceil((from - to) / perTurn - 1e-9))
  if (turns > MOST_TURNS && cutter.plunges) {
    for (const z of depthsOf(from, to, feeds.depthMm)) {
      pen.line(x + radius, y, z, feeds.plungeMmMin)
      turn(pen, job, bore, radius, z, feeds.feedMmMin)
    }
    return
  }
  if (pen.z > from) pen.line(x + radius, y, from, feeds.plungeMmMin)
  for (let k = 1; k <= turns; k++)
    turn(pen, job, bore, radius, k === turns ? to : from - ((from - to) * k) / turns, feeds.rampMmMin)
  turn(pen, job, bore, radius, to, feeds.feedMmMin)
}

function turn(pen: PathPen, job: CutJob, bore: Bore, radius: number, z: number, feedMmMin: number): void {
  arcTo(
    pen,
    job,
    { x: bore.x + radius, y: bore.y, z },
    { cx: bore.x, cy: bore.y },
    !job.feeds.climb,
    feedMmMin
  )
}

// Out to a wider circle and once round it, at the height where the cutter stands.
function ring(pen: PathPen, job: CutJob, bore: Bore, radius: number): void {
  pen.line(bore.x + radius, bore.y, pen.z, job.feeds.feedMmMin)
  turn(pen, job, bore, radius, pen.z, job.feeds.feedMmMin)
}

// Off the wall before the cutter is lifted.
function leave(pen: PathPen, job: CutJob, bore: Bore): void {
  if (!Number.isNaN(pen.z) && pen.z < job.topMm) pen.line(bore.x, bore.y, pen.z, job.feeds.feedMmMin)
}
