import { difference, intersection } from '../shape/combine.ts'
import { area, bounds, inside } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { Region } from '../shape/region.ts'
import type { CoreInterval } from './core.ts'
import { coreAt } from './core.ts'
import type { Removal } from './event.ts'
import { removalAt } from './event.ts'
import type { Stack } from './stack.ts'

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
  readonly layers: readonly LayerCover[]
  /** Stones zones and placed stones it runs into: how deep, mm. */
  readonly stones: readonly {
    readonly pour: number
    readonly entry: number
    readonly mm: number
    readonly x: number
    readonly y: number
  }[]
}

/** How far inside an edge a place is looked at, mm: on the edge itself inside and outside are a matter of rounding. */
const INSET_MM = 0.05

/**
 * What every cut leaves in the finished piece.
 *
 * Layers lie level and floors are flat, so what is left is constant over each part of a cut that meets the
 * same materials; it is read from cores at the corners of those parts, just inside, and on a grid between.
 * Under slanted timber sides it changes along the side, and the corners hold the least.
 */
export function coversOf(stack: Stack): CutCover[] {
  const { geometry: g, events } = stack
  const cutEvents = events.flatMap(e => (e.kind === 'cut' ? [e] : []))
  return cutEvents.map((event): CutCover => {
    const before = events.filter(e => e !== event)
    const points = placesOf(stack, event.removal)
    const layers = new Map<number, LayerCover>()
    let left: CutCover['left'] = null
    for (const [x, y] of points) {
      const without = coreAt(g, before, x, y)
      // A place where there is nothing to cut, as over a former's hole, leaves nothing either.
      if (without.length === 0) continue
      const core = coreAt(g, events, x, y)
      const floor = event.removal.floor
      const low = event.removal.side === 'low'
      // From the floor towards the far face.
      const ahead = (low ? core.filter(p => p.to > floor) : core.filter(p => p.from < floor).reverse()).map(
        p => (low ? { ...p, from: Math.max(p.from, floor) } : { ...p, to: Math.min(p.to, floor) })
      )
      const solid = contiguous(ahead, low, Number.isFinite(floor) ? floor : null)
      if (left === null || solid < left.mm) left = { mm: solid, x, y }
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
      layers: [...layers.values()].sort((a, b) => a.pour - b.pour),
      stones: stonesMet(stack, event.removal)
    }
  })
}

// Thickness of solid that follows the floor without a gap.
function contiguous(ahead: readonly CoreInterval[], low: boolean, floor: number | null): number {
  if (floor === null) return 0
  let at = floor
  for (const p of ahead) {
    if (Math.abs((low ? p.from : p.to) - at) > 1e-6) break
    at = low ? p.to : p.from
  }
  return Math.abs(at - floor)
}

/** Places at which a removal is looked at, inside the outline. */
function placesOf(stack: Stack, removal: Removal): [number, number][] {
  const { outline, timbers } = stack.geometry
  const out: [number, number][] = []
  if (removal.region !== null) {
    const plan = intersection(removal.region, outline)
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
    for (const line of removal.lines!) {
      for (let k = 0; k + 3 < line.length; k += 2) {
        const long = Math.hypot(line[k + 2]! - line[k]!, line[k + 3]! - line[k + 1]!)
        const n = Math.min(200, Math.max(1, Math.ceil(long / 2)))
        for (let s = 0; s <= n; s++) {
          const x = line[k]! + ((line[k + 2]! - line[k]!) * s) / n
          const y = line[k + 1]! + ((line[k + 3]! - line[k + 1]!) * s) / n
          if (inside(outline, x, y)) out.push([x, y])
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

/** Least area that counts as meeting, mm². */
const MEET_MM2 = 0.5

function stonesMet(stack: Stack, removal: Removal): CutCover['stones'] {
  const out: { pour: number; entry: number; mm: number; x: number; y: number }[] = []
  const { geometry: g, piece } = stack
  piece.pours.forEach((pour, p) => {
    const level = stack.pours[p]!
    pour.stones.forEach((stones, entry) => {
      const meet = (from: number, to: number, zone: Region | null) => {
        const deep =
          removal.side === 'low' ? Math.min(to, removal.floor) - from : to - Math.max(from, removal.floor)
        if (!(deep > 1e-6)) return
        const z =
          removal.side === 'low' ? Math.max(from, stack.finishedLow) : Math.min(to, stack.finishedHigh)
        const plan = removal.region ?? removalAt(removal, removal.side === 'low' ? z : z)
        const shared = intersection(intersection(plan, g.outline), zone ?? openPlan(stack))
        if (area(shared) < MEET_MM2) return
        const b = bounds(shared)
        out.push({
          pour: p,
          entry,
          mm: Math.min(deep, to - from),
          x: (b.minX + b.maxX) / 2,
          y: (b.minY + b.maxY) / 2
        })
      }
      if (stones.placed !== undefined) {
        for (const s of stones.placed) {
          const foot = s.height ?? level.floor
          const r = Math.max(s.size[0], s.size[1]) / 2
          const disc: Region = {
            rings: [
              Float64Array.from({ length: 32 }, (_, i) =>
                i % 2 === 0
                  ? s.at[0] + r * Math.cos((i * Math.PI) / 16)
                  : s.at[1] + r * Math.sin(((i - 1) * Math.PI) / 16)
              )
            ]
          }
          meet(foot, foot + s.size[2], disc)
        }
      } else {
        meet(
          stones.from ?? level.floor,
          stones.to ?? level.level,
          g.zones[p]![entry] ?? g.pourRegions[p] ?? null
        )
      }
    })
  })
  return out
}

// Where no timber lies, seen from above.
function openPlan(stack: Stack): Region {
  return stack.geometry.timbers.reduce((rest, t) => difference(rest, t.upper), stack.geometry.mould)
}
