import { Spread } from './bounds.ts'
import { Hours } from './hours.ts'
import type { InForce } from './network.ts'
import { network } from './network.ts'
import type { CalendarClash, CalendarProblem, ClashMember } from './problem.ts'
import { pairsOf, rootOf, search } from './search.ts'

/**
 * The smallest clashing set of a problem that has no calendar: what is asked, as members that can be named, of which
 * any one given up leaves the others possible (irreducible), and of which no smaller set clashes where the asks last.
 *
 * Method: members are left out in ever smaller handfuls, then one by one, as long as the rest still clashes. Then
 * smallest by duality: every clash holds a member of every correction (a set whose giving up mends the problem), so
 * the smallest set that meets all corrections known is a clash, or shows a new correction.
 *
 * Limits: asks are counted; when they run out the set is still a clash, and `irreducible` and `smallest` say what
 * was shown. The problem itself must have been shown to have no calendar.
 *
 * @param least also looks for the smallest; else any irreducible set will do
 */
export function clashOf(problem: CalendarProblem, asks: number, least = true): CalendarClash {
  const members = membersOf(problem)
  const ask = new Ask(problem, members, asks)
  let core = members.map((_, i) => i)
  // A clash that needs no search to be seen is cut down without search: sharing comes into it only at fixed dates.
  ask.searching = false
  ask.searching = ask.possible(core) !== false
  for (let size = Math.ceil(core.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2))
    for (let at = 0; at < core.length; ) {
      const rest = [...core.slice(0, at), ...core.slice(at + size)]
      if (ask.possible(rest) === false) core = rest
      else at += size
    }
  if (!ask.searching) {
    // What is left is small: each member is held against every order as well.
    ask.searching = true
    for (let at = 0; at < core.length; ) {
      const rest = core.filter((_, k) => k !== at)
      if (ask.possible(rest) === false) core = rest
      else at++
    }
  }
  const irreducible = !ask.unsure
  const smaller = least ? smallest(ask, members.length, core.length) : { set: null, shown: false }
  const set = smaller.set ?? core
  return {
    kind: 'clash',
    members: set.map(i => members[i]!),
    smallest: smaller.shown && irreducible,
    irreducible: smaller.set !== null || irreducible
  }
}

/** Everything a problem asks that could be given up; what is least worth naming comes first and is left out first. */
function membersOf(problem: CalendarProblem): ClashMember[] {
  const { tasks, gaps } = problem
  return [
    ...gaps.map((_, gap) => ({ kind: 'gap', gap, side: 'least' }) as const),
    { kind: 'as of' },
    ...tasks.filter(t => t.notBeforeMin !== null).map(t => ({ kind: 'not before', id: t.id }) as const),
    ...tasks
      .filter(t => t.fixed === null || t.fixed.why === 'given')
      .filter(t => t.minutes > 0 || t.attended || t.needs.length > 0)
      .map(t => ({ kind: 'task', id: t.id }) as const),
    { kind: 'hours' },
    ...gaps.flatMap((g, gap) => (g.mostMin === null ? [] : [{ kind: 'gap', gap, side: 'most' } as const])),
    ...tasks.filter(t => t.fixed?.why === 'given').map(t => ({ kind: 'fixed', id: t.id }) as const),
    ...tasks
      .filter(t => t.dueIsHard === true && t.dueMin !== null)
      .map(t => ({ kind: 'due', id: t.id }) as const)
  ]
}

class Ask {
  unsure = false
  /** Whether orders are tried where resources are shared; else such a set passes for possible. */
  searching = true
  readonly #problem: CalendarProblem
  readonly #members: readonly ClashMember[]
  readonly #hours: Hours
  readonly #index: ReadonlyMap<string, number>
  #left: number

  constructor(problem: CalendarProblem, members: readonly ClashMember[], asks: number) {
    this.#problem = problem
    this.#members = members
    this.#hours = new Hours(problem.openings)
    this.#index = new Map(problem.tasks.map((t, i) => [t.id, i]))
    this.#left = asks
  }

