import { GROUP } from './codes.ts'
import type { Scanner } from './scanner.ts'
import type { State } from './state.ts'

const HEADER_COMMENTS = 60
const MESSAGES = 200
const MESSAGE = /^m\s*s\s*g\s*,/i

/** What is known of a program besides its moves. */
export interface ProgramFacts {
  readonly lines: number
  readonly units: readonly ('mm' | 'inch')[]
  /** Whether G20 or G21 stands before the first move. */
  readonly unitsStated: boolean
  /** Numbers put into the spindle by M6, each once, in order. */
  readonly cutters: readonly number[]
  /** Numbers of the length offsets used, each once. */
  readonly offsets: readonly number[]
  /** Work systems in which moves are made: 1 is G54, 9 is G59.3. */
  readonly systems: readonly number[]
  /** The line of M2 or M30, or of the closing tape mark; 0: the program never ends. */
  readonly endLine: number
  /** The first line that cuts (G1, G2, G3 or a cycle); 0: none. */
  readonly firstCutLine: number
  readonly spindleOnAtFirstCut: boolean
  readonly compensated: boolean
  /** Moves that end at a place not known along some axis: all once a whole place was reached, cuts before that. */
  readonly unplaced: number
  /** Comments before the first move, at most 60. */
  readonly header: readonly string[]
  /** What the operator is shown, at most 200. */
  readonly messages: readonly { readonly line: number; readonly text: string }[]
  readonly errors: number
  readonly warnings: number
  readonly notes: number
  /** Lines of which all or the move was left out. */
  readonly leftOut: number
  /** Why the reading stopped before the end of the file; null: it did not. */
  readonly stopped: string | null
}

/** Notes down while the lines go by what {@link ProgramFacts} tells. */
export class Observer {
  lines = 0
  /** A line with words has been met. */
  started = false
  /** A move was made and the first cut noted: what remains to be noted stands on lines with other words. */
  inWork = false
  endLine = 0
  firstCutLine = 0
  spindleOn = false
  compensated = false
  unitsStated = false
  readonly units = new Set<'mm' | 'inch'>()
  readonly cutters = new Set<number>()
  readonly offsets = new Set<number>()
  readonly systems = new Set<number>()
  readonly header: string[] = []
  readonly messages: { line: number; text: string }[] = []
  private readonly text: string
  private opened = false
  private closed = false
  private moves = 0

  constructor(text: string) {
    this.text = text
  }

  tapeMark(): void {
    if (this.started || this.opened) this.closed = true
    else this.opened = true
  }

  /** Whether the program has ended: the rest of the file is passed over, with a word if there is anything in it. */
  over(s: State, scanner: Scanner): boolean {
    if (!s.ended && !this.closed) return false
    if (this.endLine === 0) this.endLine = s.line - 1
    const c = scanner.peek()
    if (c !== 0 && c !== 37 && c !== 40)
      s.complaints.once(
        'after the end',
        'warning',
        scanner.column(),
        'Something stands after the end of the program. It is not read: a control does not come to it.',
        scanner.seen(scanner.pos, scanner.end),
        'nothing after M2, M30 or the closing "%"'
      )
    return true
  }

  /** Before a line is carried out: its comment. */
  before(s: State): void {
    const { block } = s
    this.moves = s.list.count
    if (block.commentFrom < 0) return
    const heading = this.systems.size === 0 && this.header.length < HEADER_COMMENTS
    // Most comments of a long program are neither: they are not even cut out.
    if (!heading && !this.mayBeMessage(block.commentFrom, block.commentTo)) return
    const comment = this.text.slice(block.commentFrom, block.commentTo).trim()
    if (MESSAGE.test(comment)) {
      if (this.messages.length < MESSAGES)
        this.messages.push({ line: s.line, text: comment.slice(comment.indexOf(',') + 1).trim() })
    } else if (heading) this.header.push(comment)
  }

  private mayBeMessage(from: number, to: number): boolean {
    let i = from
    while (i < to && this.text.charCodeAt(i) === 32) i++
    const c = i < to ? this.text.charCodeAt(i) : 0
    // M, m or a tab.
    return c === 77 || c === 109 || c === 9
  }

  /** After a line was carried out. */
  after(s: State, motion: number): void {
    const { block } = s
    if (s.offset !== 0) this.offsets.add(s.offset)
    if (s.compensated) this.compensated = true
    if (block.mMask & (1 << 6)) this.cutters.add(s.tool)
    // The short way past this observer is open only while what it notes stays the same.
    if (block.hasG(GROUP.units) || block.hasG(GROUP.system)) this.inWork = false
    if (motion < 0 && !block.hasG(GROUP.once)) return
    if (s.list.count === this.moves || motion < 0) return
    if (this.systems.size === 0) this.unitsStated = s.unitsStated
    this.systems.add(s.system)
    this.units.add(s.unit === 1 ? 'mm' : 'inch')
    if (motion > 0 && this.firstCutLine === 0) {
      this.firstCutLine = s.line
      this.spindleOn = s.turning !== 0 && s.speed > 0
    }
    this.inWork = this.firstCutLine > 0
  }

  get tapeClosed(): boolean {
    return this.closed
  }
}

/** Complaints about the program as a whole, and the facts. */
export function factsOf(o: Observer, s: State, stopped: string | null): ProgramFacts {
  const { complaints } = s
  if ((s.ended || o.tapeClosed) && o.endLine === 0) o.endLine = o.lines
  complaints.line = o.lines
  if (stopped === null) {
    if (o.endLine === 0)
      complaints.add(
        'warning',
        0,
        'The program never says that it ends. It may have been cut short.',
        o.lines === 0 ? 'an empty file' : `no M2, M30 or closing "%" up to line ${o.lines}`,
        'M2 or M30 last'
      )
    if (s.chosen !== 0 && s.chosen !== s.tool && o.cutters.size === 0)
      complaints.add(
        'note',
        0,
        'The program chooses a cutter but never changes to it: it takes the one in the spindle to be right.',
        `T${s.chosen} without M6`,
        'M6 after T, or the right cutter in the spindle'
      )
  }
  return {
    lines: o.lines,
    units: [...o.units],
    unitsStated: o.unitsStated,
    cutters: [...o.cutters],
    offsets: [...o.offsets],
    systems: [...o.systems],
    endLine: o.endLine,
    firstCutLine: o.firstCutLine,
    spindleOnAtFirstCut: o.spindleOn,
    compensated: o.compensated,
    unplaced: s.unplaced,
    header: o.header,
    messages: o.messages,
    errors: complaints.errors,
    warnings: complaints.warnings,
    notes: complaints.notes,
    leftOut: complaints.leftOut,
    stopped
  }
}
