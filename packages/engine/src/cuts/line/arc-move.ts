import type { CutJob } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'

/**
 * Moves along an arc about (cx, cy) to x, y, z, rising evenly; ending where it starts it is a full turn. Where the job
 * wants no arcs, chords stray from it by at most `job.tolMm`:
 *
 *   e = R·(1 − cos(δ/2)), so δ = 2·acos(1 − e/R)
 *
 * Source: textbook (machining data, "chord error"). Chords lie inside the arc, as a cutter in a hole wants it.
 */
export function arcTo(
  pen: PathPen,
  job: CutJob,
  to: { readonly x: number; readonly y: number; readonly z: number },
  centre: { readonly cx: number; readonly cy: number },
  clockwise: boolean,
  feedMmMin: number
): void {
  const { cx, cy } = centre
  if (job.arcs) {
    pen.arc(to.x, to.y, to.z, cx, cy, clockwise, feedMmMin)
    return
  }
  const radius = Math.hypot(pen.x - cx, pen.y - cy)
  const start = Math.atan2(pen.y - cy, pen.x - cx)
  let sweep = Math.atan2(to.y - cy, to.x - cx) - start
  if (clockwise && sweep >= -1e-9) sweep -= 2 * Math.PI
  else if (!clockwise && sweep <= 1e-9) sweep += 2 * Math.PI
  const step = radius <= job.tolMm ? Math.PI / 2 : 2 * Math.acos(1 - job.tolMm / radius)
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / Math.min(step, Math.PI / 2)))
  const z0 = pen.z
  for (let k = 1; k < count; k++) {
    const a = start + (sweep * k) / count
    pen.line(cx + radius * Math.cos(a), cy + radius * Math.sin(a), z0 + ((to.z - z0) * k) / count, feedMmMin)
  }
  pen.line(to.x, to.y, to.z, feedMmMin)
}
