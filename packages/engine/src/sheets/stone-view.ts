import type { Work } from '../findings/work.ts'
import type { Face } from '../piece/piece-schema.ts'
import { difference, intersection } from '../shape/combine.ts'
import { bounds, inside } from '../shape/measure.ts'
import type { CoreModel } from './core-model.ts'
import { luminanceOfHex } from './look.ts'
import type { Mark } from './mark.ts'
import type { PlanPart } from './plan-parts.ts'
import type { StoneDrawing } from './stone-marks.ts'
import { bedOf, stoneAt } from './stone-marks.ts'
import type { View } from './view.ts'
import { linesOnSheet } from './view.ts'

/** Below this luminance stones are drawn in light lines. */
const LIGHT_UNDER = 0.35

/**
 * Stones as outlines where they can be seen from a face: in a pour that does not hide them, with none that hides
 * between them and the face. Placed ones lie where they are placed; a zone is drawn as a bed of its usual size.
 */
export function stoneMarks(
  work: Work,
  model: CoreModel,
  parts: readonly PlanPart[],
  view: View,
  face: Face
): Mark[] {
  const { piece, stack, materials } = work
  const light: Float64Array[] = []
  const dark: Float64Array[] = []
  const draw = (stone: StoneDrawing, x: number, y: number) => {
    const under = parts.find(p => inside(p.region, x, y))
    if (under === undefined || under.colour === null) return
    const target = luminanceOfHex(under.colour) < LIGHT_UNDER ? light : dark
    const closed = new Float64Array(stone.outline.length + 2)
    closed.set(stone.outline)
    closed.set(stone.outline.subarray(0, 2), stone.outline.length)
    target.push(...linesOnSheet(view, [closed, ...stone.ribs]))
  }
  piece.pours.forEach((pour, p) => {
    if (!seen(work, model, p, face)) return
    pour.stones.forEach((stones, s) => {
      const record = materials.stones[p]![s]!
      const shell = record.id.startsWith('shell')
      if (stones.placed !== undefined) {
        stones.placed.forEach((one, i) => {
          draw(
            stoneAt(one.at[0], one.at[1], one.size[0], one.size[1], shell, i + 31 * p),
            one.at[0],
            one.at[1]
          )
        })
        return
      }
      const whole = stack.geometry.zones[p]![s] ?? stack.geometry.pourRegions[p] ?? stack.geometry.outline
      const zone = stack.geometry.timbers.reduce(
        (rest, t) => difference(rest, t.upper),
        intersection(whole, stack.geometry.outline)
      )
      if (zone.rings.length === 0) return
      const size = (record.sizeMm[0] + record.sizeMm[1]) / 2
      for (const stone of bedOf(zone, bounds(zone), size, p * 7 + s + 1))
        draw(stone, stone.outline[0]!, stone.outline[1]!)
    })
  })
  const out: Mark[] = []
  if (light.length > 0) out.push({ kind: 'path', ink: 'stone-light', lines: light })
  if (dark.length > 0) out.push({ kind: 'path', ink: 'stone-dark', lines: dark })
  return out
}

// Whether a pour can be looked into from a face: neither it nor one nearer to the face is meant to hide.
function seen(work: Work, model: CoreModel, pour: number, face: Face): boolean {
  const towardsHigh = (face === 'front') === (model.down === 'back')
  const own = work.stack.pours[pour]!
  return work.stack.pours.every((other, i) => {
    const nearer = i === pour || (towardsHigh ? other.level > own.level : other.level < own.level)
    return !(nearer && work.hiding[i]!.meant && work.piece.pours[i]!.kind !== 'inlay')
  })
}
