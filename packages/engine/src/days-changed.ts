import type { ClashMember } from './calendar/solve/problem.ts'
import type { Opening } from './calendar/task.ts'
import type { Days } from './days-answer.ts'
import type { PlanInput } from './work.ts'

/** What is changed to find a way out: documents, helpers, or a wait that is given up. */
export interface Changed {
  readonly inputs: readonly PlanInput[]
  readonly hands: number
  /** Words of the waits whose greatest is given up, and of the tasks that are done outside the hours. */
  readonly givenUp: readonly string[]
  /** Hours at the bench beside those of the shop, once: minutes from the origin. */
  readonly openOnce: readonly Opening[]
}

/** What a change comes to; `members`: what still clashes. */
export interface Replanned {
  readonly days: Days
  readonly members: readonly ClashMember[]
}
