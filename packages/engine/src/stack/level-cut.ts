import { difference, union } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import type { Material, StackEvent } from './event.ts'
import { removalAt, removalsAt, tapers } from './event.ts'
import type { Geometry } from './geometry.ts'
import { gauss, sectionAt } from './solid.ts'

/** What lies at one height: each material with its region. Regions of different materials do not overlap. */
export type LevelCut = readonly { readonly material: Material; readonly region: Region }[]

/** The stack after `events`, cut level at z. */
export function levelCut(g: Geometry, events: readonly StackEvent[], z: number): LevelCut {
  let parts: { material: Material; region: Region }[] = []
  const add = (material: Material, region: Region) => {
    const open = parts.length === 0 ? region : difference(region, union(...parts.map(p => p.region)))
    if (open.rings.length > 0) parts.push({ material, region: open })
  }
  const take = (region: Region) => {
    if (region.rings.length === 0) return
    parts = parts
      .map(p => ({ material: p.material, region: difference(p.region, region) }))
      .filter(p => p.region.rings.length > 0)
  }
  for (const e of events) {
    switch (e.kind) {
      case 'timber': {
        const region = sectionAt(g.timbers[e.index]!, z)
        if (region.rings.length > 0) parts.push({ material: { kind: 'timber', index: e.index }, region })
        break
      }
      case 'former':
        if (z >= e.from && z < e.to) add({ kind: 'former', index: e.index }, g.formers[e.index]!.region)
        break
      case 'demould':
        parts = parts.filter(p => p.material.kind !== 'former')
        break
      case 'pour':
        if (z >= 0 && z < e.to) add({ kind: 'pour', index: e.index }, e.region ?? g.mould)
        break
      case 'trim':
        if (e.side === 'low' ? z < e.z : z >= e.z) parts = []
        break
      case 'cut':
      case 'mark':
        if (parts.length > 0) take(removalAt(e.removal, z))
        break
      case 'fill':
        if (e.side === 'low' ? z >= e.z : z < e.z)
          add({ kind: e.what, index: e.index }, removalsAt(e.removals, z))
        break
      case 'flood':
        if (z >= e.from && z < e.to) add({ kind: 'pour', index: e.index }, e.region ?? g.outline)
        break
    }
  }
  return parts
}

/** Heights at which level cuts change abruptly, sorted, each once. Between two of them they change smoothly. */
export function breaksOf(g: Geometry, events: readonly StackEvent[]): number[] {
  const out = new Set<number>([0])
  for (const e of events) {
    switch (e.kind) {
      case 'timber': {
        const t = g.timbers[e.index]!
        for (const z of [t.base, t.edge, t.low, t.high]) out.add(z)
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
        if (Number.isFinite(removal.floor)) out.add(removal.floor)
        // A round groove stops widening at its radius.
        if (removal.profile?.kind === 'round') {
          out.add(
            removal.side === 'low'
              ? removal.floor - removal.profile.widthMm / 2
              : removal.floor + removal.profile.widthMm / 2
          )
        }
        break
      }
      case 'fill':
        out.add(e.z)
        break
      case 'flood':
        out.add(e.from).add(e.to)
        break
    }
  }
  return [...out].filter(Number.isFinite).sort((a, b) => a - b)
}

/** Whether level cuts change between z0 and z1 (no break lies between them). */
function changes(g: Geometry, events: readonly StackEvent[], z0: number, z1: number): boolean {
  const mid = (z0 + z1) / 2
  return events.some(e => {
    if (e.kind === 'timber') {
      const t = g.timbers[e.index]!
      return mid > t.base && mid < t.high && (mid > t.low || (t.lofts !== null && mid < t.edge))
    }
    if (e.kind === 'cut' || e.kind === 'mark') {
      const s = e.removal.side === 'low' ? e.removal.floor - mid : mid - e.removal.floor
      return s > 0 && tapers(e.removal)
    }
    return false
  })
}

/**
 * ∫ of something measured on level cuts, from z0 to z1, mm times its unit. Prisms are taken in one step; where
 * cuts change with height, two panels of five Gauss points a stretch (exact for slanted sides).
 */
export function integrate(
  g: Geometry,
  events: readonly StackEvent[],
  z0: number,
  z1: number,
  of: (z: number) => number
): number {
  const stops = [z0, ...breaksOf(g, events).filter(z => z > z0 && z < z1), z1]
  let sum = 0
  for (let k = 0; k + 1 < stops.length; k++) {
    const a = stops[k]!
    const b = stops[k + 1]!
    if (b - a < 1e-9) continue
    sum += changes(g, events, a, b) ? gauss(of, a, b, 2) : (b - a) * of((a + b) / 2)
  }
  return sum
}

/** What is open at height z inside a region: neither timber nor former nor earlier resin. */
export function openAt(g: Geometry, events: readonly StackEvent[], region: Region, z: number): Region {
  const parts = levelCut(g, events, z)
  return parts.length === 0 ? region : difference(region, union(...parts.map(p => p.region)))
}

/** Area of what is open at height z, mm². */
export function openArea(g: Geometry, events: readonly StackEvent[], region: Region, z: number): number {
  const open = openAt(g, events, region, z)
  return open === EMPTY ? 0 : area(open)
}
