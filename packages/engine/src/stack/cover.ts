import { keptOf } from '../quantity/kept.ts'
import { difference, intersection, union } from '../shape/combine.ts'
import { area, bounds, inside } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { Region } from '../shape/region.ts'
import type { CoreInterval } from './core.ts'
import { coreWithAndWithout, floorAt } from './core.ts'
import type { CutFloor, CutWay } from './cut-way.ts'
import { alone, floorAtPlace, wayAtPlace, wayKey } from './cut-way.ts'
import type { Removal, StackEvent } from './event.ts'
import type { Stack } from './stack.ts'
import type { StonesMet } from './stones-met.ts'
import { stonesOf } from './stones-met.ts'

/** What a cut leaves of one pour in front of it. */
export interface LayerCover {
  readonly pour: number
  /** Least thickness left of that pour beyond the cut, mm; 0 where it is pierced. */
  readonly mm: number
  readonly x: number
  readonly y: number
  /** What lies beyond the layer there, away from the cut: the nearest material, or null for air. */
  readonly beyond: CoreInterval['material'] | null
}

/** What a cut leaves. Places are on the plan, mm. */
export interface CutCover {
  readonly cut: number
  /** Least material left between its floor and the next void or the far face, mm; 0 right through. */
  readonly left: { readonly mm: number; readonly x: number; readonly y: number } | null
  /** The floor it leaves at its thinnest, to below 0 where it comes out; null right through. */
  readonly floor: CutFloor | null
  readonly ways: readonly CutWay[]
  readonly layers: readonly LayerCover[]
  readonly stones: readonly StonesMet[]
}

/** How far inside an edge a place is looked at, mm: on the edge itself inside and outside are a matter of rounding. */
const INSET_MM = 0.05

/**
 * What every cut leaves in the finished piece.
 *
 * Layers lie level and floors are flat, so what is left is constant over each part of a cut that meets the
 * same materials; it is read from cores at the corners of those parts, just inside, and on a grid between.
 * Under slanted timber sides it changes along the side, and the corners hold the least. Cuts right through, and
 * open cuts from the same face, answer for themselves: layers, ways and the floor are looked at without them.
 */
export function coversOf(stack: Stack): CutCover[] {
  const { geometry: g, events } = stack
  const stonesMet = stonesOf(stack)
  const cutEvents = events.flatMap(e => (e.kind === 'cut' ? [e] : []))
  return cutEvents.map((event): CutCover => {
    const own = alone(stack, event)
    const at = own.indexOf(event)
    const ways = new Map<string, CutWay>()
    const points = placesOf(stack, event.index, event.removal)
    const layers = new Map<number, LayerCover>()
    let least: CutFloor | null = null
    let left: CutCover['left'] = null
    for (const [x, y] of points) {
      const { core, without } = coreWithAndWithout(g, own, x, y, at)
      // A place where there is nothing to cut, as over a former's hole, leaves nothing either.
      if (without.length === 0) continue
      const under = floorAtPlace(without, event.removal)
      if (under !== null && (least === null || under.mm < least.mm))
        least = { mm: under.mm, x, y, met: metAt(events, event, x, y, under.end) }
      const mm = Math.max(0, under?.mm ?? 0)
      if (left === null || mm < left.mm) left = { mm, x, y }
      const way = wayAtPlace(without, core, event.removal, x, y)
      if (way !== null && way.mm >= (ways.get(wayKey(way))?.mm ?? 0)) ways.set(wayKey(way), way)
      const floor = event.removal.floor
      const low = event.removal.side === 'low'
      // From the floor towards the far face.
      const ahead = (low ? core.filter(p => p.to > floor) : core.filter(p => p.from < floor).reverse()).map(
        p => (low ? { ...p, from: Math.max(p.from, floor) } : { ...p, to: Math.min(p.to, floor) })
      )
      for (const part of without) {
        if (part.material.kind !== 'pour') continue
        const reached = low ? part.from < floor : part.to > floor
        if (!reached && !(low ? part.from >= floor : part.to <= floor)) continue
        const rest = ahead.filter(p => p.material.kind === 'pour' && p.material.index === part.material.index)
        const mm = rest.reduce((sum, p) => sum + p.to - p.from, 0)
        const known = layers.get(part.material.index)
        if (known === undefined || mm < known.mm) {
          const past = ahead.find(p => (low ? p.from >= part.to - 1e-9 : p.to <= part.from + 1e-9))
          layers.set(part.material.index, {
            pour: part.material.index,
            mm,
            x,
            y,
            beyond: past?.material ?? null
          })
        }
      }
    }
    return {
      cut: event.index,
      left,
      floor: least,
      ways: [...ways.values()],
      layers: [...layers.values()].sort((a, b) => a.pour - b.pour),
      stones: stonesMet(event.removal)
    }
  })
}

