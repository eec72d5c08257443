import type { CutJob, NoPath } from '../cut-job.ts'

/** How far above the work a rapid move down ends, mm: what is left of a warped face's height (practice). */
const ABOVE_MM = 1

/** Heights of the passes from `topMm` down to `floorMm`, even, none deeper than `depthMm`; the last is the floor. */
export function depthsOf(topMm: number, floorMm: number, depthMm: number): number[] {
  const deep = topMm - floorMm
  // A hair over a whole number of passes is no pass of its own.
  const count = Math.max(1, Math.ceil(deep / depthMm - 1e-6))
  return Array.from({ length: count }, (_, k) =>
    k === count - 1 ? floorMm : topMm - (deep * (k + 1)) / count
  )
}

/** Where a rapid move down may end: above the work, below the height at which it is crossed. */
export function aboveMm(job: CutJob): number {
  return Math.min(job.clearMm, job.topMm + ABOVE_MM)
}

/** Why a cutter does not reach the floor: its holder, or a shank thicker than its edges. Null: it does. */
export function tooDeep(job: CutJob): NoPath | null {
  const { fluteMm, reachMm, shankMm, diameterMm } = job.cutter
  const deep = job.topMm - job.floorMm
  const mm = (v: number) => `${Math.round(v * 10) / 10} mm`
  if (deep > reachMm + 1e-6)
    return {
      says: `The cut is ${mm(deep)} deep; the cutter stands ${mm(reachMm)} out of its holder.`,
      largestMm: null
    }
  if (deep > fluteMm + 1e-6 && shankMm > diameterMm + 1e-6)
    return {
      says: `The cut is ${mm(deep)} deep; the edges of the cutter are ${mm(fluteMm)} high and its shank is thicker.`,
      largestMm: null
    }
  return null
}
