import { nearest } from '../../piece/nearest.ts'
import { unfreeDowns } from './free.ts'
import { moved } from './placed.ts'
import type { CutterRun, ProgramInput, ProgramPart } from './program.ts'
import { joined, slicesOf } from './slice.ts'

/** A pass of a program, by index: cutter, part of it, pass of that. */
export interface PassAt {
  readonly run: number
  readonly part: number
  readonly pass: number
  /** "pocket, pass 2 of 4, 3.0 deep" */
  readonly name: string
}

/** The passes that a program can be begun anew at, in order. */
export function passesOf(program: ProgramInput): PassAt[] {
  return program.runs.flatMap((r, run) =>
    r.parts.flatMap((p, part) =>
      p.path.passes.map((s, pass) => ({ run, part, pass, name: `${p.name}, ${s.name}` }))
    )
  )
}

/** The pass of a name, or of its number in the order of the program from 1. @throws RangeError offering the nearest */
export function passNamed(program: ProgramInput, words: string): PassAt {
  const passes = passesOf(program)
  const low = words.trim().toLowerCase()
  const of = /^[0-9]+$/.test(low)
    ? passes[Number(low) - 1]
    : passes.find(p => p.name.toLowerCase() === low || p.name.toLowerCase().endsWith(`, ${low}`))
  if (of !== undefined) return of
  const near = nearest(
    words,
    passes.flatMap(p => [p.name, ownName(program, p)])
  )
  throw new RangeError(
    `no pass "${words.slice(0, 60)}" in ${program.name}; allowed: 1 to ${passes.length}${near === null ? '' : `; nearest: "${near}"`}`
  )
}

function ownName({ runs }: ProgramInput, { run, part, pass }: PassAt): string {
  return runs[run]!.parts[part]!.path.passes[pass]!.name
}

/**
 * A program that begins at a pass of another, after a broken cutter or a power cut. It begins as every program does:
 * up, across, height check, spindle; then over the pass and into it as the pass itself enters. Where the pass would
 * have gone down at rapid speed into what earlier passes cut, it is fed: perhaps they did not.
 *
 * @throws RangeError for a pass that is not there
 */
export function restart(program: ProgramInput, at: Pick<PassAt, 'run' | 'part' | 'pass'>): ProgramInput {
  const first = program.runs[at.run]?.parts[at.part]?.path.passes[at.pass]
  if (first === undefined)
    throw new RangeError(
      `no pass ${at.pass + 1} of part ${at.part + 1} of cutter ${at.run + 1} in ${program.name}`
    )
  const runs = program.runs.slice(at.run).map((run, r): CutterRun => {
    if (r > 0) return run
    const parts = run.parts.slice(at.part).map((part, p) => (p > 0 ? part : later(part, at.pass, run)))
    return { ...run, parts, minutes: null }
  })
  const before = passesOf(program).filter(
    p =>
      p.run < at.run || (p.run === at.run && (p.part < at.part || (p.part === at.part && p.pass < at.pass)))
  )
  const part = program.runs[at.run]!.parts[at.part]!.name
  return {
    ...program,
    kind: 'restart',
    name: `${program.name} from ${part} ${first.name}`,
    notes: [
      ...program.notes,
      `Begins at: ${part}, ${first.name}.`,
      before.length === 0
        ? 'Done before: nothing of this program.'
        : `Done before: ${before.length} passes, the last of them ${before.at(-1)!.name}. Look whether all of it is cut.`,
      'Find the zero again in X and Y by the pins or marks, and set the height anew, before it runs.'
    ],
    runs
  }
}

function later(part: ProgramPart, pass: number, run: CutterRun): ProgramPart {
  const path = joined(slicesOf(part.path).slice(pass))
  const slowest = path.moves.reduce((a, m) => ('feedMmMin' in m ? Math.min(a, m.feedMmMin) : a), 1e5)
  const unfree = new Set(unfreeDowns(path.moves, part.topMm, run.shape.diameterMm / 2))
  return {
    ...part,
    path: moved(path, (m, i) =>
      unfree.has(i) ? { kind: 'line', x: m.x, y: m.y, z: m.z, feedMmMin: slowest } : m
    )
  }
}
