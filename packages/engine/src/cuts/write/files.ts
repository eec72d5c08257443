import type { Dialect } from '../../piece/dialect-field.ts'
import { airCut } from './air-cut.ts'
import { plain } from './ascii.ts'
import type { CutterRun, ProgramInput, WrittenProgram } from './program.ts'
import type { Scrap } from './test-cut.ts'
import { testCut } from './test-cut.ts'
import { writeProgram } from './write-program.ts'

/** A program in its file. */
export interface ProgramFile extends WrittenProgram {
  /** "back-1-pin-holes.nc": small letters, digits, dashes; no two alike. */
  readonly file: string
  readonly program: ProgramInput
}

/** Longest name without its ending: some controls show no more. */
const MOST_NAME = 60
const HEAD = 40
/** Names that some systems keep for devices. */
const KEPT = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/

/** A name of a file from words. */
export function slug(words: string): string {
  const letters = plain(words)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
  // What it is stands at the end: that is kept of a long one.
  const long = letters.length > MOST_NAME
  const cut = long
    ? `${letters.slice(0, HEAD)}-${letters.slice(HEAD + 1 - MOST_NAME)}`.replace(/-+/g, '-')
    : letters
  return cut === '' || KEPT.test(cut) ? `program${cut === '' ? '' : `-${cut}`}` : cut
}

/** One program for each cutter of a program, in order; where it has one, itself. */
export function byCutter(program: ProgramInput): ProgramInput[] {
  const many = program.runs.length
  if (many < 2) return [program]
  return program.runs.map((run, k) => ({
    ...program,
    name: `${program.name} cutter ${run.number}`,
    notes: [...program.notes, `Program ${k + 1} of ${many} of ${program.name}: run them in order.`],
    runs: [run]
  }))
}

/** What is written besides the cuts. */
export interface Besides {
  /** Test cuts: on this scrap, on a board as large as it must be, or none. */
  readonly test: Scrap | boolean
  readonly air: boolean
  /** Minutes of a cutter where a program made here has none yet. */
  readonly minutes?: (run: CutterRun) => number
}

const NONE: Besides = { test: false, air: false }

/**
 * The files of programs, in the order they are run: before each cut its test cut and its air cut. A test cut that the
 * scrap has no room for at all is left out.
 * @throws RangeError as {@link writeProgram}
 */
export function programFiles(
  programs: readonly ProgramInput[],
  dialect: Dialect,
  besides: Besides = NONE
): ProgramFile[] {
  const { test, air, minutes } = besides
  const taken = new Set<string>()
  const each = dialect.changes === 'one program a cutter' ? programs.flatMap(byCutter) : programs
  return each
    .flatMap(cut => [
      ...(test === false ? [] : [testCut(cut, test === true ? undefined : test).program]),
      ...(air ? [airCut(cut)] : []),
      cut
    ])
    .filter(program => program !== null)
    .map(bare => {
      const program = minutes === undefined ? bare : timed(bare, minutes)
      const base = slug(program.name)
      let name = base
      for (let k = 2; taken.has(name); k++) name = `${base}-${k}`
      taken.add(name)
      return { file: `${name}.${dialect.ending}`, program, ...writeProgram(program, dialect) }
    })
}

function timed(program: ProgramInput, minutes: (run: CutterRun) => number): ProgramInput {
  return {
    ...program,
    runs: program.runs.map(run => (run.minutes === null ? { ...run, minutes: minutes(run) } : run))
  }
}
