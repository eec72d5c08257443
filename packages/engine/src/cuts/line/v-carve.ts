import { decimals } from '../../quantity/format.ts'
import { difference, intersection } from '../../shape/combine.ts'
import { medialAxis } from '../../shape/medial-axis.ts'
import { offset } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { aboveMm, depthsOf } from './depth-pass.ts'
import { reversed3, shortWay } from './short-way.ts'
import { spread } from './v-cutter.ts'

/** Height of the ridges the V leaves on a floor, mm; what its rings go over of the cleared floor, mm. */
const RIDGE_MM = 0.015
const OVER_MM = 0.1
/** More rings than this are no corners. */
const MOST_RINGS = 5000

/** A region cut out with a V: its way, and the floor that a flat cutter clears beforehand at the greatest depth. */
export interface VCarve {
  readonly path: Toolpath
  /** Where the limit leaves a flat floor, as far as its walls; EMPTY where the V does it all. */
  readonly flatRegion: Region
  /** Height of the deepest place of the tip, z mm. */
  readonly deepestMm: number
}

/**
 * A groove of varying width: a V runs along the middle lines of a region, everywhere so deep that it touches both sides
 * at the face,
 *
 *   d = (r − tip/2)/tan(θ/2)          r radius of the largest circle that fits there (`medialAxis`)
 *
 * so that what is left lies at depth δ/tan(θ/2), δ the distance from the outline (of a sharp V: exactly, as each place
 * lies on the way from its nearest place of the outline to a middle line). It goes no deeper than `job.floorMm` and than
 * the cutter is wide; where more would be wanted it runs along the walls of a flat floor instead, which is cleared by a
 * flat cutter. Places narrower than the blunt tip are left out: corners are as round as the tip.
 *
 * Deep ones are cut in passes of `feeds.depthMm`, each going only where the one before did not reach the bottom. Down a
 * slope steeper than the ramp it goes at the feed of a ramp.
 *
 * Limits: accuracy is that of the middle lines, `job.tolMm` (see there). Where the face is worked down afterwards the
 * first pass is deeper by that.
 *
 * @param flatHalfMm radius of the flat cutter that clears the floor: the V goes over what it leaves in corners, in rings so near
 *   that the ridges between them stay low; left out: none
 * @param faceMm height of the face in which the V is to be as wide as the region, z: below `job.topMm` by what is taken
 *   off it after the cut
 */
export function vCarvePath(
  region: Region,
  job: CutJob,
  faceMm = job.topMm,
  flatHalfMm: number | null = null
): VCarve | NoPath {
  const { cutter, feeds, floorMm } = job
  if (cutter.form !== 'v') return { says: 'Figures of varying width want a V cutter.', largestMm: null }
  if (!cutter.plunges)
    return {
      says: 'The V cutter does not cut in its middle: it cannot go down into a figure.',
      largestMm: null
    }
  const slope = spread(cutter.angleDeg)
  const tip = cutter.tipMm / 2
  const most = Math.min(faceMm - floorMm, (cutter.diameterMm / 2 - tip) / slope - (job.topMm - faceMm))
  const widest = most * slope + tip
  const lines = medialAxis(region, job.tolMm).flatMap(b => depthsAlong(b, slope, tip, widest))
  const inner = offset(region, -widest, { join: 'round', tolMm: job.tolMm / 2 })
  for (const ring of inner.rings) lines.push(rimOf(ring, most))
  if (flatHalfMm !== null && inner.rings.length > 0) {
    const stepMm = 2 * (tip + RIDGE_MM * slope)
    for (const ring of cornerRings(inner, flatHalfMm, stepMm, job.tolMm)) lines.push(rimOf(ring, most))
  }
  if (lines.length === 0)
    return {
      says: `The figures are narrower everywhere than the blunt tip of the cutter, ${decimals(cutter.tipMm, 2)} mm.`,
      largestMm: null
    }
  const flatRegion =
    inner.rings.length === 0 ? EMPTY : offset(region, -most * slope, { join: 'round', tolMm: job.tolMm / 2 })
  const deepest = lines.reduce((d, l) => Math.max(d, deepestOf(l)), 0)
  const pen = new PathPen(job.clearMm)
  const levels = depthsOf(faceMm, faceMm - deepest, feeds.depthMm).map(z => faceMm - z)
  levels.forEach((level, k) => {
    const left = k === 0 ? lines : lines.flatMap(l => deeperThan(l, levels[k - 1]!))
    const parts = left.map(l => noDeeper(l, level))
    const order = shortWay(parts.map(flat))
    order.forEach(({ index, reversed }, n) => {
      const line = reversed ? reversed3(parts[index]!) : parts[index]!
      const [x, y, z] = [line[0]!, line[1]!, faceMm - line[2]!]
      const on = pen.z < job.clearMm && Math.hypot(pen.x - x, pen.y - y) < 1e-6
      if (!on) {
        pen.pass(`line ${n + 1} of ${parts.length}, pass ${k + 1} of ${levels.length}`)
        pen.over(x, y)
        pen.down(aboveMm(job))
      }
      pen.line(x, y, z, feeds.plungeMmMin)
      for (let i = 3; i < line.length; i += 3) go(pen, job, line, i, faceMm - line[i + 2]!)
    })
  })
  return { path: pen.done(), flatRegion, deepestMm: faceMm - deepest }
}

