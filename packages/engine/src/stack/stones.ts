import type { Pour } from '../piece/piece-schema.ts'
import { intersection } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import type { StackEvent } from './event.ts'
import type { FreeSpace } from './free.ts'
import { freeSpace } from './free.ts'
import type { Geometry } from './geometry.ts'
import type { PourFacts } from './stack.ts'

/** What the stones of a pour take of its space. */
export interface StonesVolume {
  /** Solid volume below z, mm³, when the pour stands at `level` after cure. */
  below(z: number, level: number): number
  /** Growth of it with z where z is the level, mm² (placed stones left out: they are small). */
  slope(z: number): number
}

/**
 * The volume of the stones of a pour: zones by their solid share of what is open in them, single ones by their
 * volume, sunk as ellipsoids are.
 *
 * Limits: single stones are taken to lie clear of timbers and of each other.
 */
export function stonesOf(
  space: FreeSpace,
  index: number,
  pour: Pour,
  facts: PourFacts,
  g: Geometry,
  events: readonly StackEvent[],
  region: Region | null
): StonesVolume {
  const { floor } = space
  const single = pour.stones.flatMap(s => s.placed ?? [])
  const zones = pour.stones.flatMap((s, j) => {
    if (s.placed !== undefined) return []
    const zone = g.zones[index]![j]!
    const open = zone === null ? space : freeSpace(g, events, intersection(zone, region ?? g.mould), 0)
    return [{ open, fill: facts.stonesFill[j]!, from: Math.max(floor, s.from ?? floor), to: s.to }]
  })
  return {
    below: (z, level) => {
      let sum = 0
      for (const { open, fill, from, to } of zones) {
        const top = Math.min(z, level, to ?? level)
        if (top > from) sum += fill * (open.volumeTo(top) - open.volumeTo(from))
      }
      for (const s of single)
        sum += (s.volume ?? ellipsoidMl(s.size)) * 1000 * sunk((z - (s.height ?? floor)) / s.size[2])
      return sum
    },
    slope: z => {
      let sum = 0
      for (const { open, fill, from, to } of zones)
        if (z > from && z <= (to ?? z)) sum += fill * open.areaAt(z)
      return sum
    }
  }
}

/** Volume of an ellipsoid of three axes, ml: π/6·a·b·c. */
function ellipsoidMl([a, b, c]: readonly [number, number, number]): number {
  return ((Math.PI / 6) * a * b * c) / 1000
}

/** Share of an ellipsoid below a level at share x of its height: 3x² − 2x³ (spherical cap). */
function sunk(x: number): number {
  const t = Math.min(1, Math.max(0, x))
  return t * t * (3 - 2 * t)
}
