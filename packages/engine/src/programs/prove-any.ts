import type { CutterShape } from '../catalogue/cutter-shape.ts'
import type { MachiningInput } from '../cuts/operation/machining.ts'
import { workBox } from '../cuts/operation/work-box.ts'
import { frameOf } from '../cuts/pins/frame.ts'
import { measuredFrame } from '../cuts/pins/measured-frame.ts'
import { pinPlan } from '../cuts/pins/pin-plan.ts'
import type { Cutter } from '../cuts/run/cutters.ts'
import { cuttersOf } from '../cuts/run/cutters.ts'
import { machineOf } from '../cuts/run/machine.ts'
import type { Proof } from '../proving/judge/prove.ts'
import { proveProgram } from '../proving/judge/prove.ts'
import type { ProgramReading } from '../proving/read/read-program.ts'
import { readProgram } from '../proving/read/read-program.ts'
import { settingsOf } from '../steps/setting.ts'
import { fromFace } from './from-face.ts'
import { anyGuards } from './guards-of.ts'
import { unplaced } from './unplaced.ts'

/** A program of whatever origin, and how it is meant to be run. */
export interface AnyProgram {
  readonly text: string
  /** Index of the step it is run at: it meets the piece as the steps before left it. */
  readonly step: number
  /** Cutters by their number in the program; 0 is the one that is in when it starts. */
  readonly cutters: ReadonlyMap<number, CutterShape>
  /** Where the zero was set, mm off the plan's own zero of that setting. */
  readonly zeroOff: readonly [x: number, y: number, z: number]
  /** Hold what it leaves against what the step is to leave. */
  readonly compared: boolean
  readonly cellMm: number
}

/** A program that was read and swept. */
export interface AnyProof {
  readonly reading: ProgramReading
  readonly proof: Proof
}

/** The cutters a maker may name: those of the shop, else the usual sizes. */
export function cutterBox(input: Pick<MachiningInput, 'shop'>): readonly Cutter[] {
  return cuttersOf(input.shop).cutters
}

/**
 * Reads a program and sweeps it over the piece as it stands before a step. Yields the share done.
 * @throws RangeError where the step lies in no setting, or for more cells than a block takes
 */
export function* proveAny(input: MachiningInput, program: AnyProgram): Generator<number, AnyProof> {
  const { stack, shop } = input
  const setting = settingsOf(stack.steps).find(s => program.step >= s.from && program.step <= s.to)
  if (setting === undefined)
    throw new RangeError(
      `step ${program.step + 1} does not work on the piece: nothing lies on the machine then`
    )
  const pins = pinPlan(stack, stack.piece, shop, input)
  const planned = frameOf(stack.piece, setting, stack, pins.datum)
  const measured = measuredFrame(planned, setting, stack, pins, input.readings).frame
  const [dx, dy, dz] = program.zeroOff
  const frame = { ...measured, zeroZ: measured.zeroZ + measured.zSign * dz, bedZ: measured.bedZ - dz }
  const reading = readProgram(program.text, { tool: 0 })
  const before = stack.states[program.step - 1]?.events ?? 0
  const after = stack.states[program.step]!.events
  const compared = program.compared && after > before
  const machine = shop.machine === undefined ? null : machineOf(shop)
  // Heights count from where the shop's own programs count them.
  const moves = machine?.program.zero === 'bed' ? fromFace(reading.motions, measured.bedZ) : reading.motions
  const lying = {
    stack,
    materials: input.materials,
    pins,
    setting,
    frame,
    stock: workBox(stack, setting, frame)
  }
  const proof = yield* proveProgram({
    stack,
    up: setting.up,
    datum: { about: pins.datum.about, x0: frame.x0, y0: frame.y0, zeroMm: frame.zeroZ },
    events: before,
    wantedEvents: compared ? after : null,
    mask: ['outline', 'rebate'].includes(stack.steps[program.step]!.cut?.value.kind ?? '')
      ? stack.geometry.outline
      : null,
    cutterByTool: program.cutters,
    // The machine goes a zero's offset beside what the program says, and the piece lies as it was measured.
    motions: unplaced(moves, {
      turnDeg: frame.turnDeg,
      shiftX: frame.shiftX - dx,
      shiftY: frame.shiftY - dy
    }),
    cellMm: program.cellMm,
    guards: anyGuards(lying, machine, compared)
  })
  return { reading, proof }
}
