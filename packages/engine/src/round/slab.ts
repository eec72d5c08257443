import type { Region } from '../shape/region.ts'
import { clipMemo } from '../stack/clip-memo.ts'
import type { Removal, StackEvent } from '../stack/event.ts'
import { materialKey, tapers } from '../stack/event.ts'
import { breaksOf, levelCut } from '../stack/level-cut.ts'
import type { Geometry } from '../stack/shapes.ts'
import type { Stack } from '../stack/stack.ts'
import { finishedHeight } from '../stack/stack.ts'
import { drawnSolid } from './leaning.ts'

/** A stretch of one material that is drawn as a prism. Finished heights, mm from the back. */
export interface Slab {
  readonly region: Region
  readonly from: number
  readonly to: number
  /** Whether its top and bottom are steps of a slanted or rounded side, not edges of the piece. */
  readonly stepsBelow: boolean
  readonly stepsAbove: boolean
}

/** The prisms of a piece by material (see {@link materialKey}), from the back up. */
export interface Slabs {
  readonly of: ReadonlyMap<string, readonly Slab[]>
  /** Highest step of a side that changes with height, mm; 0 when all are upright. */
  readonly stepMm: number
  /** By how much edges of timbers were let stray so that they can be cut at every step, mm (see leaning.ts). */
  readonly strayMm: number
}

/** Height of a step in a side that changes with height, mm, and how many a stretch between two breaks has. */
const STEP_MM = 1
const STEPS = [6, 32] as const

interface Stretch {
  readonly from: number
  readonly to: number
  readonly steps: boolean
}

/**
 * The finished piece as prisms: the stack's own level cuts, each holding from one height to the next. Between two
 * heights at which level cuts change abruptly one is enough where all sides stand upright. Undercut timbers,
 * crowned or measured tops and grooves are followed by steps, cut at their middles: a side that leans strays from
 * it by half a step times its lean.
 */
export function slabsOf(stack: Stack): Slabs {
  const memo = clipMemo()
  const inner = innerOf(stack, memo.intersection)
  const of = new Map<string, Slab[]>()
  let stepMm = 0
  for (const { from, to, steps } of stretchesOf(stack, inner.geometry)) {
    if (steps) stepMm = Math.max(stepMm, to - from)
    const a = finishedHeight(stack, from)
    const b = finishedHeight(stack, to)
    const [low, high] = a < b ? [a, b] : [b, a]
    for (const { material, region } of levelCut(inner.geometry, inner.events, (from + to) / 2, memo)) {
      if (material.kind === 'former') continue
      const cast = material.kind === 'pour' && stack.piece.pours[material.index]!.kind !== 'inlay'
      const own = cast ? region : memo.intersection(region, inner.geometry.outline)
      if (own.rings.length === 0) continue
      const key = materialKey(material)
      const list = of.get(key)
      if (list === undefined) of.set(key, [{ region: own, from: low, to: high, ...stepped(steps) }])
      else put(list, own, low, high, steps)
    }
  }
  for (const list of of.values()) list.sort((p, q) => p.from - q.from)
  return { of, stepMm, strayMm: inner.strayMm }
}

const stepped = (steps: boolean) => ({ stepsBelow: steps, stepsAbove: steps })

// Resin is taken over the outline only, as for volumes: there is less to clip, and the rest is waste.
// Timbers with a great many points are thinned where they are cut at every step.
function innerOf(stack: Stack, intersection: (a: Region, b: Region) => Region) {
  const g = stack.geometry
  const drawn = g.timbers.map(drawnSolid)
  const geometry: Geometry = { ...g, mould: g.outline, timbers: drawn.map(d => d.solid) }
  const events = stack.events.map(
    (e): StackEvent =>
      (e.kind === 'pour' || e.kind === 'flood') && e.region !== null
        ? { ...e, region: intersection(e.region, g.outline) }
        : e
  )
  return { geometry, events, strayMm: drawn.reduce((most, d) => Math.max(most, d.strayMm), 0) }
}

// A slab that goes on where the last of its material ended is one with it: no wall shows inside clear resin.
function put(list: Slab[], region: Region, from: number, to: number, steps: boolean): void {
  const last = list[list.length - 1]!
  const above = Math.abs(last.to - from) < 1e-9
  const below = Math.abs(last.from - to) < 1e-9
  if ((above || below) && alike(last.region, region)) {
    list[list.length - 1] = {
      region: last.region,
      from: Math.min(last.from, from),
      to: Math.max(last.to, to),
      stepsBelow: above ? last.stepsBelow : steps,
      stepsAbove: above ? steps : last.stepsAbove
    }
    return
  }
  list.push({ region, from, to, ...stepped(steps) })
}

function alike(a: Region, b: Region): boolean {
  if (a === b) return true
  return (
    a.rings.length === b.rings.length &&
    a.rings.every((ring, k) => {
      const other = b.rings[k]!
      return ring.length === other.length && ring.every((v, i) => v === other[i])
    })
  )
}

function stretchesOf(stack: Stack, g: Geometry): Stretch[] {
  const { events, finishedLow, finishedHigh } = stack
  const stops = [
    finishedLow,
    ...breaksOf(g, events).filter(z => z > finishedLow + 1e-6 && z < finishedHigh - 1e-6),
    finishedHigh
  ]
  const grooves = events.flatMap(e =>
    (e.kind === 'cut' || e.kind === 'mark') && tapers(e.removal) ? [e.removal] : []
  )
  const out: Stretch[] = []
  for (let k = 0; k + 1 < stops.length; k++) {
    const from = stops[k]!
    const to = stops[k + 1]!
    if (to - from < 1e-6) continue
    const mid = (from + to) / 2
    const leans = g.timbers.some(
      t => mid > t.base && mid < t.high && (mid > t.clear || (t.lofts !== null && mid < t.edge))
    )
    if (!leans && !grooves.some(r => reaches(r, mid))) {
      out.push({ from, to, steps: false })
      continue
    }
    const n = Math.min(STEPS[1], Math.max(STEPS[0], Math.ceil((to - from) / STEP_MM)))
    // Closer together at both ends, where crowns and round grooves open like a root.
    const at = (i: number) => from + (to - from) * (i / n) ** 2 * (3 - (2 * i) / n)
    for (let i = 0; i < n; i++) out.push({ from: at(i), to: i + 1 === n ? to : at(i + 1), steps: true })
  }
  return out
}

function reaches(r: Removal, z: number): boolean {
  return r.side === 'low' ? r.floor > z : z > r.floor
}
