import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import { decimals } from '../../quantity/format.ts'
import type { CutJob, NoPath } from '../cut-job.ts'

/** How far the angle of a V cutter may differ from the angle of the line, degrees: less than a cutter is ground to. */
const SAME_DEG = 0.5

/** tan of half the included angle. */
export function spread(angleDeg: number): number {
  return Math.tan((angleDeg * Math.PI) / 360)
}

/**
 * How much higher the tip of a blunt V cutter stands than a sharp one that leaves the same width, mm:
 *
 *   d = (w − w_tip)/(2·tan(θ/2))       w_tip/(2·tan(θ/2)) less than d = w/(2·tan(θ/2))
 *
 * Source: machining data, V-groove. Check: 60°, tip 0.2: 0.173.
 */
function bluntMm(cutter: CutterShape): number {
  return cutter.tipMm / (2 * spread(cutter.angleDeg))
}

/**
 * Where the tip of a V cutter runs for a line whose sharp V ends at `job.floorMm`, z mm; or why it cannot: another
 * angle, a line narrower than the blunt tip, one wider than the cutter is.
 */
export function vFloor(job: CutJob, angleDeg: number): number | NoPath {
  const { cutter, topMm, floorMm } = job
  const mm = (v: number) => `${decimals(v, 2)} mm`
  const wide = 2 * (topMm - floorMm) * spread(angleDeg)
  if (cutter.form !== 'v') return { says: 'A V wants a V cutter.', largestMm: null }
  if (Math.abs(cutter.angleDeg - angleDeg) > SAME_DEG)
    return {
      says: `The V is ${decimals(angleDeg, 1)}°; the cutter is ${decimals(cutter.angleDeg, 1)}°.`,
      largestMm: null
    }
  if (wide <= cutter.tipMm)
    return {
      says: `The line is ${mm(wide)} wide at the face; the blunt tip of the cutter is ${mm(cutter.tipMm)}.`,
      largestMm: null
    }
  if (wide > cutter.diameterMm + 1e-6)
    return {
      says: `The line is ${mm(wide)} wide at the face; the cutter is ${mm(cutter.diameterMm)}: one of ${Math.ceil(wide)} mm would do.`,
      largestMm: null
    }
  return floorMm + bluntMm(cutter)
}
