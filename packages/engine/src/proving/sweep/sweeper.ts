import type { Block } from './block.ts'
import type { Hollows } from './hollow.ts'
import { behind, mostBehind, type Profile, riseAt2 } from './profile.ts'

/** Heights that differ by less are one: what a 32-bit number keeps of 300 mm. */
const SAME_MM = 4e-5
/** Edges are met by cells a hair beyond them, mm. */
const HAIR_MM = 1e-9

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
  private readonly hollows: Hollows
  private p: Profile = NOTHING
  private open = false
  /** Whether the last move of the chain had a direction: its end is not yet taken. */
  private led = false
  private x = 0
  private y = 0
  private z = 0
  private ux = 0
  private uy = 0
  private ahead = 0
  private highest = 0

  constructor(block: Block, hollows: Hollows) {
    this.block = block
    this.hollows = hollows
  }

  /** @param profile of the cutter from here on; a chain that is open is ended first */
  take(profile: Profile): void {
    this.end()
    this.p = profile
  }

  /** Ends a chain: takes what lies under the cutter where it stands. */
  end(): void {
    if (this.open && this.led) this.disc(this.x, this.y, this.z)
    this.open = false
    this.led = false
  }

  /** A straight move. It goes on from the one before unless {@link end} was called between. */
  line(x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void {
    const dx = x1 - x0
    const dy = y1 - y0
    const long = Math.sqrt(dx * dx + dy * dy)
    this.highest = Math.max(z0, z1)
    if (long < 1e-7) {
      this.disc(x1, y1, Math.min(z0, z1))
      this.led = false
    } else {
      const ux = dx / long
      const uy = dy / long
      const m = (z1 - z0) / long
      const most = mostBehind(this.p, m)
      if (!this.open) this.disc(x0, y0, z0)
      else if (this.led) this.wedge(ux, uy, Math.max(most, 0))
      this.slab(x0, y0, z0, ux, uy, long, m, most)
      this.ux = ux
      this.uy = uy
      this.ahead = Math.min(most, 0)
      this.led = true
    }
    this.open = true
    this.x = x1
    this.y = y1
    this.z = z1
  }

  /** What lies under the cutter at one place. */
  private disc(x: number, y: number, z: number): void {
    const { block, p } = this
    const { cellMm, minX, minY } = block
    const R = p.radius
    const [i0, i1] = [first(x - R, minX, cellMm), last(x + R, minX, cellMm)]
    const [j0, j1] = [first(y - R, minY, cellMm), last(y + R, minY, cellMm)]
    if (i1 < 0 || j1 < 0 || i0 >= block.nx || j0 >= block.ny) return
    block.ensure(i0, j0, i1, j1)
    const to = Math.min(j1, block.ny - 1)
    for (let j = Math.max(j0, 0); j <= to; j++) {
      const yv = block.yOf(j) - y
      const half2 = R * R - yv * yv
      if (half2 < -HAIR_MM) continue
      const half = Math.sqrt(Math.max(0, half2))
      this.row(j, x - half, x + half, x, yv, z)
    }
  }

  // Cells of a row whose axis stands over one place.
  private row(j: number, from: number, to: number, x: number, yv: number, z: number): void {
    const { block, p } = this
    const { cellMm, minX, top, nx } = block
    const start = Math.max(0, first(from, minX, cellMm))
    const stop = Math.min(nx - 1, last(to, minX, cellMm))
    for (let i = start; i <= stop; i++) {
      const xv = minX + (i + 0.5) * cellMm - x
      const r2 = xv * xv + yv * yv
      const h = z + riseAt2(p, r2)
      if (h < top[j * nx + i]! - SAME_MM) this.at(i, j, h, r2)
    }
  }

  private at(i: number, j: number, h: number, r2: number): void {
    const { p } = this
    if (p.form === 'keyhole' && r2 > p.neck * p.neck)
      this.hollows.take(this.block, i, j, h, this.highest + p.head)
    else this.block.cut(i, j, h)
  }

  // What is nearest to the joint of two moves: behind the next, before the last.
  private wedge(nx: number, ny: number, back: number): void {
    const { block, p, x, y, z, ux, uy, ahead } = this
    // Straight on: nothing lies between.
    if (ahead === 0 && back === 0 && Math.abs(ux * ny - uy * nx) < 1e-12 && ux * nx + uy * ny > 0) return
    const { cellMm, minX, minY } = block
    const R = p.radius
    const j0 = Math.max(0, first(y - R, minY, cellMm))
    const j1 = Math.min(block.ny - 1, last(y + R, minY, cellMm))
    let ready = false
    for (let j = j0; j <= j1; j++) {
      const yv = block.yOf(j) - y
      const half2 = R * R - yv * yv
      if (half2 < 0) continue
      let high = Math.sqrt(half2)
      let low = -high
      // u·p ≥ ahead
      const a = ahead - HAIR_MM - uy * yv
      if (ux > TINY) low = Math.max(low, a / ux)
      else if (ux < -TINY) high = Math.min(high, a / ux)
      else if (a > 0) continue
      // n·p ≤ back
      const b = back + HAIR_MM - ny * yv
      if (nx > TINY) high = Math.min(high, b / nx)
      else if (nx < -TINY) low = Math.max(low, b / nx)
      else if (b < 0) continue
      if (low > high) continue
      if (!ready) {
        block.ensure(first(x - R, minX, cellMm), j0, last(x + R, minX, cellMm), j1)
        ready = true
      }
      this.row(j, x + low, x + high, x, yv, z)
    }
  }

  // Cells over which the cutter is lowest within the move.
  private slab(
    x0: number,
    y0: number,
    z0: number,
    ux: number,
    uy: number,
    long: number,
    m: number,
    most: number
  ): void {
    const { block, p } = this
    const { cellMm, minX, minY, top, nx } = block
    const R = p.radius
    const s0 = Math.min(most, 0) - HAIR_MM
    const s1 = long + Math.max(most, 0) + HAIR_MM
    const wide = R * Math.abs(ux)
    const tall = R * Math.abs(uy)
    const [ya, yb] = uy > 0 ? [uy * s0, uy * s1] : [uy * s1, uy * s0]
    const [xa, xb] = ux > 0 ? [ux * s0, ux * s1] : [ux * s1, ux * s0]
    const j0 = Math.max(0, first(y0 + ya - wide, minY, cellMm))
    const j1 = Math.min(block.ny - 1, last(y0 + yb + wide, minY, cellMm))
    const i0 = Math.max(0, first(x0 + xa - tall, minX, cellMm))
    const i1 = Math.min(nx - 1, last(x0 + xb + tall, minX, cellMm))
    if (j0 > j1 || i0 > i1) return
    block.ensure(i0, j0, i1, j1)
    const level = m === 0
    const plain = level && p.form === 'flat'
    for (let j = j0; j <= j1; j++) {
      const yv = minY + (j + 0.5) * cellMm - y0
      let low = xa - tall
      let high = xb + tall
      // s0 ≤ ux·x + uy·y ≤ s1
      if (Math.abs(ux) > TINY) {
        const a = (s0 - uy * yv) / ux
        const b = (s1 - uy * yv) / ux
        low = Math.max(low, ux > 0 ? a : b)
        high = Math.min(high, ux > 0 ? b : a)
      } else if (uy * yv < s0 || uy * yv > s1) continue
      // |−uy·x + ux·y| ≤ R
      if (Math.abs(uy) > TINY) {
        const a = (ux * yv - R) / uy
        const b = (ux * yv + R) / uy
        low = Math.max(low, uy > 0 ? a : b)
        high = Math.min(high, uy > 0 ? b : a)
      } else if (Math.abs(yv) > R + HAIR_MM) continue
      if (low > high) continue
      const start = Math.max(0, first(x0 + low, minX, cellMm))
      const stop = Math.min(nx - 1, last(x0 + high, minX, cellMm))
      const at = j * nx
      if (plain) {
        const limit = z0 + SAME_MM
        for (let i = start; i <= stop; i++) if (top[at + i]! > limit) block.cut(i, j, z0)
        continue
      }
      for (let i = start; i <= stop; i++) {
        const xv = minX + (i + 0.5) * cellMm - x0
        const w = ux * yv - uy * xv
        const w2 = w * w
        if (level) {
          const h = z0 + riseAt2(p, w2)
          if (h < top[at + i]! - SAME_MM) this.at(i, j, h, w2)
          continue
        }
        if (z0 + (m < 0 ? m * long : 0) >= top[at + i]!) continue
        const s = ux * xv + uy * yv
        const u = Math.min(long, Math.max(0, s - behind(p, m, w2)))
        const v = s - u
        const r2 = v * v + w2
        if (r2 > R * R + HAIR_MM) continue
        const h = z0 + m * u + riseAt2(p, r2)
        if (h < top[at + i]! - SAME_MM) this.at(i, j, h, r2)
      }
    }
  }
}

const NOTHING: Profile = { form: 'flat', radius: 0, flat: 0, slope: 0, corner: 0, head: 0, neck: 0 }
const TINY = 1e-12

// The first cell whose middle is at or beyond a place, and the last at or before it.
function first(x: number, min: number, cell: number): number {
  return Math.ceil((x - min) / cell - 0.5 - 1e-7)
}

function last(x: number, min: number, cell: number): number {
  return Math.floor((x - min) / cell - 0.5 + 1e-7)
}
