import type { Bounds, Spread } from './bounds.ts'
import type { Conflict } from './conflict.ts'
import { firstConflict, overfull, withForced } from './conflict.ts'
import type { Network } from './network.ts'

/** What a careful search came to: a calendar, that there is none, or neither within its nodes. */
export interface Careful {
  readonly best: Bounds | null
  readonly proved: boolean
  readonly nodes: number
}

/** Conflicts looked at in a node, those first in time: all there are of a piece, and enough of several. */
const LOOKED = 200
/** Nodes of the first dive, and by how much each dive after it is longer. */
const FIRST_DIVE = 40
const LONGER = 1.5

/**
 * A search for any calendar, where settling conflicts in the order of time goes round in circles. In each node both
 * orders of each of the first conflicts are tried: an order that cannot be is settled at once, and of the others that
 * conflict is branched on which hurts most either way, weighed by how often it was at a dead end before. A dive that
 * takes long is begun again from the root with what was learned; each dive is longer than the one before, so that the
 * last is a full search.
 *
 * Source: weighing constraints by their dead ends, and beginning again, as in the constraint programming literature
 * (memory). Check: every order of small seeded problems; a verifier of its own.
 * Limits: `limit` counts pairs of orders tried, or their work, so that the answer is the same on every machine.
 */
export function careful(spread: Spread, root: Bounds, limit: number): Careful {
  const weights = new Map<string, number>()
  let nodes = 0
  for (let dive = FIRST_DIVE; nodes < limit; dive *= LONGER) {
    const found = dived(spread, root, weights, Math.min(dive * LOOKED, limit - nodes))
    nodes += found.nodes
    if (found.best !== null || found.proved) return { ...found, nodes }
  }
  return { best: null, proved: false, nodes }
}

function dived(spread: Spread, root: Bounds, weights: Map<string, number>, limit: number): Careful {
  const began = spread.work
  let looked = 0
  let nodes = 0
  const stack: Bounds[] = [root]
  while (stack.length > 0) {
    nodes = Math.max(looked, Math.floor(spread.work - began))
    if (nodes >= limit) return { best: null, proved: false, nodes }
    const from = stack.pop()!
    const b = settledBounds(spread, from)
    looked++
    if (b === null) continue
    const pairs = overlaps(spread.net, b)
    if (pairs.length === 0) {
      const several = firstConflict(spread.net, b)
      if (several === null) return { best: b, proved: true, nodes }
      stack.push(...apart(spread, b, several))
      continue
    }
    const next = branched(spread, b, pairs, weights)
    looked += next.looked
    stack.push(...next.children)
  }
  return { best: null, proved: true, nodes }
}

/** Any two of these put apart, each way; the one that shifts least comes last. */
function apart(spread: Spread, b: Bounds, conflict: Conflict): Bounds[] {
  const out: { readonly b: Bounds; readonly shift: number }[] = []
  for (const first of conflict)
    for (const then of conflict) {
      const { fixed } = spread.net
      if (first === then || (fixed[first] !== null && fixed[then] !== null)) continue
      const to = spread.ordered(b, first, then)
      if (to !== null) out.push({ b: to, shift: shiftOf(b, to) })
    }
  return out.sort((x, y) => y.shift - x.shift).map(o => o.b)
}

interface Branched {
  /** What is to be looked at next, the last one first. */
  readonly children: readonly Bounds[]
  readonly looked: number
}

function branched(spread: Spread, b: Bounds, pairs: readonly Pair[], weights: Map<string, number>): Branched {
  let best: { readonly children: readonly Bounds[]; readonly score: number } | null = null
  for (const [k, [i, j]] of pairs.entries()) {
    const one = spread.ordered(b, i, j)
    const two = spread.ordered(b, j, i)
    const key = `${i} ${j}`
    if (one === null || two === null) {
      weights.set(key, (weights.get(key) ?? 0) + 1)
      // No choice is left here, or none that is possible.
      return { children: [one, two].filter(x => x !== null), looked: k + 1 }
    }
    const [a, c] = [shiftOf(b, one), shiftOf(b, two)]
    const score = (1 + (weights.get(key) ?? 0)) * (1 + Math.min(a, c))
    if (best === null || score > best.score) best = { score, children: a <= c ? [two, one] : [one, two] }
  }
  return { children: best!.children, looked: pairs.length }
}

/** How much later all tasks together come, min; of each no more than a day. */
function shiftOf(from: Bounds, to: Bounds): number {
  let sum = 0
  for (let n = 0; n < from.lo.length; n += 2) sum += Math.min(1440, to.lo[n]! - from.lo[n]!)
  return sum
}

function settledBounds(spread: Spread, from: Bounds): Bounds | null {
  const b = withForced(spread, from)
  return b === null || overfull(spread.net, b) ? null : b
}

type Pair = readonly [number, number]

/** Pairs that ask for the one of its kind at one time with every task at its earliest: those that come first. */
function overlaps(net: Network, b: Bounds): readonly Pair[] {
  const found: { readonly pair: Pair; readonly at: number }[] = []
  for (const { capacity, tasks } of net.shared) {
    if (capacity !== 1) continue
    const list = [...tasks].sort((x, y) => b.lo[2 * x]! - b.lo[2 * y]! || x - y)
    for (const [k, i] of list.entries())
      for (const j of list.slice(k + 1)) {
        const at = b.lo[2 * j]!
        if (at >= b.lo[2 * i + 1]! - 1e-6) break
        if (net.fixed[i] === null || net.fixed[j] === null) found.push({ pair: [i, j], at })
      }
  }
  return found
    .sort((x, y) => x.at - y.at || x.pair[0] - y.pair[0] || x.pair[1] - y.pair[1])
    .slice(0, LOOKED)
    .map(f => f.pair)
}
