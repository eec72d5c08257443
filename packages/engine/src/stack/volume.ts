import { intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Material } from './event.ts'
import type { Geometry } from './geometry.ts'
import { levelCut, levelsBetween } from './level-cut.ts'
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
  const within = withinOutline(g)
  const events = stack.events.map(e => (e.kind === 'pour' ? { ...e, region: within(e.region) } : e))
  // Resin over the whole mould is taken over the outline only: there is less to clip afterwards.
  const inner: Geometry = { ...g, mould: g.outline }
  const sums = new Map<string, number>()
  for (const { at, weight } of levelsBetween(g, stack.events, finishedLow, finishedHigh)) {
    for (const { material, region } of levelCut(inner, events, at)) {
      const key = materialKey(material)
      sums.set(key, (sums.get(key) ?? 0) + weight * area(within(region) ?? g.outline))
    }
  }
  const out = new Map<string, number>()
  for (const [key, mm3] of sums) if (mm3 > 0) out.set(key, mm3 / 1000)
  return out
}

// What of a region lies in the outline (null stays null: all of it). Level cuts share regions: each is clipped once.
function withinOutline(g: Geometry): (region: Region | null) => Region | null {
  const known = new Map<Region, Region>()
  return region => {
    if (region === null) return null
    let inside = known.get(region)
    if (inside === undefined) {
      inside = intersection(region, g.outline)
      known.set(region, inside)
    }
    return inside
  }
}

/** Mass of the bare piece, g: volumes times the density of each material, g/ml. */
export function massOf(volumes: Volumes, densityGMl: (key: string) => number): number {
  let sum = 0
  for (const [key, ml] of volumes) sum += ml * densityGMl(key)
  return sum
}
