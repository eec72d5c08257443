import { decimals } from '../../quantity/format.ts'
import { segmentShare } from '../../shape/edge-tree.ts'
import { stroke } from '../../shape/offset.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { aboveMm, depthsOf, tooDeep } from './depth-pass.ts'
import { rampIn } from './ramp-in.ts'
import { reversed, shortWay } from './short-way.ts'
import { vFloor } from './v-cutter.ts'

/** What a groove looks like cut across; widths as in the stack (mm), the angle of a V included, degrees. */
export interface GrooveProfile {
  readonly kind: 'flat' | 'v' | 'round'
  readonly widthMm: number
  readonly angleDeg: number
}

/** One trip along the groove beside its middle line: how far beside it, and how far above its floor. */
interface Trip {
  readonly asideMm: number
  readonly riseMm: number
}

/** A cutter this near the width of a groove makes it in one trip, mm. */
const SAME_MM = 0.05
/** Height of the ridges a ball leaves on the floor of a wider round groove, mm (practice: sanded out at once). */
const RIDGE_MM = 0.02

/**
 * Grooves along lines (x0,y0,x1,y1,...; one that ends where it starts is closed), with round ends: a flat cutter for a
 * flat floor, a ball for a round one, a V for a V. The deepest point of the profile lies at `job.floorMm`; a blunt V
 * stays above it by what keeps the width at the face.
 *
 * A cutter as wide as the groove runs once along it a pass, to and fro; a narrower one runs the middle, then rings
 * round it, outward, the wall on its right with climb cutting. Rings of a round groove rise: a ball of radius R touches
 * the circle of radius r where its middle lies on a circle of radius r − R, at steps φ so that the ridge
 * c = s²/8·(1/R − 1/r), s = r·φ stays below 0.02 mm (textbook scallop of a ball within a cylinder; derived).
 *
 * Every pass enters along the line, down a ramp no steeper than `feeds.rampDeg`, forth and back so that no wedge is left.
 */
export function groovePath(
  job: CutJob,
  lines: readonly Float64Array[],
  profile: GrooveProfile
): Toolpath | NoPath {
  const { feeds, topMm } = job
  const planned = tripsOf(job, profile)
  if ('says' in planned) return planned
  const { trips, floorMm } = planned
  const pen = new PathPen(job.clearMm)
  const order = shortWay(lines)
  for (const [n, turn] of order.entries()) {
    const label = lines.length === 1 ? 'groove' : `groove ${n + 1} of ${lines.length}`
    const line = turn.reversed ? reversed(lines[turn.index]!) : lines[turn.index]!
    const closed = line.length > 4 && line[0] === line.at(-2) && line[1] === line.at(-1)
    const rings = trips.slice(1).map(({ asideMm }) => ringsAbout(line, asideMm, job))
    // Of a round groove the passes above may be deeper at the sides than its own walls: rings keep above their rise.
    const depths = depthsOf(topMm, floorMm, feeds.depthMm)
    let from = topMm
    let there = line
    depths.forEach((z, k) => {
      pen.pass(`${label}, pass ${k + 1} of ${depths.length}, ${decimals(topMm - z, 1)} deep`)
      pen.over(there[0]!, there[1]!)
      pen.down(aboveMm(job))
      rampIn(pen, job, there, from, z)
      follow(pen, there, z, feeds.feedMmMin)
      trips.slice(1).forEach(({ riseMm }, t) => {
        const at = Math.max(z, floorMm + riseMm)
        // A ring whose own depth was reached by the pass before is done.
        if (k > 0 && at >= from - 1e-9) return
        for (const ring of rings[t]!) goRound(pen, job, ring, at)
      })
      from = z
      // To and fro: an open line is taken on from the end where the cutter stands.
      if (!closed) there = reversed(there)
    })
  }
  return pen.done()
}

