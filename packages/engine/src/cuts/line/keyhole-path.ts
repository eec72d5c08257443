import { decimals } from '../../quantity/format.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { aboveMm, depthsOf, tooDeep } from './depth-pass.ts'

/** A keyhole slot in the coordinates of its setting, mm. */
export interface KeyholeSlot {
  /** Where the screw head goes in, and where it hangs. */
  readonly from: readonly [x: number, y: number]
  readonly to: readonly [x: number, y: number]
  /** Width of the neck between the lips, and of the head under them. */
  readonly neckMm: number
  readonly headMm: number
  /** Height of the head: from the floor of the job to the underside of the lips. */
  readonly highMm: number
}

/** How far head and neck of a cutter may differ from those of the slot, mm: less than the play of a screw. */
const SAME_MM = 0.1
/** Overlap of two runs one over the other, as a share of the head's height (practice). */
const OVERLAP = 0.1

/**
 * Keyhole slots of one floor: down at the entry in pecks, along to the end, back the same way, up where it went down. A
 * slot whose head is higher than the cutter's is run again, higher each time, up to the lips. Only a keyhole cutter with
 * the head and the neck of the slot can make it: it cannot be lifted anywhere but at the entry.
 */
export function keyholePath(job: CutJob, slots: readonly KeyholeSlot[]): Toolpath | NoPath {
  const { cutter, feeds, floorMm, topMm } = job
  const pen = new PathPen(job.clearMm)
  for (const [n, slot] of slots.entries()) {
    const fault = slotFault(job, slot)
    if (fault !== null) return fault
    const [[x, y], [ex, ey]] = [slot.from, slot.to]
    const label = slots.length === 1 ? 'keyhole' : `keyhole ${n + 1} of ${slots.length}`
    pen.pass(`${label}, ${decimals(topMm - floorMm, 1)} deep`)
    pen.over(x, y)
    pen.down(aboveMm(job))
    const depths = depthsOf(topMm, floorMm, feeds.depthMm)
    depths.forEach((z, k) => {
      pen.line(x, y, z, feeds.plungeMmMin)
      // Up out of the work between pecks; after the last it stays down.
      if (k + 1 < depths.length) pen.line(x, y, Math.min(job.clearMm, aboveMm(job)), feeds.feedMmMin)
    })
    const rest = Math.max(0, slot.highMm - cutter.headMm)
    const runs = 1 + Math.ceil(rest / (cutter.headMm * (1 - OVERLAP)) - 1e-6)
    for (let k = 0; k < runs; k++) {
      const z = floorMm + (runs === 1 ? 0 : (rest * k) / (runs - 1))
      pen.line(x, y, z, feeds.plungeMmMin)
      pen.line(ex, ey, z, feeds.feedMmMin)
      pen.line(x, y, z, feeds.feedMmMin)
    }
    // Out of the entry at feed: it is no wider than the head.
    pen.line(x, y, aboveMm(job), feeds.feedMmMin)
  }
  return pen.done()
}

function slotFault(job: CutJob, slot: KeyholeSlot): NoPath | null {
  const { cutter } = job
  const mm = (v: number) => `${decimals(v, 1)} mm`
  const wants = `a keyhole cutter with a head of ${mm(slot.headMm)} and a neck of ${mm(slot.neckMm)} would do`
  if (cutter.form !== 'keyhole')
    return { says: `A keyhole slot wants a keyhole cutter: ${wants}.`, largestMm: null }
  if (Math.abs(cutter.diameterMm - slot.headMm) > SAME_MM || Math.abs(cutter.neckMm - slot.neckMm) > SAME_MM)
    return {
      says: `The cutter has a head of ${mm(cutter.diameterMm)} and a neck of ${mm(cutter.neckMm)}: ${wants}.`,
      largestMm: slot.headMm
    }
  if (cutter.headMm > slot.highMm + SAME_MM)
    return {
      says: `The head of the cutter is ${mm(cutter.headMm)} high, the slot under its lips ${mm(slot.highMm)}: the lips would be cut away.`,
      largestMm: slot.headMm
    }
  if (!cutter.plunges)
    return { says: 'The cutter does not cut in its middle: it cannot go down at the entry.', largestMm: null }
  return tooDeep(job)
}
