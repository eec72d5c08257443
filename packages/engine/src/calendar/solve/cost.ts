import type { Bounds } from './bounds.ts'
import type { Network } from './network.ts'

/** What a calendar costs, the first part that differs deciding. Each grows, or stays, when any task moves later. */
export interface Cost {
  /** Minutes late against soft ends, summed. */
  readonly late: number
  /** Last end of all. */
  readonly finish: number
  /** Last ends of the pieces, summed. */
  readonly sum: number
}

/** With every task at its earliest. */
export function costOf(net: Network, b: Bounds): Cost {
  let late = 0
  let finish = Number.NEGATIVE_INFINITY
  const ends = new Float64Array(net.pieces.length).fill(Number.NEGATIVE_INFINITY)
  for (let i = 0; i < net.count; i++) {
    const end = b.lo[2 * i + 1]!
    const soft = net.softBy[i]!
    if (end > soft) late += end - soft
    if (end > finish) finish = end
    const p = net.pieceOf[i]!
    if (end > ends[p]!) ends[p] = end
  }
  let sum = 0
  for (const e of ends) sum += e
  return { late, finish, sum }
}

/** Below 0: a is better. */
export function compareCost(a: Cost, b: Cost, parts: 2 | 3): number {
  if (Math.abs(a.late - b.late) > 1e-6) return a.late - b.late
  if (Math.abs(a.finish - b.finish) > 1e-6) return a.finish - b.finish
  if (parts === 3 && Math.abs(a.sum - b.sum) > 1e-6) return a.sum - b.sum
  return 0
}
