import { stroke } from '../../shape/offset.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import type { Span } from './arc-fit.ts'
import { NO_WAY_DOWN } from './clear-layers.ts'
import { depthPasses } from './depth-passes.ts'
import { downFree, startOfEntry } from './entry.ts'
import { pocketPath } from './pocket-path.ts'
import { lineTrack, runAlong, stretch, trackOf } from './track.ts'

/** A slot is as wide as the cutter up to so much, mm. */
const SAME_MM = 0.02

/**
 * A closed slot or mortise `widthMm` wide along a middle line (x0,y0,x1,y1,... mm, open or ending where it starts):
 * one as wide as the cutter is cut down a ramp to and fro along its line, each pass ending level; a wider one is
 * cleared as a pocket with round ends.
 */
export function slotPath(job: CutJob, line: Float64Array, widthMm: number): Toolpath | NoPath {
  const { cutter, feeds } = job
  if (widthMm < cutter.diameterMm - SAME_MM)
    return {
      says: `a cutter ${cutter.diameterMm} mm across does not go into a slot ${widthMm} mm wide`,
      largestMm: widthMm > 0 ? widthMm : null
    }
  if (widthMm > cutter.diameterMm + SAME_MM)
    return pocketPath(job, stroke(line, widthMm, { ends: 'round', tolMm: job.tolMm / 4 }))
  if (feeds.rampDeg >= 90 && !cutter.plunges) return NO_WAY_DOWN
  const forth = lineTrack(line, job)
  if (forth.lengthMm < cutter.diameterMm / 2 && !cutter.plunges) return NO_WAY_DOWN
  const closed = line[0] === line[line.length - 2] && line[1] === line[line.length - 1]
  const way = closed ? forth : trackOf([...forth.spans, ...[...forth.spans].reverse().map(turned)])
  const pen = new PathPen(job.clearMm)
  const [x, y] = [line[0]!, line[1]!]
  for (const pass of depthPasses(job)) {
    pen.pass(pass.name)
    const from = startOfEntry(job, pass.fromMm)
    downFree(pen, job, x, y, from)
    const rampMm =
      feeds.rampDeg < 90 && way.lengthMm > 0
        ? (from - pass.toMm) / Math.tan((feeds.rampDeg * Math.PI) / 180)
        : 0
    if (rampMm === 0) pen.line(x, y, pass.toMm, feeds.plungeMmMin)
    else runAlong(pen, stretch(way, 0, rampMm), pass.toMm, feeds.rampMmMin)
    if (way.lengthMm > 0)
      runAlong(pen, stretch(way, rampMm, rampMm + way.lengthMm), pass.toMm, feeds.feedMmMin)
  }
  return pen.done()
}

function turned(span: Span): Span {
  const ends = { x0: span.x1, y0: span.y1, x1: span.x0, y1: span.y0 }
  return span.kind === 'line' ? { ...span, ...ends } : { ...span, ...ends, clockwise: !span.clockwise }
}
