import type { Machining } from '../cuts/operation/machining.ts'
import type { NotMade, Operation } from '../cuts/operation/operation.ts'
import { motionTime } from '../cuts/run/motion-time.ts'
import type { WrittenProgram } from '../cuts/write/program.ts'
import { writeProgram } from '../cuts/write/write-program.ts'
import type { MadePath } from './program-input.ts'
import { programInput } from './program-input.ts'

/** A program in its file. */
export interface ProgramFile extends MadePath {
  readonly file: string
  readonly written: WrittenProgram
}

/** The programs of a piece in the order they are run. */
export interface ProgramSet {
  readonly machining: Machining
  readonly programs: readonly ProgramFile[]
  /** What no cutter or no path was found for. */
  readonly notMade: readonly NotMade[]
}

/** Makes every path and writes every program. Same input, same bytes. */
export function programSet(machining: Machining): ProgramSet {
  const run = programSteps(machining)
  for (;;) {
    const next = run.next()
    if (next.done) return next.value
  }
}

/** The same in slices: yields the share done, 0..1, after each program. */
export function* programSteps(machining: Machining): Generator<number, ProgramSet> {
  const programs: ProgramFile[] = []
  const notMade: NotMade[] = [...machining.notMade]
  const { machine } = machining.bench
  for (const operation of machining.operations) {
    const path = operation.path()
    if ('says' in path) {
      notMade.push(withoutPath(operation, path.says, path.largestMm))
    } else {
      const made = { operation, path, time: motionTime(path, machine) }
      const input = programInput(machining, made)
      const file = fileName(machining, operation)
      programs.push({ ...made, file, written: writeProgram(input, machine.program) })
    }
    yield operation.number / machining.operations.length
  }
  return { machining, programs, notMade }
}

function withoutPath(operation: Operation, says: string, largestMm: number | null): NotMade {
  const { setting, step, at, name } = operation
  return { setting, step, at, name, says, largestMm, reason: 'path' }
}

/** "back-02-cable-channel.nc": in the order of the letters they stand in the order they are run within a face. */
export function fileName({ settings, bench }: Machining, operation: Operation): string {
  const { up } = settings[operation.setting]!.setting
  const name = operation.name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
  const number = String(operation.number).padStart(2, '0')
  return `${number}-${up}-${name}.${bench.machine.program.ending}`
}