function tripsOf(
  job: CutJob,
  profile: GrooveProfile
): { readonly trips: readonly Trip[]; readonly floorMm: number } | NoPath {
  const { cutter, feeds } = job
  const mm = (v: number) => `${decimals(v, 2)} mm`
  if (profile.kind === 'v') {
    const floorMm = vFloor(job, profile.angleDeg)
    return typeof floorMm === 'number' ? { trips: [{ asideMm: 0, riseMm: 0 }], floorMm } : floorMm
  }
  const right =
    profile.kind === 'flat' ? cutter.form === 'flat' || cutter.form === 'surfacing' : cutter.form === 'ball'
  if (!right)
    return {
      says:
        profile.kind === 'flat' ? 'A flat floor wants a flat cutter.' : 'A round floor wants a ball cutter.',
      largestMm: profile.widthMm
    }
  if (cutter.diameterMm > profile.widthMm + SAME_MM)
    return {
      says: `The groove is ${mm(profile.widthMm)} wide; the cutter is ${mm(cutter.diameterMm)}.`,
      largestMm: profile.widthMm
    }
  const deep = tooDeep(job)
  if (deep !== null) return deep
  const aside = (profile.widthMm - cutter.diameterMm) / 2
  const trips: Trip[] = [{ asideMm: 0, riseMm: 0 }]
  if (aside <= SAME_MM / 2) return { trips, floorMm: job.floorMm }
  if (profile.kind === 'flat') {
    const allowance = Math.min(feeds.allowanceMm, aside / 2)
    const count = Math.max(
      1,
      Math.ceil((aside - allowance) / Math.min(feeds.stepMm, 0.9 * cutter.diameterMm))
    )
    for (let n = 1; n <= count; n++) trips.push({ asideMm: ((aside - allowance) * n) / count, riseMm: 0 })
    if (allowance > 0) trips.push({ asideMm: aside, riseMm: 0 })
  } else {
    const [r, ball] = [profile.widthMm / 2, cutter.diameterMm / 2]
    const step = Math.sqrt((8 * RIDGE_MM) / (1 / ball - 1 / r)) / r
    const count = Math.max(1, Math.ceil(Math.PI / 2 / step - 1e-9))
    for (let n = 1; n <= count; n++) {
      const a = ((Math.PI / 2) * n) / count
      trips.push({ asideMm: aside * Math.sin(a), riseMm: aside * (1 - Math.cos(a)) })
    }
  }
  return { trips, floorMm: job.floorMm }
}

// Rings at a distance from a line, the wall on the right of a cutter that climbs.
function ringsAbout(line: Float64Array, asideMm: number, job: CutJob): Float64Array[] {
  const { rings } = stroke(line, 2 * asideMm, { ends: 'round', tolMm: job.tolMm })
  return rings.map(ring => (job.feeds.climb ? ring : reversed(ring)))
}

function follow(pen: PathPen, line: Float64Array, z: number, feedMmMin: number): void {
  for (let k = 0; k < line.length; k += 2) pen.line(line[k]!, line[k + 1]!, z, feedMmMin)
}

// To the nearest place of a ring, level, then once round it. That place lies one step aside, so that the way there is
// through what is cleared; rings on the two sides of a closed line are reached across its middle.
function goRound(pen: PathPen, job: CutJob, ring: Float64Array, z: number): void {
  const n = ring.length
  let start = 0
  let share = 0
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < n; k += 2) {
    const next = (k + 2) % n
    const t = segmentShare(ring[k]!, ring[k + 1]!, ring[next]!, ring[next + 1]!, pen.x, pen.y)
    const d = Math.hypot(
      ring[k]! + t * (ring[next]! - ring[k]!) - pen.x,
      ring[k + 1]! + t * (ring[next + 1]! - ring[k + 1]!) - pen.y
    )
    if (d < least) [least, start, share] = [d, k, t]
  }
  const feed = job.feeds.feedMmMin
  if (z > pen.z) pen.line(pen.x, pen.y, z, feed)
  const next = (start + 2) % n
  const x = ring[start]! + share * (ring[next]! - ring[start]!)
  const y = ring[start + 1]! + share * (ring[next + 1]! - ring[start + 1]!)
  pen.line(x, y, z, feed)
  for (let k = 2; k <= n; k += 2) {
    const i = (start + k) % n
    pen.line(ring[i]!, ring[i + 1]!, z, feed)
  }
  pen.line(x, y, z, feed)
}
