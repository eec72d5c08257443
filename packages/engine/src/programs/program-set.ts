import type { Machining } from '../cuts/operation/machining.ts'
import type { NotMade, Operation } from '../cuts/operation/operation.ts'
import { motionTime } from '../cuts/run/motion-time.ts'
import { airCut } from '../cuts/write/air-cut.ts'
import { placedProgram } from '../cuts/write/placed-program.ts'
import type { CutterRun, ProgramInput, WrittenProgram } from '../cuts/write/program.ts'
import { slug } from '../cuts/write/slug.ts'
import { testCut } from '../cuts/write/test-cut.ts'
import { writeProgram } from '../cuts/write/write-program.ts'
import { madePath } from './made-path.ts'
import type { MadePath } from './program-input.ts'
import { programInput } from './program-input.ts'

/** What is run before a cut: shallow in cheap board, or above the work. */
export interface Rehearsal {
  readonly file: string
  readonly input: ProgramInput
  readonly written: WrittenProgram
  readonly minutes: number
}

/** A program in its file, with the rehearsals that go before it. */
export interface ProgramFile {
  /** Operations it runs, of one setting; one alone where each cutter has its own program. */
  readonly made: readonly MadePath[]
  readonly file: string
  readonly input: ProgramInput
  readonly written: WrittenProgram
  /** Minutes of its moves, cutter changes not counted. */
  readonly minutes: number
  readonly test: Rehearsal | null
  readonly air: Rehearsal | null
}

/** The programs of a piece in the order they are run. */
export interface ProgramSet {
  readonly machining: Machining
  readonly programs: readonly ProgramFile[]
  /** What no cutter or no path was found for. */
  readonly notMade: readonly NotMade[]
}

/** What a program takes and its rehearsals, without their texts. */
export interface TimedProgram {
  readonly made: readonly MadePath[]
  readonly test: Pick<Rehearsal, 'minutes'> | null
  readonly air: Pick<Rehearsal, 'minutes'> | null
}

/** Minutes of the programs of a piece: those of {@link programSet}, nothing being written. */
export function programTimes(machining: Machining): TimedProgram[] {
  const made = machining.operations.flatMap((operation): MadePath[] => {
    const one = madePath(machining, operation)
    return 'says' in one ? [] : [one]
  })
  return grouped(machining, made).map(group => {
    const planned = programInput(machining, group)
    const { frame } = machining.settings[group[0]!.operation.setting]!
    const timed = (program: ProgramInput | null) =>
      program === null ? null : { minutes: minutesOf(program.runs.map(run => timedRun(machining, run))) }
    return {
      made: group,
      test: timed(triedOf(planned, group)),
      air: timed(airCut(placedProgram(planned, frame)))
    }
  })
}

/** Makes every path and writes every program. Same input, same bytes. */
export function programSet(machining: Machining): ProgramSet {
  const run = programSteps(machining)
  for (;;) {
    const next = run.next()
    if (next.done) return next.value
  }
}

/** The same in slices: yields the share done, 0..1. */
export function* programSteps(machining: Machining): Generator<number, ProgramSet> {
  const notMade: NotMade[] = [...machining.notMade]
  const made: MadePath[] = []
  for (const operation of machining.operations) {
    const one = madePath(machining, operation)
    if ('says' in one) notMade.push(withoutPath(operation, one.says, one.largestMm))
    else made.push(one)
    yield (0.8 * operation.number) / machining.operations.length
  }
  const programs: ProgramFile[] = []
  const groups = grouped(machining, made)
  for (const [k, group] of groups.entries()) {
    programs.push(fileOf(machining, group))
    yield 0.8 + (0.2 * (k + 1)) / groups.length
  }
  return { machining, programs, notMade }
}

function fileOf(machining: Machining, made: readonly MadePath[]): ProgramFile {
  const { program: dialect } = machining.bench.machine
  const first = made[0]!.operation
  const { setting, frame, position } = machining.settings[first.setting]!
  const { up } = setting
  const planned = programInput(machining, made)
  const input = placedProgram(planned, frame)
  const base = `${machining.prefix}${String(first.number).padStart(2, '0')}-${up}-${position === null ? '' : `position-${position.number}-`}${slug(input.name.replace(/^[^,]*, /, ''))}`
  const rehearsed = (name: string, program: ProgramInput | null) =>
    rehearsal(machining, `${base}-${name}.${dialect.ending}`, program)
  return {
    made,
    file: `${base}.${dialect.ending}`,
    input,
    written: writeProgram(input, dialect),
    minutes: made.reduce((sum, m) => sum + m.time.minutes, 0),
    test: rehearsed('test', triedOf(planned, made)),
    air: rehearsed('air', airCut(input))
  }
}

// Flattening has no shape to try.
function triedOf(planned: ProgramInput, made: readonly MadePath[]): ProgramInput | null {
  return made.every(m => m.operation.kind === 'flatten') ? null : testCut(planned).program
}

function minutesOf(runs: readonly CutterRun[]): number {
  return runs.reduce((sum, r) => sum + (r.minutes ?? 0), 0)
}

/** A rehearsal written under the name of its file, with its minutes; null: there is none. */
export function rehearsal(
  machining: Machining,
  file: string,
  program: ProgramInput | null
): Rehearsal | null {
  if (program === null) return null
  const input = { ...program, runs: program.runs.map(run => timedRun(machining, run)) }
  return {
    file,
    input,
    written: writeProgram(input, machining.bench.machine.program),
    minutes: minutesOf(input.runs)
  }
}

/** A run with its minutes reckoned. */
export function timedRun({ bench }: Machining, run: CutterRun): CutterRun {
  const minutes = run.parts.reduce((sum, p) => sum + motionTime(p.path, bench.machine).minutes, 0)
  return { ...run, minutes }
}

/**
 * What goes into one program. One a cutter: each operation by itself. Changes in the program: operations of a setting
 * in a row, as long as nothing else is done to the piece between them; an outline frees the part and stays by itself.
 */
function grouped({ bench, settings }: Machining, made: readonly MadePath[]): MadePath[][] {
  const apart = bench.machine.program.changes === 'one program a cutter'
  const groups: MadePath[][] = []
  for (const m of made) {
    const last = groups.at(-1)?.at(-1)
    const together =
      !apart &&
      last !== undefined &&
      last.operation.setting === m.operation.setting &&
      last.operation.kind !== 'outline' &&
      m.operation.kind !== 'outline' &&
      last.operation.kind !== 'pin holes' &&
      last.operation.kind !== 'edges' &&
      m.operation.kind !== 'edges' &&
      (last.operation.kind === 'index holes') === (m.operation.kind === 'index holes') &&
      quiet(bench.stack.steps, last.operation.step, m.operation.step) &&
      settings[m.operation.setting] !== undefined
    if (together) groups.at(-1)!.push(m)
    else groups.push([m])
  }
  return groups
}

// Whether nothing is done to the piece between two steps.
function quiet(steps: readonly { readonly kind: string }[], from: number, to: number): boolean {
  return to - from <= 1 || steps.slice(from + 1, to).every(s => s.kind === 'wait')
}

function withoutPath(operation: Operation, says: string, largestMm: number | null): NotMade {
  const { setting, step, at, name } = operation
  return { setting, step, at, name, says, largestMm, reason: 'path' }
}
