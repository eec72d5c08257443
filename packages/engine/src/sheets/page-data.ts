import type { Region } from '../shape/region.ts'
import type { Removal, StackEvent } from '../stack/event.ts'
import type { Loft } from '../stack/loft.ts'
import type { Geometry } from '../stack/shapes.ts'
import type { Solid } from '../stack/solid.ts'
import type { Top } from '../stack/top.ts'
import type { CoreModel } from './core-model.ts'

/**
 * What the page's script reads: the core model as plain JSON, both ways in one file so that they stay each
 * other's inverse.
 *
 * - Rings and lines are whole numbers of 1e-5 mm, the first point and then steps: [x0, y0, dx, dy, ...]. A page
 *   so differs from the engine by less than 1e-5 mm in the place of an edge, and by nothing in a height.
 * - Heights stay as they are; those without end are "inf" and "-inf".
 * - A side of a timber keeps its stitching (which ring each step of the walk advances on), so that it is the
 *   same strip of triangles.
 */
export interface PageData {
  readonly model: unknown
  /** Where the pointer stands first, mm on the plan. */
  readonly pointer: readonly [number, number]
  /** Drawings the pointer moves over: the wide and the narrow one. */
  readonly views: readonly PageView[]
  /** Sizes of what is drawn at the pointer, mm. */
  readonly strip: { readonly widthMm: number; readonly heightMm: number }
  readonly patchMm: number
  readonly across: { readonly widthMm: number; readonly heightMm: number }
}

/** How the piece lies on a drawing of the page. */
export interface PageView {
  readonly id: 'wide' | 'narrow'
  readonly face: 'front' | 'back'
  readonly scale: number
  readonly originX: number
  readonly originY: number
  readonly widthMm: number
  readonly heightMm: number
}

const STEPS_PER_MM = 100_000

type Flat = readonly number[]
type Height = number | 'inf' | '-inf'

function flat(points: Float64Array): Flat {
  const out: number[] = []
  let px = 0
  let py = 0
  for (let k = 0; k < points.length; k += 2) {
    const x = Math.round(points[k]! * STEPS_PER_MM)
    const y = Math.round(points[k + 1]! * STEPS_PER_MM)
    out.push(x - px, y - py)
    px = x
    py = y
  }
  return out
}

function full(steps: Flat): Float64Array {
  const out = new Float64Array(steps.length)
  let x = 0
  let y = 0
  for (let k = 0; k < steps.length; k += 2) {
    x += steps[k]!
    y += steps[k + 1]!
    out[k] = x / STEPS_PER_MM
    out[k + 1] = y / STEPS_PER_MM
  }
  return out
}

const rings = (region: Region | null): readonly Flat[] | null =>
  region === null ? null : region.rings.map(flat)
const region = (list: readonly Flat[]): Region => ({ rings: list.map(full) })
const height = (z: number): Height => (Number.isFinite(z) ? z : z > 0 ? 'inf' : '-inf')
const number = (z: Height): number =>
  z === 'inf' ? Number.POSITIVE_INFINITY : z === '-inf' ? Number.NEGATIVE_INFINITY : z

interface RemovalData {
  readonly side: Removal['side']
  readonly floor: Height
  readonly region: readonly Flat[] | null
  readonly lines: readonly Flat[] | null
  readonly profile: Removal['profile']
  readonly under?: { readonly region: readonly Flat[]; readonly roof: Height }
  readonly flare?: NonNullable<Removal['flare']>
}

interface LoftData {
  readonly lower: Flat
  readonly upper: Flat
  /** Upper point the walk starts at. */
  readonly start: number
  /** One sign a step of the walk: "1" when it advances on the lower ring. */
  readonly walk: string
  readonly area: Loft['area']
}

interface SolidData extends Omit<Solid, 'upper' | 'lower' | 'lofts' | 'top'> {
  readonly upper: readonly Flat[]
  /** null: the same as the upper edge. */
  readonly lower: readonly Flat[] | null
  readonly lofts: readonly LoftData[] | null
  readonly top: unknown
}

interface ModelData extends Omit<CoreModel, 'geometry' | 'events'> {
  readonly outline: readonly Flat[]
  readonly mould: readonly Flat[]
  readonly formerShapes: readonly { region: readonly Flat[]; from: number; to: number | null }[]
  readonly solids: readonly SolidData[]
  readonly events: readonly unknown[]
}

