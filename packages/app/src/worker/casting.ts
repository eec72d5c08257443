import type { WholeCast } from '../../../engine/src/cast/whole/whole-cast.ts'
import type { WholeOptions } from '../../../engine/src/cast/whole/whole-run.ts'
import { castRun } from '../../../engine/src/whole.ts'
import type { PlanInput } from '../../../engine/src/work.ts'

/** A cast of the whole mould on its way, in slices between which the worker hears what is asked of it. */
export interface Casting {
  /** Works for one slice. */
  readonly slice: () => void
  /** Share done, 0..1; 1 when it is over. */
  readonly share: () => number
  /** The best answer so far, another object each time it grew better; null before the first. */
  readonly best: () => WholeCast | null
}

/** How long a slice lasts, ms: an edit made meanwhile waits no longer. */
const SLICE_MS = 30
/** Steps between two looks at the clock. */
const STEPS = 2

/** Begins the cast of a piece. @throws InputProblem when it cannot be used */
export function casting(input: PlanInput, options: WholeOptions): Casting {
  const run = castRun(input, options)
  let over = run === null
  return {
    slice: () => {
      const until = performance.now() + SLICE_MS
      while (!over && performance.now() < until) over = run!.advance(STEPS)
    },
    share: () => (over ? 1 : run!.progress()),
    best: () => run?.best() ?? null
  }
}