// The cut from the other face whose floor ends the solid there.
function metAt(
  events: readonly StackEvent[],
  own: StackEvent & { kind: 'cut' },
  x: number,
  y: number,
  z: number
): number | null {
  for (const e of events) {
    if (e.kind !== 'cut' || e.removal.side === own.removal.side) continue
    const floor = floorAt(e.removal, x, y)
    if (floor !== null && Math.abs(floor - z) < 1e-6) return e.index
  }
  return null
}

const places = new WeakMap<object, Map<string, readonly [number, number][]>>()

/** Places at which a removal is looked at, inside the outline: of a geometry that is there still they are known. */
function placesOf(stack: Stack, cut: number, removal: Removal): readonly [number, number][] {
  const g = stack.geometry
  if (removal.region === null || removal.under !== undefined || removal.region !== g.cutRegions[cut])
    return placesAnew(stack, removal)
  return keptOf(places, g, String(cut), () => placesAnew(stack, removal))
}

function placesAnew(stack: Stack, removal: Removal): [number, number][] {
  const { outline, timbers } = stack.geometry
  const out: [number, number][] = []
  if (removal.region !== null) {
    const all = removal.under === undefined ? removal.region : union(removal.region, removal.under.region)
    const plan = intersection(all, outline)
    // Parts that differ in what they meet: with and without each timber.
    let rest: Region = plan
    for (const t of timbers) {
      for (const edge of t.lofts === null ? [t.upper] : [t.upper, t.lower]) {
        addPlaces(out, intersection(plan, edge))
        rest = difference(rest, edge)
      }
    }
    addPlaces(out, rest)
    for (const region of stack.geometry.pourRegions)
      if (region !== null) addPlaces(out, intersection(plan, region))
  } else {
    const { kind, widthMm } = removal.profile!
    const half = kind === 'flat' ? widthMm / 2 - INSET_MM : 0
    const off = half > 0 ? [-half, 0, half] : [0]
    for (const line of removal.lines!) {
      for (let k = 0; k + 3 < line.length; k += 2) {
        const long = Math.hypot(line[k + 2]! - line[k]!, line[k + 3]! - line[k + 1]!)
        const n = Math.min(200, Math.max(1, Math.ceil(long / 2)))
        for (let s = 0; s <= n; s++) {
          const x = line[k]! + ((line[k + 2]! - line[k]!) * s) / n
          const y = line[k + 1]! + ((line[k + 3]! - line[k + 1]!) * s) / n
          // A flat groove is as deep at its edges as in its middle.
          for (const u of off) {
            const px = x - ((line[k + 3]! - line[k + 1]!) / (long || 1)) * u
            const py = y + ((line[k + 2]! - line[k]!) / (long || 1)) * u
            if (inside(outline, px, py)) out.push([px, py])
          }
        }
      }
    }
  }
  return out
}

function addPlaces(out: [number, number][], part: Region): void {
  if (part.rings.length === 0 || area(part) < 0.05) return
  const inner = offset(part, -INSET_MM, { join: 'mitre', tolMm: 0.01 })
  const use = inner.rings.length > 0 ? inner : part
  for (const ring of use.rings) {
    const step = 2 * Math.max(1, Math.floor(ring.length / 2 / 60))
    for (let k = 0; k < ring.length; k += step) out.push([ring[k]!, ring[k + 1]!])
  }
  const b = bounds(use)
  for (let i = 1; i < 6; i++) {
    for (let j = 1; j < 6; j++) {
      const x = b.minX + ((b.maxX - b.minX) * i) / 6
      const y = b.minY + ((b.maxY - b.minY) * j) / 6
      if (inside(use, x, y)) out.push([x, y])
    }
  }
}
