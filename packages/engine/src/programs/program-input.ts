import { find } from '../catalogue/find.ts'
import { INTO_BED_MM } from '../cuts/operation/bench.ts'
import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting, Operation } from '../cuts/operation/operation.ts'
import type { MotionTime } from '../cuts/run/motion-time.ts'
import type { Toolpath } from '../cuts/toolpath.ts'
import type { CutterRun, ProgramInput } from '../cuts/write/program.ts'
import { decimals } from '../quantity/format.ts'
import { holdingWords, liesWords, zeroWords } from './setting-words.ts'

/** A path that was made, with its time. */
export interface MadePath {
  readonly operation: Operation
  readonly path: Toolpath
  readonly time: MotionTime
}

/** How far beside the box of the cut the height is looked at is of no moment; how deep into the bed is, mm. */
export const BED_ALLOWED_MM = INTO_BED_MM + 3

/** All that stands in the program of one operation. */
export function programInput(machining: Machining, made: MadePath): ProgramInput {
  const { operation } = made
  const on = machining.settings[operation.setting]!
  const { machine, stack } = machining.bench
  const first = made.path.moves.find(m => m.kind !== 'dwell')!
  const hazard = find('hazard', 'machine-cutting')
  return {
    kind: 'cut',
    name: nameOf(machining, operation),
    piece: stack.piece.name,
    setting: liesWords(machining, on),
    zero: zeroWords(machining, on),
    holding: holdingWords(machining, on),
    safety: hazard === null ? [] : hazard.lines,
    notes: [...operation.limits, ...operation.feeds.faults.map(f => f.says)],
    machine: `travel ${decimals(machine.x, 0)} x ${decimals(machine.y, 0)} x ${decimals(machine.z, 0)} mm`,
    bedMm: bedOf(on, operation),
    intoBedMm: BED_ALLOWED_MM,
    stock: on.stock,
    clearMm: on.clearMm,
    checkAt: { x: first.x, y: first.y, topMm: operation.job.topMm },
    tolMm: operation.job.tolMm,
    spindle: true,
    visits: [],
    runs: [runOf(machining, made)]
  }
}

/** "back 2, cable channel" */
export function nameOf(machining: Machining, operation: Operation): string {
  const { up } = machining.settings[operation.setting]!.setting
  return `${up} ${operation.number}, ${operation.name}`
}

// What the piece lies on: the face that is down as it is in this setting.
function bedOf(on: MachineSetting, operation: Operation): number {
  return Math.min(on.frame.bedZ, operation.job.topMm)
}

/** Number of a cutter in the machine: its place among those of the box. */
export function cutterNumber(machining: Machining, operation: Operation): number {
  return Math.min(99, machining.bench.box.cutters.findIndex(c => c.id === operation.cutter.id) + 1)
}

function runOf(machining: Machining, { operation, path, time }: MadePath): CutterRun {
  const { cutter, feeds, job } = operation
  return {
    number: cutterNumber(machining, operation),
    words: cutter.own ? `${cutter.id}, ${cutter.name}` : cutter.name,
    shape: cutter.shape,
    rpm: Math.round(feeds.rpm),
    minutes: time.minutes,
    why: [operation.cutterWhy, ...feeds.why],
    parts: [{ name: operation.name, path, topMm: job.topMm }]
  }
}
