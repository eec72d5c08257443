import { bounds, inside } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import type { Material, Removal, StackEvent } from './event.ts'
import type { Reach } from './event-reach.ts'
import { reachOf } from './event-reach.ts'
import { flareDepth } from './flare.ts'
import type { Geometry } from './geometry.ts'
import { lineDistance, riseAt } from './groove.ts'
import { intervalsAt } from './solid.ts'

/** One stretch of a core, heights mm as cast. */
export interface CoreInterval {
  readonly from: number
  readonly to: number
  readonly material: Material
}

/**
 * The stack at one point of the plan, from low to high: what a drill core there would show. What is not
 * covered by an interval is air: a void of a cut, or nothing.
 *
 * The events are played one after the other on the vertical line through (x, y); nothing is sampled, so a
 * core is exact for the shapes as they are flattened.
 */
export function coreAt(g: Geometry, events: readonly StackEvent[], x: number, y: number): CoreInterval[] {
  const reach = reachOf(g, events)
  let parts: CoreInterval[] = []
  for (let i = 0; i < events.length; i++)
    if (reach === null || reaches(reach, i, x, y)) parts = played(g, parts, events[i]!, x, y)
  return parts
}

// Whether an event can change anything at a place.
function reaches(reach: Reach, i: number, x: number, y: number): boolean {
  const k = 4 * i
  return x >= reach[k]! && y >= reach[k + 1]! && x <= reach[k + 2]! && y <= reach[k + 3]!
}

/**
 * The core at one point after each of so many events, played once: `counts` ascend.
 * Check: each is {@link coreAt} of the first so many events.
 */
export function coresAfter(
  g: Geometry,
  events: readonly StackEvent[],
  x: number,
  y: number,
  counts: readonly number[]
): CoreInterval[][] {
  const reach = reachOf(g, events)
  let parts: CoreInterval[] = []
  let done = 0
  return counts.map(count => {
    for (; done < count; done++)
      if (reach === null || reaches(reach, done, x, y)) parts = played(g, parts, events[done]!, x, y)
    return parts
  })
}

/**
 * The core at one point with all events and with all but one, what stands before that one played once.
 * Check: {@link coreAt} of the events with and without it.
 */
export function coreWithAndWithout(
  g: Geometry,
  events: readonly StackEvent[],
  x: number,
  y: number,
  own: number
): { readonly core: CoreInterval[]; readonly without: CoreInterval[] } {
  const reach = reachOf(g, events)
  const play = (parts: CoreInterval[], i: number): CoreInterval[] =>
    reach === null || reaches(reach, i, x, y) ? played(g, parts, events[i]!, x, y) : parts
  let without: CoreInterval[] = []
  for (let i = 0; i < own; i++) without = play(without, i)
  let core = play(without, own)
  for (let i = own + 1; i < events.length; i++) {
    core = play(core, i)
    without = play(without, i)
  }
  return { core, without }
}

// One event on the vertical line through a point.
function played(g: Geometry, parts: CoreInterval[], e: StackEvent, x: number, y: number): CoreInterval[] {
  const inRegion = (r: Region) => inside(r, x, y)
  switch (e.kind) {
    case 'timber':
      return intervalsAt(g.timbers[e.index]!, x, y).reduce(
        (sum, [from, to]) => fill(sum, from, to, { kind: 'timber', index: e.index }),
        parts
      )
    case 'former':
      return inRegion(g.formers[e.index]!.region)
        ? fill(parts, e.from, e.to, { kind: 'former', index: e.index })
        : parts
    case 'demould':
      return parts.filter(p => p.material.kind !== 'former')
    case 'pour':
      return inRegion(e.region ?? g.mould) ? fill(parts, 0, e.to, { kind: 'pour', index: e.index }) : parts
    case 'trim':
      return e.side === 'low'
        ? remove(parts, Number.NEGATIVE_INFINITY, e.z)
        : remove(parts, e.z, Number.POSITIVE_INFINITY)
    case 'cut':
    case 'mark': {
      if (parts.length === 0) return parts
      const end = e.removal.side === 'low' ? parts[0]!.from : parts[parts.length - 1]!.to
      const floor = floorAt(e.removal, x, y, end)
      const left = floor === null ? parts : taken(parts, e.removal, floor)
      const { under } = e.removal
      if (under === undefined || !inRegion(under.region)) return left
      return remove(left, Math.min(e.removal.floor, under.roof), Math.max(e.removal.floor, under.roof))
    }
    case 'fill': {
      let now = parts
      for (const r of e.removals) {
        const floor = floorAt(r, x, y, e.z)
        if (floor === null) continue
        const material: Material = { kind: e.what, index: e.index }
        now =
          e.side === 'low'
            ? fill(now, e.z, Math.max(e.z, floor), material)
            : fill(now, Math.min(e.z, floor), e.z, material)
      }
      return now
    }
    case 'flood':
      return inRegion(e.region ?? g.outline)
        ? fill(parts, e.from, e.to, { kind: 'pour', index: e.index })
        : parts
  }
}

