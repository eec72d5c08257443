import { MOTION } from '../motion.ts'
import { Block } from './block.ts'
import type { Complaints } from './complaint.ts'
import type { MotionList } from './motion-list.ts'
import type { Parameters } from './parameters.ts'
import { MOST_VALUE } from './words.ts'

/** Ten times the G code of the motion in force; G80: none. */
export const NO_MOTION = 800
const MM_PER_INCH = 25.4
const SYSTEMS = 9
const MOST_TOOL = 65535

/**
 * The control between lines: what is in force, where the cutter stands. Lengths in mm. Places are counted from the
 * zero of the setting, which is taken to lie where work system 1 (G54) has its zero when the program begins; the zero
 * of the machine itself lies at {@link machine}, NaN along an axis where it is not known.
 */
export class State {
  readonly complaints: Complaints
  readonly list: MotionList
  readonly parameters: Parameters
  readonly block = new Block()
  line = 0
  /** Ten times the G codes in force. */
  motion = NO_MOTION
  plane = 17
  incremental = false
  inverseTime = false
  /** mm in a unit of length of the program. */
  unit = 1
  unitsStated = false
  compensated = false
  backToStart = true
  /** Number of the length offset; 0: none. */
  offset = 0
  tool = 0
  chosen = 0
  /** mm/min. */
  feed = 0
  /** Turns a minute as set, and -1, 0 or 1: counter-clockwise, off, clockwise. */
  speed = 0
  turning = 0
  /** Where the tip stands: x y z; NaN: not known. */
  readonly place = new Float64Array(3).fill(Number.NaN)
  /** Where the place 0 of the program lies: zero of the work system in force and the shift of G92. */
  readonly base = new Float64Array(3)
  readonly shift = new Float64Array(3)
  /** The shift that G92.3 brings back; NaN: it lies in the control. */
  readonly keptShift = new Float64Array(3).fill(Number.NaN)
  readonly machine = new Float64Array(3).fill(Number.NaN)
  /** Zero of each work system, three numbers each. */
  readonly systems = new Float64Array(3 * SYSTEMS)
  system = 1
  /** The cycle in force: its retract plane and depth as programmed, mm, its dwell, its peck, its offsets. */
  readonly cycle = { r: 0, depth: 0, p: -1, q: -1, i: Number.NaN, j: Number.NaN, k: Number.NaN }
  /** Moves that end at a place not known along some axis, once a whole place was reached, and cuts before that. */
  unplaced = 0
  private placed = false
  ended = false

  constructor(complaints: Complaints, list: MotionList, parameters: Parameters) {
    this.complaints = complaints
    this.list = list
    this.parameters = parameters
  }

  setUnits(inch: boolean): void {
    this.unit = inch ? MM_PER_INCH : 1
    this.unitsStated = true
  }

  /** To be called when the work system or the shift has changed. */
  rebase(): void {
    for (let k = 0; k < 3; k++) this.base[k] = this.systems[3 * (this.system - 1) + k]! + this.shift[k]!
  }

  /** Turns a minute with sign; 0 off. */
  spindle(): number {
    return this.turning * this.speed
  }

  setTool(n: number, column: number): void {
    if (n < 0 || n > MOST_TOOL)
      this.complaints.fail(column, 'There is no cutter of that number.', `T${n}`, `T0 to T${MOST_TOOL}`)
    this.chosen = n
  }

  /** A rapid or a straight cut to a place; also a place that is not known. */
  straight(cut: boolean, x: number, y: number, z: number, feed: number): void {
    if (Math.abs(x) > MOST_VALUE || Math.abs(y) > MOST_VALUE || Math.abs(z) > MOST_VALUE) this.tooFar()
    this.list.push(
      cut ? MOTION.line : MOTION.rapid,
      this.line,
      x,
      y,
      z,
      0,
      0,
      17,
      feed,
      this.turning * this.speed,
      this.tool,
      this.offset
    )
    if (!Number.isNaN(x + y + z)) this.placed = true
    else if (this.placed || cut) this.unplaced++
    this.place[0] = x
    this.place[1] = y
    this.place[2] = z
  }

  /** No way is made: a dwell, a stop or a change of cutter. */
  rest(kind: number, seconds: number): void {
    const p = this.place
    this.list.push(
      kind,
      this.line,
      p[0]!,
      p[1]!,
      p[2]!,
      seconds,
      0,
      17,
      0,
      this.spindle(),
      this.tool,
      this.offset
    )
  }

  /** Along one axis, the others as they are. */
  along(axis: number, to: number, cut: boolean, feed = this.feed): void {
    const p = this.place
    if (p[axis] === to) return
    this.straight(
      cut,
      axis === 0 ? to : p[0]!,
      axis === 1 ? to : p[1]!,
      axis === 2 ? to : p[2]!,
      cut ? feed : 0
    )
  }

  tooFar(): never {
    return this.complaints.fail(
      this.block.firstAxisColumn(),
      'The move ends too far away to be meant.',
      `more than ${MOST_VALUE} mm from the zero`,
      `at most ${MOST_VALUE} mm`
    )
  }
}
