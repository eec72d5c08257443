import type { CutJob } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'

/** Shorter than this a line leaves no room for a ramp, mm. */
const LEAST_RAMP_MM = 0.2
/** Never more trips forth and back than this. */
const MOST_TRIPS = 400

/**
 * Down from `fromMm` to `toMm` along the beginning of a line, forth and back, at most as steep as `feeds.rampDeg`; ends
 * at the start of the line with no wedge left behind. The pen stands over the start.
 *
 *   length of one trip  L = min(line, Δz/(2·tan α)), trips an even number so that Δz/(trips·L) ≤ tan α
 *
 * A cutter that may go straight down (`feeds.rampDeg` of 90), or a line too short for a ramp, plunges.
 */
export function rampIn(pen: PathPen, job: CutJob, line: Float64Array, fromMm: number, toMm: number): void {
  const { feeds } = job
  const [x0, y0] = [line[0]!, line[1]!]
  if (pen.z > fromMm) pen.line(x0, y0, fromMm, feeds.plungeMmMin)
  const long = lengthOf(line)
  const down = fromMm - toMm
  const steep = Math.tan((Math.min(89, feeds.rampDeg) * Math.PI) / 180)
  if (feeds.rampDeg >= 80 || long < LEAST_RAMP_MM) {
    pen.line(x0, y0, toMm, feeds.plungeMmMin)
    return
  }
  const way = Math.min(long, down / (2 * steep))
  const trips = Math.min(MOST_TRIPS, 2 * Math.max(1, Math.ceil(down / (2 * way * steep) - 1e-9)))
  const part = startOf(line, way)
  for (let t = 0; t < trips; t++) {
    const [z0, z1] = [fromMm - (down * t) / trips, t === trips - 1 ? toMm : fromMm - (down * (t + 1)) / trips]
    const forth = t % 2 === 0
    let gone = 0
    for (let k = 2; k < part.length; k += 2) {
      const [i, p] = forth ? [k, k - 2] : [part.length - 2 - k, part.length - k]
      gone += Math.hypot(part[i]! - part[p]!, part[i + 1]! - part[p + 1]!)
      const z = k === part.length - 2 ? z1 : z0 + ((z1 - z0) * gone) / way
      pen.line(part[i]!, part[i + 1]!, z, feeds.rampMmMin)
    }
  }
}

/** Length of a line, mm. */
function lengthOf(line: Float64Array): number {
  let sum = 0
  for (let k = 2; k < line.length; k += 2)
    sum += Math.hypot(line[k]! - line[k - 2]!, line[k + 1]! - line[k - 1]!)
  return sum
}

// The first so many mm of a line.
function startOf(line: Float64Array, wayMm: number): Float64Array {
  const out = [line[0]!, line[1]!]
  let left = wayMm
  for (let k = 2; k < line.length && left > 1e-12; k += 2) {
    const [x, y] = [line[k - 2]!, line[k - 1]!]
    const long = Math.hypot(line[k]! - x, line[k + 1]! - y)
    const t = long <= left || long === 0 ? 1 : left / long
    out.push(x + t * (line[k]! - x), y + t * (line[k + 1]! - y))
    left -= long
  }
  return Float64Array.from(out)
}