/**
 * Height of the floor a removal leaves at a point, mm as cast; null where it takes nothing. With `end`, the height of
 * the face it starts from, null also where the floor lies surely at or beyond it.
 */
export function floorAt(r: Removal, x: number, y: number, end?: number): number | null {
  if (r.region !== null && r.flare !== undefined) {
    const depth = flareDepth(r.region, r.flare, x, y)
    if (depth === null) return null
    // No deeper than its floor, which is flat where the V would go beyond it.
    const floor =
      r.side === 'low' ? Math.min(r.floor, r.flare.edge + depth) : Math.max(r.floor, r.flare.edge - depth)
    return end !== undefined && (r.side === 'low' ? floor <= end : floor >= end) ? null : floor
  }
  if (r.region !== null) return inside(r.region, x, y) ? r.floor : null
  const lines = r.lines!
  // Beside the box of the lines the floor is at least so high: most places need no look at the lines.
  const least = boxDistance(lines, x, y)
  if (least > 0) {
    const rise = riseAt(r.profile!, least)
    if (rise === null) return null
    if (end !== undefined && (r.side === 'low' ? r.floor - rise <= end : r.floor + rise >= end)) return null
  }
  const rise = riseAt(r.profile!, lineDistance(lines, x, y))
  if (rise === null) return null
  return r.side === 'low' ? r.floor - rise : r.floor + rise
}

const boxes = new WeakMap<readonly Float64Array[], Bounds>()

// Distance of a point from the box about some lines, mm; 0 inside.
function boxDistance(lines: readonly Float64Array[], x: number, y: number): number {
  let box = boxes.get(lines)
  if (box === undefined) {
    box = lines.length === 0 ? NOWHERE : bounds({ rings: lines })
    boxes.set(lines, box)
  }
  return Math.hypot(Math.max(0, box.minX - x, x - box.maxX), Math.max(0, box.minY - y, y - box.maxY))
}

const NOWHERE: Bounds = {
  minX: Number.POSITIVE_INFINITY,
  minY: Number.POSITIVE_INFINITY,
  maxX: Number.POSITIVE_INFINITY,
  maxY: Number.POSITIVE_INFINITY
}

function taken(parts: CoreInterval[], r: Removal, floor: number): CoreInterval[] {
  return r.side === 'low'
    ? remove(parts, Number.NEGATIVE_INFINITY, floor)
    : remove(parts, floor, Number.POSITIVE_INFINITY)
}

// Puts a material wherever nothing is yet between from and to.
function fill(parts: readonly CoreInterval[], from: number, to: number, material: Material): CoreInterval[] {
  if (to <= from) return [...parts]
  const out: CoreInterval[] = []
  let at = from
  for (const p of parts) {
    if (p.from > at && at < to) {
      const end = Math.min(p.from, to)
      if (end > at) out.push({ from: at, to: end, material })
    }
    out.push(p)
    at = Math.max(at, p.to)
  }
  if (at < to) out.push({ from: at, to, material })
  return out.sort((a, b) => a.from - b.from)
}

function remove(parts: readonly CoreInterval[], from: number, to: number): CoreInterval[] {
  if (to <= from) return [...parts]
  const out: CoreInterval[] = []
  for (const p of parts) {
    if (p.to <= from || p.from >= to) out.push(p)
    else {
      if (p.from < from) out.push({ ...p, to: from })
      if (p.to > to) out.push({ ...p, from: to })
    }
  }
  return out
}
