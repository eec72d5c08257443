import type { Bounds, Spread } from './bounds.ts'
import type { Cost } from './cost.ts'
import { compareCost, costOf } from './cost.ts'
import { nodeWeight, search } from './search.ts'
import { chainOf, sequenced } from './sequence.ts'

/**
 * A calendar made better by turning over orders that hold its finish: each link of the critical chain that waits for
 * a resource is tried the other way round, and the rest placed anew. A climb over calendars, deterministic.
 */
export function improved(
  spread: Spread,
  root: Bounds,
  from: Bounds,
  limit: number,
  enough: (cost: Cost) => boolean
): { readonly best: Bounds; readonly nodes: number } {
  const { net } = spread
  const index = new Map(net.problem.tasks.map((t, i) => [t.id, i]))
  let best = from
  let cost = costOf(net, best)
  let nodes = 0
  const tried = new Set<string>()
  for (let better = true; better && nodes < limit && !enough(cost); ) {
    better = false
    const order = sequenced(spread, root, best.lo)
    if (order === null) break
    const chain = chainOf(net, order)
    for (let k = chain.length - 1; k > 0 && nodes < limit; k--) {
      const link = chain[k]!
      if (link.why.kind !== 'resource') continue
      const then = index.get(link.id)!
      const first = index.get(chain[k - 1]!.id)!
      const key = `${then} ${first}`
      if (tried.has(key)) continue
      tried.add(key)
      const turned = spread.ordered(root, then, first)
      nodes += nodeWeight(net.count)
      if (turned === null) continue
      const found = search(spread, turned, 2, null, 20)
      nodes += found.nodes
      if (found.best === null || compareCost(costOf(net, found.best), cost, 2) >= 0) continue
      best = found.best
      cost = costOf(net, best)
      better = true
      break
    }
  }
  return { best, nodes: Math.round(nodes) }
}
