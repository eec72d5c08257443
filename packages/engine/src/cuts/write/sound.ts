import { inRange } from '../../quantity/range.ts'
import type { Move } from '../toolpath.ts'
import { SAME_MM, unfreeDowns } from './free.ts'
import { FARTHEST_MM, LEAST_FEED } from './number.ts'
import type { CutterRun, ProgramInput, ProgramPart } from './program.ts'

/** Start and end radius of an arc of a path may differ by this, mm: what path-making rounds. */
const RADIUS_MM = 0.02
/** Slowest and fastest that a spindle is asked to turn. */
const RPM: readonly [number, number] = [1, 100_000]

/**
 * Refuses a program that would break what every program promises: it crosses at the clearance height and nowhere
 * lower, goes straight down at rapid speed only where nothing stands, moves in the work at a feed above none, starts
 * and ends high, and stays above the bed.
 * @throws RangeError naming cutter, part and move
 */
export function checkProgram(program: ProgramInput): void {
  const { stock, clearMm, bedMm, intoBedMm, runs, tolMm } = program
  for (const [name, value] of Object.entries({ ...stock, clearMm, bedMm }))
    inRange(name, value, -FARTHEST_MM, FARTHEST_MM, 'mm')
  inRange('tolerance of arcs', tolMm, 1e-4, 1, 'mm')
  inRange('cut into the bed', intoBedMm, 0, 100, 'mm')
  if (clearMm <= stock.maxZ)
    throw new RangeError(
      `the clearance height ${clearMm} mm is not above the work, which stands to ${stock.maxZ}`
    )
  inRange('face where the height is looked at', program.checkAt.topMm, bedMm, stock.maxZ, 'mm')
  if (runs.length === 0) throw new RangeError('a program without a cutter')
  for (const v of [program.checkAt, ...program.visits])
    for (const c of [v.x, v.y]) inRange('a place to stop at', c, -FARTHEST_MM, FARTHEST_MM, 'mm')
  for (const run of runs) {
    if (!Number.isInteger(run.number) || run.number < 1 || run.number > 99)
      throw new RangeError(`cutter number ${run.number}: a whole number from 1 to 99`)
    if (program.spindle) inRange(`turns a minute of cutter ${run.number}`, run.rpm, ...RPM, '')
    if (run.parts.length === 0) throw new RangeError(`cutter ${run.number} cuts nothing`)
    for (const part of run.parts) new PartCheck(program, run, part).all()
  }
}

class PartCheck {
  private readonly program: ProgramInput
  private readonly run: CutterRun
  private readonly part: ProgramPart

  constructor(program: ProgramInput, run: CutterRun, part: ProgramPart) {
    this.program = program
    this.run = run
    this.part = part
  }

  all(): void {
    const { moves, passes } = this.part.path
    let at: Exclude<Move, { kind: 'dwell' }> | null = null
    for (const [i, move] of moves.entries()) {
      if (move.kind === 'dwell') {
        if (!(move.seconds >= 0 && move.seconds <= 3600)) this.wrong(i, `waits ${move.seconds} s: 0 to 3600`)
        continue
      }
      this.move(i, at, move)
      at = move
    }
    if (at === null) this.wrong(0, 'has no move')
    else if (at.z < this.clear) this.wrong(moves.length - 1, `ends at ${at.z}, below the clearance height`)
    const unfree = unfreeDowns(moves, this.part.topMm, this.run.shape.diameterMm / 2)[0]
    if (unfree !== undefined) this.wrong(unfree, 'goes down at rapid speed where nothing was cut before')
    let last = -1
    for (const pass of passes) {
      if (!(pass.from > last && pass.from <= moves.length))
        this.wrong(pass.from, `begins ${pass.name} out of order`)
      last = pass.from
    }
  }

  private get clear(): number {
    return this.program.clearMm - SAME_MM
  }

  private move(
    i: number,
    from: { x: number; y: number; z: number } | null,
    move: Exclude<Move, { kind: 'dwell' }>
  ): void {
    for (const c of [move.x, move.y, move.z])
      if (!(Math.abs(c) <= FARTHEST_MM)) this.wrong(i, `goes to ${c}: at most ${FARTHEST_MM} mm off`)
    if (move.z < this.program.bedMm - this.program.intoBedMm - SAME_MM)
      this.wrong(
        i,
        `goes to ${move.z}, ${this.program.bedMm - move.z} mm into the bed; ${this.program.intoBedMm} are allowed`
      )
    if (move.kind === 'rapid') {
      if (from === null) {
        if (move.z < this.clear) this.wrong(i, 'begins below the clearance height')
        return
      }
      const along = Math.hypot(move.x - from.x, move.y - from.y) > SAME_MM
      if (along && Math.min(from.z, move.z) < this.clear)
        this.wrong(i, 'crosses at rapid speed below the clearance height')
      return
    }
    if (from === null) this.wrong(i, 'begins with a cut: a rapid move at the clearance height comes first')
    if (!(move.feedMmMin >= LEAST_FEED && move.feedMmMin <= FARTHEST_MM))
      this.wrong(i, `is fed at ${move.feedMmMin} mm/min: ${LEAST_FEED} at least`)
    if (move.kind === 'arc') this.arc(i, from, move)
  }

  private arc(i: number, from: { x: number; y: number }, arc: Extract<Move, { kind: 'arc' }>): void {
    if (!(Math.abs(arc.cx) <= FARTHEST_MM && Math.abs(arc.cy) <= FARTHEST_MM))
      this.wrong(i, `turns about ${arc.cx}, ${arc.cy}: at most ${FARTHEST_MM} mm off`)
    const a = Math.hypot(from.x - arc.cx, from.y - arc.cy)
    const b = Math.hypot(arc.x - arc.cx, arc.y - arc.cy)
    if (Math.abs(a - b) > RADIUS_MM)
      this.wrong(i, `is an arc of radius ${a} at its start and ${b} at its end`)
  }

  private wrong(i: number, what: string): never {
    throw new RangeError(`cutter ${this.run.number}, ${this.part.name}, move ${i + 1} ${what}`)
  }
}
