import type { Reading } from '../piece/reading-schema.ts'
import type { Step } from './step.ts'
import { stepKeys } from './step-key.ts'

/** A thickness further than this from the planned one is of something else, mm. */
const FAR_MM = 5
/** A hair under what a caliper tells, mm. */
const SAME_MM = 0.02

/**
 * The steps with what was really taken off: after a flattening or sanding that is read as done, the thickness read
 * next says how much came off. `thickMm` is the planned thickness after each step. The very list when nothing differs.
 *
 *   taken off = planned to come off + (planned thickness − thickness read)
 *
 * Only the last such reading counts: what was taken off before it shows in it too.
 */
export function asWorked(
  steps: readonly Step[],
  thickMm: readonly number[],
  readings: readonly Reading[]
): readonly Step[] {
  const read = readings
    .flatMap(r => (r.kind === 'thickness' ? [{ ms: Date.parse(r.at), mm: r.thickness }] : []))
    .reduce<{ ms: number; mm: number } | null>((a, b) => (a === null || b.ms >= a.ms ? b : a), null)
  if (read === null) return steps
  const done = new Set(
    readings.flatMap(r => (r.kind === 'done' && Date.parse(r.at) <= read.ms ? [r.step] : []))
  )
  if (done.size === 0) return steps
  const keys = stepKeys(steps)
  const at = steps.findLastIndex((s, i) => (s.kind === 'flatten' || s.kind === 'sand') && done.has(keys[i]!))
  if (at < 0) return steps
  const more = thickMm[at]! - read.mm
  const { byMm = 0 } = steps[at]!
  if (Math.abs(more) < SAME_MM || Math.abs(more) > FAR_MM || byMm + more < 0) return steps
  return steps.map((s, i) => (i === at ? { ...s, byMm: byMm + more } : s))
}
