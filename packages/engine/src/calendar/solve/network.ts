import type { Hours } from './hours.ts'
import type { CalendarProblem } from './problem.ts'

/**
 * The problem as numbers: a simple temporal network (x_v >= x_u + w) over the start 2i and end 2i+1 of each task,
 * closed over the hours of attended tasks. Whole minutes: minutes and least gaps are rounded up, greatest gaps down.
 *
 * The earliest vector that satisfies every constraint but the sharing of resources is the least fixed point of
 * raising bounds (hours included: "next opening" is monotone), so it is found without search, and it is itself a
 * calendar. The latest vector is the greatest fixed point of lowering.
 */
export interface Network {
  readonly problem: CalendarProblem
  readonly hours: Hours
  readonly count: number
  readonly minutes: readonly number[]
  /** 0: no hours asked; 1: in one opening; 2: may pause. */
  readonly mode: readonly (0 | 1 | 2)[]
  /** What is fixed: [start, end] or null. */
  readonly fixed: readonly (readonly [number, number] | null)[]
  readonly past: readonly ('done' | 'begun' | null)[]
  readonly fromMin: readonly number[]
  /** Latest end: hard due, fixed end, else Infinity. */
  readonly byMin: readonly number[]
  readonly out: readonly (readonly Arc[])[]
  readonly into: readonly (readonly Arc[])[]
  /** Pairs of tasks that may not overlap, by resource of which there is one; sets where there are more. */
  readonly shared: readonly Shared[]
  readonly passed: readonly number[]
  readonly pieces: readonly string[]
  readonly pieceOf: readonly number[]
  /** Soft ends, Infinity where there is none. */
  readonly softBy: readonly number[]
  /** Least minutes from the start of a task to the last end that hangs on it, hours aside. */
  readonly tail: Float64Array
}

export interface Arc {
  /** The other end of it. */
  readonly to: number
  readonly w: number
  /** Index of the gap, -1 for an order. */
  readonly gap: number
}

export interface Shared {
  readonly resource: string
  readonly capacity: number
  readonly tasks: readonly number[]
  /** Whether its work is all attended and in hours: then bounds by open minutes hold. */
  readonly inHours: boolean
}

/** What of a problem is in force: all of it, or less when a clash is looked for. */
export interface InForce {
  gapLeast(gap: number): boolean
  gapMost(gap: number): boolean
  fixed(task: number): boolean
  notBefore(task: number): boolean
  due(task: number): boolean
  task(task: number): boolean
  readonly hours: boolean
  readonly asOf: boolean
}

const yes = () => true
const ALL: InForce = {
  gapLeast: yes,
  gapMost: yes,
  fixed: yes,
  notBefore: yes,
  due: yes,
  task: yes,
  hours: true,
  asOf: true
}

