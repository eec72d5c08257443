import { BENCH_CHECKS } from './checks.ts'
import type { Check } from './finding.ts'
import { MACHINE_CHECKS } from './machine-checks.ts'
import { NOT_MADE, PROGRAM_UNREAD, PROVED } from './proved.ts'

/** Every check of a piece, in the order they are run. */
export const CHECKS: readonly Check[] = [...BENCH_CHECKS, ...MACHINE_CHECKS]

/** Ids of all that can be said of a piece and of its programs. */
export const FINDING_IDS: readonly string[] = [
  ...CHECKS,
  ...Object.values(PROVED),
  PROGRAM_UNREAD,
  NOT_MADE
].map(c => c.id)
