import type { ProgramInput, WrittenProgram } from '../cuts/write/program.ts'
import { passesOf, passNamed, restart } from '../cuts/write/restart.ts'
import { writeProgram } from '../cuts/write/write-program.ts'
import { nearest } from '../piece/nearest.ts'
import type { ProgramSet } from './program-set.ts'
import { timedRun } from './program-set.ts'

/** A program that begins at a later pass of another. */
export interface Restarted {
  readonly file: string
  readonly input: ProgramInput
  readonly written: WrittenProgram
  readonly minutes: number
}

/**
 * The program of a file, begun at a pass: by its name or its number from 1.
 *
 * @param notes what is to stand in its header first
 * @throws RangeError for a file or pass that is not there, with the nearest that is
 */
export function restarted(
  { machining, programs }: ProgramSet,
  file: string,
  pass: string,
  notes: readonly string[] = []
): Restarted {
  const program = programs.find(p => p.file === file)
  if (program === undefined) {
    const files = programs.map(p => p.file)
    const near = nearest(file, files)
    throw new RangeError(
      `no program ${file.slice(0, 80)}; ${near === null ? `allowed: ${files.join(', ')}` : `nearest: ${near}`}`
    )
  }
  const at = passNamed(program.input, pass)
  const number =
    passesOf(program.input).findIndex(
      p => p.name === at.name && p.pass === at.pass && p.part === at.part && p.run === at.run
    ) + 1
  const begun = restart(program.input, at)
  const input: ProgramInput = {
    ...begun,
    notes: [...notes, ...begun.notes],
    runs: begun.runs.map(run => timedRun(machining, run))
  }
  const { program: dialect } = machining.bench.machine
  const end = file.lastIndexOf('.')
  return {
    file: `${file.slice(0, end)}-from-pass-${number}${file.slice(end)}`,
    input,
    written: writeProgram(input, dialect),
    minutes: input.runs.reduce((sum, r) => sum + (r.minutes ?? 0), 0)
  }
}
