import { area } from '../shape/measure.ts'
import type { ClipMemo } from './clip-memo.ts'
import { clipMemo } from './clip-memo.ts'
import type { StackEvent } from './event.ts'
import { materialKey } from './event.ts'
import type { Geometry } from './geometry.ts'
import { levelAreas } from './level-area.ts'
import { levelCut, levelsBetween } from './level-cut.ts'
import { boxInside } from './placement.ts'
import type { Stack } from './stack.ts'

/** Volumes of the finished piece by material, ml; keys are {@link materialKey}. */
export type Volumes = ReadonlyMap<string, number>

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
    const areas =
      levelAreas(inner, events, at, memo, inOutline) ?? clippedAreas(stack, inner, events, at, memo)
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

/** Mass of the bare piece, g: volumes times the density of each material, g/ml. */
export function massOf(volumes: Volumes, densityGMl: (key: string) => number): number {
  let sum = 0
  for (const [key, ml] of volumes) sum += ml * densityGMl(key)
  return sum
}
