import { thinned3 } from './thinned-branch.ts'

/** Places with their radii and which hang together. */
export interface MedialGraph {
  readonly x: number[]
  readonly y: number[]
  readonly r: number[]
  /** links[i]: the places joined to place i. */
  readonly links: number[][]
}

/** x0,y0,r0,x1,y1,r1,... mm; one that ends where it starts is a loop; one of a single place is a disc's. */
export type MedialBranch = Float64Array

/** Places nearer than this are one, mm. */
const SAME_MM = 1e-6

/**
 * Takes off the branches that add less than `tolMm` to what the circles cover: a branch ends free, and all that its
 * circles reach lies within r + tol of the place where it joins. What was taken off counts in what is left.
 */
export function prune(g: MedialGraph, tolMm: number): void {
  merge(g)
  // Farthest place of the circles taken off at each place, seen from it.
  const reach = g.r.slice()
  for (;;) {
    const gone: (readonly [chain: number[], reached: number])[] = []
    for (let leaf = 0; leaf < g.x.length; leaf++) {
      if (g.links[leaf]!.length !== 1) continue
      const chain = chainFrom(g, leaf)
      // A branch between two free ends is folded onto its widest place.
      const last = chain.length - 1
      const free = g.links[chain[last]!]!.length === 1
      let stop = last
      if (free) for (let k = 0; k <= last; k++) if (g.r[chain[k]!]! > g.r[chain[stop]!]!) stop = k
      if (stop === 0) continue
      let far = reach[chain[0]!]!
      for (let k = 1; k <= stop; k++) {
        const long = distance(g, chain[k - 1]!, chain[k]!)
        far = Math.max(far + long, k < stop ? reach[chain[k]!]! : 0)
      }
      if (far - g.r[chain[stop]!]! <= tolMm) gone.push([chain.slice(0, stop + 1), far])
    }
    if (gone.length === 0) return
    for (const [chain, far] of gone) {
      for (let k = 0; k + 1 < chain.length; k++) unlink(g, chain[k]!, chain[k + 1]!)
      const end = chain.at(-1)!
      reach[end] = Math.max(reach[end]!, far)
      // Alone now, and not a disc's middle.
      for (const i of chain.slice(0, -1)) g.r[i] = Number.NaN
    }
  }
}

/** The branches of what is left, points within `tolMm` of a straight line through x, y and r left out. */
export function branchesOf(g: MedialGraph, tolMm: number): MedialBranch[] {
  const out: MedialBranch[] = []
  const seen = new Set<string>()
  const key = (a: number, b: number) => (a < b ? `${a} ${b}` : `${b} ${a}`)
  const walk = (from: number, first: number) => {
    const line = [from]
    let [previous, now] = [from, first]
    for (;;) {
      seen.add(key(previous, now))
      line.push(now)
      if (now === from || g.links[now]!.length !== 2) break
      const next = g.links[now]![0] === previous ? g.links[now]![1]! : g.links[now]![0]!
      previous = now
      now = next
    }
    out.push(thinned3(Float64Array.from(line.flatMap(i => [g.x[i]!, g.y[i]!, g.r[i]!])), tolMm))
  }
  for (const ends of [true, false])
    for (let i = 0; i < g.x.length; i++) {
      const links = g.links[i]!
      if (ends && links.length === 0 && g.r[i]! > 4 * tolMm)
        out.push(Float64Array.of(g.x[i]!, g.y[i]!, g.r[i]!))
      if (ends === (links.length !== 2)) for (const j of links) if (!seen.has(key(i, j))) walk(i, j)
    }
  return out
}

function distance(g: MedialGraph, a: number, b: number): number {
  return Math.hypot(g.x[a]! - g.x[b]!, g.y[a]! - g.y[b]!)
}

// From a free end to the first place where branches meet, or to the other free end.
function chainFrom(g: MedialGraph, leaf: number): number[] {
  const chain = [leaf]
  let previous = -1
  let now = leaf
  for (;;) {
    const next = g.links[now]!.find(i => i !== previous)
    if (next === undefined) return chain
    chain.push(next)
    previous = now
    now = next
    if (g.links[now]!.length !== 2) return chain
  }
}

function unlink(g: MedialGraph, a: number, b: number): void {
  g.links[a] = g.links[a]!.filter(i => i !== b)
  g.links[b] = g.links[b]!.filter(i => i !== a)
}

// Circles through four or more sites stand at one place several times.
function merge(g: MedialGraph): void {
  const leader = g.x.map((_, i) => i)
  const root = (i: number): number => {
    let k = i
    while (leader[k] !== k) k = leader[k]!
    leader[i] = k
    return k
  }
  g.links.forEach((links, i) => {
    for (const j of links) if (distance(g, i, j) < SAME_MM) leader[root(i)] = root(j)
  })
  const joined: Set<number>[] = g.x.map(() => new Set())
  g.links.forEach((links, i) => {
    for (const j of links) if (root(i) !== root(j)) joined[root(i)]!.add(root(j))
  })
  for (let i = 0; i < g.x.length; i++) {
    g.links[i] = [...joined[i]!]
    if (root(i) !== i) g.r[i] = Number.NaN
  }
}
