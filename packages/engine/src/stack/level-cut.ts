import { difference } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY, regionOfSound } from '../shape/region.ts'
import type { Material, StackEvent } from './event.ts'
import { removalAt, removalsAt, tapers } from './event.ts'
import type { Geometry } from './geometry.ts'
import type { Sample } from './solid.ts'
import { samplesOf, sectionAt } from './solid.ts'

/** What lies at one height: each material with its region. Regions of different materials do not overlap. */
export type LevelCut = readonly { readonly material: Material; readonly region: Region }[]

/**
 * The stack after `events`, cut level at z.
 *
 * Plays the events on plane regions. Removals are gathered and taken off together, and a layer that comes where
 * the whole mould is full already is passed over: clipping is what costs.
 */
export function levelCut(g: Geometry, events: readonly StackEvent[], z: number): LevelCut {
  let parts: { material: Material; region: Region }[] = []
  let removals: Region[] = []
  let full = false
  const settle = () => {
    if (removals.length === 0) return
    const away = together(removals)
    removals = []
    parts = parts
      .map(p => ({ material: p.material, region: difference(p.region, away) }))
      .filter(p => p.region.rings.length > 0)
  }
  const add = (material: Material, region: Region) => {
    settle()
    if (full || region.rings.length === 0) return
    const open = difference(region, together(parts.map(p => p.region)))
    if (open.rings.length > 0) parts.push({ material, region: open })
  }
  for (const e of events) {
    switch (e.kind) {
      case 'timber': {
        const region = sectionAt(g.timbers[e.index]!, z)
        // Timbers lie beside each other: only resin poured before one was set can be in its place.
        if (parts.some(p => p.material.kind === 'pour')) add({ kind: 'timber', index: e.index }, region)
        else if (region.rings.length > 0) parts.push({ material: { kind: 'timber', index: e.index }, region })
        break
      }
      case 'former':
        if (z >= e.from && z < e.to) add({ kind: 'former', index: e.index }, g.formers[e.index]!.region)
        break
      case 'demould':
        if (parts.some(p => p.material.kind === 'former')) full = false
        parts = parts.filter(p => p.material.kind !== 'former')
        break
      case 'pour':
        if (z < 0 || z >= e.to) break
        add({ kind: 'pour', index: e.index }, e.region ?? g.mould)
        if (e.region === null) full = true
        break
      case 'trim':
        if (e.side === 'low' ? z >= e.z : z < e.z) break
        parts = []
        removals = []
        full = false
        break
      case 'cut':
      case 'mark': {
        if (parts.length === 0) break
        const away = removalAt(e.removal, z)
        if (away.rings.length === 0) break
        removals.push(away)
        full = false
        break
      }
      case 'fill':
        if (e.side === 'low' ? z >= e.z : z < e.z)
          add({ kind: e.what, index: e.index }, removalsAt(e.removals, z))
        break
      case 'flood':
        if (z >= e.from && z < e.to) add({ kind: 'pour', index: e.index }, e.region ?? g.outline)
        break
    }
  }
  settle()
  return parts
}

/**
 * Several regions as one operand of a clip: their rings laid together. Where they overlap their winding numbers
 * add up and stay above zero, so clipping takes them as their union.
 */
function together(regions: readonly Region[]): Region {
  return regions.length === 1 ? regions[0]! : regionOfSound(regions.flatMap(r => r.rings))
}

/** Heights at which level cuts change abruptly, sorted, each once. Between two of them they change smoothly. */
export function breaksOf(g: Geometry, events: readonly StackEvent[]): number[] {
  const out = new Set<number>([0])
  for (const e of events) {
    switch (e.kind) {
      case 'timber': {
        const t = g.timbers[e.index]!
        for (const z of [t.base, t.edge, t.clear, t.low, t.high]) out.add(z)
        break
      }
      case 'former':
        out.add(e.from).add(e.to)
        break
      case 'pour':
        out.add(e.to)
        break
      case 'trim':
        out.add(e.z)
        break
      case 'cut':
      case 'mark': {
        const { removal } = e
        out.add(removal.floor)
        // A round groove stops widening at its radius.
        if (removal.profile?.kind === 'round') {
          const up = removal.side === 'low' ? -1 : 1
          out.add(removal.floor + (up * removal.profile.widthMm) / 2)
        }
        break
      }
      case 'fill':
        out.add(e.z)
        for (const r of e.removals) out.add(r.floor)
        break
      case 'flood':
        out.add(e.from).add(e.to)
        break
    }
  }
  return [...out].filter(z => Number.isFinite(z) && Math.abs(z) < FARTHEST_MM).sort((a, b) => a - b)
}

