import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { ClipMemo } from './clip-memo.ts'
import { clipMemo } from './clip-memo.ts'
import type { Material, StackEvent } from './event.ts'
import { tapers } from './event.ts'
import type { Geometry } from './geometry.ts'
import type { Sample } from './sample.ts'
import { levelSamples } from './sample.ts'
import { sectionAt } from './solid.ts'

/** What lies at one height: each material with its region. Regions of different materials do not overlap. */
export type LevelCut = readonly { readonly material: Material; readonly region: Region }[]

/**
 * The stack after `events`, cut level at z.
 *
 * Plays the events on plane regions. Removals are gathered and taken off together, and a layer that comes where
 * the whole mould is full already is passed over. Pass one `memo` for all cuts of a stack: what does not change
 * with height is then clipped once.
 */
export function levelCut(
  g: Geometry,
  events: readonly StackEvent[],
  z: number,
  memo: ClipMemo = clipMemo()
): LevelCut {
  let parts: { material: Material; region: Region }[] = []
  let removals: Region[] = []
  let full = false
  const settle = () => {
    if (removals.length === 0) return
    const away = removals
    removals = []
    parts = parts
      .map(p => ({ material: p.material, region: memo.difference(p.region, away) }))
      .filter(p => p.region.rings.length > 0)
  }
  const add = (material: Material, region: Region) => {
    settle()
    if (full || region.rings.length === 0) return
    const open = memo.difference(
      region,
      parts.map(p => p.region)
    )
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
        const away = memo.removal(e.removal, z)
        if (away.rings.length === 0) break
        removals.push(away)
        full = false
        break
      }
      case 'fill':
        if (e.side === 'low' ? z >= e.z : z < e.z)
          add({ kind: e.what, index: e.index }, memo.removals(e.removals, z))
        break
      case 'flood':
        if (z >= e.from && z < e.to) add({ kind: 'pour', index: e.index }, e.region ?? g.outline)
        break
    }
  }
  settle()
  return parts
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
        if (removal.under !== undefined) out.add(removal.under.roof)
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

/** Heights and weights (mm) that integrate what is measured on level cuts from z0 to z1 (see {@link levelSamples}). */
export function levelsBetween(g: Geometry, events: readonly StackEvent[], z0: number, z1: number): Sample[] {
  const stops = [z0, ...breaksOf(g, events).filter(z => z > z0 && z < z1), z1]
  const bodies = events.flatMap(e => (e.kind === 'timber' ? [g.timbers[e.index]!] : []))
  const grooves = events.flatMap(e =>
    (e.kind === 'cut' || e.kind === 'mark') && tapers(e.removal) ? [e.removal] : []
  )
  const out: Sample[] = []
  for (let k = 0; k + 1 < stops.length; k++) {
    const a = stops[k]!
    const b = stops[k + 1]!
    if (b - a < 1e-9) continue
    const mid = (a + b) / 2
    const curved = grooves.some(r => (r.side === 'low' ? r.floor > mid : mid > r.floor))
    out.push(...levelSamples(bodies, a, b, curved))
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

/** What is open at height z inside a region: no material is there. */
function openAt(
  g: Geometry,
  events: readonly StackEvent[],
  region: Region,
  z: number,
  memo: ClipMemo = clipMemo()
): Region {
  return memo.difference(
    region,
    levelCut(g, events, z, memo).map(p => p.region)
  )
}

/** Area of what is open at height z, mm². */
export function openArea(
  g: Geometry,
  events: readonly StackEvent[],
  region: Region,
  z: number,
  memo: ClipMemo = clipMemo()
): number {
  return area(openAt(g, events, region, z, memo))
}
