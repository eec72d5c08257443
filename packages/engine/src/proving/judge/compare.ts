import type { Block } from '../sweep/block.ts'
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
  /** Heights and places that are told apart, mm: an error of more is seen, a smaller one may not be. */
  readonly detectsUpMm: number
  readonly detectsAcrossMm: number
}

/**
 * Holds what stands after a program against what is wanted, cell by cell, in the tiles that are filled in, wherever something is wanted.
 *
 * An edge lies within a cell, so that a cell on one side of it may stand as one on the other is wanted: a cell counts
 * only when it is higher, or lower, than all its eight neighbours are wanted, by more than `tolMm`. Told apart are
 * therefore heights of `tolMm` and the step of the block, and edges that lie two cells off.
 * Check: programs moved by 1.5 times that are seen, sound ones raise nothing (test).
 */
export function* compare(block: Block, tolMm: number, stepMm: number): Generator<number, Comparison> {
  const { nx, top, bedMm, cellMm } = block
  const left = new Found(block)
  const cutAway = new Found(block)
  const tiles: (readonly [number, number, number, number])[] = []
  block.forTiles((...tile) => tiles.push(tile))
  for (const [n, [i0, j0, i1, j1]] of tiles.entries()) {
    yield n / tiles.length
    for (let j = j0; j < j1; j++)
      for (let i = i0; i < i1; i++) {
        const wanted = block.columns.wanted[block.columnAt(i, j)]!
        const over = Math.max(top[j * nx + i]!, bedMm) - Math.max(wanted, bedMm)
        // Not a number where nothing is asked.
        if (!(Math.abs(over) > tolMm)) continue
        const near = nearest(block, i, j, over)
        if (Math.abs(near) <= tolMm) continue
        if (near > 0) left.add(i, j, near)
        else cutAway.add(i, j, -near)
      }
  }
  return {
    left: left.done(),
    cutAway: cutAway.done(),
    detectsUpMm: tolMm + stepMm,
    detectsAcrossMm: 2 * cellMm
  }
}

// The least by which a cell is over (or under) what is wanted of it and of its neighbours; 0 where one is the other way.
function nearest(block: Block, i: number, j: number, over: number): number {
  const { nx, ny, top, bedMm } = block
  const own = Math.max(top[j * nx + i]!, bedMm)
  let near = over
  for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++)
    for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
      block.ensure(a, b, a, b)
      const w = block.columns.wanted[block.columnAt(a, b)]!
      // Beside what is asked for, anything may stand.
      if (Number.isNaN(w)) return 0
      const d = own - Math.max(w, bedMm)
      if (d * over <= 0) return 0
      if (Math.abs(d) < Math.abs(near)) near = d
    }
  return near
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
