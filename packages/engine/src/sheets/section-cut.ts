import { inside } from '../shape/measure.ts'
import { coreAt } from '../stack/core.ts'
import type { Material } from '../stack/event.ts'
import type { CoreModel } from './core-model.ts'
import type { Interval, SectionColumn, Station } from './section-column.ts'
import { addColumn, BREAK_MM } from './section-column.ts'

/**
 * A vertical cut through the stack along a stepped line. Each leg runs along x or along y; the steps between
 * legs take no room: places on the section are the coordinate along the legs, so that it stands true under the
 * plan.
 */
export interface SectionLeg {
  /** From and to along the section, mm on the plan; from < to. */
  readonly from: number
  readonly to: number
  /** The other coordinate, where the leg lies. */
  readonly at: number
}

export interface SectionPath {
  readonly along: 'x' | 'y'
  readonly legs: readonly SectionLeg[]
}

/**
 * A stretch of one material in the section: a ring of (place along the section, height as cast). null: a void.
 * Its lower and upper edges are lines of the drawing; its ends are only where `walls` says, since the same
 * material often goes on beside it.
 */
export interface SectionArea {
  readonly material: Material | null
  readonly ring: Float64Array
  readonly low: Float64Array
  readonly high: Float64Array
  readonly leg: number
}

/** An upright edge between two materials, or at an end of the piece. */
export interface SectionWall {
  readonly at: number
  readonly from: number
  readonly to: number
}

export interface Section {
  readonly path: SectionPath
  readonly areas: readonly SectionArea[]
  readonly walls: readonly SectionWall[]
  readonly columns: readonly SectionColumn[]
}

/** How far from a break a core is looked at, mm. */
const ASIDE_MM = 1e-4

/**
 * Cuts the stack along a path. Cores are taken on both sides of every place where the line crosses an edge of a
 * region (computed), and at steps of `stepMm` between for what slants; where the order of materials still
 * changes within a step, the place is found by halving. So level layers and upright walls are exact, slanted
 * and curved ones are chords of `stepMm`.
 */
export function sectionOf(model: CoreModel, path: SectionPath, stepMm: number): Section {
  const areas: SectionArea[] = []
  const columns: SectionColumn[] = []
  const walls: SectionWall[] = []
  path.legs.forEach((leg, legIndex) => {
    const point = (s: number): [number, number] => (path.along === 'x' ? [s, leg.at] : [leg.at, s])
    const station = (s: number, from: number): Station => {
      const parts = partsAt(model, ...point(from))
      return { at: s, parts, key: keyOf(parts) }
    }
    const stops = stopsOf(model, path, leg, stepMm)
    const open: Open = { at: leg.from, key: '', last: [], bands: [] }
    const close = () => {
      for (const b of open.bands) {
        const [low, high] = [straightened(b.low), straightened(b.high)]
        areas.push({ material: b.material, ring: ringOf(low, high), low, high, leg: legIndex })
      }
      open.bands = []
    }
    // At a step of the line nothing ends: only the ends of the whole section are walls.
    const first = legIndex === 0
    const strip = (a: Station, b: Station) => {
      if (open.bands.length > 0 || first) addWalls(walls, a.at, open.last, a.parts)
      if (a.key !== open.key || Math.abs(a.at - open.at) > BREAK_MM) {
        close()
        open.bands = a.parts.map(p => ({ material: p.material, low: [a.at, p.from], high: [a.at, p.to] }))
      } else {
        a.parts.forEach((p, i) => {
          open.bands[i]!.low.push(a.at, p.from)
          open.bands[i]!.high.push(a.at, p.to)
        })
      }
      b.parts.forEach((p, i) => {
        open.bands[i]!.low.push(b.at, p.from)
        open.bands[i]!.high.push(b.at, p.to)
      })
      open.key = b.key
      open.at = b.at
      open.last = b.parts
      addColumn(columns, a, b, legIndex)
    }
    // Halves a stretch until both its ends hold the same materials, or it is as short as a break.
    const cell = (a: Station, b: Station, depth: number) => {
      if (a.key === b.key) {
        strip(a, b)
      } else if (b.at - a.at > BREAK_MM && depth < 40) {
        const middle = (a.at + b.at) / 2
        const m = station(middle, middle)
        cell(a, m, depth + 1)
        cell(m, b, depth + 1)
      } else {
        const middle = (a.at + b.at) / 2
        strip(a, { ...a, at: middle })
        strip({ ...b, at: middle }, b)
      }
    }
    for (let k = 0; k + 1 < stops.length; k++) {
      const [s0, s1] = [stops[k]!, stops[k + 1]!]
      const aside = Math.min(ASIDE_MM, (s1 - s0) / 4)
      cell(station(s0, s0 + aside), station(s1, s1 - aside), 0)
    }
    if (legIndex === path.legs.length - 1) addWalls(walls, leg.to, open.last, [])
    close()
  })
  return { path, areas: areas.filter(a => a.ring.length >= 6), walls, columns }
}

interface Open {
  at: number
  key: string
  last: readonly Interval[]
  bands: { material: Material | null; low: number[]; high: number[] }[]
}

function partsAt(model: CoreModel, x: number, y: number): Interval[] {
  if (!inside(model.geometry.outline, x, y)) return []
  const out: Interval[] = []
  let at = model.finishedLow
  const gap = (to: number) => {
    if (to - at > 1e-9) out.push({ from: at, to, material: null })
  }
  for (const c of coreAt(model.geometry, model.events, x, y)) {
    gap(c.from)
    out.push(c)
    at = Math.max(at, c.to)
  }
  gap(model.finishedHigh)
  return out
}

