import type { CutterShape } from '../catalogue/cutter-shape.ts'
import type { Machining } from '../cuts/operation/machining.ts'
import type { Operation } from '../cuts/operation/operation.ts'
import { edgeEvents } from '../cuts/operation/wanted-edge.ts'
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

/**
 * Programs of one step go over the same place, one after the other; one of several steps stands by itself. Of a piece
 * that is moved along, those of all its positions belong together: the step is done when the last is.
 */
function byStep({ programs, machining }: ProgramSet): ProgramFile[][] {
  const groups: ProgramFile[][] = []
  for (const p of programs) {
    const meets = groups.filter(g => together(machining, g, p))
    const rest = groups.filter(g => !meets.includes(g))
    const one = [...meets.flat(), p].sort((a, b) => numberOf(a) - numberOf(b))
    groups.splice(0, groups.length, ...rest, one)
  }
  return groups.sort((a, b) => firstOf(a) - firstOf(b) || numberOf(a[0]!) - numberOf(b[0]!))
}

function together({ settings }: Machining, group: readonly ProgramFile[], p: ProgramFile): boolean {
  const [a, b] = [group[0]!.made[0]!.operation, p.made[0]!.operation]
  if (settings[a.setting]!.setting.index !== settings[b.setting]!.setting.index) return false
  if (a.before !== b.before && (apart(a) || apart(b))) return false
  if (apart(a) !== apart(b)) return false
  return group.some(g => firstStep(g) <= lastStep(p) && firstStep(p) <= lastStep(g))
}

// What stands in no step's own events: index holes, edges (each by itself).
function apart({ kind, at }: Operation): string | null {
  return kind === 'index holes' ? kind : kind === 'edges' ? at : null
}

function numberOf({ made }: ProgramFile): number {
  return made[0]!.operation.number
}

function firstOf(group: readonly ProgramFile[]): number {
  return Math.min(...group.map(firstStep))
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
  const first = firstOf(programs)
  const last = Math.max(...programs.map(lastStep))
  const readings = programs.map(p =>
    readProgram(p.written.text, { tool: cutterNumber(machining, p.made[0]!.operation.cutter.id) })
  )
  const { stack, machine } = machining.bench
  const on = machining.settings[operation.setting]!
  const moves = readings.map((r, i) => {
    const { input, made } = programs[i]!
    const own = machine.program.zero === 'bed' ? fromFace(r.motions, input.bedMm) : r.motions
    return unplaced(own, machining.settings[made[0]!.operation.setting]!.frame)
  })
  const step = stack.steps[first]!
  const { before } = operation
  // A chamfer is no event of the stack: here it is put where it happens.
  const edges =
    operation.kind === 'edges' ? edgeEvents(stack, { on, topMm: operation.job.topMm }, operation.at) : null
  const after = edges === null ? stack.states[last]!.events : before + edges.length
  // An outline is left alone inside; a rebate runs out into the waste.
  const rebates = programs.some(p =>
    p.made.some(m => stack.steps[m.operation.step]!.cut?.value.kind === 'rebate')
  )
  const guards = guardsOf(
    machining,
    programs,
    moves.map(m => m.count)
  )
  const proof = yield* proveProgram({
    stack: edges === null ? stack : { ...stack, events: [...stack.events.slice(0, before), ...edges] },
    up: on.setting.up,
    datum: { ...machining.pins.datum, zeroMm: on.frame.zeroZ },
    events: before,
    // Pin holes are not in the stack: there is nothing they could be held against. An outline that is no event of it
    // leaves what is inside as it was.
    wantedEvents: compared(operation, before, after),
    mask: operation.kind === 'outline' || rebates ? stack.geometry.outline : null,
    cutterByTool: cutterShapes(machining),
    motions: joined(moves),
    cellMm: cellMm(machining),
    guards
  })
  return {
    step: first,
    setting: operation.setting,
    at: operation.kind === 'edges' ? operation.at : step.at,
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

// Holes for index pins are in the stack no more than those of other pins.
function compared({ kind }: Operation, before: number, after: number): number | null {
  if (kind === 'index holes') return null
  return after > before ? after : kind === 'outline' ? before : null
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
