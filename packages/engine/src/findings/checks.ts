import type { Check, Finding } from './finding.ts'
import { findingOf } from './finding.ts'
import { opaqueCover } from './opaque-cover.ts'
import { pourHeat } from './pour-heat.ts'
import type { Work } from './work.ts'

/** Every check, in the order in which makers lose most. */
export const CHECKS: readonly Check[] = [pourHeat, opaqueCover]

const RANK = { stop: 0, caution: 1, note: 2 } as const

/** All findings of a piece: stops first, then in the order of the checks. */
export function findingsOf(work: Work): Finding[] {
  return CHECKS.flatMap(check => check.run(work).map(found => findingOf(check, found))).sort(
    (a, b) => RANK[a.severity] - RANK[b.severity]
  )
}
