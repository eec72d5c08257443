import { decimals } from '../../quantity/format.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { aboveMm, depthsOf } from './depth-pass.ts'
import { rampIn } from './ramp-in.ts'
import { reversed, shortWay } from './short-way.ts'
import { vFloor } from './v-cutter.ts'

/**
 * The lines of a scale, of ticks or of single-line figures, each cut with the point of a V: down at one end at plunge
 * feed, along, up. `job.floorMm` is where a sharp V ends that is as wide as wanted in the face (the stack reckons in
 * what is sanded off afterwards); a blunt tip stays above it by what keeps that width.
 *
 * Where one pass is too deep the cutter goes down at the end where it stands and comes back. A cutter that cannot go
 * straight down enters along the line. Lines are taken in a short order, each from its nearer end. Every line is a place
 * to begin anew.
 */
export function markingPath(
  job: CutJob,
  lines: readonly Float64Array[],
  angleDeg: number
): Toolpath | NoPath {
  const floorMm = vFloor(job, angleDeg)
  if (typeof floorMm !== 'number') return floorMm
  const { feeds, topMm } = job
  const depths = depthsOf(topMm, floorMm, feeds.depthMm)
  const pen = new PathPen(job.clearMm)
  const order = shortWay(lines)
  for (const [n, turn] of order.entries()) {
    let line = turn.reversed ? reversed(lines[turn.index]!) : lines[turn.index]!
    const closed = line.length > 4 && line[0] === line.at(-2) && line[1] === line.at(-1)
    pen.pass(`line ${n + 1} of ${lines.length}, ${decimals(topMm - floorMm, 2)} deep`)
    pen.over(line[0]!, line[1]!)
    pen.down(aboveMm(job))
    let from = topMm
    for (const z of depths) {
      if (job.cutter.plunges) pen.line(line[0]!, line[1]!, z, feeds.plungeMmMin)
      else rampIn(pen, job, line, from, z)
      for (let k = 2; k < line.length; k += 2) pen.line(line[k]!, line[k + 1]!, z, feeds.feedMmMin)
      from = z
      if (!closed) line = reversed(line)
    }
  }
  return pen.done()
}
