import type { Pour } from '../piece/piece-schema.ts'
import { InputProblem } from '../piece/problem.ts'
import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import type { Side, StackEvent } from './event.ts'
import type { FreeSpace } from './free.ts'
import { freeSpace, levelFor, solveLevel } from './free.ts'
import type { Geometry } from './geometry.ts'
import type { PourFacts, PourStack } from './stack.ts'
import { stonesOf } from './stones.ts'

/** Highest level a pour given by mass may reach, mm: beyond it the mass is a mistake. */
const HIGHEST_MM = 2000

/**
 * A pour into the mould. Depth and height are what stands after cure; more is poured, by what the resin falls
 * as it cures. Stones keep their volume:
 *
 *   liquid·(1 − fall) = filled − stones
 *
 * "Fill to timber" and a mass are what is poured; the level falls. Stones that reach to "the level of the pour"
 * reach to its level after cure. A level that was measured stands in the place of what the document asks for.
 * @throws InputProblem for a mass that would stand above {@link HIGHEST_MM}, for a height at or under what stands
 * already, and for stones that leave no room
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
  const bare = freeSpace(g, events, region, 0)
  const { floor } = bare
  const space = withGap(bare, gapMm3)
  const stones = stonesOf(bare, index, pour, facts, g, events, region)
  const kept = 1 - facts.levelFall
  const slope = (z: number) => Math.max(1, space.areaAt(z) - stones.slope(z))
  let level: number
  let liquidMm3: number
  let liquidLevel: number | null = null
  const measured = facts.measuredMm ?? null
  const built = events.some(e => e.kind === 'pour' && e.built === true)
  // On a layer that was measured higher than it was planned nothing may be left to pour.
  if (measured === null && pour.height !== undefined && floor > 0 && pour.height <= floor && !built)
    throw below(index, pour.height, floor)
  // A height under what stands already is of something else; it is told, and not planned by.
  if (measured !== null && measured > floor) {
    level = measured
    liquidMm3 = Math.max(0, (space.volumeTo(level) - stones.below(level, level)) / kept)
  } else if (pour.depth !== undefined || pour.height !== undefined) {
    level = Math.max(floor, pour.height ?? floor + pour.depth!)
    liquidMm3 = (space.volumeTo(level) - stones.below(level, level)) / kept
  } else if (pour.mass !== undefined) {
    liquidMm3 = (pour.mass / facts.densityGMl) * 1000
    level = solveLevel(
      z => space.volumeTo(z) - stones.below(z, z),
      slope,
      liquidMm3 * kept,
      floor,
      HIGHEST_MM
    )
    if (!Number.isFinite(level)) throw tooMuch(index, pour.mass)
  } else {
    const top = Math.max(floor, timberTop(g, events, floor, region))
    liquidLevel = top
    level = solveLevel(
      z => space.volumeTo(z) - stones.below(z, z) + kept * stones.below(top, z),
      slope,
      kept * space.volumeTo(top),
      floor,
      HIGHEST_MM
    )
    liquidMm3 = space.volumeTo(top) - stones.below(top, level)
  }
  const stonesMm3 = stones.below(level, level)
  // A hair of slack: stones may fill a pour to its last drop.
  if (!(liquidMm3 >= -1e-6)) throw crowded(index, stonesMm3, space.volumeTo(level))
  liquidLevel ??=
    stonesMm3 === 0
      ? levelFor(space, liquidMm3, 2 * HIGHEST_MM)
      : solveLevel(
          z => space.volumeTo(z) - stones.below(z, level),
          z => space.areaAt(z),
          liquidMm3,
          floor,
          2 * HIGHEST_MM
        )
  if (!Number.isFinite(liquidLevel) || !Number.isFinite(level))
    throw crowded(index, stonesMm3, space.volumeTo(Math.min(level, HIGHEST_MM)))
  return {
    index,
    floor,
    liquidLevel,
    level,
    liquidDepth: liquidLevel - floor,
    depth: level - floor,
    liquidMl: liquidMm3 / 1000,
    filledMl: space.volumeTo(level) / 1000,
    stonesMl: stonesMm3 / 1000,
    massG: (liquidMm3 / 1000) * facts.densityGMl,
    surfaceMm2: space.areaAt(Math.max(floor, level - 1e-6)),
    side: null
  }
}

function withGap(space: FreeSpace, gapMm3: number): FreeSpace {
  return {
    floor: space.floor,
    areaAt: space.areaAt,
    volumeTo: z => (z <= space.floor ? 0 : space.volumeTo(z) + gapMm3)
  }
}

function below(index: number, heightMm: number, floorMm: number): InputProblem {
  return new InputProblem('piece', [
    {
      path: `/pours/${index}/height`,
      found: `${decimals(heightMm, 2)} mm as cast, below the one before, which stands at ${decimals(floorMm, 2)}`,
      allowed: 'a height above what stands already, or the depth of the layer',
      example: `"depth": ${decimals(heightMm, 2)}`
    }
  ])
}

function crowded(index: number, stonesMm3: number, spaceMm3: number): InputProblem {
  return new InputProblem('piece', [
    {
      path: `/pours/${index}/stones`,
      found: `stones of ${decimals(stonesMm3 / 1000, 1)} ml where the pour fills ${decimals(spaceMm3 / 1000, 1)} ml`,
      allowed: 'stones that leave room for resin between and over them',
      example: ''
    }
  ])
}

function tooMuch(index: number, massG: number): InputProblem {
  return new InputProblem('piece', [
    {
      path: `/pours/${index}/mass`,
      found: `${decimals(massG, 2)} g, which would stand more than ${HIGHEST_MM} mm high`,
      allowed: 'what the mould holds',
      example: ''
    }
  ])
}

/**
 * The lowest timber top that the pour can reach and that is not buried yet: a pour that goes higher runs over
 * it. Without one nothing is poured.
 */
