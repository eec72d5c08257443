import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import type { Block } from '../sweep/block.ts'
import { type Profile, profileOf, riseAt2 } from '../sweep/profile.ts'

/** A cutter is tried slimmer by so many cells: the middles of cells lie that far off the places it would go. */
const SLIMMER_CELLS = 0.75
/** Cells that were found within reach, after which the rest is taken to be: something large is wrong, not a corner. */
const ENOUGH = 4000

/**
 * What the cutters of a program can reach at all of what is wanted: a round one leaves an inside corner, a blunt tip
 * the floor of a sharp groove.
 *
 *   tip(q)   = max over |r − q| ≤ R of  wanted(r) − f(|r − q|)      lowest the tip may come at q
 *   least(p) = min over |q − p| ≤ R of  tip(q) + f(|q − p|)         lowest p can be brought
 *
 * the closing of the wanted heights by the profile f of the cutter, over middles of cells, asked only where too much
 * stands. Flat and round ends are tried a little slimmer, so that a groove as wide as its cutter counts as reached.
 *
 * Limits: a corner is let pass 0.15 mm less wide than the cutter leaves it; at the line of a V the whole height
 * its blunt tip leaves is let pass within a cell, though it falls to nothing half the tip's width off.
 * Check: closed forms of corners and blunt tips, a slow twin (test).
 */
export class Reach {
  private readonly block: Block
  private readonly prints: readonly Print[]
  private within = 0

  constructor(block: Block, cutters: Iterable<CutterShape>) {
    this.block = block
    this.prints = [...cutters]
      .filter(c => c.form !== 'keyhole')
      .map(c => new Print(block.cellMm, profileOf(c)))
  }

  /** Whether one of the cutters could bring a cell down to a height. */
  canReach(i: number, j: number, height: number): boolean {
    // Of a cutter that is not known nothing can be said in its favour.
    if (this.prints.length === 0 || this.within >= ENOUGH) return true
    const can = this.prints.some(print => this.bring(print, i, j, height))
    if (can) this.within++
    return can
  }

  private bring(print: Print, i: number, j: number, height: number): boolean {
    const { nx, ny } = this.block
    const { di, dj, rise } = print
    for (let n = 0; n < di.length; n++) {
      // From the middle outwards: the rest rise as much at least.
      const [a, b] = [i + di[n]!, j + dj[n]!]
      if (a < 0 || b < 0 || a >= nx || b >= ny) continue
      if (this.tip(print, a, b) + rise[n]! <= height) return true
    }
    return false
  }

  private tip(print: Print, i: number, j: number): number {
    const { block } = this
    const p = j * block.nx + i
    const known = print.tips.get(p)
    if (known !== undefined) return known
    const { di, dj, rise } = print
    let z = block.bedMm - block.bedDeepMm
    for (let n = 0; n < di.length; n++) {
      const [a, b] = [i + di[n]!, j + dj[n]!]
      if (a < 0 || b < 0 || a >= block.nx || b >= block.ny) continue
      block.ensure(a, b, a, b)
      // Not a number beside what is asked for: there anything may stand or go.
      const z1 = block.columns.wanted[block.columnAt(a, b)]! - rise[n]!
      if (z1 > z) z = z1
    }
    print.tips.set(p, z)
    return z
  }
}

/** Cells under a cutter, from the middle outwards, and how high its end stands over each. */
class Print {
  readonly di: Int16Array
  readonly dj: Int16Array
  readonly rise: Float32Array
  /** How low the tip may come, by cell. */
  readonly tips = new Map<number, number>()

  constructor(cellMm: number, profile: Profile) {
    const slimmer = profile.form === 'cone' ? 0 : SLIMMER_CELLS * cellMm
    const radius = Math.max(profile.radius - slimmer, 0)
    const reach = Math.floor(radius / cellMm)
    const cells: [number, number, number][] = []
    for (let j = -reach; j <= reach; j++)
      for (let i = -reach; i <= reach; i++) {
        const r = Math.hypot(i, j) * cellMm
        if (r > radius) continue
        const at = Math.min(profile.radius, r === 0 ? 0 : r + slimmer)
        cells.push([i, j, riseAt2(profile, at * at)])
      }
    cells.sort((a, b) => a[0] ** 2 + a[1] ** 2 - b[0] ** 2 - b[1] ** 2)
    this.di = Int16Array.from(cells, c => c[0])
    this.dj = Int16Array.from(cells, c => c[1])
    this.rise = Float32Array.from(cells, c => c[2])
  }
}