/** Heights beyond this are "open upward", mm. */
const FARTHEST_MM = 1e6

/** Whether level cuts are all alike between z0 and z1, no break lying between them. */
export function steady(g: Geometry, events: readonly StackEvent[], z0: number, z1: number): boolean {
  return changes(g, events, z0, z1) === 0
}

// How level cuts change between z0 and z1 (no break lies between them): not at all, smoothly, or with kinks.
function changes(g: Geometry, events: readonly StackEvent[], z0: number, z1: number): 0 | 1 | 2 {
  const mid = (z0 + z1) / 2
  let change: 0 | 1 | 2 = 0
  for (const e of events) {
    if (e.kind === 'timber') {
      const t = g.timbers[e.index]!
      if (!(mid > t.base && mid < t.high)) continue
      if (mid > t.clear && t.top.kind === 'grid') return 2
      if (mid > t.clear || (t.lofts !== null && mid < t.edge)) change = 1
    } else if (e.kind === 'cut' || e.kind === 'mark') {
      const s = e.removal.side === 'low' ? e.removal.floor - mid : mid - e.removal.floor
      if (s > 0 && tapers(e.removal)) change = 1
    }
  }
  return change
}

/** Panels of five samples where level cuts change smoothly, and where a measured top bends them at every point. */
const PANELS = [0, 1, 3] as const

/**
 * Heights and weights (mm) that integrate what is measured on level cuts from z0 to z1: one at the middle where
 * they do not change, panels of five where they do (exact for slanted sides, see {@link samplesOf}).
 */
export function levelsBetween(g: Geometry, events: readonly StackEvent[], z0: number, z1: number): Sample[] {
  const stops = [z0, ...breaksOf(g, events).filter(z => z > z0 && z < z1), z1]
  const out: Sample[] = []
  for (let k = 0; k + 1 < stops.length; k++) {
    const a = stops[k]!
    const b = stops[k + 1]!
    if (b - a < 1e-9) continue
    const change = changes(g, events, a, b)
    if (change === 0) out.push({ at: (a + b) / 2, weight: b - a })
    else out.push(...samplesOf(a, b, PANELS[change]))
  }
  return out
}

/** ∫ of something measured on level cuts, from z0 to z1, mm times its unit (see {@link levelsBetween}). */
export function integrate(
  g: Geometry,
  events: readonly StackEvent[],
  z0: number,
  z1: number,
  of: (z: number) => number
): number {
  let sum = 0
  for (const { at, weight } of levelsBetween(g, events, z0, z1)) sum += weight * of(at)
  return sum
}

/** What is open at height z inside a region: neither timber nor former nor earlier resin. */
export function openAt(g: Geometry, events: readonly StackEvent[], region: Region, z: number): Region {
  const taken = placedAt(g, events, z) ?? levelCut(g, events, z).map(p => p.region)
  return taken.length === 0 ? region : difference(region, together(taken))
}

// While nothing is cut away yet, all that was placed is taken as it is, without clipping one by another.
function placedAt(g: Geometry, events: readonly StackEvent[], z: number): Region[] | null {
  const out: Region[] = []
  for (const e of events) {
    if (e.kind === 'timber') out.push(sectionAt(g.timbers[e.index]!, z))
    else if (e.kind === 'former') {
      if (z >= e.from && z < e.to) out.push(g.formers[e.index]!.region)
    } else if (e.kind === 'pour') {
      if (z >= 0 && z < e.to) out.push(e.region ?? g.mould)
    } else return null
  }
  return out
}

/** Area of what is open at height z, mm². */
export function openArea(g: Geometry, events: readonly StackEvent[], region: Region, z: number): number {
  const open = openAt(g, events, region, z)
  return open === EMPTY ? 0 : area(open)
}
