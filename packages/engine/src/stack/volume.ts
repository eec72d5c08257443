import { intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Material } from './event.ts'
import { integrate, levelCut } from './level-cut.ts'
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
  const { geometry: g, events } = stack
  const out = new Map<string, number>()
  const keys = new Set<string>()
  const cache = new Map<number, ReadonlyMap<string, number>>()
  const areasAt = (z: number) => {
    let areas = cache.get(z)
    if (!areas) {
      const found = new Map<string, number>()
      for (const part of levelCut(g, events, z)) {
        const a = area(intersection(part.region, g.outline))
        if (a > 0) found.set(materialKey(part.material), a)
      }
      areas = found
      cache.set(z, areas)
    }
    for (const key of areas.keys()) keys.add(key)
    return areas
  }
  // The first pass visits every height the integral needs and collects which materials there are.
  integrate(g, events, stack.finishedLow, stack.finishedHigh, z => areasAt(z).size)
  for (const key of keys) {
    out.set(
      key,
      integrate(g, events, stack.finishedLow, stack.finishedHigh, z => cache.get(z)?.get(key) ?? 0) / 1000
    )
  }
  return out
}

/** Mass of the bare piece, g: volumes times the density of each material, g/ml. */
export function massOf(volumes: Volumes, densityGMl: (key: string) => number): number {
  let sum = 0
  for (const [key, ml] of volumes) sum += ml * densityGMl(key)
  return sum
}