/** @throws RangeError when a gap names no task or two tasks have one id */
export function network(problem: CalendarProblem, hours: Hours, force: InForce = ALL): Network {
  const { tasks, gaps, asOfMin } = problem
  const n = tasks.length
  const index = new Map<string, number>()
  tasks.forEach((t, i) => {
    if (index.has(t.id)) throw new RangeError(`two tasks are called "${t.id}"`)
    index.set(t.id, i)
  })
  const minutes: number[] = []
  const mode: (0 | 1 | 2)[] = []
  const fixed: (readonly [number, number] | null)[] = []
  const past: ('done' | 'begun' | null)[] = []
  const fromMin: number[] = []
  const byMin: number[] = []
  tasks.forEach((t, i) => {
    // What was begun or done was: nobody gives it up.
    const was = t.fixed !== null && t.fixed.why !== 'given'
    const inForce = was || force.task(i)
    const d = inForce ? Math.max(0, Math.ceil(t.minutes - 1e-6)) : 0
    const inHours = t.attended && inForce && (was || force.hours)
    const m = !inHours ? 0 : t.mayPause && d > 0 ? 2 : 1
    minutes.push(d)
    mode.push(m)
    const fix = was || force.fixed(i) ? t.fixed : null
    let from = force.asOf ? asOfMin : Number.NEGATIVE_INFINITY
    if (t.notBeforeMin !== null && force.notBefore(i)) from = Math.max(from, t.notBeforeMin)
    if (fix === null) {
      fixed.push(null)
      past.push(null)
    } else {
      const begun = fix.why !== 'given'
      let end = fix.endMin
      if (end === null) {
        const ends = m === 2 ? hours.endOfWork(fix.startMin, d) : fix.startMin + d
        // Begun and not said to be over: it lasts at least until now.
        end = begun ? Math.max(ends, asOfMin) : ends
      }
      fixed.push([fix.startMin, Math.max(end, fix.startMin)])
      past.push(begun ? (fix.endMin === null ? 'begun' : 'done') : null)
      from = fix.startMin
    }
    fromMin.push(from)
    byMin.push(
      t.dueIsHard === true && t.dueMin !== null && force.due(i) ? t.dueMin : Number.POSITIVE_INFINITY
    )
  })
  const out: Arc[][] = Array.from({ length: 2 * n }, () => [])
  const into: Arc[][] = Array.from({ length: 2 * n }, () => [])
  const passed: number[] = []
  // Up to the whole minute here, not at each bound: a loop that closes only in parts of a minute would be raised forever.
  const arc = (u: number, v: number, least: number, gap: number) => {
    const w = Math.ceil(least - 1e-6)
    out[u]!.push({ to: v, w, gap })
    into[v]!.push({ to: u, w, gap })
  }
  const history = (node: number): boolean => {
    const p = past[node >> 1]
    return p === 'done' || (p === 'begun' && node % 2 === 0)
  }
  const momentOf = (node: number): number => fixed[node >> 1]![node % 2]!
  gaps.forEach((g, k) => {
    const a = index.get(g.before)
    const b = index.get(g.after)
    if (a === undefined || b === undefined)
      throw new RangeError(`a gap names "${a === undefined ? g.before : g.after}", which is no task`)
    const u = 2 * a + (g.from === 'end' ? 1 : 0)
    const v = 2 * b + (g.to === 'end' ? 1 : 0)
    if (history(u) && history(v)) {
      const apart = momentOf(v) - momentOf(u)
      if (apart < g.leastMin - 0.5 || (g.mostMin !== null && apart > g.mostMin + 0.5)) passed.push(k)
      return
    }
    // Between moments that are whole minutes a part of one never counts: loops are told by the same sums.
    const free = fixed[a] === null && fixed[b] === null
    if (force.gapLeast(k)) arc(u, v, free ? Math.ceil(g.leastMin - 1e-6) : g.leastMin, k)
    if (g.mostMin !== null && force.gapMost(k))
      arc(v, u, -(free ? Math.floor(g.mostMin + 1e-6) : g.mostMin), k)
  })
  const holders = new Map<string, number[]>()
  tasks.forEach((t, i) => {
    // What takes no time holds nothing.
    const lasts = fixed[i] === null ? minutes[i]! > 0 : fixed[i]![1] > fixed[i]![0]
    if ((past[i] === null && !force.task(i)) || !lasts) return
    for (const r of new Set(t.needs)) {
      const list = holders.get(r)
      if (list === undefined) holders.set(r, [i])
      else list.push(i)
    }
  })
  const shared = [...holders]
    .map(([resource, list]) => ({
      resource,
      capacity: Math.max(1, Math.floor(problem.capacity?.[resource] ?? 1)),
      tasks: list,
      inHours: list.every(i => mode[i] !== 0)
    }))
    .filter(s => s.tasks.length > s.capacity)
    .sort((a, b) => (a.resource < b.resource ? -1 : a.resource > b.resource ? 1 : 0))
  const pieces = [...new Set(tasks.map(t => t.piece))]
  let tail: Float64Array | null = null
  return {
    pieces,
    pieceOf: tasks.map(t => pieces.indexOf(t.piece)),
    // Asked for by a search alone: most networks of a clash are told without.
    get tail() {
      tail ??= tails(minutes, out)
      return tail
    },
    softBy: tasks.map(t => (t.dueIsHard === true || t.dueMin === null ? Number.POSITIVE_INFINITY : t.dueMin)),
    problem,
    hours,
    count: n,
    minutes,
    mode,
    fixed,
    past,
    fromMin,
    byMin,
    out,
    into,
    shared,
    passed
  }
}

function tails(minutes: readonly number[], out: readonly (readonly Arc[])[]): Float64Array {
  const n = minutes.length
  const start = new Float64Array(n)
  const far = new Float64Array(2 * n)
  // Loops that never close are found elsewhere: a few hundred rounds are enough of an order of rank.
  for (let round = 0, grew = true; grew && round < 300; round++) {
    grew = false
    for (let i = n - 1; i >= 0; i--)
      for (const u of [2 * i + 1, 2 * i]) {
        let best = u % 2 === 0 ? minutes[i]! + far[u + 1]! : 0
        for (const a of out[u]!) best = Math.max(best, a.w + far[a.to]!)
        if (best > far[u]! + 1e-6) {
          far[u] = best
          grew = true
        }
      }
  }
  for (let i = 0; i < n; i++) start[i] = far[2 * i]!
  return start
}
