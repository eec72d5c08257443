import type { Region } from '../../shape/region.ts'
import { kindsOver } from '../../stack/core-grid.ts'
import type { Grid } from '../../stack/grid-rows.ts'
import { Asker, TOUCH_MM } from './asker.ts'
import type { BlockAsk } from './block-ask.ts'
import { Columns } from './column.ts'
import { gridOver, lowestFace, materialHeights } from './extent.ts'
import { type Frame, zInProgram } from './frame.ts'
import type { Watch } from './guard.ts'
import { Tally } from './tally.ts'

/** Cells of a tile along one side, as a power of two: 51.2 mm at 0.2 mm. */
const TILE = 8
/** Step in which heights that vary over the plan are told apart, mm. */
export const BLOCK_STEP_MM = 0.02

/**
 * What lies on the machine, as columns over a grid in program coordinates. Only tiles that moves touch are filled in.
 *
 * A column is the exact core of the stack at one cell of its kind (core-grid.ts); cut from above, what is left of it is
 * what lies below one height, kept as a 32-bit number. Under-cut hollows are kept beside it (hollow.ts).
 *
 * Memory: 6 bytes a cell touched (a table of 1800 × 900 mm at 0.2 mm: 245 MB), and the kinds.
 * Limits: heights of slanted sides and uneven tops in steps of {@link BLOCK_STEP_MM}; a cell is as its middle is.
 * Check: cores asked at cells by themselves, on seeded pieces (test).
 */
export class Block {
  readonly nx: number
  readonly ny: number
  readonly cellMm: number
  /** Corner of cell (0, 0). */
  readonly minX: number
  readonly minY: number
  readonly frame: Frame
  readonly bedMm: number
  readonly bedDeepMm: number
  /** Nothing stands higher. */
  readonly highMm: number
  /** Top of what is left, by cell; meaningful in tiles that are filled in. */
  readonly top: Float32Array
  readonly columns: Columns
  readonly watches: readonly Watch[]
  readonly tallies: readonly Tally[]
  /** Of the move at hand: volume taken, mm³/cell², most taken at a place and where, [volume, deepest, cell]. */
  readonly taken = new Float64Array(3)
  /** Line of the move at hand, and its number. */
  line = 0
  move = 0
  /** Every so many cells along and across, the move that cut the place through is kept; −1 for none. */
  readonly sampleEvery: number
  readonly sampleNx: number
  readonly cutThrough: Int32Array

  private readonly kind: Uint16Array
  private readonly tilesX: number
  private readonly tilesY: number
  private readonly base: Int32Array
  private readonly tileHigh: Float32Array
  private readonly ask: BlockAsk
  private readonly asker: Asker
  private readonly heights: readonly [number, number]
  private readonly opened: readonly Region[]
  private lastTiles = -1

  constructor(ask: BlockAsk) {
    const { stack, frame, cellMm } = ask
    this.ask = ask
    this.frame = frame
    this.cellMm = cellMm
    this.bedMm = ask.bedMm ?? lowestFace(stack, frame, ask.events)
    this.asker = new Asker(ask, this.bedMm)
    this.columns = new Columns(this.bedMm, ask.bedDeepMm)
    this.bedDeepMm = ask.bedDeepMm
    const reach = materialHeights(stack, this.asker.before)
    this.heights = reach
    this.highMm = Math.max(
      zInProgram(frame, reach[0]),
      zInProgram(frame, reach[1]),
      this.bedMm,
      ...ask.guards.map(g => g.toMm)
    )
    this.opened = [stack.geometry.mould, ...ask.guards.map(g => g.region)]
    const { nx, ny, minX, minY } = gridOver(this.opened, frame, cellMm)
    this.nx = nx
    this.ny = ny
    this.minX = minX
    this.minY = minY
    this.top = new Float32Array(nx * ny)
    this.kind = new Uint16Array(nx * ny)
    this.tilesX = (this.nx >> TILE) + 1
    this.tilesY = (this.ny >> TILE) + 1
    this.base = new Int32Array(this.tilesX * this.tilesY).fill(-1)
    this.tileHigh = new Float32Array(this.tilesX * this.tilesY)
    this.sampleEvery = Math.max(1, Math.floor(0.6 / cellMm + 1e-9))
    this.sampleNx = Math.ceil(this.nx / this.sampleEvery)
    this.cutThrough = new Int32Array(this.sampleNx * Math.ceil(this.ny / this.sampleEvery)).fill(-1)
    this.watches = this.asker.watches
    this.tallies = this.watches.map(() => new Tally())
  }

