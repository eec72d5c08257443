import type { Bounds, Spread } from './bounds.ts'
import type { Network } from './network.ts'

/** Tasks that ask for more of a resource at one time than there is: one more than its number. */
export type Conflict = readonly number[]

/** The first conflict in time with every task at its earliest; null: it is a calendar. */
export function firstConflict(net: Network, b: Bounds): Conflict | null {
  let best: Conflict | null = null
  let bestAt = Number.POSITIVE_INFINITY
  for (const { capacity, tasks } of net.shared) {
    const list = [...tasks].sort((x, y) => b.lo[2 * x]! - b.lo[2 * y]! || x - y)
    let active: number[] = []
    for (const j of list) {
      const start = b.lo[2 * j]!
      if (start >= bestAt) break
      active = active.filter(i => b.lo[2 * i + 1]! > start + 1e-6)
      active.push(j)
      if (active.length <= capacity) continue
      const open = active.filter(i => net.fixed[i] === null)
      if (open.length === 0) continue
      // Those that are fixed first: they leave the fewest ways.
      const set = [...active].sort((x, y) => Number(net.fixed[x] === null) - Number(net.fixed[y] === null))
      best = [...set.slice(0, capacity), open.at(-1)!].filter((x, k, all) => all.indexOf(x) === k)
      if (best.length <= capacity) best = active.slice(-capacity - 1)
      bestAt = start
      break
    }
  }
  return best
}

/** Whether dates that are fixed, and not all of them history, already ask for more than there is. */
export function fixedConflict(net: Network): boolean {
  for (const { capacity, tasks } of net.shared) {
    const held = tasks.filter(i => net.fixed[i] !== null)
    for (const i of held) {
      const at = net.fixed[i]![0]
      const there = held.filter(k => net.fixed[k]![0] <= at + 1e-6 && net.fixed[k]![1] > at + 1e-6)
      if (
        there.filter(k => net.past[k] !== 'done').length > capacity &&
        there.some(k => net.past[k] === null)
      )
        return true
    }
  }
  return false
}

/**
 * Orders that the bounds leave no choice in, on resources of which there is one: pairs [first, then];
 * null: a pair fits neither way.
 */
function forcedOrders(net: Network, b: Bounds): [first: number, then: number][] | null {
  const out: [number, number][] = []
  for (const { capacity, tasks } of net.shared) {
    if (capacity !== 1) continue
    for (let x = 0; x < tasks.length; x++)
      for (let y = x + 1; y < tasks.length; y++) {
        const i = tasks[x]!
        const j = tasks[y]!
        if (net.fixed[i] !== null && net.fixed[j] !== null) continue
        if (b.hi[2 * i + 1]! <= b.lo[2 * j]! || b.hi[2 * j + 1]! <= b.lo[2 * i]!) continue
        const ij = b.lo[2 * i + 1]! <= b.hi[2 * j]! + 1e-6
        const ji = b.lo[2 * j + 1]! <= b.hi[2 * i]! + 1e-6
        if (!ij && !ji) return null
        if (!ij) out.push([j, i])
        else if (!ji) out.push([i, j])
      }
  }
  return out
}

/**
 * Whether some span holds more work of one pair of hands than it has open minutes: for every earliest start and
 * latest end, the tasks that must lie between.
 */
export function overfull(net: Network, b: Bounds): boolean {
  for (const { capacity, tasks, inHours } of net.shared) {
    if (capacity !== 1 || !inHours) continue
    const list = tasks.filter(i => net.fixed[i] === null)
    const byEnd = [...list].sort((x, y) => b.hi[2 * x + 1]! - b.hi[2 * y + 1]! || x - y)
    const closes = byEnd.map(i => net.hours.worked(Math.min(b.hi[2 * i + 1]!, 1e9)))
    for (const i of list) {
      const from = b.lo[2 * i]!
      const opens = net.hours.worked(from)
      let sum = 0
      for (let k = 0; k < byEnd.length; k++) {
        const j = byEnd[k]!
        if (b.lo[2 * j]! < from - 1e-6) continue
        sum += net.minutes[j]!
        if (sum > closes[k]! - opens + 1e-6) return true
      }
    }
  }
  return false
}

/** Rounds of forced orders at the most: each may force the next (practice; more are left to the search). */
const MOST_ROUNDS = 20

/** The bounds once the orders that leave no choice are taken; null: there is no calendar. */
export function withForced(spread: Spread, from: Bounds): Bounds | null {
  let b: Bounds | null = from
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const forced = forcedOrders(spread.net, b)
    if (forced === null) return null
    if (forced.length === 0) break
    b = spread.orderedAll(b, forced)
    if (b === null) return null
  }
  return b
}
