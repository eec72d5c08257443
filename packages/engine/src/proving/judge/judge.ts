import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import { MOTION, type Motions } from '../motion.ts'
import type { Block } from '../sweep/block.ts'
import { forChords } from '../sweep/chords.ts'
import type { Hollows } from '../sweep/hollow.ts'
import { type Profile, profileOf, slimmer } from '../sweep/profile.ts'
import { Sweeper } from '../sweep/sweeper.ts'
import { Tally } from '../sweep/tally.ts'
import { Engagement } from './engagement.ts'
import type { Envelope, Guards } from './guards.ts'
import { judgement, PLUNGE_MM, TOUCH_MM } from './judgement.ts'
import type { Report, ReportKind } from './report.ts'
import { Rub } from './rub.ts'

/** Rapid moves are tried with a cutter that is so much slimmer, mm: figures of a program are rounded. */
const SLIM_MM = 0.05
/** Falling steeper than this is going straight down: fall over way. */
const STEEP = 1

/** Goes along the moves of a program, takes off the block what they sweep, and says what is wrong with them. */
export class Judge {
  removedMm3 = 0
  deepestMm = Number.POSITIVE_INFINITY

  private readonly block: Block
  private readonly motions: Motions
  private readonly cutters: ReadonlyMap<number, CutterShape>
  private readonly guards: Guards
  private readonly sweeper: Sweeper
  private readonly rub: Rub
  private readonly engagement: Engagement
  private readonly tallies = new Map<ReportKind, Tally>()
  private x = Number.NaN
  private y = Number.NaN
  private z = Number.NaN
  private tool = -1
  private cutter: CutterShape | null = null
  private profile: Profile | null = null
  private slim: Profile | null = null
  private wasRapid = true
  /** With the tip above this, neither shank nor holder can meet anything. */
  private rubsBelow = Number.POSITIVE_INFINITY
  /** The cutter that cut last; whether the program has stopped since it was changed. */
  private cutWith = -1
  private stopped = false
  /** Length of the move at hand on the plan. */
  private way = 0

  constructor(
    block: Block,
    hollows: Hollows,
    motions: Motions,
    cutters: ReadonlyMap<number, CutterShape>,
    guards: Guards
  ) {
    this.block = block
    this.motions = motions
    this.cutters = cutters
    this.guards = guards
    this.sweeper = new Sweeper(block, hollows)
    this.rub = new Rub(block)
    this.engagement = new Engagement(guards.mostMm3Min, this.tally('too much at once'))
  }

  /** One move of the program; they are given in order. */
  step(n: number): void {
    const { block, motions } = this
    const kind = motions.kind[n]!
    if (kind === MOTION.dwell) return
    if (kind === MOTION.stop || kind === MOTION.change) {
      this.endChain()
      this.stopped = kind === MOTION.stop || this.stopped
      if (kind === MOTION.change) this.stopped = false
      return
    }
    const x1 = motions.x[n]!
    const y1 = motions.y[n]!
    const z1 = motions.z[n]!
    const rapid = kind === MOTION.rapid
    if (motions.tool[n] !== this.tool || rapid !== this.wasRapid) this.endChain()
    block.line = motions.line[n]!
    block.move = n
    if (motions.tool[n] !== this.tool) this.change(motions.tool[n]!, rapid)
    else if (rapid !== this.wasRapid) this.mount(rapid)
    const envelope = this.envelopeAt(n)
    if (envelope !== null) this.within(envelope, x1, y1, z1)
    if (!rapid && !(motions.feed[n]! > 0)) this.tally('feed missing').add(block.line, 0, x1, y1, z1)
    if (this.cutter !== null && !(Number.isNaN(x1) || Number.isNaN(y1) || Number.isNaN(z1)))
      this.sweep(n, kind, x1, y1, z1, this.cutter)
    if (!Number.isNaN(x1)) this.x = x1
    if (!Number.isNaN(y1)) this.y = y1
    if (!Number.isNaN(z1)) this.z = z1
  }

  /** After the last move. */
  end(): void {
    this.endChain()
  }

  /** Most material taken, mm³ a minute and mm² of cross-section, and where. */
  get peak(): Engagement['peak'] {
    return this.engagement.peak
  }

  /** What was found wrong so far; watches of the block among it. */
  reports(): Report[] {
    return judgement(this.block, this.tallies, this.rub.met, this.guards, line =>
      this.cutters.get(this.motions.tool[this.motions.line.indexOf(line)] ?? -1)
    )
  }