  /** Fills in the tiles under a box of cells; what lies beside the block is let go. */
  ensure(i0: number, j0: number, i1: number, j1: number): void {
    const a = Math.max(0, i0) >> TILE
    const b = Math.max(0, j0) >> TILE
    const c = Math.min(this.nx - 1, i1) >> TILE
    const d = Math.min(this.ny - 1, j1) >> TILE
    // Tiles that were filled in for the move before, one alone: most moves.
    if (a === c && b === d && b * this.tilesX + a === this.lastTiles) return
    for (let tj = b; tj <= d; tj++)
      for (let ti = a; ti <= c; ti++) if (this.base[tj * this.tilesX + ti]! < 0) this.fill(ti, tj)
    if (a === c && b === d) this.lastTiles = b * this.tilesX + a
  }

  /** Calls back with every tile that is filled in: first cell of it, one past its last. */
  forTiles(each: (i0: number, j0: number, i1: number, j1: number) => void): void {
    for (let tj = 0; tj < this.tilesY; tj++)
      for (let ti = 0; ti < this.tilesX; ti++)
        if (this.base[tj * this.tilesX + ti]! >= 0)
          each(
            ti << TILE,
            tj << TILE,
            Math.min(this.nx, (ti + 1) << TILE),
            Math.min(this.ny, (tj + 1) << TILE)
          )
  }

  /** Which of `columns` a cell belongs to. Its tile is filled in. */
  columnAt(i: number, j: number): number {
    return this.base[(j >> TILE) * this.tilesX + (i >> TILE)]! + this.kind[j * this.nx + i]!
  }

  /** What stood at the highest in the tiles under a box of cells, before anything was cut. */
  highestIn(i0: number, j0: number, i1: number, j1: number): number {
    let most = Number.NEGATIVE_INFINITY
    const c = Math.min(this.nx - 1, i1) >> TILE
    const d = Math.min(this.ny - 1, j1) >> TILE
    for (let tj = Math.max(0, j0) >> TILE; tj <= d; tj++)
      for (let ti = Math.max(0, i0) >> TILE; ti <= c; ti++)
        most = Math.max(most, this.tileHigh[tj * this.tilesX + ti]!)
    return most
  }

  /** The thing in the way that stands at the top of a cell, as its watch; -1 where the piece or nothing does. */
  standing(i: number, j: number): number {
    return this.asker.stands(this.columns, this.columnAt(i, j), this.top[j * this.nx + i]!)
  }

  /** Middle of a cell, program coordinates. */
  xOf(i: number): number {
    return this.minX + (i + 0.5) * this.cellMm
  }

  yOf(j: number): number {
    return this.minY + (j + 0.5) * this.cellMm
  }

  /** Takes what stands above h off a cell. Called only where something does. */
  cut(p: number, h: number): void {
    const { taken, top } = this
    const t = top[p]!
    // Most cuts stay above all that must be looked at anywhere.
    if (h < this.columns.alertMost) {
      this.looked(p, t, h)
      return
    }
    this.deep(p, t - h)
    taken[0] = taken[0]! + t - h
    top[p] = h
  }

  private deep(p: number, d: number): void {
    const { taken } = this
    if (d > taken[1]!) {
      taken[1] = d
      taken[2] = p
    }
  }

  // The same where it may matter which column it is.
  private looked(p: number, t: number, h: number): void {
    const i = p % this.nx
    const j = (p - i) / this.nx
    const k = this.columnAt(i, j)
    if (h < this.columns.alert[k]!) this.top[p] = this.met(i, j, k, t, h)
    else {
      this.deep(p, t - h)
      this.taken[0] = this.taken[0]! + t - h
      this.top[p] = h
    }
  }

