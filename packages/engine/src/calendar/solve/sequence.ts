import type { Bounds, Spread } from './bounds.ts'
import type { Network } from './network.ts'
import type { ChainLink, ChainWhy } from './problem.ts'

/**
 * The order of work of a calendar, held: tasks of a resource one after the other, where there are several of it in as
 * many lanes. Any bounds that keep it are free of conflicts. null: never, for starts that are a calendar.
 */
export function sequenced(spread: Spread, root: Bounds, starts: ArrayLike<number>): Bounds | null {
  const { net } = spread
  const pairs: [number, number][] = []
  for (const { capacity, tasks } of net.shared) {
    const lanes: number[] = []
    const list = [...tasks].sort(
      (x, y) => starts[2 * x]! - starts[2 * y]! || starts[2 * x + 1]! - starts[2 * y + 1]!
    )
    for (const i of list) {
      let lane = lanes.findIndex(last => starts[2 * last + 1]! <= starts[2 * i]! + 1e-6)
      if (lane < 0) lane = lanes.length
      const last = lanes[lane]
      lanes[lane] = i
      // Fixed dates that lie over each other are history; they are left as they are.
      if (last === undefined || lane >= capacity) continue
      if (net.fixed[last] !== null && net.fixed[i] !== null) continue
      pairs.push([last, i])
    }
  }
  return spread.orderedAll(root, pairs)
}

/** What holds the finish, from the first to the last: with every task at its earliest in this order of work. */
export function chainOf(net: Network, b: Bounds): ChainLink[] {
  let at = 0
  for (let i = 1; i < net.count; i++) if (b.lo[2 * i + 1]! > b.lo[2 * at + 1]! + 1e-6) at = i
  const chain: ChainLink[] = []
  const seen = new Set<number>()
  const orders = new Map<number, number[]>()
  for (let o = b.orders; o !== null; o = o.before)
    orders.set(o.then, [...(orders.get(o.then) ?? []), o.first])
  while (net.count > 0 && !seen.has(at)) {
    seen.add(at)
    const { id } = net.problem.tasks[at]!
    if (net.fixed[at] !== null) {
      chain.push({ id, why: { kind: 'fixed' }, hoursMin: 0 })
      break
    }
    let best = net.fromMin[at]!
    let next: number | null = null
    const notBefore = net.problem.tasks[at]!.notBeforeMin
    let why: ChainWhy = { kind: notBefore !== null && notBefore === best ? 'not before' : 'as of' }
    const take = (start: number, from: number, w: ChainWhy) => {
      if (from === at || seen.has(from)) return
      if (start > best + 1e-6 || (next === null && start > best - 1e-6)) {
        best = start
        next = from
        why = w
      }
    }
    for (const a of net.into[2 * at]!) take(b.lo[a.to]! + a.w, a.to >> 1, { kind: 'gap', gap: a.gap })
    for (const a of net.into[2 * at + 1]!) {
      const end = b.lo[a.to]! + a.w
      const start =
        net.mode[at] === 2
          ? net.hours.startToEndAt(Math.ceil(end - 1e-6), net.minutes[at]!)
          : end - net.minutes[at]!
      take(start, a.to >> 1, { kind: 'gap', gap: a.gap })
    }
    for (const first of orders.get(at) ?? []) {
      const resource = net.shared.find(s => s.tasks.includes(first) && s.tasks.includes(at))?.resource ?? ''
      take(b.lo[2 * first + 1]!, first, { kind: 'resource', resource })
    }
    chain.push({ id, why, hoursMin: Math.max(0, Math.round(b.lo[2 * at]! - Math.max(best, -1e9))) })
    if (next === null) break
    at = next
  }
  return chain.reverse()
}
