import type { CutterShape } from '../catalogue/cutter-shape.ts'
import type { Machining } from '../cuts/operation/machining.ts'
import { cuttersOf } from '../cuts/run/cutters.ts'
import type { Proof } from '../proving/judge/prove.ts'
import { proveProgram } from '../proving/judge/prove.ts'
import type { Motions } from '../proving/motion.ts'
import type { Complaint } from '../proving/read/complaint.ts'
import type { ProgramFacts } from '../proving/read/facts.ts'
import { readProgram } from '../proving/read/read-program.ts'
import { fromFace } from './from-face.ts'
import { guardsOf } from './guards-of.ts'
import { joined } from './joined.ts'
import { cutterNumber } from './program-input.ts'
import type { ProgramFile, ProgramSet } from './program-set.ts'
import { unplaced } from './unplaced.ts'

/** A program as the prover read it. */
export interface ReadBack {
  readonly file: string
  readonly lines: number
  /** The line of its last move. */
  readonly lastLine: number
  readonly complaints: readonly Complaint[]
  readonly facts: ProgramFacts
}

/** What the programs of one step do to the piece: those of a step go over the same place, one after the other. */
export interface StepProof {
  readonly step: number
  readonly setting: number
  readonly at: string
  readonly programs: readonly ReadBack[]
  readonly proof: Proof
}

/** Side of a cell of the sweep, mm. */
const CELL_MM = 0.2
/** Largest stock that is swept at that, mm²; beyond it cells grow. */
const FINE_MM2 = 600_000

/** Proves the programs of a set, step by step. Yields the share done, 0..1. */
export function* proveSteps(set: ProgramSet): Generator<number, StepProof[]> {
  const { machining } = set
  const proofs: StepProof[] = []
  const groups = byStep(set)
  for (const [k, programs] of groups.entries()) {
    const proving = proveStep(machining, programs)
    for (;;) {
      const next = proving.next()
      if (next.done) {
        proofs.push(next.value)
        break
      }
      yield (k + next.value) / groups.length
    }
  }
  return proofs
}

/** The same at once. */
export function proveSet(set: ProgramSet): StepProof[] {
  const run = proveSteps(set)
  for (;;) {
    const next = run.next()
    if (next.done) return next.value
  }
}

// Programs of one step go over the same place, one after the other; one of several steps stands by itself.
function byStep({ programs }: ProgramSet): ProgramFile[][] {
  const groups: ProgramFile[][] = []
  for (const p of programs) {
    const last = groups.at(-1)?.at(-1)
    if (last !== undefined && lastStep(last) === firstStep(p)) groups.at(-1)!.push(p)
    else groups.push([p])
  }
  return groups
}

function firstStep({ made }: ProgramFile): number {
  return made[0]!.operation.step
}

function lastStep({ made }: ProgramFile): number {
  return made.at(-1)!.operation.step
}

/** One step: its programs as texts, read and swept over the piece as it stands then. */
function* proveStep(machining: Machining, programs: readonly ProgramFile[]): Generator<number, StepProof> {
  const { operation } = programs[0]!.made[0]!
  const last = lastStep(programs.at(-1)!)
  const readings = programs.map(p =>
    readProgram(p.written.text, { tool: cutterNumber(machining, p.made[0]!.operation.cutter.id) })
  )
  const { stack, machine } = machining.bench
  const moves = readings.map((r, i) =>
    machine.program.zero === 'bed' ? fromFace(r.motions, programs[i]!.input.bedMm) : r.motions
  )
  const step = stack.steps[operation.step]!
  const on = machining.settings[operation.setting]!
  const before = stack.states[operation.step - 1]?.events ?? 0
  const after = stack.states[last]!.events
  const guards = guardsOf(machining, on, programs)
  const proof = yield* proveProgram({
    stack,
    up: on.setting.up,
    datum: { ...machining.pins.datum, zeroMm: on.frame.zeroZ },
    events: before,
    // Pin holes are not in the stack: there is nothing they could be held against. An outline that is no event of it
    // leaves what is inside as it was.
    wantedEvents: after > before ? after : operation.kind === 'outline' ? before : null,
    mask: operation.kind === 'outline' ? stack.geometry.outline : null,
    cutterByTool: cutterShapes(machining),
    motions: unplaced(joined(moves), on.frame),
    cellMm: cellMm(machining),
    guards
  })
  return {
    step: operation.step,
    setting: operation.setting,
    at: step.at,
    programs: programs.map((p, i) => ({
      file: p.file,
      lines: p.written.lines,
      lastLine: lastLineOf(readings[i]!.motions),
      complaints: readings[i]!.complaints,
      facts: readings[i]!.facts
    })),
    proof
  }
}

function lastLineOf({ count, line }: Motions): number {
  return count === 0 ? 0 : line[count - 1]!
}

function cellMm(machining: Machining): number {
  const { stock } = machining.settings[0]!
  const area = (stock.maxX - stock.minX) * (stock.maxY - stock.minY)
  return area <= FINE_MM2 ? CELL_MM : CELL_MM * Math.sqrt(area / FINE_MM2)
}

/** Cutters by their number in the machine. */
function cutterShapes({ bench }: Machining): ReadonlyMap<number, CutterShape> {
  return new Map(cuttersOf(bench.shop).cutters.map((c, i) => [i + 1, c.shape]))
}