  // The same where more is to be seen to than a height: answers where the column ends now.
  private met(i: number, j: number, k: number, t: number, h: number): number {
    const { columns, asker } = this
    this.taken[0] = this.taken[0]! + columns.solidBetween(k, h, t)
    // What is met of a thing in the way is said of that thing: of the cut counts what is the piece.
    const own = asker.stands(columns, k, t) === -1 ? t : Math.min(t, columns.pieceTop(k))
    this.deep(j * this.nx + i, own - h)
    for (const w of columns.watchedAt(k))
      if (
        Math.min(t, w.to) - Math.max(h, w.from) > TOUCH_MM &&
        !(asker.keeps(w.watch) && this.atEdge(i, j, k, h))
      )
        this.meets(w.watch, w.to - h, i, j, h)
    if (h < this.bedMm - this.bedDeepMm - TOUCH_MM) this.meets(asker.bedWatch, this.bedMm - h, i, j, h)
    const through = columns.through[k]!
    if (h < through && t > through && i % this.sampleEvery === 0 && j % this.sampleEvery === 0) {
      const s = (j / this.sampleEvery) * this.sampleNx + i / this.sampleEvery
      if (this.cutThrough[s] === -1) this.cutThrough[s] = this.move
    }
    return columns.endAt(k, h)
  }

  // Whether a cell lies beside one that may be cut so deep: an edge of what is wanted lies within a cell.
  private atEdge(i: number, j: number, k: number, h: number): boolean {
    if (Number.isNaN(this.columns.wanted[k]!)) return false
    const low = Math.max(h, this.bedMm) + TOUCH_MM
    for (let b = Math.max(0, j - 1); b <= Math.min(this.ny - 1, j + 1); b++)
      for (let a = Math.max(0, i - 1); a <= Math.min(this.nx - 1, i + 1); a++) {
        this.ensure(a, b, a, b)
        // Not a number where nothing is asked.
        if (!(this.columns.wanted[this.columnAt(a, b)]! > low)) return true
      }
    return false
  }

  private meets(watch: number, value: number, i: number, j: number, z: number): void {
    this.tallies[watch]!.add(this.line, value, this.xOf(i), this.yOf(j), z)
  }

  private fill(ti: number, tj: number): void {
    const { frame, cellMm, nx, columns } = this
    const [i0, j0] = [ti << TILE, tj << TILE]
    const [wide, high] = [Math.min(1 << TILE, nx - i0), Math.min(1 << TILE, this.ny - j0)]
    const base = columns.count
    this.base[tj * this.tilesX + ti] = base
    const { x0, y0, sx, sy } = frame
    const xa = this.minX + (sx > 0 ? i0 : i0 + wide) * cellMm
    const ya = this.minY + (sy > 0 ? j0 : j0 + high) * cellMm
    const grid: Grid = { nx: wide, ny: high, pixelMm: cellMm, x0: x0 + sx * xa, y0: y0 + sy * ya }
    // Where there is nothing but the bed.
    columns.add([], Number.NaN, [], Number.NEGATIVE_INFINITY)
    if (wide > 0 && high > 0) {
      const ask = { within: this.opened, dividers: this.asker.dividers, stepMm: BLOCK_STEP_MM }
      const { geometry } = this.ask.stack
      const kinds = kindsOver(geometry, this.asker.all, grid, this.heights, ask, (x, y) =>
        this.asker.addTo(columns, x, y)
      )
      for (let j = 0; j < high; j++) {
        const row = (sy > 0 ? j : high - 1 - j) * wide
        const to = (j0 + j) * nx + i0
        for (let i = 0; i < wide; i++) {
          const kind = kinds.at[row + (sx > 0 ? i : wide - 1 - i)]! + 1
          this.kind[to + i] = kind
          this.top[to + i] = columns.top[base + kind]!
        }
      }
    }
    let most = Number.NEGATIVE_INFINITY
    for (let k = base; k < columns.count; k++) most = Math.max(most, columns.top[k]!)
    this.tileHigh[tj * this.tilesX + ti] = most
  }
}
