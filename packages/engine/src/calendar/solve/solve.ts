import type { Gap, Opening, Task } from '../task.ts'
import type { Bounds } from './bounds.ts'
import { Spread } from './bounds.ts'
import { careful } from './careful.ts'
import { clashOf } from './clash.ts'
import type { Cost } from './cost.ts'
import { costOf } from './cost.ts'
import { Hours } from './hours.ts'
import { improved } from './improve.ts'
import type { Network } from './network.ts'
import { network } from './network.ts'
import type { CalendarAnswer, CalendarProblem, CalendarSolution, Placed, SolveEffort } from './problem.ts'
import { fullEffort, MOST_TASKS, QUICK_EFFORT } from './problem.ts'
import { finishBound, nodeWeight, rootOf, search } from './search.ts'
import { chainOf, sequenced } from './sequence.ts'
import { daysVisited, gathered, oddMinutes, partsOf, visitsOf } from './visits.ts'

/**
 * Places tasks in time: least lateness against soft ends, then the earliest finish, then the earliest finishes of
 * the pieces, then the fewest visits to the bench, then the least attended work in odd hours.
 *
 * Kept without exception: gaps from least to most; what is fixed stays where it is; attended work lies within the
 * openings, in one go unless it may pause; no more of a resource at once than there is; nothing that is not fixed
 * begins before `asOfMin` or its own date; hard ends. Starts are whole minutes; minutes and least gaps are rounded
 * up, greatest gaps down.
 *
 * The same problem and effort give the same answer: the effort counts nodes, never time.
 *
 * Source: simple temporal networks after Dechter, Meiri and Pearl, Artificial Intelligence 49 (1991) 61 (memory);
 * branching on conflicts of the earliest schedule, edge by edge, as in the project scheduling literature (memory).
 * Check: networks worked by hand; every order of small seeded problems; an integer programme; a thousand seeded
 * calendars through a verifier of its own.
 *
 * Limits: the finish is proved least only where `proved` says so; `boundMin` is what is shown. Visits and odd hours
 * are climbed, not proved. A task that pauses holds its resources through the pause. 'unsettled' when neither a
 * calendar nor its impossibility was found within the nodes, and of more than {@link MOST_TASKS} tasks. Resources hold one unit a task.
 */
export function solveCalendar(
  problem: CalendarProblem,
  effort: SolveEffort = fullEffort(problem.tasks.length)
): CalendarAnswer {
  if (problem.tasks.length > MOST_TASKS) return { kind: 'unsettled', nodes: 0 }
  const hours = new Hours(problem.openings)
  const net = network(problem, hours)
  const spread = new Spread(net)
  const root = rootOf(spread)
  if (root === null) return clashOf(problem, effort.asks, effort.smallest ?? true)
  const least = costOf(net, root)
  let found = search(spread, root, 2, null, effort.nodes > 1 ? Math.ceil(effort.nodes / 8) : 0)
  let nodes = found.nodes
  if (found.best === null && !found.proved) {
    // It goes round in circles: whether there is one at all is settled with care.
    const any = careful(spread, root, MOST_CAREFUL / nodeWeight(net.count))
    nodes += any.nodes
    found = { ...found, ...any, proved: any.best === null && any.proved }
  }
  if (found.best === null)
    return found.proved
      ? clashOf(problem, effort.asks, effort.smallest ?? true)
      : { kind: 'unsettled', nodes }
  let best = found.best
  let cost = costOf(net, best)
  const bound = () => Math.min(cost.finish, finishBound(spread, root, cost.finish))
  let boundMin = effort.nodes > 1 ? bound() : least.finish
  const shown = (c: Cost = cost) => c.late <= least.late + 1e-6 && c.finish <= boundMin + 1e-6
  let proved = found.proved || shown()
  if (!proved && effort.nodes > 1) {
    const step = improved(spread, root, best, effort.nodes >> 1, shown)
    best = step.best
    nodes += step.nodes
    cost = costOf(net, best)
    if (!shown()) {
      found = search(spread, root, 2, best, effort.nodes >> 1)
      best = found.best ?? best
      nodes += found.nodes
      proved = found.proved
      cost = costOf(net, best)
    } else proved = true
  }
  if (proved && cost.late <= least.late + 1e-6) boundMin = cost.finish
  if (effort.nodes > 1 && net.pieces.length > 1) {
    found = search(spread, root, 3, best, effort.nodes >> 2)
    best = found.best ?? best
    nodes += found.nodes
  }
  return solution(spread, root, best, { moves: effort.moves, boundMin, proved, nodes })
}

