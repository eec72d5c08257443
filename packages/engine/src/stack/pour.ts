import type { Pour } from '../piece/piece-schema.ts'
import { intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Side, StackEvent } from './event.ts'
import type { FreeSpace } from './free.ts'
import { freeSpace, levelFor } from './free.ts'
import type { Geometry } from './geometry.ts'
import { integrate, openAt } from './level-cut.ts'
import type { PourFacts, PourStack } from './stack.ts'

/** Highest level a pour given by mass may reach, mm: beyond it the mass is a mistake. */
const HIGHEST_MM = 2000

/**
 * A pour into the mould. Depth and height are what stands after cure; more is poured, by what the resin falls
 * as it cures: liquid = filled / (1 − fall). "Fill to timber" and a mass are what is poured; the level falls.
 */
export function castPour(
  index: number,
  pour: Pour,
  facts: PourFacts,
  g: Geometry,
  events: readonly StackEvent[],
  region: Region | null,
  gapMm3: number
): PourStack {
  const space = withStones(freeSpace(g, events, region, gapMm3), index, pour, facts, g, events, region)
  const kept = 1 - facts.levelFall
  let level: number
  let liquidMm3: number
  if (pour.depth !== undefined || pour.height !== undefined) {
    level = pour.height ?? space.floor + pour.depth!
    liquidMm3 = space.volumeTo(level) / kept
  } else if (pour.mass !== undefined) {
    liquidMm3 = (pour.mass / facts.densityGMl) * 1000
    level = levelFor(space, liquidMm3 * kept, HIGHEST_MM)
  } else {
    liquidMm3 = space.volumeTo(timberTop(g, events))
    level = levelFor(space, liquidMm3 * kept, HIGHEST_MM)
  }
  const liquidLevel = levelFor(space, liquidMm3, HIGHEST_MM)
  const bare = freeSpace(g, events, region, gapMm3)
  const filled = bare.volumeTo(level) / 1000
  return {
    index,
    floor: space.floor,
    liquidLevel,
    level,
    liquidDepth: Math.max(0, liquidLevel - space.floor),
    depth: Math.max(0, level - space.floor),
    liquidMl: liquidMm3 / 1000,
    filledMl: filled,
    stonesMl: filled - space.volumeTo(level) / 1000,
    massG: (liquidMm3 / 1000) * facts.densityGMl,
    surfaceMm2: bare.areaAt(Math.max(space.floor, level - 1e-6)),
    side: null
  }
}

/** The lowest timber top: a pour that goes higher runs over it. With no timber the floor stays dry. */
function timberTop(g: Geometry, events: readonly StackEvent[]): number {
  const tops = events.flatMap(e => (e.kind === 'timber' ? [g.timbers[e.index]!.low] : []))
  return tops.length === 0 ? 0 : Math.min(...tops)
}

// The space less what stones take of it.
function withStones(
  space: FreeSpace,
  index: number,
  pour: Pour,
  facts: PourFacts,
  g: Geometry,
  events: readonly StackEvent[],
  region: Region | null
): FreeSpace {
  if (pour.stones.length === 0) return space
  const taken = (z: number): number => {
    let sum = 0
    pour.stones.forEach((stones, j) => {
      if (stones.placed !== undefined) {
        for (const s of stones.placed) {
          const foot = s.height ?? space.floor
          sum += (s.volume ?? ellipsoidMl(s.size)) * 1000 * sunk((z - foot) / s.size[2])
        }
        return
      }
      const from = Math.max(space.floor, stones.from ?? space.floor)
      const to = Math.min(z, stones.to ?? z)
      if (to <= from) return
      const fill = facts.stonesFill[j]!
      const zone = g.zones[index]![j]!
      if (zone === null) {
        sum += fill * (space.volumeTo(to) - space.volumeTo(from))
      } else {
        const inside = intersection(zone, region ?? g.mould)
        sum += fill * integrate(g, events, from, to, at => area(openAt(g, events, inside, at)))
      }
    })
    return sum
  }
  return {
    floor: space.floor,
    areaAt: space.areaAt,
    volumeTo: z => Math.max(0, space.volumeTo(z) - taken(z))
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

/** An inlay: it fills cuts to the face. `volumeMm3` after cure. */
export function inlayPour(
  index: number,
  pour: Pour,
  facts: PourFacts,
  volumeMm3: number,
  depth: number,
  z: number,
  side: Side,
  surfaceMm2: number
): PourStack {
  const liquid =
    pour.mass === undefined ? volumeMm3 / 1000 / (1 - facts.levelFall) : pour.mass / facts.densityGMl
  const inward = side === 'low' ? 1 : -1
  return {
    index,
    floor: z + inward * depth,
    liquidLevel: z,
    level: z,
    liquidDepth: depth,
    depth,
    liquidMl: liquid,
    filledMl: volumeMm3 / 1000,
    stonesMl: 0,
    massG: liquid * facts.densityGMl,
    surfaceMm2,
    side
  }
}

/** A layer over an area: a flood over a face, or a seal coat. */
export function layerPour(
  index: number,
  pour: Pour,
  facts: PourFacts,
  areaMm2: number,
  side: Side | null,
  z: { from: number; to: number }
): PourStack {
  const thick = pour.depth ?? pour.height ?? 0
  const filled = (areaMm2 * thick) / 1000
  const liquid = pour.mass === undefined ? filled / (1 - facts.levelFall) : pour.mass / facts.densityGMl
  return {
    index,
    floor: side === 'low' ? z.to : z.from,
    liquidLevel: side === 'low' ? z.from : z.to,
    level: side === 'low' ? z.from : z.to,
    liquidDepth: thick / (1 - facts.levelFall),
    depth: thick,
    liquidMl: liquid,
    filledMl: filled,
    stonesMl: 0,
    massG: liquid * facts.densityGMl,
    surfaceMm2: areaMm2,
    side
  }
}