// Rings over the corners of a floor that a round cutter does not reach into.
function cornerRings(floor: Region, halfMm: number, stepMm: number, tolMm: number): Float64Array[] {
  const shape = { join: 'round', tolMm: tolMm / 2 } as const
  const opened = offset(offset(floor, -halfMm, shape), halfMm - OVER_MM, shape)
  let left = intersection(offset(difference(floor, opened), OVER_MM, shape), floor)
  const out: Float64Array[] = []
  while (left.rings.length > 0 && out.length < MOST_RINGS) {
    out.push(...left.rings)
    left = offset(left, -stepMm, shape)
  }
  return out
}

function go(pen: PathPen, job: CutJob, line: Float64Array, i: number, z: number): void {
  const { feeds } = job
  const way = Math.hypot(line[i]! - pen.x, line[i + 1]! - pen.y)
  const steep = pen.z - z > way * Math.tan((Math.min(89, feeds.rampDeg) * Math.PI) / 180)
  pen.line(line[i]!, line[i + 1]!, z, steep ? feeds.rampMmMin : feeds.feedMmMin)
}

// A branch x,y,r as stretches x,y,depth: without what is narrower than the tip or wider than the limit.
function depthsAlong(branch: Float64Array, slope: number, tip: number, widest: number): Float64Array[] {
  const depth = (r: number) => (r - tip) / slope
  if (branch.length === 3)
    return branch[2]! > tip && branch[2]! <= widest
      ? [Float64Array.of(branch[0]!, branch[1]!, depth(branch[2]!))]
      : []
  return stretches(branch, tip, widest).map(l => l.map((v, k) => (k % 3 === 2 ? depth(v) : v)))
}

// Those stretches deeper than a level that was reached.
function deeperThan(line: Float64Array, level: number): Float64Array[] {
  if (line.length === 3) return line[2]! > level ? [line] : []
  return stretches(line, level, Number.POSITIVE_INFINITY)
}

// A line of x, y, depth that is level where it would go deeper than a pass may.
function noDeeper(line: Float64Array, level: number): Float64Array {
  const out = [line[0]!, line[1]!, Math.min(level, line[2]!)]
  for (let k = 3; k < line.length; k += 3) {
    const [a, b] = [line[k - 1]!, line[k + 2]!]
    if ((a < level && b > level) || (a > level && b < level)) {
      const t = (level - a) / (b - a)
      out.push(
        line[k - 3]! + t * (line[k]! - line[k - 3]!),
        line[k - 2]! + t * (line[k + 1]! - line[k - 2]!),
        level
      )
    }
    out.push(line[k]!, line[k + 1]!, Math.min(level, b))
  }
  return Float64Array.from(out)
}

// The parts of a line of x, y, v where v lies between two values, ended by places between where it crosses them.
function stretches(line: Float64Array, low: number, high: number): Float64Array[] {
  const out: Float64Array[] = []
  let now: number[] = []
  const close = () => {
    if (now.length >= 6) out.push(Float64Array.from(now))
    now = []
  }
  for (let k = 3; k < line.length; k += 3) {
    const [v0, v1] = [line[k - 1]!, line[k + 2]!]
    // Shares of the stretch at which it enters and leaves the band.
    const at = (v: number) => (v - v0) / (v1 - v0)
    let [from, to] = [0, 1]
    if (v0 === v1) {
      if (v0 < low || v0 > high) to = -1
    } else {
      const [a, b] = v1 > v0 ? [at(low), at(high)] : [at(high), at(low)]
      from = Math.max(0, a)
      to = Math.min(1, b)
    }
    if (to - from <= 1e-12) {
      close()
      continue
    }
    const place = (t: number) => [0, 1, 2].map(d => line[k - 3 + d]! + t * (line[k + d]! - line[k - 3 + d]!))
    if (from > 0) close()
    if (now.length === 0) now.push(...place(from))
    now.push(...place(to))
    if (to < 1) close()
  }
  close()
  return out
}

function rimOf(ring: Float64Array, depthMm: number): Float64Array {
  const out = new Float64Array((ring.length / 2 + 1) * 3)
  for (let k = 0; k <= ring.length / 2; k++) {
    const i = (2 * k) % ring.length
    out.set([ring[i]!, ring[i + 1]!, depthMm], 3 * k)
  }
  return out
}

function deepestOf(line: Float64Array): number {
  let d = 0
  for (let k = 2; k < line.length; k += 3) d = Math.max(d, line[k]!)
  return d
}

function flat(line: Float64Array): Float64Array {
  return line.filter((_, k) => k % 3 !== 2)
}
