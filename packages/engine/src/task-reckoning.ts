import { learnedOf } from './calendar/learned-of.ts'
import { minutesOfPrograms } from './calendar/machine-minutes.ts'
import { stepRecords } from './calendar/step-times.ts'
import type { TaskOptions } from './calendar/tasks.ts'
import { tasksOf } from './calendar/tasks.ts'
import { machiningOf } from './cuts/operation/machining.ts'
import type { Work } from './findings/work.ts'
import type { ProgramSet } from './programs/program-set.ts'
import { programSet } from './programs/program-set.ts'
import { stepStatesOf } from './steps/step-states.ts'

/**
 * By what the tasks of a piece are reckoned: what was recorded of its steps, what that teaches of each kind of work, and
 * the minutes of its programs (`programs` false: by area and feed, which asks for no programs). Calendar and quote
 * take the same.
 */
export function taskReckoning(
  work: Work,
  base: Pick<TaskOptions, 'piece' | 'originMs'>,
  programs: boolean
): TaskOptions {
  return reckoningBy(work, base, programs ? programsOf(work) : null)
}

/** Programs of a piece; null where nothing is cut by machine. */
export function programsOf(work: Work): ProgramSet | null {
  const machining = machiningOf(work)
  return machining === null ? null : programSet(machining)
}

/** The same with the programs at hand. */
export function reckoningBy(
  work: Work,
  base: Pick<TaskOptions, 'piece' | 'originMs'>,
  programs: ProgramSet | null
): TaskOptions {
  const records = stepRecords(stepStatesOf(work, new Date(base.originMs).toISOString()))
  const machine = programs === null ? {} : { machine: minutesOfPrograms(programs) }
  const bare = { ...base, ...machine, records }
  return { ...bare, learned: learnedOf(tasksOf(work, bare), records) }
}
