import { area, bounds } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import type { ClipMemo } from './clip-memo.ts'
import type { Removal, StackEvent } from './event.ts'
import { materialKey, tapers } from './event.ts'
import type { Geometry } from './geometry.ts'
import { groupsOf, lostArea } from './overlap.ts'
import { boxInside } from './placement.ts'
import type { Solid } from './solid.ts'
import { sectionArea, sectionAt, sectionOperand } from './solid.ts'

/** What one cut takes at one height, and how deep it reaches: larger is deeper; those that taper come last. */
interface LevelRemoval {
  readonly region: Region
  readonly reach: number
}

function reachOf(r: Removal): number {
  if (tapers(r)) return Number.NEGATIVE_INFINITY
  return r.side === 'low' ? r.floor : -r.floor
}

// Those that reach deepest are there at every level: then lists of different levels begin alike.
function deepestFirst(cuts: readonly LevelRemoval[]): Region[] {
  return [...cuts].sort((a, b) => (a.reach === b.reach ? 0 : b.reach - a.reach)).map(c => c.region)
}

/** A filling at one height: its place, and how many cuts had been made before it. */
interface Fill {
  readonly key: string
  readonly region: Region
  readonly box: Bounds
  readonly before: number
}

/**
 * Areas of the materials of a level cut inside the outline, mm², by {@link materialKey}, where nothing is laid on at that height and nothing filled but what was cut
 * for it, without drawing the resin round the timbers: what is left of a pour's place after the cuts, less what is left of the timbers in it. Only sections
 * that change with height are then clipped anew. null where that does not hold.
 */
export function levelAreas(
  inner: Geometry,
  events: readonly StackEvent[],
  z: number,
  memo: ClipMemo,
  inOutline: readonly boolean[]
): Map<string, number> | null {
  let timbers: number[] = []
  let pours: { index: number; place: Region }[] = []
  let formers: Region[] = []
  let cuts: LevelRemoval[] = []
  let gone = new Set<Removal>()
  let fills: Fill[] = []
  for (const e of events) {
    switch (e.kind) {
      case 'timber': {
        const t = inner.timbers[e.index]!
        if (z < t.base || z >= t.high) break
        if (pours.length > 0 || fills.length > 0) return null
        timbers.push(e.index)
        break
      }
      case 'former':
        if (z >= e.from && z < e.to) formers.push(inner.formers[e.index]!.region)
        break
      case 'demould':
        formers = []
        break
      case 'pour':
        if (z >= 0 && z < e.to) {
          if (fills.length > 0) return null
          const place = memo.difference(e.region ?? inner.outline, [...formers, ...pours.map(p => p.place)])
          if (place.rings.length > 0) pours.push({ index: e.index, place })
        }
        break
      case 'trim':
        if (e.side === 'low' ? z >= e.z : z < e.z) break
        timbers = []
        pours = []
        cuts = []
        gone = new Set()
        fills = []
        break
      case 'cut':
      case 'mark': {
        const away = memo.removal(e.removal, z)
        if (away.rings.length > 0) {
          cuts.push({ region: away, reach: reachOf(e.removal) })
          gone.add(e.removal)
        }
        break
      }
      case 'fill':
        if (e.side === 'low' ? z >= e.z : z < e.z) {
          const region = memo.removals(e.removals, z)
          if (region.rings.length === 0) break
          // It fills what its own cuts have emptied, and meets no other filling: then it stands there alone.
          const own = e.removals.every(r => gone.has(r) || memo.removal(r, z).rings.length === 0)
          const box = bounds(region)
          if (
            !own ||
            memo.near(
              box,
              fills.map(f => f.region)
            )
          )
            return null
          fills.push({ key: materialKey({ kind: e.what, index: e.index }), region, box, before: cuts.length })
        }
        break
      case 'flood':
        if (z >= e.from && z < e.to) return null
        break
    }
  }
  const areas = new Map<string, number>()
  for (const f of fills) {
    const inside = boxInside(f.box, inner.outline) ? f.region : memo.intersection(f.region, inner.outline)
    const later = groupsOf(deepestFirst(cuts.slice(f.before)), inner.outline, memo)
    const mm2 = area(inside) - lostArea(inside, later, memo)
    areas.set(f.key, (areas.get(f.key) ?? 0) + mm2)
  }
  const groups = groupsOf(deepestFirst(cuts), inner.outline, memo)
  const sections = timbers.map(index => {
    const t = inner.timbers[index]!
    const touched = memo.near(
      t.bounds,
      cuts.map(c => c.region)
    )
    // A timber that neither the outline nor a cut touches is not drawn at all.
    const drawn = touched || !inOutline[index] ? insideOf(t, z, inOutline[index]!, inner, memo) : null
    const mm2 = inOutline[index] ? sectionArea(t, z) : area(drawn!)
    return { index, drawn, mm2, left: touched ? mm2 - lostArea(drawn!, groups, memo) : mm2 }
  })
  for (const s of sections) areas.set(materialKey({ kind: 'timber', index: s.index }), s.left)
  for (const { index, place } of pours) {
    const whole = place === inner.outline
    // What is left of its place, less what is left of the timbers in it.
    let mm2 = area(place) - lostArea(place, groups, memo)
    for (const s of sections) {
      if (whole) mm2 -= s.left
      else if (memo.near(inner.timbers[s.index]!.bounds, [place])) {
        const inPlace = memo.intersection(
          s.drawn ?? insideOf(inner.timbers[s.index]!, z, inOutline[s.index]!, inner, memo),
          place
        )
        mm2 -= area(inPlace) - lostArea(inPlace, groups, memo)
      }
    }
    areas.set(materialKey({ kind: 'pour', index }), mm2)
  }
  return areas
}

function insideOf(t: Solid, z: number, whole: boolean, inner: Geometry, memo: ClipMemo): Region {
  return whole ? sectionAt(t, z) : memo.intersection(sectionOperand(t, z), inner.outline)
}
