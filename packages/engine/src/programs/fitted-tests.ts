import type { Scrap } from '../cuts/write/test-cut.ts'
import { testCut } from '../cuts/write/test-cut.ts'
import { programInput } from './program-input.ts'
import type { ProgramSet } from './program-set.ts'
import { rehearsal } from './program-set.ts'

/** A test cut that the scrap holds none or not all of, and the smallest board that takes all of it, mm. */
export interface ShortScrap {
  /** The program it goes before. */
  readonly file: string
  readonly needs: Scrap
  /** Passes there is no room for; all: the test cut is left out. */
  readonly leftOut: number
  readonly all: boolean
}

/**
 * The same programs with their test cuts fitted to one scrap of board: what is cut lies about its middle, whole passes
 * only, nothing made smaller. A test cut of which no pass goes on the scrap is left out.
 */
export function fittedTests(
  set: ProgramSet,
  scrap: Scrap
): { readonly set: ProgramSet; readonly short: readonly ShortScrap[] } {
  const short: ShortScrap[] = []
  const programs = set.programs.map(p => {
    if (p.test === null) return p
    const { program, needs, leftOut } = testCut(programInput(set.machining, p.made), scrap)
    if (leftOut.length > 0)
      short.push({ file: p.file, needs, leftOut: leftOut.length, all: program === null })
    return { ...p, test: rehearsal(set.machining, p.test.file, program) }
  })
  return { set: { ...set, programs }, short }
}
