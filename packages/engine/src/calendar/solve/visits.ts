import type { Opening } from '../task.ts'
import type { Bounds, Spread } from './bounds.ts'
import type { Hours } from './hours.ts'
import type { Network } from './network.ts'
import { nodeWeight } from './search.ts'

/** A break longer than this is a visit more: practice, no source. */
const REST_MIN = 60
/** Openings that are no further apart are of one day: practice; nights are longer. */
const NIGHT_MIN = 5 * 60

/** A run of attended work: the maker comes to the bench once. */
export interface Visit {
  readonly fromMin: number
  readonly toMin: number
  /** Numbers of its tasks. */
  readonly tasks: readonly number[]
}

/** The spans in which a task is worked at. */
export function partsOf(net: Network, i: number, start: number, end: number): Opening[] {
  if (!(end > start)) return []
  if (net.mode[i] !== 2) return [[start, end]]
  const parts = net.hours.within(start, end)
  return parts.length === 0 ? [[start, end]] : parts
}

/** Runs of attended work that is not done yet. */
export function visitsOf(net: Network, at: ArrayLike<number>): Visit[] {
  const spans: { from: number; to: number; i: number }[] = []
  for (let i = 0; i < net.count; i++) {
    if (!net.problem.tasks[i]!.attended || net.past[i] === 'done') continue
    const s = at[2 * i]!
    const parts = partsOf(net, i, s, at[2 * i + 1]!)
    for (const [from, to] of parts.length === 0 ? [[s, s] as const] : parts) spans.push({ from, to, i })
  }
  spans.sort((a, b) => a.from - b.from || a.to - b.to || a.i - b.i)
  const out: { fromMin: number; toMin: number; tasks: number[] }[] = []
  for (const { from, to, i } of spans) {
    const last = out.at(-1)
    if (last !== undefined && from - last.toMin <= REST_MIN) {
      last.toMin = Math.max(last.toMin, to)
      last.tasks.push(i)
    } else out.push({ fromMin: from, toMin: to, tasks: [i] })
  }
  return out
}

export function daysVisited(hours: Hours, visits: readonly Visit[]): number {
  const days = new Set<number>()
  for (const v of visits) {
    let day = 0
    let found = -1
    for (let k = 0; k < hours.from.length && hours.from[k]! <= v.fromMin; k++) {
      if (k > 0 && hours.from[k]! - hours.to[k - 1]! > NIGHT_MIN) day++
      found = day
    }
    days.add(found)
  }
  return days.size
}

/** Attended minutes in odd hours. */
export function oddMinutes(net: Network, odd: Hours, at: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < net.count; i++) {
    if (!net.problem.tasks[i]!.attended || net.past[i] === 'done') continue
    for (const [a, b] of partsOf(net, i, at[2 * i]!, at[2 * i + 1]!)) sum += odd.worked(b) - odd.worked(a)
  }
  return sum
}

/**
 * Fewer visits, then fewer odd hours, at the same finishes: whole visits, and single tasks, are put off to the next
 * visits as long as nothing that counts before comes later. A climb: it stops where no one move helps.
 *
 * @param held bounds with the order of work settled and every end at the latest that keeps the finishes
 */
export function gathered(spread: Spread, held: Bounds, odd: Hours, moves: number): Bounds {
  const { net } = spread
  let best = held
  let cost = visitCost(net, odd, best)
  let left = moves / nodeWeight(net.count)
  const began = spread.work
  const most = left
  for (let better = true; better && left > 0 && spread.work - began <= most; ) {
    better = false
    const visits = visitsOf(net, best.lo)
    for (const starts of candidates(net, odd, visits, best)) {
      if (left-- <= 0 || spread.work - began > most) break
      const b = spread.narrowed(best, starts, null)
      if (b === null) continue
      const c = visitCost(net, odd, b)
      if (c[0] > cost[0] || (c[0] === cost[0] && c[1] >= cost[1])) continue
      best = b
      cost = c
      better = true
      break
    }
  }
  return best
}

function visitCost(net: Network, odd: Hours, b: Bounds): readonly [visits: number, odd: number] {
  return [visitsOf(net, b.lo).length, oddMinutes(net, odd, b.lo)]
}

function* candidates(
  net: Network,
  odd: Hours,
  visits: readonly Visit[],
  b: Bounds
): Generator<(readonly [task: number, atMin: number])[]> {
  const free = (i: number) => net.fixed[i] === null && b.hi[2 * i]! > b.lo[2 * i]! + 0.5
  for (let v = visits.length - 2; v >= 0; v--) {
    const { toMin, tasks } = visits[v]!
    const by = visits[v + 1]!.fromMin - toMin
    // The whole visit, so that it ends as the next begins.
    if (tasks.every(free)) yield tasks.map(i => [i, b.lo[2 * i]! + by] as const)
    // Its tail from one task on.
    for (let k = 1; k < tasks.length; k++) {
      const tail = tasks.slice(k)
      if (tail.every(free)) yield tail.map(i => [i, b.lo[2 * i]! + by] as const)
    }
  }
  for (let v = visits.length - 2; v >= 0; v--)
    for (const i of visits[v]!.tasks) {
      if (!free(i)) continue
      for (const to of visits.slice(v + 1, v + 4)) {
        const before = to.fromMin - net.minutes[i]!
        if (before > b.hi[2 * i]!) break
        yield [[i, before]]
        if (to.toMin <= b.hi[2 * i]!) yield [[i, to.toMin]]
      }
    }
  for (const { tasks } of visits)
    for (const i of tasks) {
      if (!free(i)) continue
      const over = odd.within(b.lo[2 * i]!, b.lo[2 * i + 1]!)
      if (over.length > 0 && over.at(-1)![1] <= b.hi[2 * i]!) yield [[i, over.at(-1)![1]]]
    }
}
