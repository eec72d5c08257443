import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { ClipMemo } from './clip-memo.ts'
import { clipMemo } from './clip-memo.ts'
import type { Material, StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'
import { levelCut, levelsBetween } from './level-cut.ts'
import { boxInside } from './placement.ts'
import { sectionArea, sectionAt } from './solid.ts'
import type { Stack } from './stack.ts'

/** Volumes of the finished piece by material, ml; keys are {@link materialKey}. */
export type Volumes = ReadonlyMap<string, number>

/** "timber 0", "pour 2", "marking 1". */
export function materialKey(m: Material): string {
  return `${m.kind} ${m.index}`
}

/**
 * Volume of each material inside the outline between the finished faces, cuts taken out, ml.
 * Level cuts of the finished stack, integrated over the height: exact for prisms and slanted sides.
 */
export function finishedVolumes(stack: Stack): Volumes {
  const { geometry: g, finishedLow, finishedHigh } = stack
  const memo = clipMemo()
  // Resin is taken over the outline only: there is less to clip.
  const inner: Geometry = { ...g, mould: g.outline }
  const events = stack.events.map(e =>
    (e.kind === 'pour' || e.kind === 'flood') && e.region !== null
      ? { ...e, region: memo.intersection(e.region, g.outline) }
      : e
  )
  const inOutline = g.timbers.map(t => boxInside(t.bounds, g.outline))
  const sums = new Map<string, number>()
  for (const { at, weight } of levelsBetween(g, stack.events, finishedLow, finishedHigh)) {
    const areas = areasOf(inner, events, at, memo, inOutline) ?? clippedAreas(stack, inner, events, at, memo)
    for (const [key, mm2] of areas) sums.set(key, (sums.get(key) ?? 0) + weight * mm2)
  }
  const out = new Map<string, number>()
  for (const [key, mm3] of sums) if (mm3 > 0) out.set(key, mm3 / 1000)
  return out
}

// Areas of the level cut itself.
function clippedAreas(
  stack: Stack,
  inner: Geometry,
  events: readonly StackEvent[],
  z: number,
  memo: ClipMemo
): Map<string, number> {
  const areas = new Map<string, number>()
  for (const { material, region } of levelCut(inner, events, z, memo)) {
    const cast = material.kind === 'pour' && stack.piece.pours[material.index]!.kind !== 'inlay'
    areas.set(materialKey(material), area(cast ? region : memo.intersection(region, inner.outline)))
  }
  return areas
}

/**
 * The same areas where nothing is filled in or laid on at that height, without drawing the resin round the
 * timbers: what is left of a pour's place after the cuts, less what is left of the timbers in it. Only sections
 * that change with height are then clipped anew. null where that does not hold.
 */
function areasOf(
  inner: Geometry,
  events: readonly StackEvent[],
  z: number,
  memo: ClipMemo,
  inOutline: readonly boolean[]
): Map<string, number> | null {
  let timbers: number[] = []
  let pours: { index: number; place: Region }[] = []
  let formers: Region[] = []
  let cuts: Region[] = []
  for (const e of events) {
    switch (e.kind) {
      case 'timber': {
        const t = inner.timbers[e.index]!
        if (z < t.base || z >= t.high) break
        if (pours.length > 0) return null
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
          const place = memo.difference(e.region ?? inner.outline, [...formers, ...pours.map(p => p.place)])
          if (place.rings.length > 0) pours.push({ index: e.index, place })
        }
        break
      case 'trim':
        if (e.side === 'low' ? z >= e.z : z < e.z) break
        timbers = []
        pours = []
        cuts = []
        break
      case 'cut':
      case 'mark': {
        const away = memo.removal(e.removal, z)
        if (away.rings.length > 0) cuts.push(away)
        break
      }
      case 'fill':
        if ((e.side === 'low' ? z >= e.z : z < e.z) && memo.removals(e.removals, z).rings.length > 0)
          return null
        break
      case 'flood':
        if (z >= e.from && z < e.to) return null
        break
    }
  }
  const areas = new Map<string, number>()
  const left = timbers.map(index => {
    const t = inner.timbers[index]!
    const region = () => {
      const section = sectionAt(t, z)
      return memo.difference(inOutline[index] ? section : memo.intersection(section, inner.outline), cuts)
    }
    // A timber that neither the outline nor a cut touches is not drawn at all.
    if (inOutline[index] && !memo.near(t.bounds, cuts)) return { region, mm2: sectionArea(t, z) }
    const drawn = region()
    return { region: () => drawn, mm2: area(drawn) }
  })
  timbers.forEach((index, k) => {
    areas.set(materialKey({ kind: 'timber', index }), left[k]!.mm2)
  })
  for (const { index, place } of pours) {
    const whole = place === inner.outline
    const taken = left.reduce(
      (sum, t) => sum + (whole ? t.mm2 : area(memo.intersection(t.region(), place))),
      0
    )
    areas.set(materialKey({ kind: 'pour', index }), area(memo.difference(place, cuts)) - taken)
  }
  return areas
}

/** Mass of the bare piece, g: volumes times the density of each material, g/ml. */
export function massOf(volumes: Volumes, densityGMl: (key: string) => number): number {
  let sum = 0
  for (const [key, ml] of volumes) sum += ml * densityGMl(key)
  return sum
}