  get spent(): boolean {
    return this.#left <= 0
  }

  // What is in force, by number: asked for every gap and task of a problem some hundred times.
  #force(kept: readonly number[]): InForce {
    const { tasks, gaps } = this.#problem
    const of = (n: number) => new Uint8Array(n)
    const least = of(gaps.length)
    const most = of(gaps.length)
    const given = {
      fixed: of(tasks.length),
      'not before': of(tasks.length),
      due: of(tasks.length),
      task: of(tasks.length)
    }
    let [hours, asOf] = [false, false]
    for (const k of kept) {
      const m = this.#members[k]!
      if (m.kind === 'gap') (m.side === 'least' ? least : most)[m.gap] = 1
      else if ('id' in m) given[m.kind][this.#index.get(m.id)!] = 1
      else if (m.kind === 'hours') hours = true
      else asOf = true
    }
    return {
      gapLeast: gap => least[gap] === 1,
      gapMost: gap => most[gap] === 1,
      fixed: i => given.fixed[i] === 1,
      notBefore: i => given['not before'][i] === 1,
      due: i => given.due[i] === 1,
      task: i => given.task[i] === 1,
      hours,
      asOf
    }
  }

  /** Whether there is a calendar when only these are asked; null: not known. */
  possible(kept: readonly number[]): boolean | null {
    if (this.#left <= 0) {
      this.unsure = true
      return null
    }
    // A large network costs more to ask.
    const size = Math.max(1, this.#problem.tasks.length / 60)
    this.#left -= size
    const net = network(this.#problem, this.#hours, this.#force(kept))
    const spread = new Spread(net)
    const root = rootOf(spread)
    if (root === null) return false
    if (!this.searching) return true
    const found = search(spread, root, 2, null, 0, 100 + 4 * net.count + pairsOf(net))
    this.#left -= (found.nodes / 50) * size
    if (found.best !== null) return true
    if (found.proved) return false
    this.unsure = true
    return null
  }
}

function smallest(ask: Ask, count: number, known: number): { set: number[] | null; shown: boolean } {
  const corrections: number[][] = []
  for (;;) {
    const hit = leastHitting(corrections, known - 1)
    if (hit === 'too many') return { set: null, shown: false }
    // Every set that meets the corrections is as large as the one known.
    if (hit === null) return { set: null, shown: true }
    const can = ask.possible(hit)
    if (can === false) return { set: hit, shown: true }
    if (can === null) return { set: null, shown: false }
    // What else can be kept: the rest is a correction.
    let kept = hit
    const dropped: number[] = []
    const rest = Array.from({ length: count }, (_, i) => i).filter(i => !hit.includes(i))
    const grow = (part: readonly number[]): boolean => {
      if (part.length === 0) return true
      const with_ = [...kept, ...part]
      const ok = ask.possible(with_)
      if (ok === null) return false
      if (ok) kept = with_
      else if (part.length === 1) dropped.push(part[0]!)
      else {
        const half = part.length >> 1
        return grow(part.slice(0, half)) && grow(part.slice(half))
      }
      return true
    }
    if (!grow(rest) || dropped.length === 0) return { set: null, shown: false }
    corrections.push(dropped)
  }
}

/** The smallest set that meets every one of these, of `most` at the most; null: there is none. */
function leastHitting(sets: readonly (readonly number[])[], most: number): number[] | null | 'too many' {
  let tries = 0
  const meet = (taken: readonly number[], left: number): number[] | null => {
    const open = sets.find(s => !s.some(x => taken.includes(x)))
    if (open === undefined) return [...taken]
    if (left === 0 || tries > 50_000) return null
    for (const x of open) {
      tries++
      const got = meet([...taken, x], left - 1)
      if (got !== null) return got
    }
    return null
  }
  for (let size = 0; size <= most; size++) {
    const got = meet([], size)
    if (got !== null) return got
    if (tries > 50_000) return 'too many'
  }
  return null
}
