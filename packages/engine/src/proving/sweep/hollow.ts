import type { Block } from './block.ts'

/**
 * What a cutter with a head under a neck takes out below material that stays: one interval a cell, from low to high,
 * program z.
 *
 * Limits: two hollows one above the other at one place are kept as the interval from the lowest to the highest of them.
 */
export class Hollows {
  private readonly low = new Map<number, number>()
  private readonly high = new Map<number, number>()

  /** The head has passed a cell between two heights; what stands above them stays. */
  take(block: Block, p: number, from: number, to: number): void {
    const top = block.top[p]!
    if (to >= top) {
      this.open(block, p, from)
      return
    }
    const low = this.low.get(p)
    const high = this.high.get(p)
    const before = low === undefined ? 0 : high! - low
    const a = low === undefined ? from : Math.min(low, from)
    const b = high === undefined ? to : Math.max(high, to)
    block.taken[0] = block.taken[0]! + Math.max(0, b - a - before)
    this.low.set(p, a)
    this.high.set(p, b)
  }

  /** A cell is cut from above down to h, through a hollow where there is one. */
  open(block: Block, p: number, h: number): void {
    const low = this.low.get(p)
    block.cut(p, h)
    if (low === undefined) return
    const high = this.high.get(p)!
    block.taken[0] = block.taken[0]! - Math.max(0, high - Math.max(low, h))
    if (high >= h) {
      this.low.delete(p)
      this.high.delete(p)
      // What is left ends at the floor of the hollow.
      block.top[p] = Math.min(h, low)
    }
  }

  /** The hollow under a cell, [low, high]; null for none. */
  at(cell: number): readonly [number, number] | null {
    const low = this.low.get(cell)
    return low === undefined ? null : [low, this.high.get(cell)!]
  }

  /** Calls back with every cell that has a hollow. */
  forEach(each: (cell: number, low: number, high: number) => void): void {
    for (const [cell, low] of this.low) each(cell, low, this.high.get(cell)!)
  }
}
