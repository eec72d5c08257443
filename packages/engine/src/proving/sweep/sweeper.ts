import type { Block } from './block.ts'
import { AHEAD, BEHIND, Foot, first, HAIR_MM, JNX, JNY, JUX, JUY, JX, JY, JZ, last, TINY } from './foot.ts'
import type { Hollows } from './hollow.ts'
import { mostBehind, type Profile } from './profile.ts'
import {
  anyRow,
  BACK,
  ballRow,
  coneRow,
  DS,
  DW,
  flatRow,
  LONG,
  M,
  MOST,
  S,
  UX,
  UY,
  W,
  X0,
  Y0,
  Z0
} from './row.ts'

/**
 * Takes what a cutter sweeps off a block, move by move: at each cell the lowest height the cutter has over it anywhere
 * along the move, by closed form.
 *
 * Moves that follow one another are a chain, and each takes only the cells over which the cutter is lowest within it
 * (the slab). Those over which it is lowest at the joint of two moves (the wedge) are taken at the joint, those of the
 * two ends with the disc of the cutter there. All others are lower in a neighbour: heights of the lowest place fall
 * from move to move, or stay and the place comes nearer, so that following them comes to an end. A chain of short moves
 * thus costs its length, not the number of its footprints.
 *
 * Limits: what lies before the cutter of a chain is taken when the cutter has passed or the chain ends; nothing else
 * is said of a chain's inside. A cell is as its middle is: an edge lies within half a cell's diagonal.
 * Check: stamping footprints at fine steps, and closed forms of slots, discs, rings, grooves and helices.
 */
export class Sweeper {
  private readonly block: Block
  private readonly foot: Foot
  private open = false
  /** Whether the last move of the chain had a direction: its end is not yet taken. */
  private led = false
  /** Where the next move starts and ends: x, y, z, x, y, z. */
  readonly ends = new Float64Array(6)
  // Figures of the move at hand. An array: figures handed from function to function would be boxed, each of them.
  private readonly run = new Float64Array(13)
  // Where the last move ended, its direction, how far before its end it reaches; the same of the next at its start.
  private readonly joint = new Float64Array(9)

  constructor(block: Block, hollows: Hollows) {
    this.block = block
    this.foot = new Foot(block, hollows)
  }

  /** @param profile of the cutter from here on; a chain that is open is ended first */
  take(profile: Profile): void {
    this.end()
    this.foot.p = profile
  }

  /** Ends a chain: takes what lies under the cutter where it stands. */
  end(): void {
    const { joint } = this
    if (this.open && this.led) this.foot.disc(joint[JX]!, joint[JY]!, joint[JZ]!)
    this.open = false
    this.led = false
  }

