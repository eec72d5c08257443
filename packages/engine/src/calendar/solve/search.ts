import type { Bounds, Spread } from './bounds.ts'
import { firstConflict, fixedConflict, overfull, withForced } from './conflict.ts'
import type { Cost } from './cost.ts'
import { compareCost, costOf } from './cost.ts'
import type { Network } from './network.ts'

/** What the search found: the best calendar (every task at its earliest in `best.lo`), and whether none is better. */
export interface Found {
  readonly best: Bounds | null
  readonly cost: Cost | null
  readonly proved: boolean
  readonly nodes: number
}

/** Tasks up to which each node is checked for overfull spans: the check grows as their square. Without it no calendar is lost, only time. */
const MOST_CHECKED = 90

/**
 * Branch and bound on the order of tasks that share a resource. At each node every task stands at its earliest under
 * the orders settled so far; without a conflict that is the best calendar of the node (each cost only grows with
 * later starts). Otherwise the first conflict in time is settled each way. A node is cut off when its cost at the
 * earliest starts is no better than the best found, when a pair fits neither way, or when a span is overfull.
 *
 * @param from where to begin: the root of a network
 * @param parts how many parts of the cost count: 2 late and finish, 3 also the finishes of all pieces
 * @param known a calendar already found
 * @param limit nodes expanded after the first calendar
 * @param first nodes expanded before there is one
 */
export function search(
  spread: Spread,
  from: Bounds,
  parts: 2 | 3,
  known: Bounds | null,
  limit: number,
  first = limit + 200 + 4 * spread.net.count
): Found {
  const { net } = spread
  let best = known
  let cost = known === null ? null : costOf(net, known)
  let looked = 0
  const weight = nodeWeight(net.count)
  const began = spread.work
  // Work in nodes: one that is looked at long counts for several.
  const counted = () => Math.floor(weight * Math.max(looked, spread.work - began))
  let nodes = 0
  let firstAt = known === null ? null : 0
  const leastLate = costOf(net, from).late
  const stack: Bounds[][] = [[from]]
  const beyond = () => (firstAt === null ? nodes > weight * first : nodes - firstAt > limit)
  while (stack.length > 0) {
    const level = stack.at(-1)!
    let node: Bounds | null | undefined = level.shift()
    if (node === undefined) {
      stack.pop()
      continue
    }
    nodes = counted()
    if (beyond()) return { best, cost, proved: false, nodes }
    looked++
    nodes = counted()
    if (cost !== null) {
      if (compareCost(costOf(net, node), cost, parts) >= 0) continue
      node = tightened(spread, node, cost, parts, leastLate)
    } else node = settled(spread, node)
    if (node === null) continue
    const conflict = firstConflict(net, node)
    if (conflict === null) {
      const c = costOf(net, node)
      if (cost === null || compareCost(c, cost, parts) < 0) {
        best = node
        cost = c
        firstAt ??= nodes
      }
      continue
    }
    stack.push(childrenOf(spread, node, conflict, cost, parts))
  }
  return { best, cost, proved: true, nodes }
}

/** Tasks of a calendar of which a node counts for one. */
const USUAL_TASKS = 100

/** What a node of a calendar of so many tasks counts for: its pairs grow with the square. */
export function nodeWeight(tasks: number): number {
  return Math.max(1, (tasks / USUAL_TASKS) ** 2)
}

/** Pairs that may have to be settled on the way to a first calendar. */
export function pairsOf(net: Network): number {
  return net.shared.reduce((sum, s) => sum + (s.tasks.length * (s.tasks.length - 1)) / 2, 0)
}

/** Whether no calendar stands against the dates that are fixed: looked at once, before any search. */
export function rootOf(spread: Spread, lastMin = Number.POSITIVE_INFINITY): Bounds | null {
  return fixedConflict(spread.net) ? null : spread.root(lastMin)
}

/** The node once it has to be better than the best found; null: it cannot. */
function tightened(spread: Spread, node: Bounds, cost: Cost, parts: 2 | 3, leastLate: number): Bounds | null {
  // Less lateness may cost a later finish: then the finish is no limit.
  if (cost.late > leastLate + 1e-6) return node
  const by = parts === 2 ? cost.finish - 1 : cost.finish
  const b = spread.narrowed(node, [], () => by)
  return b === null ? null : settled(spread, b)
}

/** With the orders that leave no choice settled; null: there is no calendar. */
function settled(spread: Spread, from: Bounds): Bounds | null {
  const b = withForced(spread, from)
  return b === null || (spread.net.count <= MOST_CHECKED && overfull(spread.net, b)) ? null : b
}

function childrenOf(
  spread: Spread,
  node: Bounds,
  conflict: readonly number[],
  cost: Cost | null,
  parts: 2 | 3
): Bounds[] {
  const { net } = spread
  const out: { b: Bounds; c: Cost; by: number }[] = []
  for (const first of conflict)
    for (const then of conflict) {
      if (first === then || (net.fixed[first] !== null && net.fixed[then] !== null)) continue
      const b = spread.ordered(node, first, then)
      if (b === null) continue
      const c = costOf(net, b)
      if (cost !== null && compareCost(c, cost, parts) >= 0) continue
      // First of two: the one with less to spare before what hangs on it.
      out.push({ b, c, by: net.tail[first]! - net.tail[then]! })
    }
  // Where neither order costs anything yet, the longer tail goes first.
  out.sort((x, y) => compareCost(x.c, y.c, 3) || y.by - x.by)
  return out.map(o => o.b)
}

/** No calendar finishes earlier than this: the greatest last minute that is refused without search, and one. */
export function finishBound(spread: Spread, root: Bounds, found: number): number {
  const { net } = spread
  let lo = costOf(net, root).finish
  let hi = found
  const refused = (by: number): boolean => {
    const b = spread.narrowed(root, [], () => by)
    const c = b === null ? null : settled(spread, b)
    return c === null || overfull(net, c)
  }
  while (hi - lo > 0.5) {
    const mid = Math.floor((lo + hi) / 2)
    if (mid < lo) break
    if (refused(mid)) lo = mid + 1
    else hi = mid
  }
  return lo
}
