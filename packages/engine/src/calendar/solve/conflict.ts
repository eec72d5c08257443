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
 *
 *   i cannot come before j when it ends at the earliest after the latest start of j; apart already when j ends at the
 *   latest before i starts at the earliest: so the earliest start of i lies between the latest start of j, less the
 *   longest task, and the latest end of j. Tasks by their earliest start are looked through there alone.
 *
 * Check: every pair looked at (tests).
 */
export function forcedOrders(
  net: Pick<Network, 'shared' | 'fixed'>,
  b: Pick<Bounds, 'lo' | 'hi'>
): [first: number, then: number][] | null {
  const { lo, hi } = b
  const out: [number, number][] = []
  for (const { capacity, tasks } of net.shared) {
    if (capacity !== 1) continue
    const byStart = [...tasks].sort((x, y) => lo[2 * x]! - lo[2 * y]! || x - y)
    const longest = byStart.reduce((most, i) => Math.max(most, lo[2 * i + 1]! - lo[2 * i]!), 0)
    for (const j of tasks) {
      const latestEnd = hi[2 * j + 1]!
      const latestStart = hi[2 * j]! + 1e-6
      for (let k = firstFrom(byStart, lo, latestStart - longest); k < byStart.length; k++) {
        const i = byStart[k]!
        if (lo[2 * i]! >= latestEnd) break
        if (i === j || lo[2 * i + 1]! <= latestStart || hi[2 * i + 1]! <= lo[2 * j]!) continue
        if (net.fixed[i] !== null && net.fixed[j] !== null) continue
        if (lo[2 * j + 1]! > hi[2 * i]! + 1e-6) return null
        out.push([j, i])
      }
    }
  }
  return out
}

// The first of tasks in the order of their earliest starts that starts at a moment or later.
function firstFrom(byStart: readonly number[], lo: Bounds['lo'], at: number): number {
  let low = 0
  let high = byStart.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (lo[2 * byStart[middle]!]! < at) low = middle + 1
    else high = middle
  }
  return low
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
