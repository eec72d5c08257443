import type { Dialect } from '../../piece/dialect-field.ts'
import type { Move } from '../toolpath.ts'
import { writtenArc } from './arc.ts'
import { commentLines, messageLine } from './ascii.ts'
import { Blocks } from './block.ts'
import { CHECK_MM, headerOf, zeroShiftMm } from './header.ts'
import type { Hole } from './hole.ts'
import { holeAt } from './hole.ts'
import type { Numbers } from './number.ts'
import { numbersOf } from './number.ts'
import type { CutterRun, ProgramInput, ProgramPart, WrittenPass, WrittenProgram } from './program.ts'
import { checkProgram } from './sound.ts'

/** Feed of the last way down to the height check, mm/min: slow enough to stop by hand (practice). */
const CHECK_FEED = 300

/**
 * A program as text, in RS-274 as the dialect asks for it. The same input gives the same bytes.
 *
 * Every program: the header; a safe start (units, absolute, feed a minute, plane x-y, no cutter compensation, no length
 * offset, no cycle, work zero G54); the spindle off, up in Z alone and then across to the height check, where it stops;
 * the spindle on and a wait; the paths; up, spindle off, end. After each stop the place is said anew, Z first: somebody
 * may have moved the machine.
 *
 * Source of the words and their order: RS274/NGC, NISTIR 6556, 3.3 to 3.8.
 * @throws RangeError for a path that breaks what a program promises (see checkProgram), and for several cutters where
 * the dialect writes one program a cutter
 */
export function writeProgram(program: ProgramInput, dialect: Dialect): WrittenProgram {
  checkProgram(program)
  if (program.runs.length > 1 && dialect.changes === 'one program a cutter')
    throw new RangeError(
      `${program.runs.length} cutters in ${program.name}: this machine takes one program a cutter`
    )
  return new Writer(program, dialect).written()
}

class Writer {
  private readonly program: ProgramInput
  private readonly dialect: Dialect
  private readonly numbers: Numbers
  private readonly out: Blocks
  private readonly shift: number
  private readonly passes: WrittenPass[] = []
  private fed = Number.NaN
  private fedWords = ''

  constructor(program: ProgramInput, dialect: Dialect) {
    this.program = program
    this.dialect = dialect
    this.numbers = numbersOf(dialect)
    this.out = new Blocks(this.numbers, dialect.lineNumbers)
    this.shift = zeroShiftMm(program, dialect)
  }

  written(): WrittenProgram {
    const { dialect, out, program, numbers } = this
    for (const line of dialect.startLines) out.raw(line)
    if (dialect.comments) for (const line of headerOf(program, dialect, numbers)) out.raw(line)
    out.block(numbers.unit === 'mm' ? 'G21' : 'G20')
    out.block('G90', 'G94', 'G17')
    out.block('G40', 'G49', 'G80')
    out.block('G54')
    out.block('M5')
    program.runs.forEach((run, r) => {
      this.change(run, r)
      run.parts.forEach((part, p) => {
        this.part(part, r, p)
      })
      this.up()
      out.endCycle()
      out.block('M5')
      if (this.air !== null) out.block('M9')
    })
    const tape = dialect.endLines.filter(line => line.trim() === '%')
    for (const line of dialect.endLines) if (line.trim() !== '%') out.raw(line)
    out.block('M2')
    for (const line of tape) out.raw(line)
    return { text: `${out.lines.join('\n')}\n`, lines: out.lines.length, passes: this.passes }
  }

  private get air(): string | null {
    return this.dialect.air === 'none' || !this.program.spindle ? null : this.dialect.air
  }

  private say(text: string): void {
    if (this.dialect.comments) for (const line of commentLines(text)) this.out.raw(line)
  }

  /** The cutter in, its height looked at, the spindle on. */
  private change(run: CutterRun, r: number): void {
    const { dialect, out, program, numbers } = this
    this.say(`Cutter ${run.number}: ${run.words}`)
    if (dialect.changes === 'in the program') {
      if (r === 0) this.up()
      out.block(`T${run.number}`, 'M6')
      out.forget()
    }
    const { checkAt } = program
    this.over(checkAt.x, checkAt.y)
    const z = this.z(checkAt.topMm + CHECK_MM)
    if (z !== out.z) out.straight(Number.NaN, Number.NaN, z, z > out.z ? null : numbers.feed(CHECK_FEED))
    this.stop(
      `Cutter ${run.number} in, its height set. The tip must stand ${numbers.mm(CHECK_MM)} ${numbers.unit} over the face. If not, stop here`
    )
    for (const v of program.visits) {
      this.over(v.x, v.y)
      this.stop(`${v.words}, X${numbers.mm(v.x)} Y${numbers.mm(v.y)}`)
    }
    if (!program.spindle) return
    out.block(`S${run.rpm.toFixed(0)}`, 'M3')
    if (dialect.spindleWait > 0) out.dwell(dialect.spindleWait)
    if (this.air !== null) out.block(this.air)
  }

