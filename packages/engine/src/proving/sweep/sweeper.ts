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
  /** Where the next move starts and ends: x, y, z, x, y, z. */
  readonly ends = new Float64Array(6)
  // Figures of the move at hand. An array: figures handed from function to function would be boxed, each of them.
  private readonly run = new Float64Array(13)

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
    const { run } = this
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
      let back = 0
      if (!this.open) this.disc(x0, y0, z0)
      else if (this.led) {
        // Nearly straight on, the slab takes the wedge along.
        const aside = this.p.radius * Math.abs(this.ux * uy - this.uy * ux)
        const small = this.p.form === 'flat' ? SMALL_MM : this.block.cellMm
        if (aside < small && this.ux * ux + this.uy * uy > 0) back = this.ahead - aside
        else this.wedge(ux, uy, Math.max(most, 0))
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

  private at(c: number, h: number, r2: number): void {
    const { p } = this
    if (p.form !== 'keyhole') this.block.cut(c, h)
    else if (r2 > p.neck * p.neck) this.hollows.take(this.block, c, h, this.highest + p.head)
    else this.hollows.open(this.block, c, h)
  }

  // What is nearest to the joint of two moves: behind the next, before the last.
  private wedge(nx: number, ny: number, back: number): void {
    const { block, p, x, y, z, ux, uy, ahead } = this
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

  // Cells over which the cutter is lowest within the move. They are gone through in rows or in columns, whichever are
  // the fewer: "outer" is the axis from one to the next, "inner" the one along it.
  private slab(): void {
    const { block, p, run } = this
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
        this.flat(at + start * stride, end, stride)
        continue
      }
      const inn = innerMin + (start + 0.5) * cellMm
      run[S] = uo * out + un * inn
      run[W] = un * out - uo * inn
      const c = at + start * stride
      const n = stop - start + 1
      if (ball) this.ball(c, stride, n)
      else if (cone) this.cone(c, stride, n)
      else this.any(c, stride, n)
    }
  }

  // Cells from c to end brought down to z.
  private flat(c: number, end: number, stride: number): void {
    const { block } = this
    const z = this.run[Z0]!
    const { top, taken } = block
    const limit = z + SAME_MM
    if (z < block.columns.alertMost) {
      for (; c <= end; c += stride) if (top[c]! > limit) block.cut(c, z)
      return
    }
    let sum = 0
    let most = 0
    for (; c <= end; c += stride) {
      const t = top[c]!
      if (t <= limit) continue
      sum += t - z
      if (t - z > most) {
        most = t - z
        if (most > taken[1]!) taken[2] = c
      }
      top[c] = z
    }
    taken[0] = taken[0]! + sum
    if (most > taken[1]!) taken[1] = most
  }

  // h = z0 + m·s + R − √(R² − w²)·√(1 + m²) where that lies within the move. n cells from c on.
  private ball(c: number, stride: number, n: number): void {
    const { run } = this
    let s = run[S]!
    let w = run[W]!
    const ds = run[DS]!
    const dw = run[DW]!
    const z0 = run[Z0]!
    const m = run[M]!
    const long = run[LONG]!
    const { block } = this
    const { top, taken } = block
    const { alertMost } = block.columns
    let sum = 0
    let deepest = taken[1]!
    const R = this.p.radius
    const R2 = R * R
    const lowest = m < 0 ? z0 + m * long : z0
    const e = Math.sqrt(1 + m * m)
    const b = m / e
    const base = z0 + R
    for (; n > 0; n--, c += stride, s += ds, w += dw) {
      const t = top[c]! - SAME_MM
      const d = t - lowest
      if (d <= 0) continue
      const rho2 = R2 - w * w
      if (rho2 < 0 || (d < R && rho2 <= (R - d) * (R - d))) continue
      const rho = Math.sqrt(rho2)
      const u = s - rho * b
      // Lowest beyond the end: the next has it, or the joint.
      if (u > long + HAIR_MM) continue
      let h = base + m * s - rho * e
      if (u < 0) {
        const left2 = rho2 - s * s
        if (left2 < 0) continue
        h = base - Math.sqrt(left2)
      }
      if (h >= t) continue
      if (h < alertMost) {
        block.cut(c, h)
        deepest = taken[1]!
        continue
      }
      const off = t - h
      sum += off
      if (off > deepest) {
        deepest = off
        taken[1] = off
        taken[2] = c
      }
      top[c] = h
    }
    taken[0] = taken[0]! + sum
  }

  // h = z0 + m·s + |w|·√(k² − m²) − k·tip/2 where that lies within the move and beside the blunt tip.
  private cone(c: number, stride: number, n: number): void {
    const { run } = this
    let s = run[S]!
    let w = run[W]!
    const ds = run[DS]!
    const dw = run[DW]!
    const z0 = run[Z0]!
    const m = run[M]!
    const long = run[LONG]!
    const { block, p } = this
    const { top, taken } = block
    const { alertMost } = block.columns
    let sum = 0
    let deepest = taken[1]!
    const { slope, flat } = p
    const R2 = p.radius * p.radius
    const lowest = m < 0 ? z0 + m * long : z0
    const b = m / Math.sqrt(slope * slope - m * m)
    const perSlope = 1 / slope
    for (; n > 0; n--, c += stride, s += ds, w += dw) {
      const t = top[c]! - SAME_MM
      const beside = Math.abs(w)
      if (beside >= flat + (t - lowest) * perSlope || t <= lowest) continue
      let v = beside * b
      if (beside <= flat || beside * beside + v * v > R2) v = behind(p, m, w * w)
      let u = s - v
      if (u > long + HAIR_MM) continue
      if (u < 0) {
        u = 0
        v = s
      }
      const r2 = beside * beside + v * v
      if (r2 > R2 + HAIR_MM) continue
      const over = Math.sqrt(r2) - flat
      const h = z0 + m * u + (over > 0 ? over * slope : 0)
      if (h >= t) continue
      if (h < alertMost) {
        block.cut(c, h)
        deepest = taken[1]!
        continue
      }
      const d = t - h
      sum += d
      if (d > deepest) {
        deepest = d
        taken[1] = d
        taken[2] = c
      }
      top[c] = h
    }
    taken[0] = taken[0]! + sum
  }

  private any(c: number, stride: number, n: number): void {
    const { run } = this
    let s = run[S]!
    let w = run[W]!
    const ds = run[DS]!
    const dw = run[DW]!
    const z0 = run[Z0]!
    const m = run[M]!
    const long = run[LONG]!
    const { block, p } = this
    const { top } = block
    const lowest = m < 0 ? z0 + m * long : z0
    const R2 = p.radius * p.radius
    for (; n > 0; n--, c += stride, s += ds, w += dw) {
      const t = top[c]! - SAME_MM
      if (t <= lowest) continue
      const w2 = w * w
      if (w2 > R2 + HAIR_MM) continue
      const u = Math.max(0, s - behind(p, m, w2))
      if (u > long + HAIR_MM) continue
      const v = s - u
      const r2 = v * v + w2
      if (r2 > R2 + HAIR_MM) continue
      const h = z0 + m * u + riseAt2(p, Math.min(R2, r2))
      if (h < t) this.at(c, h, r2)
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
// Places in the figures of a move: where it starts, its direction, length and slope, how far beyond its ends it reaches;
// of a row of cells: place along and beside it at the first, and what they grow by.
const X0 = 0
const Y0 = 1
const Z0 = 2
const UX = 3
const UY = 4
const LONG = 5
const M = 6
const MOST = 7
const BACK = 8
const S = 9
const W = 10
const DS = 11
const DW = 12
const TINY = 1e-12
/** Columns fewer than this are gone through as such, cells. */
const FEW = 16
/** A flat cutter's wedge so slim is taken along with the slab: its corner lies no more than 1e-4 mm outside. */
const SMALL_MM = 0.02

// The first cell whose middle is at or beyond a place, and the last at or before it.
function first(x: number, min: number, cell: number): number {
  return Math.ceil((x - min) / cell - 0.5 - 1e-7)
}

function last(x: number, min: number, cell: number): number {
  return Math.floor((x - min) / cell - 0.5 + 1e-7)
}
