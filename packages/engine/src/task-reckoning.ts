import { learnedOf } from './calendar/learned-of.ts'
import { minutesOfPrograms } from './calendar/machine-minutes.ts'
import { stepRecords } from './calendar/step-times.ts'
import type { TaskOptions } from './calendar/tasks.ts'
import { tasksOf } from './calendar/tasks.ts'
import { machiningOf } from './cuts/operation/machining.ts'
import type { Work } from './findings/work.ts'
import type { TimedProgram } from './programs/program-set.ts'
import { programTimes } from './programs/program-set.ts'
import { stepStatesOf } from './steps/step-states.ts'

/** Programs of a piece by what they take; null where nothing is cut by machine. */
export function programsOf(work: Work): readonly TimedProgram[] | null {
  const machining = machiningOf(work)
  return machining === null ? null : programTimes(machining)
}

/**
 * By what the tasks of a piece are reckoned: what was recorded of its steps, what that teaches of each kind of work, and
 * the minutes of its programs (null: by area and feed). Calendar and quote take the same.
 */
export function taskReckoning(
  work: Work,
  base: Pick<TaskOptions, 'piece' | 'originMs'>,
  programs: readonly TimedProgram[] | null
): TaskOptions {
  const records = stepRecords(stepStatesOf(work, new Date(base.originMs).toISOString()))
  const machine = programs === null ? {} : { machine: minutesOfPrograms(programs) }
  const bare = { ...base, ...machine, records }
  return { ...bare, learned: learnedOf(tasksOf(work, bare), records) }
}
