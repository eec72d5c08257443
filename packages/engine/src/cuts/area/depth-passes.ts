import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import { decimals } from '../../quantity/format.ts'
import type { CutJob } from '../cut-job.ts'

/** One layer taken off: from a height down to another, z mm, and what a maker calls it. */
export interface DepthPass {
  readonly fromMm: number
  readonly toMm: number
  readonly name: string
}

/**
 * Even layers from the top of the material to the floor, none deeper than `feeds.depthMm`.
 * @throws Error for a floor that is not below the top, or a depth of a pass not above 0
 */
export function depthPasses(job: CutJob, floorMm = job.floorMm, atLeast = 1): DepthPass[] {
  const whole = job.topMm - floorMm
  if (!(whole > 0 && Number.isFinite(whole)))
    throw new Error(`a floor at ${floorMm} mm under a top at ${job.topMm} mm; it must lie below`)
  if (!(job.feeds.depthMm > 0)) throw new Error(`passes of ${job.feeds.depthMm} mm; they must be above 0`)
  const count = Math.max(atLeast, Math.ceil(whole / job.feeds.depthMm - 1e-9))
  return Array.from({ length: count }, (_, i) => {
    const toMm = i === count - 1 ? floorMm : job.topMm - (whole * (i + 1)) / count
    return {
      fromMm: job.topMm - (whole * i) / count,
      toMm,
      name: `pass ${i + 1} of ${count}, ${decimals(job.topMm - toMm, 1)} deep`
    }
  })
}

/** Radius of the flat that a cutter leaves beneath it, mm; 0 of a ball or a point. */
export function flatRadius(cutter: CutterShape): number {
  const half = cutter.diameterMm / 2
  if (cutter.form === 'ball' || cutter.form === 'drill') return 0
  if (cutter.form === 'v') return cutter.tipMm / 2
  return cutter.form === 'bull' ? Math.max(0, half - cutter.cornerMm) : half
}
