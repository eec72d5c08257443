import { decimals } from '../../quantity/format.ts'
import { area } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region, Ring } from '../../shape/region.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import { depthsOf } from '../line/depth-pass.ts'
import { rampIn } from '../line/ramp-in.ts'
import { reversed } from '../line/short-way.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { downFree, overTop, startOfEntry } from './entry.ts'
import type { OutlineOptions } from './outline-path.ts'
import { tabPlaces } from './tab-places.ts'
import { ringTrack } from './track.ts'

/** A cutter goes into an opening just as wide as it is: so much of its radius is not asked for, mm. */
const PLAY_MM = 0.005

/**
 * Cuts along those stretches of the outline of a long part that lie within reach: each to its full depth, to and fro,
 * come down to on a ramp along it. Tabs are left where they stand on the whole way round, so that every position
 * leaves the same ones; the part is free when the last position is done.
 *
 * `within` says which stretches of a line (closed ones begin where they end) are within reach.
 *
 * Check: test/cuts/area/outline-stretch.test.ts: two halves together run along the whole outline, tabs left once.
 * Limits: no allowance is left for a last pass, and every second pass is conventional.
 */
export function outlineStretches(
  job: CutJob,
  region: Region,
  options: OutlineOptions,
  within: (lines: readonly Float64Array[]) => Float64Array[]
): Toolpath | NoPath {
  const { cutter, feeds, tolMm } = job
  const { side, tabs = null, skinMm = 0, underMm = job.floorMm } = options
  if (cutter.form === 'drill' || cutter.form === 'keyhole' || cutter.form === 'v')
    return { says: 'it cuts no upright edge: an outline wants a flat cutter', largestMm: null }
  if (!(area(region) > 0)) return { says: 'the outline encloses nothing', largestMm: null }
  if (feeds.rampDeg >= 90 && !cutter.plunges)
    return { says: 'its middle does not cut, and it is not taken down on a ramp', largestMm: null }
  const half = cutter.diameterMm / 2
  const mm = side === 'outside' ? half : PLAY_MM - half
  const { rings } = offset(region, mm, { join: 'round', tolMm: tolMm / 4 })
  if (rings.length !== region.rings.length)
    return {
      says: `a cutter ${decimals(cutter.diameterMm, 2)} mm across does not pass everywhere along it`,
      largestMm: null
    }
  const floorMm = skinMm > 0 ? underMm + skinMm : job.floorMm
  if (floorMm >= job.topMm) return { says: 'the skin is as thick as the material', largestMm: null }
  const tabTop = tabs === null ? floorMm : underMm + tabs.thickMm
  if (tabTop >= job.topMm) return { says: 'the tabs are as thick as the material', largestMm: null }
  const pen = new PathPen(job.clearMm)
  for (const ring of rings) {
    const whole = closedLine(ring)
    for (const line of within([whole])) run(pen, job, line, job.topMm, tabTop)
    if (tabs === null || tabTop <= floorMm) continue
    const wide = tabs.widthMm + cutter.diameterMm
    const places = tabPlaces(ringTrack(ring, job), tabs.count, wide + tabs.thickMm)
    if (places.length === 0)
      return { says: 'the way round is too short for a tab: leave a skin', largestMm: null }
    const between = stretchesBetween(
      whole,
      places.map(at => [at - wide / 2, at + wide / 2] as const)
    )
    for (const line of within(between)) run(pen, job, line, tabTop, floorMm)
  }
  return pen.done()
}

// Along a line from one height to another in passes; above the first nothing stands on the way.
function run(pen: PathPen, job: CutJob, line: Float64Array, fromMm: number, toMm: number): void {
  const depths = depthsOf(fromMm, toMm, job.feeds.depthMm)
  let from = fromMm
  let there = line
  depths.forEach((z, k) => {
    pen.pass(`stretch, pass ${k + 1} of ${depths.length}, ${decimals(job.topMm - z, 1)} deep`)
    pen.over(there[0]!, there[1]!)
    if (from >= job.topMm) pen.down(overTop(job))
    else downFree(pen, job, there[0]!, there[1]!, startOfEntry(job, from))
    rampIn(pen, job, there, from, z)
    for (let i = 0; i < there.length; i += 2) pen.line(there[i]!, there[i + 1]!, z, job.feeds.feedMmMin)
    from = z
    there = reversed(there)
  })
}

function closedLine(ring: Ring): Float64Array {
  const out = new Float64Array(ring.length + 2)
  out.set(ring)
  out.set(ring.subarray(0, 2), ring.length)
  return out
}

// A closed line less some of its length: what lies between, in order. Lengths from its start, none past it.
function stretchesBetween(
  line: Float64Array,
  taken: readonly (readonly [from: number, to: number])[]
): Float64Array[] {
  const out: number[][] = []
  let open: number[] | null = null
  let gone = 0
  for (let k = 0; k + 3 < line.length; k += 2) {
    const [ax, ay, bx, by] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!]
    const long = Math.hypot(bx - ax, by - ay)
    // Places along this edge at which a tab begins or ends.
    const stops = taken
      .flat()
      .map(s => (s - gone) / long)
      .filter(t => t > 1e-9 && t < 1 - 1e-9)
    const ends = [0, ...stops.sort((a, b) => a - b), 1]
    for (let i = 0; i + 1 < ends.length; i++) {
      const [t, u] = [ends[i]!, ends[i + 1]!]
      const middle = gone + ((t + u) / 2) * long
      if (taken.some(([a, b]) => middle > a && middle < b)) {
        open = null
        continue
      }
      if (open === null) {
        open = [ax + t * (bx - ax), ay + t * (by - ay)]
        out.push(open)
      }
      open.push(ax + u * (bx - ax), ay + u * (by - ay))
    }
    gone += long
  }
  const [first, last] = [out[0], out.at(-1)]
  if (first !== undefined && last !== undefined && first !== last) {
    if (last.at(-2) === first[0] && last.at(-1) === first[1]) {
      last.push(...first.slice(2))
      out.shift()
    }
  }
  return out.map(o => Float64Array.from(o))
}