  private sweep(n: number, kind: number, x1: number, y1: number, z1: number, cutter: CutterShape): void {
    const { block, motions, sweeper } = this
    // The first move starts nobody knows where: it is judged where it ends.
    const x0 = Number.isNaN(this.x) ? x1 : this.x
    const y0 = Number.isNaN(this.y) ? y1 : this.y
    const z0 = Number.isNaN(this.z) ? z1 : this.z
    const { taken } = block
    taken[0] = 0
    taken[1] = 0
    const arc = kind === MOTION.arcClockwise || kind === MOTION.arcCounter
    const plane = motions.plane[n]!
    const low = arc && plane !== 17 ? Number.NEGATIVE_INFINITY : Math.min(z0, z1)
    // Above all there is, nothing is met.
    if (low >= block.highMm) {
      this.endChain()
      return
    }
    const { ends } = sweeper
    ends[0] = x0
    ends[1] = y0
    ends[2] = z0
    ends[3] = x1
    ends[4] = y1
    ends[5] = z1
    if (arc) this.arc(n, cutter)
    else {
      this.way = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0))
      sweeper.go()
      if (kind === MOTION.rapid) sweeper.end()
      if (low < this.rubsBelow) this.rub.along(cutter, x0, y0, z0, x1, y1, z1)
    }
    const cell2 = block.cellMm * block.cellMm
    const volume = taken[0]! * cell2
    const depth = taken[1]!
    this.removedMm3 += volume
    if (kind !== MOTION.rapid && this.way > 1e-6 && motions.feed[n]! > 0) {
      const radius = this.profile?.radius ?? 0
      this.engagement.add(volume, this.way, motions.feed[n]!, radius, block.line, this.x, this.y, this.z)
    }
    if (depth <= TOUCH_MM) return
    if (z1 < this.deepestMm) this.deepestMm = z1
    if (kind === MOTION.rapid) this.say('rapid through material', depth)
    if (depth > cutter.fluteMm + TOUCH_MM) this.say('deeper than its edges', depth)
    if (motions.spindle[n] === 0) this.say('spindle off', depth)
    if (!cutter.plunges && depth > PLUNGE_MM && z0 - z1 > STEEP * this.way) this.say('plunge', depth)
    if (this.cutWith !== this.tool) {
      if (this.cutWith >= 0 && !this.stopped && motions.offset[n] === 0)
        this.say('cutter not measured', this.tool)
      this.cutWith = this.tool
    }
  }

  // Where the most was taken.
  private say(kind: ReportKind, value: number): void {
    const { block } = this
    const cell = block.taken[2]!
    const z = this.motions.z[block.move]!
    this.tally(kind).add(
      block.line,
      value,
      block.xOf(cell % block.nx),
      block.yOf(Math.floor(cell / block.nx)),
      z
    )
  }

  // The arc between the places set for the sweep, chord by chord.
  private arc(n: number, cutter: CutterShape): void {
    const { motions, sweeper } = this
    const [x0, y0, z0, x1, y1, z1] = [...sweeper.ends] as [number, number, number, number, number, number]
    let [px, py, pz] = [x0, y0, z0]
    let way = 0
    const go = (qx: number, qy: number, qz: number) => {
      sweeper.line(px, py, pz, qx, qy, qz)
      if (Math.min(pz, qz) < this.rubsBelow) this.rub.along(cutter, px, py, pz, qx, qy, qz)
      way += Math.sqrt((qx - px) ** 2 + (qy - py) ** 2)
      px = qx
      py = qy
      pz = qz
    }
    const clockwise = motions.kind[n] === MOTION.arcClockwise
    const [a, b] = [motions.a[n]!, motions.b[n]!]
    const plane = motions.plane[n]!
    // Planes in the standard's order of axes: x-y, z-x, y-z.
    if (plane === 18) forChords(z0, x0, y0, z1, x1, y1, a, b, clockwise, (p, q, h) => go(q, h, p))
    else if (plane === 19) forChords(y0, z0, x0, y1, z1, x1, a, b, clockwise, (p, q, h) => go(h, p, q))
    else forChords(x0, y0, z0, x1, y1, z1, a, b, clockwise, go)
    this.way = way
  }

  private endChain(): void {
    const { taken } = this.block
    taken[0] = 0
    this.sweeper.end()
    this.removedMm3 += taken[0]! * this.block.cellMm * this.block.cellMm
  }

  private change(tool: number, rapid: boolean): void {
    this.tool = tool
    this.cutter = this.cutters.get(tool) ?? null
    this.profile = this.cutter === null ? null : profileOf(this.cutter)
    this.slim = this.profile === null ? null : slimmer(this.profile, SLIM_MM)
    if (this.cutter === null) this.tally('cutter unknown').add(this.block.line, tool, this.x, this.y, this.z)
    // The lower of the two is the shank, above the edges.
    const c = this.cutter
    this.rubsBelow = this.block.highMm - Math.min(c?.fluteMm ?? 0, c?.reachMm ?? 0)
    this.mount(rapid)
  }

  private mount(rapid: boolean): void {
    this.wasRapid = rapid
    const p = rapid ? this.slim : this.profile
    if (p !== null) this.sweeper.take(p)
  }

  private envelopeAt(move: number): Envelope | null {
    const { envelope, envelopes } = this.guards
    return envelopes?.findLast(e => e.fromMove <= move)?.envelope ?? envelope
  }

  private within(e: Envelope, x: number, y: number, z: number): void {
    const past = Math.max(e.minX - x, x - e.maxX, e.minY - y, y - e.maxY, e.minZ - z, z - e.maxZ)
    if (past > 1e-6) this.tally('outside the machine').add(this.block.line, past, x, y, z)
  }

  private tally(kind: ReportKind): Tally {
    let t = this.tallies.get(kind)
    if (t === undefined) {
      t = new Tally()
      this.tallies.set(kind, t)
    }
    return t
  }
}
