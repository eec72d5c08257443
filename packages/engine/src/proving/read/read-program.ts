import type { Motions } from '../motion.ts'
import { AXES, type Block, bit, F } from './block.ts'
import { motionOf } from './check.ts'
import { GROUP } from './codes.ts'
import { type Complaint, Complaints } from './complaint.ts'
import { execute } from './execute.ts'
import { Values } from './expression.ts'
import { factsOf, Observer, type ProgramFacts } from './facts.ts'
import { MotionList, TooManyMotions } from './motion-list.ts'
import { Parameters } from './parameters.ts'
import { Scanner } from './scanner.ts'
import { State } from './state.ts'
import { LINE, Words } from './words.ts'

/** Lines, characters and moves that are read at most: a move takes 59 bytes. */
const MOST_LINES = 10_000_000
const MOST_CHARACTERS = 400_000_000
const MOST_MOTIONS = 12_000_000
/** Moves that room is laid out for beforehand. */
const MOST_GUESSED = 2_000_000

/** What is known of the control beside the program, and bounds. */
export interface ReadOptions {
  /** Units in force when the program starts; mm. */
  readonly units?: 'mm' | 'inch'
  /** The switch that passes over lines beginning with "/"; off. */
  readonly skipDeleted?: boolean
  /** Where the machine's own zero lies, mm from the zero of the setting; not known. */
  readonly machineZero?: { readonly x?: number; readonly y?: number; readonly z?: number }
  /** Parameters that lie in the control. */
  readonly parameters?: Readonly<Record<number, number>>
  /** Cutter in the spindle when the program starts; 0: not known. */
  readonly tool?: number
  readonly mostLines?: number
  readonly mostMotions?: number
}

/** A program as it was read. */
export interface ProgramReading {
  readonly motions: Motions
  /** The first 200, in the order of the lines. */
  readonly complaints: readonly Complaint[]
  readonly facts: ProgramFacts
}

/**
 * Reads a program as NIST RS274/NGC version 3 (NISTIR 6556) has it, line by line: words, checks, then what the line
 * does in the order of its table 8. A line with an error is left out and the reading goes on.
 *
 * Lengths become mm, feeds mm/min. Cycles are written out. Radius compensation is not followed and said once; length
 * offsets are taken to hold the true length of the cutter, so that places are those of its tip.
 * Time: linear in the text. Limits: {@link MOST_LINES} lines, {@link MOST_CHARACTERS} characters,
 * {@link MOST_MOTIONS} moves; beyond, one complaint, and the reading stops.
 * Check: the standard's worked examples of arcs, cycles, parameters and expressions.
 */
export function readProgram(text: string, options: ReadOptions = {}): ProgramReading {
  const complaints = new Complaints()
  // A line of a toolpath holds some 22 characters.
  const list = new MotionList(
    Math.min(MOST_GUESSED, Math.ceil(text.length / 22)),
    options.mostMotions ?? MOST_MOTIONS
  )
  const parameters = new Parameters(complaints, options.parameters ?? {})
  const state = new State(complaints, list, parameters)
  if (options.units === 'inch') state.unit = 25.4
  state.tool = options.tool ?? 0
  const zero = options.machineZero
  if (zero !== undefined)
    state.machine.set([zero.x ?? Number.NaN, zero.y ?? Number.NaN, zero.z ?? Number.NaN])
  const observer = new Observer(text)
  const scanner = new Scanner(text, complaints)
  const words = new Words(scanner, new Values(scanner, parameters), options.skipDeleted ?? false)
  const stopped = readLines(text, scanner, words, state, observer, options.mostLines ?? MOST_LINES)
  const facts = factsOf(observer, state, stopped)
  return { motions: list.done(), complaints: complaints.list, facts }
}

// Walks the lines; says why it stopped early, or null.
function readLines(
  text: string,
  scanner: Scanner,
  words: Words,
  state: State,
  observer: Observer,
  mostLines: number
): string | null {
  const { complaints } = state
  const stop = (says: string, found: string, allowed: string): string => {
    complaints.add('error', 0, `${says} The reading stops here.`, found, allowed)
    return says
  }
  if (text.length > MOST_CHARACTERS) {
    return stop(
      'The file is too large to be read.',
      `${text.length} characters`,
      `at most ${MOST_CHARACTERS}`
    )
  }
  // A mark of the byte order is no character of the program.
  let from = text.charCodeAt(0) === 0xfeff ? 1 : 0
  let line = 0
  while (from < text.length) {
    line++
    if (line > mostLines) {
      complaints.line = line
      return stop('The program has too many lines.', `more than ${mostLines}`, `at most ${mostLines}`)
    }
    let to = text.indexOf('\n', from)
    if (to < 0) to = text.length
    const end = to > from && text.charCodeAt(to - 1) === 13 ? to - 1 : to
    complaints.line = line
    complaints.reading = true
    state.line = line
    scanner.line(from, end)
    observer.lines = line
    try {
      if (!observer.over(state, scanner)) readLine(words, state, observer)
    } catch (thrown) {
      if (thrown instanceof TooManyMotions)
        return stop(
          'The program asks for more moves than are read.',
          `more than ${state.list.most}`,
          `at most ${state.list.most}`
        )
      if (!Complaints.isLeftOut(thrown)) throw thrown
    }
    from = to + 1
  }
  return null
}

const SIMPLE = ~(AXES | bit('F'))

function readLine(words: Words, state: State, observer: Observer): void {
  const { block, complaints } = state
  const kind = words.read(block)
  if (kind === LINE.tape) observer.tapeMark()
  if (kind !== LINE.words) return
  observer.started = true
  // Most lines: a straight move with a feed at most.
  if (
    (block.mask & SIMPLE) === 0 &&
    (block.gMask & ~(1 << GROUP.motion)) === 0 &&
    block.mMask === 0 &&
    block.settings.length === 0 &&
    block.commentFrom < 0 &&
    (block.mask & AXES) !== 0 &&
    !state.inverseTime &&
    state.unitsStated &&
    observer.inWork
  ) {
    const motion = block.gMask !== 0 ? block.g[GROUP.motion]! : state.motion
    if (motion === 0 || motion === 10) {
      complaints.reading = false
      if ((block.mask & (1 << F)) !== 0 && block.value[F]! > 0) state.feed = block.value[F]! * state.unit
      if ((block.mask & (1 << F)) === 0 || block.value[F]! > 0) {
        simple(state, block, motion === 10)
        state.motion = motion
        return
      }
    }
  }
  complaints.reading = true
  const motion = motionOf(state)
  for (let k = 0; k < block.settings.length; k += 3)
    state.parameters.set(block.settings[k]!, block.settings[k + 1]!, block.settings[k + 2]!)
  complaints.reading = false
  observer.before(state)
  execute(state, motion)
  observer.after(state, motion)
}

function simple(s: State, block: Block, cut: boolean): void {
  const { mask, value } = block
  const { place, base, unit } = s
  let x = place[0]!
  let y = place[1]!
  let z = place[2]!
  if (s.incremental) {
    if (mask & (1 << 23)) x += value[23]! * unit
    if (mask & (1 << 24)) y += value[24]! * unit
    if (mask & (1 << 25)) z += value[25]! * unit
  } else {
    if (mask & (1 << 23)) x = value[23]! * unit + base[0]!
    if (mask & (1 << 24)) y = value[24]! * unit + base[1]!
    if (mask & (1 << 25)) z = value[25]! * unit + base[2]!
  }
  s.straight(cut, x, y, z, cut ? s.feed : 0)
}