/** A core model as plain data: `JSON.stringify` and back loses nothing of it. */
export function modelData(model: CoreModel): unknown {
  const { geometry: g, events, ...rest } = model
  const data: ModelData = {
    ...rest,
    outline: g.outline.rings.map(flat),
    mould: g.mould.rings.map(flat),
    formerShapes: g.formers.map(f => ({ region: f.region.rings.map(flat), from: f.from, to: f.to })),
    solids: g.timbers.map(solidData),
    events: events.map(eventData)
  }
  return data
}

/** The core model again; lists that a core does not ask for are empty. */
export function modelFrom(data: unknown): CoreModel {
  const { outline, mould, formerShapes, solids, events, ...rest } = data as ModelData
  const geometry: Geometry = {
    outline: region(outline),
    mould: region(mould),
    formers: formerShapes.map(f => ({ ...f, region: region(f.region) })),
    timbers: solids.map(solidFrom),
    pourRegions: [],
    zones: [],
    cutRegions: [],
    idleIslands: [],
    cutLines: [],
    markingLines: [],
    keepClear: []
  }
  return { ...rest, geometry, events: events.map(eventFrom) }
}

function solidData(s: Solid): SolidData {
  return {
    ...s,
    upper: s.upper.rings.map(flat),
    lower: s.lofts === null ? null : rings(s.lower),
    lofts: s.lofts === null ? null : s.lofts.map(loftData),
    top: s.top.kind === 'grid' ? { ...s.top, rises: [...s.top.rises] } : s.top
  }
}

function solidFrom(d: SolidData): Solid {
  const upper = region(d.upper)
  const top = d.top as Top
  return {
    ...d,
    upper,
    lower: d.lower === null ? upper : region(d.lower),
    lofts: d.lofts === null ? null : d.lofts.map(loftFrom),
    top: top.kind === 'grid' ? { ...top, rises: Float64Array.from(top.rises) } : top
  }
}

function loftData(l: Loft): LoftData {
  const n = l.lower.length / 2
  let walk = ''
  for (let k = 0; k + 1 < l.i.length; k++) walk += l.i[k + 1] === (l.i[k]! + 1) % n ? '1' : '0'
  return { lower: flat(l.lower), upper: flat(l.upper), start: l.j[0] ?? 0, walk, area: l.area }
}

function loftFrom(d: LoftData): Loft {
  const lower = full(d.lower)
  const upper = full(d.upper)
  const n = lower.length / 2
  const m = upper.length / 2
  const i = new Int32Array(d.walk.length + 1)
  const j = new Int32Array(d.walk.length + 1)
  j[0] = d.start
  for (let k = 0; k < d.walk.length; k++) {
    const onLower = d.walk[k] === '1'
    i[k + 1] = onLower ? (i[k]! + 1) % n : i[k]!
    j[k + 1] = onLower ? j[k]! : (j[k]! + 1) % m
  }
  return { lower, upper, i, j, area: d.area }
}

function removalData(r: Removal): RemovalData {
  return {
    side: r.side,
    floor: height(r.floor),
    region: rings(r.region),
    lines: r.lines === null ? null : r.lines.map(flat),
    profile: r.profile,
    ...(r.flare === undefined ? {} : { flare: r.flare }),
    ...(r.under === undefined
      ? {}
      : { under: { region: r.under.region.rings.map(flat), roof: height(r.under.roof) } })
  }
}

function removalFrom(d: RemovalData): Removal {
  return {
    side: d.side,
    floor: number(d.floor),
    region: d.region === null ? null : region(d.region),
    lines: d.lines === null ? null : d.lines.map(full),
    profile: d.profile,
    ...(d.flare === undefined ? {} : { flare: d.flare }),
    ...(d.under === undefined
      ? {}
      : { under: { region: region(d.under.region), roof: number(d.under.roof) } })
  }
}

function eventData(e: StackEvent): unknown {
  switch (e.kind) {
    case 'pour':
    case 'flood':
      return { ...e, region: rings(e.region) }
    case 'cut':
    case 'mark':
      return { ...e, removal: removalData(e.removal) }
    case 'fill':
      return { ...e, removals: e.removals.map(removalData) }
    default:
      return e
  }
}

type EventData = StackEvent & { region?: unknown; removal?: unknown; removals?: unknown }

function eventFrom(data: unknown): StackEvent {
  const e = data as EventData
  switch (e.kind) {
    case 'pour':
    case 'flood':
      return { ...e, region: e.region === null ? null : region(e.region as unknown as Flat[]) }
    case 'cut':
    case 'mark':
      return { ...e, removal: removalFrom(e.removal as unknown as RemovalData) }
    case 'fill':
      return { ...e, removals: (e.removals as unknown as RemovalData[]).map(removalFrom) }
    default:
      return e
  }
}
