import type { Block } from '../sweep/block.ts'
import type { Reach } from './reach.ts'
import { SmallMap } from './small-map.ts'

/** What differs one way: where most, over which area, and a picture of it. */
export interface Difference {
  /** mm; 0 where nothing differs. */
  readonly mostMm: number
  readonly x: number
  readonly y: number
  readonly areaMm2: number
  readonly volumeMm3: number
  readonly map: SmallMap
}

/** What a program leaves against what is wanted. */
export interface Comparison {
  readonly left: Difference
  readonly cutAway: Difference
  /** What stands too high because no cutter of the program reaches it: inside corners, the floor of a sharp groove. */
  readonly unreached: Difference
  /**
   * Heights and places that are told apart, mm: an error of more is seen, a smaller one may not be. Up: where that is
   * seen best of all that was to be cut; the floor, else the mildest slope.
   */
  readonly detectsUpMm: number
  readonly detectsAcrossMm: number
}

/** Wanted heights that change by more than this over their distance are an edge. */
const EDGE_SLOPE = 3
/** A path keeps within this of the line it was made for, mm. */
const PATH_MM = 0.03

/**
 * Holds what stands after a program against what is wanted, cell by cell, in the tiles that are filled in, wherever something is wanted.
 *
 *   error let pass on a floor or slope of m over 1:   tolerance + step of the block + 0.03·m
 *
 * An edge (steeper than {@link EDGE_SLOPE}) lies within a cell, so that a cell on one side of it may stand as one on the
 * other is wanted: beside one a cell counts only when it is higher, or lower, than all its eight neighbours are wanted,
 * by more than the tolerance. Told apart are therefore edges that lie two cells off. What stands too high counts as
 * left only where a cutter of the program could have gone ({@link Reach}).
 * Check: programs moved by 1.5 times that are seen, sound ones raise nothing (test).
 */
export function* compare(
  block: Block,
  reach: Reach,
  tolMm: number,
  stepMm: number
): Generator<number, Comparison> {
  const { nx, ny, top, bedMm, cellMm, columns } = block
  const left = new Found(block)
  const cutAway = new Found(block)
  const unreached = new Found(block)
  const levelMm = tolMm + stepMm
  const edge = EDGE_SLOPE * cellMm
  let best = Number.POSITIVE_INFINITY
  const around: [di: number, dj: number, edge: number][] = []
  for (let b = -1; b <= 1; b++)
    for (let a = -1; a <= 1; a++) if (a !== 0 || b !== 0) around.push([a, b, edge * Math.hypot(a, b)])
  // Of the neighbours: whether the place lies beside an edge, and how steep it is; how far it is off all of them.
  let steep = false
  let slope = 0
  let near = 0
  const look = (i: number, j: number, own: number, wanted: number) => {
    steep = false
    slope = 0
    near = own - wanted
    for (const [di, dj, most] of around) {
      const [a, b] = [i + di, j + dj]
      if (a < 0 || b < 0 || a >= nx || b >= ny) continue
      block.ensure(a, b, a, b)
      const w = Math.max(columns.wanted[block.columnAt(a, b)]!, bedMm)
      // Beside what is asked for, anything may stand.
      if (Number.isNaN(w)) {
        steep = true
        near = 0
        return
      }
      const jump = Math.abs(w - wanted)
      if (jump > most) steep = true
      else if (di === 0 || dj === 0) slope = Math.max(slope, jump / cellMm)
      const d = own - w
      if (d * near <= 0) near = 0
      else if (Math.abs(d) < Math.abs(near)) near = d
    }
  }
  const tiles: (readonly [number, number, number, number])[] = []
  block.forTiles((...tile) => tiles.push(tile))
  for (const [n, [i0, j0, i1, j1]] of tiles.entries()) {
    yield n / tiles.length
    for (let j = j0; j < j1; j++)
      for (let i = i0; i < i1; i++) {
        const k = block.columnAt(i, j)
        const wanted = Math.max(columns.wanted[k]!, bedMm)
        const own = Math.max(top[j * nx + i]!, bedMm)
        const over = own - wanted
        const off = Math.abs(over) > levelMm
        // Not a number where nothing is asked; where nothing was to be cut it says nothing of what is told apart.
        if (!(off || columns.top[k]! - wanted > levelMm)) continue
        if (!off && best === levelMm) continue
        look(i, j, own, wanted)
        const allowed = steep ? levelMm : levelMm + PATH_MM * slope
        if (!steep && allowed < best && columns.top[k]! - wanted > allowed) best = allowed
        const by = steep ? near : over
        if (Math.abs(by) <= allowed) continue
        if (by < 0) cutAway.add(i, j, -by)
        else (reach.canReach(i, j, own - allowed) ? left : unreached).add(i, j, by)
      }
  }
  return {
    left: left.done(),
    cutAway: cutAway.done(),
    unreached: unreached.done(),
    detectsUpMm: Number.isFinite(best) ? best : levelMm,
    detectsAcrossMm: 2 * cellMm
  }
}

class Found {
  private readonly block: Block
  private readonly map: SmallMap
  private most = 0
  private x = Number.NaN
  private y = Number.NaN
  private cells = 0
  private sum = 0

  constructor(block: Block) {
    this.block = block
    this.map = new SmallMap(block.nx, block.ny)
  }

  add(i: number, j: number, mm: number): void {
    this.cells++
    this.sum += mm
    this.map.add(i, j, mm)
    if (mm <= this.most) return
    this.most = mm
    this.x = this.block.xOf(i)
    this.y = this.block.yOf(j)
  }

  done(): Difference {
    const cell2 = this.block.cellMm ** 2
    return {
      mostMm: this.most,
      x: this.x,
      y: this.y,
      areaMm2: this.cells * cell2,
      volumeMm3: this.sum * cell2,
      map: this.map
    }
  }
}
