import { find } from '../catalogue/find.ts'
import { INTO_BED_MM } from '../cuts/operation/bench.ts'
import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting, Operation } from '../cuts/operation/operation.ts'
import type { MotionTime } from '../cuts/run/motion-time.ts'
import type { Toolpath } from '../cuts/toolpath.ts'
import type { CutterRun, ProgramInput } from '../cuts/write/program.ts'
import { decimals } from '../quantity/format.ts'
import { holdingWords, liesWords, measuredWords, raisedFaceWords, zeroWords } from './setting-words.ts'

/** A path that was made, with its time. */
export interface MadePath {
  readonly operation: Operation
  readonly path: Toolpath
  readonly time: MotionTime
}

/** How deep the tip of a cutter may go into the board beneath: the cut right through and the point of a drill, mm. */
export const BED_ALLOWED_MM = INTO_BED_MM + 3

/** All that stands in the program of operations of one setting, run one after the other. */
export function programInput(machining: Machining, made: readonly MadePath[]): ProgramInput {
  const operations = made.map(m => m.operation)
  const first = operations[0]!
  const on = machining.settings[first.setting]!
  const { machine, stack } = machining.bench
  const begins = made[0]!.path.moves.find(m => m.kind !== 'dwell')!
  const { up } = on.setting
  const at = on.position
  const safety = find('hazard', 'machine-cutting')
  return {
    kind: 'cut',
    name: `${up}${at === null ? '' : ` position ${at.number}`} ${first.number}, ${operations.length === 1 ? first.name : `${operations.length} cuts`}`,
    piece: stack.piece.name,
    setting: liesWords(machining, on),
    zero: zeroWords(machining, on),
    holding: holdingWords(machining, on),
    safety: safety === null ? [] : safety.lines,
    notes: [
      ...measuredWords(machining, on),
      ...raisedFaceWords(first),
      ...new Set(operations.flatMap(o => [...o.limits, ...o.feeds.faults.map(f => f.says)]))
    ],
    machine: `travel ${decimals(machine.x, 0)} x ${decimals(machine.y, 0)} x ${decimals(machine.z, 0)} mm`,
    bedMm: bedOf(on, first),
    intoBedMm: BED_ALLOWED_MM,
    stock: on.stock,
    clearMm: on.clearMm,
    checkAt: { ...checkPlace(on, first, begins), topMm: first.job.topMm },
    tolMm: first.job.tolMm,
    spindle: true,
    visits: [],
    runs: runsOf(machining, made)
  }
}

// Where the cut begins the face stands to be cut; flattening begins beside the piece.
function checkPlace(
  { stock, position }: MachineSetting,
  { kind }: Operation,
  begins: { x: number; y: number }
) {
  if (kind !== 'flatten') return { x: begins.x, y: begins.y }
  if (position?.axis === 'x') return { x: position.middleMm, y: (stock.minY + stock.maxY) / 2 }
  if (position?.axis === 'y') return { x: (stock.minX + stock.maxX) / 2, y: position.middleMm }
  return { x: (stock.minX + stock.maxX) / 2, y: (stock.minY + stock.maxY) / 2 }
}

// What the piece lies on: the face that is down as it is in this setting.
function bedOf(on: MachineSetting, operation: Operation): number {
  return Math.min(on.frame.bedZ, operation.job.topMm)
}

/** Number of a cutter in the machine: its place among those of the box. */
export function cutterNumber(machining: Machining, id: string): number {
  return Math.min(99, machining.bench.box.cutters.findIndex(c => c.id === id) + 1)
}

// Operations that follow each other with one cutter at one speed are one run of it.
function runsOf(machining: Machining, made: readonly MadePath[]): CutterRun[] {
  const runs: CutterRun[] = []
  for (const { operation, path, time } of made) {
    const { cutter, feeds, job, cutterWhy } = operation
    const number = cutterNumber(machining, cutter.id)
    const rpm = Math.round(feeds.rpm)
    const part = { name: operation.name, path, topMm: job.topMm }
    const last = runs.at(-1)
    if (last !== undefined && last.number === number && last.rpm === rpm) {
      const minutes = (last.minutes ?? 0) + time.minutes
      runs[runs.length - 1] = { ...last, minutes, parts: [...last.parts, part] }
      continue
    }
    runs.push({
      number,
      words: cutter.own ? `${cutter.id}, ${cutter.name}` : cutter.name,
      shape: cutter.shape,
      rpm,
      minutes: time.minutes,
      why: [cutterWhy, ...feeds.why],
      parts: [part]
    })
  }
  return runs
}
