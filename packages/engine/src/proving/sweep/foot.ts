import type { Block } from './block.ts'
import type { Hollows } from './hollow.ts'
import { type Profile, riseAt2 } from './profile.ts'

/** Heights that differ by less are one: what a 32-bit number keeps of 300 mm. */
export const SAME_MM = 4e-5
/** Edges are met by cells a hair beyond them, mm. */
export const HAIR_MM = 1e-9
export const TINY = 1e-12

/**
 * What a cutter takes off a block that stands at one place: the whole of it ({@link disc}), or what is nearest to the
 * joint of two moves ({@link wedge}). Heights and places in program coordinates, mm.
 *
 * Limits and checks: those of the sweep (sweeper.ts).
 */
export class Foot {
  p: Profile = NOTHING
  /** The highest that the move at hand comes: the head of a keyhole cutter takes up to its own height over that. */
  highest = 0
  private readonly block: Block
  private readonly hollows: Hollows

  constructor(block: Block, hollows: Hollows) {
    this.block = block
    this.hollows = hollows
  }

  /** What lies under the cutter at one place. */
  disc(x: number, y: number, z: number): void {
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
    const at = j * nx
    for (let i = start; i <= stop; i++) {
      const t = top[at + i]! - SAME_MM
      if (t <= z) continue
      const xv = minX + (i + 0.5) * cellMm - x
      const r2 = xv * xv + yv * yv
      if (r2 > reach2(p, t - z)) continue
      const h = z + riseAt2(p, r2)
      if (h < t) this.at(at + i, h, r2)
    }
  }

  /** A cell cut down to h, r2 the square of its distance from the axis. */
  at(c: number, h: number, r2: number): void {
    const { p } = this
    if (p.form !== 'keyhole') this.block.cut(c, h)
    else if (r2 > p.neck * p.neck) this.hollows.take(this.block, c, h, this.highest + p.head)
    else this.hollows.open(this.block, c, h)
  }

  /** What is nearest to the joint of two moves: behind the next, before the last. */
  wedge(joint: Float64Array): void {
    const { block, p } = this
    const x = joint[JX]!
    const y = joint[JY]!
    const z = joint[JZ]!
    const ux = joint[JUX]!
    const uy = joint[JUY]!
    const ahead = joint[AHEAD]!
    const nx = joint[JNX]!
    const ny = joint[JNY]!
    const back = joint[BEHIND]!
    const turn = ux * ny - uy * nx
    const on = ux * nx + uy * ny
    // Straight on: nothing lies between.
    if (ahead === 0 && back === 0 && Math.abs(turn) < 1e-12 && on > 0) return
    const { cellMm, minX, minY } = block
    const R = p.radius
    let [up, down] = [R, R]
    if (ahead === 0 && back === 0 && on > 0) {
      // Between the normals of the two moves, on the outer side of the turn.
      const side = turn > 0 ? -1 : 1
      const [a, b] = [side * ux, side * nx]
      if (a > 0 === b > 0) {
        if (a > 0) down = 0
        else up = 0
      }
    }
    const j0 = Math.max(0, first(y - down, minY, cellMm))
    const j1 = Math.min(block.ny - 1, last(y + up, minY, cellMm))
    const intoU = Math.abs(ux) > TINY ? 1 / ux : 0
    const intoN = Math.abs(nx) > TINY ? 1 / nx : 0
    let ready = false
    for (let j = j0; j <= j1; j++) {
      const yv = minY + (j + 0.5) * cellMm - y
      let high = R
      let low = -R
      // u·p ≥ ahead
      const a = ahead - HAIR_MM - uy * yv
      if (intoU > 0) low = Math.max(low, a * intoU)
      else if (intoU < 0) high = Math.min(high, a * intoU)
      else if (a > 0) continue
      // n·p ≤ back
      const b = back + HAIR_MM - ny * yv
      if (intoN > 0) high = Math.min(high, b * intoN)
      else if (intoN < 0) low = Math.max(low, b * intoN)
      else if (b < 0) continue
      if (low > high || first(x + low, minX, cellMm) > last(x + high, minX, cellMm)) continue
      const half2 = R * R - yv * yv
      if (half2 < 0) continue
      const half = Math.sqrt(half2)
      if (!ready) {
        block.ensure(first(x - R, minX, cellMm), j0, last(x + R, minX, cellMm), j1)
        ready = true
      }
      this.row(j, x + Math.max(low, -half), x + Math.min(high, half), x, yv, z)
    }
  }
}

/** Squared distance from the axis within which the cutter is less than d above its tip, mm²; at least so much. */
function reach2(p: Profile, d: number): number {
  switch (p.form) {
    case 'ball':
      return d >= p.radius ? p.radius * p.radius : d * (2 * p.radius - d)
    case 'cone': {
      const r = Math.min(p.radius, p.flat + d / p.slope) + HAIR_MM
      return r * r
    }
    default:
      return (p.radius + HAIR_MM) * (p.radius + HAIR_MM)
  }
}

const NOTHING: Profile = { form: 'flat', radius: 0, flat: 0, slope: 0, corner: 0, head: 0, neck: 0 }
// Places in the figures of a joint: where it is, the direction of the last move and how far before its end it reaches,
// the direction of the next and how far behind its start that does.
export const JX = 0
export const JY = 1
export const JZ = 2
export const JUX = 3
export const JUY = 4
export const AHEAD = 5
export const JNX = 6
export const JNY = 7
export const BEHIND = 8

/** The first cell whose middle is at or beyond a place. */
export function first(x: number, min: number, cell: number): number {
  return Math.ceil((x - min) / cell - 0.5 - 1e-7)
}

/** The last cell whose middle is at or before a place. */
export function last(x: number, min: number, cell: number): number {
  return Math.floor((x - min) / cell - 0.5 + 1e-7)
}
