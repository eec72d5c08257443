import { bounds } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import type { Removal, StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'

/**
 * Where on the plan each event can change anything: boxes, so that a core passes over the cuts, timbers and regions that
 * lie elsewhere.
 *
 * Four figures an event, mm: minX, minY, maxX, maxY; without end for what reaches everywhere, the flanks of a V among
 * it, which go on up to whatever face there is.
 *
 * Check: cores of seeded pieces are the same as those played event by event (test).
 */
export type Reach = Float64Array

/** Fewer events are played as they stand: looking them up costs as much. */
const LEAST_EVENTS = 16
/** A list is boxed when it is asked for the second time. */
const PATIENCE = 1

interface Kept {
  asked: number
  /** Events there were then: a list that has grown since is looked at anew. */
  readonly count: number
  readonly of: Geometry
  reach: Reach | null
}

const known = new WeakMap<readonly StackEvent[], Kept>()

/** The boxes of a list of events; null where it is short, or was not asked for often enough. */
export function reachOf(g: Geometry, events: readonly StackEvent[]): Reach | null {
  if (events.length < LEAST_EVENTS) return null
  const kept = known.get(events)
  if (kept === undefined || kept.of !== g || kept.count !== events.length) {
    known.set(events, { asked: 1, count: events.length, of: g, reach: null })
    return null
  }
  if (kept.reach === null && kept.asked++ >= PATIENCE) kept.reach = boxed(g, events)
  return kept.reach
}

function boxed(g: Geometry, events: readonly StackEvent[]): Reach {
  const out = new Float64Array(4 * events.length)
  events.forEach((e, i) => {
    const b = boxOf(g, e)
    out[4 * i] = b.minX
    out[4 * i + 1] = b.minY
    out[4 * i + 2] = b.maxX
    out[4 * i + 3] = b.maxY
  })
  return out
}

function boxOf(g: Geometry, e: StackEvent): Bounds {
  switch (e.kind) {
    case 'timber':
      return g.timbers[e.index]!.bounds
    case 'former':
      return box(g.formers[e.index]!.region)
    case 'pour':
      return box(e.region ?? g.mould)
    case 'flood':
      return box(e.region ?? g.outline)
    case 'cut':
    case 'mark':
      return removalBox(e.removal)
    case 'fill':
      return around(e.removals.map(removalBox))
    case 'demould':
    case 'trim':
      return EVERYWHERE
  }
}

const removals = new WeakMap<Removal, Bounds>()

function removalBox(r: Removal): Bounds {
  let found = removals.get(r)
  if (found === undefined) {
    found = r.flare !== undefined ? EVERYWHERE : r.region !== null ? box(r.region) : grooveBox(r)
    if (r.under !== undefined) found = around([found, box(r.under.region)])
    removals.set(r, found)
  }
  return found
}

function grooveBox({ lines, profile }: Removal): Bounds {
  if (profile!.kind === 'v') return EVERYWHERE
  const b = bounds({ rings: lines! })
  // The last digits of a distance to a line may fall either way: a hair beside it counts as within.
  const out = profile!.widthMm / 2 + 1e-6
  return { minX: b.minX - out, minY: b.minY - out, maxX: b.maxX + out, maxY: b.maxY + out }
}

const regions = new WeakMap<Region, Bounds>()

function box(region: Region): Bounds {
  let found = regions.get(region)
  if (found === undefined) {
    found = bounds(region)
    regions.set(region, found)
  }
  return found
}

function around(boxes: readonly Bounds[]): Bounds {
  return boxes.reduce(
    (a, b) => ({
      minX: Math.min(a.minX, b.minX),
      minY: Math.min(a.minY, b.minY),
      maxX: Math.max(a.maxX, b.maxX),
      maxY: Math.max(a.maxY, b.maxY)
    }),
    bounds({ rings: [] })
  )
}

const EVERYWHERE: Bounds = {
  minX: Number.NEGATIVE_INFINITY,
  minY: Number.NEGATIVE_INFINITY,
  maxX: Number.POSITIVE_INFINITY,
  maxY: Number.POSITIVE_INFINITY
}