  /** A straight move. It goes on from the one before unless {@link end} was called between. */
  line(x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void {
    const { ends } = this
    ends[0] = x0
    ends[1] = y0
    ends[2] = z0
    ends[3] = x1
    ends[4] = y1
    ends[5] = z1
    this.go()
  }

  /** {@link line} between the places set in {@link ends}. */
  go(): void {
    const { ends } = this
    const x0 = ends[0]!
    const y0 = ends[1]!
    const z0 = ends[2]!
    const x1 = ends[3]!
    const y1 = ends[4]!
    const z1 = ends[5]!
    const { run, joint, foot } = this
    const dx = x1 - x0
    const dy = y1 - y0
    const long = Math.sqrt(dx * dx + dy * dy)
    foot.highest = Math.max(z0, z1)
    if (long < 1e-7) {
      foot.disc(x1, y1, Math.min(z0, z1))
      this.led = false
    } else {
      const ux = dx / long
      const uy = dy / long
      const m = (z1 - z0) / long
      const most = mostBehind(foot.p, m)
      let back = 0
      if (!this.open) foot.disc(x0, y0, z0)
      else if (this.led) {
        // Nearly straight on, the slab takes the wedge along.
        const aside = foot.p.radius * Math.abs(joint[JUX]! * uy - joint[JUY]! * ux)
        const small = foot.p.form === 'flat' ? SMALL_MM : this.block.cellMm
        if (aside < small && joint[JUX]! * ux + joint[JUY]! * uy > 0) back = joint[AHEAD]! - aside
        else {
          joint[JNX] = ux
          joint[JNY] = uy
          joint[BEHIND] = Math.max(most, 0)
          foot.wedge(joint)
        }
      }
      run[X0] = x0
      run[Y0] = y0
      run[Z0] = z0
      run[UX] = ux
      run[UY] = uy
      run[LONG] = long
      run[M] = m
      run[MOST] = most
      run[BACK] = back
      this.slab()
      joint[JUX] = ux
      joint[JUY] = uy
      joint[AHEAD] = Math.min(most, 0)
      this.led = true
    }
    this.open = true
    joint[JX] = x1
    joint[JY] = y1
    joint[JZ] = z1
  }

  // Cells over which the cutter is lowest within the move. They are gone through in rows or in columns, whichever are
  // the fewer: "outer" is the axis from one to the next, "inner" the one along it.
  private slab(): void {
    const { block, foot, run } = this
    const { p } = foot
    const { cellMm, minX, minY, nx } = block
    const R = p.radius
    const x0 = run[X0]!
    const y0 = run[Y0]!
    const ux = run[UX]!
    const uy = run[UY]!
    const long = run[LONG]!
    const m = run[M]!
    const most = run[MOST]!
    const back = run[BACK]!
    const s0 = Math.min(most, back, 0) - HAIR_MM
    const s1 = long + Math.max(most, 0) + HAIR_MM
    const wide = R * Math.abs(ux)
    const tall = R * Math.abs(uy)
    const j0 = Math.max(0, first(y0 + (uy > 0 ? uy * s0 : uy * s1) - wide, minY, cellMm))
    const j1 = Math.min(block.ny - 1, last(y0 + (uy > 0 ? uy * s1 : uy * s0) + wide, minY, cellMm))
    const i0 = Math.max(0, first(x0 + (ux > 0 ? ux * s0 : ux * s1) - tall, minX, cellMm))
    const i1 = Math.min(nx - 1, last(x0 + (ux > 0 ? ux * s1 : ux * s0) + tall, minX, cellMm))
    if (j0 > j1 || i0 > i1) return
    block.ensure(i0, j0, i1, j1)
    // Long rows lie one cell beside the next in memory: columns only where they are few.
    const columns = i1 - i0 < FEW && i1 - i0 < j1 - j0
    const uo = columns ? ux : uy
    const un = columns ? uy : ux
    const outerMin = columns ? minX - x0 : minY - y0
    const innerMin = columns ? minY - y0 : minX - x0
    const from = columns ? j0 : i0
    const to = columns ? j1 : i1
    const stride = columns ? nx : 1
    const step = columns ? 1 : nx
    // Bounds of the inner axis in cells: c0 + c1·outer. Along: s0 ≤ s ≤ s1; across: |w| ≤ R.
    const perCell = 1 / cellMm
    const zero = -innerMin * perCell - 0.5
    const runs = Math.abs(un) > TINY
    const rises = Math.abs(uo) > TINY
    const along = runs ? (-uo / un) * perCell : 0
    const across = rises ? (un / uo) * perCell : 0
    const alongLow = runs ? ((un > 0 ? s0 : s1) / un) * perCell + zero : Number.NEGATIVE_INFINITY
    const alongHigh = runs ? ((un > 0 ? s1 : s0) / un) * perCell + zero : Number.POSITIVE_INFINITY
    const acrossHalf = rises ? (R / Math.abs(uo)) * perCell : Number.POSITIVE_INFINITY
    const flat = p.form === 'flat' && m === 0
    const ball = p.form === 'ball'
    const cone = p.form === 'cone' && Math.abs(m) < p.slope
    run[DS] = un * cellMm
    run[DW] = -uo * cellMm
    const last1 = columns ? i1 : j1
    for (let o = columns ? i0 : j0; o <= last1; o++) {
      const out = outerMin + (o + 0.5) * cellMm
      const middle = zero + across * out
      const low = Math.max(alongLow + along * out, middle - acrossHalf)
      const high = Math.min(alongHigh + along * out, middle + acrossHalf)
      const start = Math.max(from, Math.ceil(low - 1e-7))
      const stop = Math.min(to, Math.floor(high + 1e-7))
      if (start > stop) continue
      const at = o * step
      if (flat) {
        const end = at + stop * stride
        flatRow(block, run, at + start * stride, end, stride)
        continue
      }
      const inn = innerMin + (start + 0.5) * cellMm
      run[S] = uo * out + un * inn
      run[W] = un * out - uo * inn
      const c = at + start * stride
      const n = stop - start + 1
      if (ball) ballRow(block, p, run, c, stride, n)
      else if (cone) coneRow(block, p, run, c, stride, n)
      else anyRow(block, foot, run, c, stride, n)
    }
  }
}

/** Columns fewer than this are gone through as such, cells. */
const FEW = 16
/** A flat cutter's wedge so slim is taken along with the slab: its corner lies no more than 1e-4 mm outside. */
const SMALL_MM = 0.02
