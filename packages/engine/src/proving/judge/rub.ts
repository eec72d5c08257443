import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import type { Block } from '../sweep/block.ts'
import { Tally } from '../sweep/tally.ts'

/** Way between two looks at what stands round the cutter, mm. */
const EVERY_MM = 0.5
/** Material that stands higher by less is let pass, mm. */
const TOUCH_MM = 0.05

type Part = 'shank rubs' | 'holder rubs'

/** What a part of the cutter above its edges touched: a thing in the way as its watch, or the piece, -1. */
export interface Rubbed {
  readonly part: Part
  readonly on: number
  readonly tally: Tally
}

/**
 * Whether shank or holder touch what stands beside the cutter: looked at every {@link EVERY_MM} along a move, at cells
 * between the radius of the cutter and that of the shank above its edges, and that of the holder above its reach.
 *
 * Limits: between two looks a wall is missed by less than the sagitta of the look's step, 0.02 mm of a holder of 3 mm.
 */
export class Rub {
  private readonly block: Block
  readonly met: Rubbed[] = []

  constructor(block: Block) {
    this.block = block
  }

  along(c: CutterShape, x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void {
    const inner = c.diameterMm / 2
    if (c.shankMm / 2 > inner)
      this.part('shank rubs', c.shankMm / 2, c.fluteMm, inner, x0, y0, z0, x1, y1, z1)
    if (c.holderMm / 2 > inner)
      this.part('holder rubs', c.holderMm / 2, c.reachMm, inner, x0, y0, z0, x1, y1, z1)
  }

  private part(
    part: Part,
    radius: number,
    above: number,
    inner: number,
    x0: number,
    y0: number,
    z0: number,
    x1: number,
    y1: number,
    z1: number
  ): void {
    const low = Math.min(z0, z1) + above + TOUCH_MM
    if (low >= this.block.highMm || low >= this.highest(x0, y0, x1, y1, radius)) return
    const n = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / EVERY_MM))
    for (let k = 1; k <= n; k++) {
      const t = k / n
      this.look(part, x0 + t * (x1 - x0), y0 + t * (y1 - y0), z0 + t * (z1 - z0), above, inner, radius)
    }
  }

  // What can stand under the box about a move, at most.
  private highest(x0: number, y0: number, x1: number, y1: number, r: number): number {
    const { block } = this
    const i0 = Math.floor((Math.min(x0, x1) - r - block.minX) / block.cellMm)
    const i1 = Math.ceil((Math.max(x0, x1) + r - block.minX) / block.cellMm)
    const j0 = Math.floor((Math.min(y0, y1) - r - block.minY) / block.cellMm)
    const j1 = Math.ceil((Math.max(y0, y1) + r - block.minY) / block.cellMm)
    if (i1 < 0 || j1 < 0 || i0 >= block.nx || j0 >= block.ny) return Number.NEGATIVE_INFINITY
    block.ensure(i0, j0, i1, j1)
    return block.highestIn(i0, j0, i1, j1)
  }

  private look(part: Part, x: number, y: number, z: number, above: number, inner: number, r: number): void {
    const { block } = this
    const { cellMm, minX, minY, nx, ny, top } = block
    const limit = z + above + TOUCH_MM
    const j1 = Math.min(ny - 1, Math.floor((y + r - minY) / cellMm - 0.5))
    for (let j = Math.max(0, Math.ceil((y - r - minY) / cellMm - 0.5)); j <= j1; j++) {
      const yv = block.yOf(j) - y
      const half = Math.sqrt(Math.max(0, r * r - yv * yv))
      const i1 = Math.min(nx - 1, Math.floor((x + half - minX) / cellMm - 0.5))
      for (let i = Math.max(0, Math.ceil((x - half - minX) / cellMm - 0.5)); i <= i1; i++) {
        if (top[j * nx + i]! <= limit) continue
        const xv = block.xOf(i) - x
        // Cells within the cutter are cut later; a hair beside it they may be rounding.
        if (xv * xv + yv * yv <= (inner + cellMm) * (inner + cellMm)) continue
        this.tally(part, block.standing(i, j)).add(
          block.line,
          top[j * nx + i]! - z,
          block.xOf(i),
          block.yOf(j),
          z
        )
      }
    }
  }

  private tally(part: Part, on: number): Tally {
    const known = this.met.find(m => m.part === part && m.on === on)
    if (known !== undefined) return known.tally
    const tally = new Tally()
    this.met.push({ part, on, tally })
    return tally
  }
}
