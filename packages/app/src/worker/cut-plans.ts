import type { Work } from '../../../engine/src/findings/work.ts'
import { strokeAll } from '../../../engine/src/stack/groove-region.ts'
import type { CutPlan } from './views.ts'

/** How far the rounded ends of a groove may stray, mm: less than a screen shows. */
const TOL_MM = 0.1

/**
 * Where the cuts lie on the plan: a shape as it is, a groove as wide as it is cut. The cut that makes the outline is
 * left out: it goes round everything, and is moved with the outline.
 */
export function cutPlans(work: Work): CutPlan[] {
  const { cutRegions, cutLines } = work.stack.geometry
  return work.entries.cuts.flatMap(({ value }, i): CutPlan[] => {
    if (value.kind === 'outline') return []
    const lines = cutLines[i] ?? null
    const region = cutRegions[i] ?? (lines === null ? null : strokeAll(lines, value.width ?? 1, TOL_MM))
    return region === null || region.rings.length === 0 ? [] : [{ at: `/cuts/${i}`, rings: region.rings }]
  })
}
