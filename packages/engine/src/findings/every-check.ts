import { BENCH_CHECKS } from './checks.ts'
import { DAYS_CHECKS } from './days-checks.ts'
import { EDGE_WORN } from './edge-worn.ts'
import type { Check } from './finding.ts'
import { MACHINE_CHECKS } from './machine-checks.ts'
import { NOT_MADE, PROGRAM_UNREAD, PROVED } from './proved.ts'

/** Every check of a piece, in the order they are run. */
export const CHECKS: readonly Check[] = [...BENCH_CHECKS, ...MACHINE_CHECKS]

/** All that can be said of a piece, of its programs and of its days: id, and what is looked for. */
export const LOOKED_FOR: readonly Pick<Check, 'id' | 'about'>[] = [
  ...CHECKS,
  ...Object.values(PROVED),
  PROGRAM_UNREAD,
  NOT_MADE,
  EDGE_WORN,
  ...Object.values(DAYS_CHECKS)
]

/** Their ids. */
export const FINDING_IDS: readonly string[] = LOOKED_FOR.map(c => c.id)