function keyOf(parts: readonly Interval[]): string {
  return parts.map(p => (p.material === null ? '-' : `${p.material.kind[0]}${p.material.index}`)).join(' ')
}

// Upright edges where two stations at one place hold different materials at a height, one of them solid.
function addWalls(
  walls: SectionWall[],
  at: number,
  left: readonly Interval[],
  right: readonly Interval[]
): void {
  const heights = [...new Set([...left, ...right].flatMap(p => [p.from, p.to]))].sort((p, q) => p - q)
  const name = (parts: readonly Interval[], z: number) => {
    const m = parts.find(p => p.from < z && z < p.to)?.material
    return m === null || m === undefined ? '' : `${m.kind}${m.index}`
  }
  let open: { from: number; to: number } | null = null
  for (let k = 0; k + 1 < heights.length; k++) {
    const [from, to] = [heights[k]!, heights[k + 1]!]
    const differs = to - from > 1e-6 && name(left, (from + to) / 2) !== name(right, (from + to) / 2)
    if (differs && open !== null) open.to = to
    else if (differs) open = { from, to }
    else if (open !== null) {
      walls.push({ at, ...open })
      open = null
    }
  }
  if (open !== null) walls.push({ at, ...open })
}

// An edge with the points left out that lie on a straight line between their neighbours.
function straightened(points: readonly number[]): Float64Array {
  const out: [number, number][] = []
  for (let k = 0; k < points.length; k += 2) {
    const [s, z] = [points[k]!, points[k + 1]!]
    const last = out[out.length - 1]
    if (last !== undefined && Math.abs(last[0] - s) < 1e-9 && Math.abs(last[1] - z) < 1e-9) continue
    const before = out[out.length - 2]
    if (last !== undefined && before !== undefined) {
      const turn = (last[0] - before[0]) * (z - last[1]) - (last[1] - before[1]) * (s - last[0])
      if (Math.abs(turn) < 1e-7) out.pop()
    }
    out.push([s, z])
  }
  return Float64Array.from(out.flat())
}

// Lower edge forth, upper edge back.
function ringOf(low: Float64Array, high: Float64Array): Float64Array {
  const back: number[] = []
  for (let k = high.length - 2; k >= 0; k -= 2) back.push(high[k]!, high[k + 1]!)
  const points = [...low, ...back]
  const out: number[] = []
  for (let k = 0; k < points.length; k += 2) {
    const n = out.length
    if (n > 0 && Math.abs(out[n - 2]! - points[k]!) < 1e-9 && Math.abs(out[n - 1]! - points[k + 1]!) < 1e-9)
      continue
    out.push(points[k]!, points[k + 1]!)
  }
  return Float64Array.from(out)
}

/** Places at which a leg is looked at: its ends, every crossing of an edge, steps between. Sorted, each once. */
function stopsOf(model: CoreModel, path: SectionPath, leg: SectionLeg, stepMm: number): number[] {
  const g = model.geometry
  const found: number[] = [leg.from, leg.to]
  const cross = (points: Float64Array, closed: boolean) => crossingsOf(points, closed, path, leg, found)
  const rings = (list: readonly Float64Array[]) => {
    for (const r of list) cross(r, true)
  }
  rings(g.outline.rings)
  for (const t of g.timbers) {
    rings(t.upper.rings)
    if (t.lofts !== null) rings(t.lower.rings)
  }
  for (const f of g.formers) rings(f.region.rings)
  for (const e of model.events) {
    if ((e.kind === 'pour' || e.kind === 'flood') && e.region !== null) rings(e.region.rings)
    if (e.kind !== 'cut' && e.kind !== 'mark') continue
    if (e.removal.region !== null) rings(e.removal.region.rings)
    if (e.removal.under !== undefined) rings(e.removal.under.region.rings)
    // The bottom of a groove; its sides are found by halving.
    for (const l of e.removal.lines ?? []) cross(l, false)
  }
  found.sort((a, b) => a - b)
  const out: number[] = []
  for (const s of found) {
    const last = out[out.length - 1]
    if (last === undefined) out.push(s)
    else if (s - last > 4 * ASIDE_MM) {
      const n = Math.ceil((s - last) / stepMm)
      for (let k = 1; k < n; k++) out.push(last + ((s - last) * k) / n)
      out.push(s)
    }
  }
  return out
}

function crossingsOf(
  points: Float64Array,
  closed: boolean,
  path: SectionPath,
  leg: SectionLeg,
  out: number[]
): void {
  const along = path.along === 'x' ? 0 : 1
  const n = points.length
  for (let k = closed ? 0 : 2, p = closed ? n - 2 : 0; k < n; p = k, k += 2) {
    const a = points[p + 1 - along]! - leg.at
    const b = points[k + 1 - along]! - leg.at
    if (a > 0 === b > 0 && a !== 0 && b !== 0) continue
    const sa = points[p + along]!
    const sb = points[k + along]!
    if (a === 0 && b === 0) {
      for (const s of [sa, sb]) if (s > leg.from && s < leg.to) out.push(s)
      continue
    }
    const s = sa + ((sb - sa) * a) / (a - b)
    if (s > leg.from && s < leg.to) out.push(s)
  }
}