/** Pairs of orders tried to settle whether there is a calendar at all. */
const MOST_CAREFUL = 40_000

/** A calendar at once, for the path of an edit: the first that is found, every task at its earliest. */
export function quickCalendar(problem: CalendarProblem): CalendarAnswer {
  return solveCalendar(problem, QUICK_EFFORT)
}

/** What is changed of a problem to see what it is worth. */
export type Relaxation =
  | { readonly kind: 'opening'; readonly opening: Opening }
  | { readonly kind: 'gap'; readonly gap: number; readonly change: Partial<Gap> | null }
  | { readonly kind: 'task'; readonly id: string; readonly change: Partial<Task> }

/** The problem with an opening more, or a gap (null: without it) or task changed: for the ways out of a clash. */
export function relaxed(problem: CalendarProblem, changes: readonly Relaxation[]): CalendarProblem {
  let { tasks, gaps, openings } = problem
  const without = new Set<number>()
  for (const c of changes) {
    if (c.kind === 'opening') openings = [...openings, c.opening]
    else if (c.kind === 'task') tasks = tasks.map(t => (t.id === c.id ? { ...t, ...c.change } : t))
    else if (c.change === null) without.add(c.gap)
    else gaps = gaps.map((g, i) => (i === c.gap ? { ...g, ...c.change } : g))
  }
  return { ...problem, tasks, openings, gaps: gaps.filter((_, i) => !without.has(i)) }
}

interface Shown {
  readonly moves: number
  readonly boundMin: number
  readonly proved: boolean
  readonly nodes: number
}

function solution(spread: Spread, root: Bounds, best: Bounds, shown: Shown): CalendarSolution {
  const { net } = spread
  const { tasks } = net.problem
  const ends = finishes(net, best)
  // Later only as far as no finish and no soft end is the worse for it.
  const by = (i: number): number =>
    Math.min(ends.get(tasks[i]!.piece)!, Math.max(net.softBy[i]!, best.lo[2 * i + 1]!))
  const order = sequenced(spread, root, best.lo) ?? best
  const held = spread.narrowed(order, [], by) ?? best
  const odd = new Hours(net.problem.odd ?? [])
  const final = shown.moves > 0 ? gathered(spread, held, odd, shown.moves) : held
  const at = final.lo
  const visits = visitsOf(net, at)
  const placed: Placed[] = tasks.map((t, i) => ({
    id: t.id,
    startMin: at[2 * i]!,
    endMin: at[2 * i + 1]!,
    parts: partsOf(net, i, at[2 * i]!, at[2 * i + 1]!),
    latestStartMin: held.hi[2 * i]!
  }))
  return {
    kind: 'placed',
    placed,
    finishMin: Math.max(...ends.values()),
    finishOf: Object.fromEntries(ends),
    boundMin: shown.boundMin,
    proved: shown.proved,
    chain: chainOf(net, order),
    visits: visits.length,
    daysVisited: daysVisited(net.hours, visits),
    oddMin: oddMinutes(net, odd, at),
    late: tasks.flatMap((t, i) => {
      const byMin = at[2 * i + 1]! - net.softBy[i]!
      return byMin > 1e-6 ? [{ id: t.id, byMin }] : []
    }),
    outsideHours: tasks.flatMap((t, i) => {
      if (net.fixed[i] === null || !t.attended || net.past[i] === 'done') return []
      const [a, b] = net.fixed[i]!
      return net.hours.worked(b) - net.hours.worked(a) < Math.min(b - a, net.minutes[i]!) - 1e-6 ? [t.id] : []
    }),
    passed: net.passed,
    nodes: shown.nodes
  }
}

function finishes(net: Network, b: Bounds): Map<string, number> {
  const out = new Map<string, number>()
  net.problem.tasks.forEach((t, i) => {
    out.set(t.piece, Math.max(out.get(t.piece) ?? Number.NEGATIVE_INFINITY, b.lo[2 * i + 1]!))
  })
  return out
}