function timberTop(g: Geometry, events: readonly StackEvent[], floor: number, region: Region | null): number {
  const tops = events.flatMap(e => {
    if (e.kind !== 'timber') return []
    const { low, upper } = g.timbers[e.index]!
    return low > floor && (region === null || intersection(upper, region).rings.length > 0) ? [low] : []
  })
  return tops.length === 0 ? floor : Math.min(...tops)
}

/** An inlay: it fills cuts to the level `z`, `depth` over their deepest floor. `volumeMm3` after cure. */
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

/**
 * A layer over an area: a flood over a face between two heights, or (side null) a seal coat.
 * `filledMm3` what the layer fills after cure, when that is not area times thickness.
 */
export function layerPour(
  index: number,
  pour: Pour,
  facts: PourFacts,
  areaMm2: number,
  side: Side | null,
  z: { from: number; to: number },
  filledMm3?: number
): PourStack {
  const kept = 1 - facts.levelFall
  const poured = pour.mass === undefined ? null : (pour.mass / facts.densityGMl) * 1000
  const filled = filledMm3 ?? (poured === null ? areaMm2 * (pour.depth ?? 0) : poured * kept)
  const liquid = poured ?? filled / kept
  const thick = side !== null ? z.to - z.from : areaMm2 > 0 ? filled / areaMm2 : 0
  const level = side === 'low' ? z.from : z.to
  const outward = side === 'low' ? -1 : side === 'high' ? 1 : 0
  return {
    index,
    floor: side === 'low' ? z.to : z.from,
    liquidLevel: level + outward * (thick / kept - thick),
    level,
    liquidDepth: thick / kept,
    depth: thick,
    liquidMl: liquid / 1000,
    filledMl: filled / 1000,
    stonesMl: 0,
    massG: (liquid / 1000) * facts.densityGMl,
    surfaceMm2: areaMm2,
    side
  }
}
