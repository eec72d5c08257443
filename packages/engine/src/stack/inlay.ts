import type { Pour } from '../piece/piece-schema.ts'
import { clipMemo } from './clip-memo.ts'
import type { Removal, Side, StackEvent } from './event.ts'
import { inwardOf } from './face.ts'
import { solveLevel } from './free.ts'
import type { Geometry } from './geometry.ts'
import { integrate, openArea } from './level-cut.ts'
import { inlayPour } from './pour.ts'
import type { PourFacts, PourStack } from './stack.ts'

/**
 * An inlay: resin that fills cuts, to the face at `faceZ` unless its depth (over the deepest floor), its height
 * as cast or its mass say less. `holes` end at the far face; `events` is all that happened before.
 */
export function inlay(
  index: number,
  pour: Pour,
  facts: PourFacts,
  g: Geometry,
  events: readonly StackEvent[],
  holes: readonly Removal[],
  side: Side,
  faceZ: number
): { readonly pour: PourStack; readonly z: number } {
  const inward = inwardOf(side)
  if (holes.length === 0) return { pour: inlayPour(index, pour, facts, 0, 0, faceZ, side, 0), z: faceZ }
  const floors = holes.map(h => h.floor)
  const floor = side === 'low' ? Math.max(faceZ, ...floors) : Math.min(faceZ, ...floors)
  const most = inward * (floor - faceZ)
  // Heights are reckoned from the deepest floor towards the face, whichever way is up.
  const z = (height: number) => floor - inward * height
  const memo = clipMemo()
  const openAtZ = (at: number) =>
    openArea(g, events, memo.intersection(memo.removals(holes, at), g.outline), at, memo)
  const openAtHeight = (height: number) => openAtZ(z(height))
  const volume = (height: number) =>
    integrate(g, events, Math.min(floor, z(height)), Math.max(floor, z(height)), openAtZ)
  let height = most
  if (pour.depth !== undefined) height = pour.depth
  else if (pour.height !== undefined) height = -inward * (pour.height - floor)
  else if (pour.mass !== undefined) {
    const filled = (pour.mass / facts.densityGMl) * 1000 * (1 - facts.levelFall)
    height = solveLevel(volume, openAtHeight, filled, 0, most)
  }
  height = Math.min(most, Math.max(0, height))
  const surface = height > 0 ? openAtHeight(height - 1e-6) : 0
  return {
    pour: inlayPour(index, pour, facts, volume(height), height, z(height), side, surface),
    z: z(height)
  }
}