  /** Waits for the operator; then up. */
  private stop(message: string): void {
    if (this.dialect.comments) this.out.raw(messageLine(message))
    this.out.block('M0')
    this.out.forget()
    this.up()
  }

  /** Up in Z alone, where it does not stand high enough. */
  private up(): void {
    if (this.out.z >= this.z(this.program.clearMm)) return
    this.out.straight(Number.NaN, Number.NaN, this.z(this.program.clearMm), null)
  }

  private over(x: number, y: number): void {
    this.up()
    this.out.straight(this.numbers.rounded(x), this.numbers.rounded(y), this.out.z, null)
  }

  private z(mm: number): number {
    return this.numbers.rounded(mm + this.shift)
  }

  /** Feeds change seldom: the words of the last one are kept. */
  private feed(mmMin: number): string {
    if (mmMin !== this.fed) this.fedWords = this.numbers.feed(mmMin)
    this.fed = mmMin
    return this.fedWords
  }

  private part(part: ProgramPart, run: number, index: number): void {
    const { passes, moves } = part.path
    this.say(part.name)
    let next = 0
    let from: Exclude<Move, { kind: 'dwell' }> | null = null
    let skipTo = 0
    for (const [i, move] of moves.entries()) {
      while (next < passes.length && passes[next]!.from <= i) {
        const { name } = passes[next]!
        this.say(name)
        this.passes.push({ run, part: index, pass: next, name, line: this.out.lines.length + 1 })
        next++
      }
      if (i < skipTo) continue
      if (move.kind === 'dwell') {
        if (move.seconds > 0) this.out.dwell(move.seconds)
        continue
      }
      const hole = this.dialect.cycles && move.kind === 'rapid' ? holeAt(moves, i + 1, move) : null
      // A pass that begins inside a hole stays where it is.
      if (hole !== null && !passes.some(p => p.from > i && p.from < hole.next) && this.hole(move, hole))
        skipTo = hole.next
      else this.move(from, move)
      from = move
    }
  }

  private move(from: Exclude<Move, { kind: 'dwell' }> | null, move: Exclude<Move, { kind: 'dwell' }>): void {
    const { numbers, out } = this
    const x = numbers.rounded(move.x)
    const y = numbers.rounded(move.y)
    const z = this.z(move.z)
    if (move.kind === 'rapid') {
      // Never slanting: up first, or down last.
      if (!(z < out.z)) out.straight(Number.NaN, Number.NaN, z, null)
      out.straight(x, y, out.z, null)
      out.straight(x, y, z, null)
    } else if (move.kind === 'line') out.straight(x, y, z, this.feed(move.feedMmMin))
    else this.arc(from!, move)
  }

  /** A hole by a cycle: over it, down, out. false: it is written move by move. */
  private hole(over: Exclude<Move, { kind: 'dwell' }>, hole: Hole): boolean {
    const { numbers, out } = this
    const r = this.z(hole.fromMm)
    const z = this.z(hole.floorMm)
    if (!(z < r) || hole.fromMm > this.program.clearMm) return false
    // The cycle comes out to the height where it began: the cutter stands there.
    const clear = this.z(hole.clearMm)
    if (out.z !== clear) {
      if (!(clear < out.z)) out.straight(Number.NaN, Number.NaN, clear, null)
      else this.move(null, over)
    }
    const x = numbers.rounded(hole.x)
    const y = numbers.rounded(hole.y)
    const place = [
      `X${numbers.length(x)}`,
      `Y${numbers.length(y)}`,
      `Z${numbers.length(z)}`,
      `R${numbers.length(r)}`
    ]
    if (hole.peckMm !== null) {
      // Even pecks from R to the foot, none deeper than those of the path; rounded up, so that no sliver is left over.
      const count = Math.ceil((hole.fromMm - hole.floorMm) / hole.peckMm - 1e-9)
      const peck = Math.ceil((r - z) / count / numbers.step - 1e-9) * numbers.step
      out.cycle(['G83', ...place, `Q${numbers.length(peck)}`], x, y, numbers.feed(hole.feedMmMin))
    } else if (hole.seconds > 0)
      out.cycle(['G82', ...place, `P${numbers.seconds(hole.seconds)}`], x, y, numbers.feed(hole.feedMmMin))
    else out.cycle(['G81', ...place], x, y, numbers.feed(hole.feedMmMin))
    return true
  }

  private arc(from: Exclude<Move, { kind: 'dwell' }>, arc: Extract<Move, { kind: 'arc' }>): void {
    const { numbers, out, program, dialect, shift } = this
    const feed = this.feed(arc.feedMmMin)
    const lifted = { ...arc, z: arc.z + shift }
    const start = { x: from.x, y: from.y, z: from.z + shift }
    const at = { x: out.x, y: out.y, z: out.z }
    for (const w of writtenArc(start, at, lifted, numbers, program.tolMm, dialect.arcs))
      if (w.kind === 'line') out.straight(w.x, w.y, w.z, feed)
      else out.arc(w.x, w.y, w.z, w.i, w.j, arc.clockwise, feed)
  }
}
