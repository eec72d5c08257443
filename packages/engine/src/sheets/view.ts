import type { Bounds, Region } from '../shape/region.ts'
import { thinned, thinnedRing } from './clip-line.ts'
import type { Spot } from './mark.ts'

/** How the piece lies on a sheet: x' = originX ± scale·x (mirrored for the back), y' = originY + scale·y. */
export interface View {
  readonly scale: number
  readonly originX: number
  readonly originY: number
  readonly mirrored: boolean
}

/** What a curve on a sheet may stray, mm: a tenth of a narrow line. */
const STRAY_MM = 0.018

/** A place of the plan on the sheet. */
export function onSheet(view: View, x: number, y: number): Spot {
  return [view.originX + (view.mirrored ? -x : x) * view.scale, view.originY + y * view.scale]
}

/** A region on the sheet, points that do not show left out. */
export function regionOnSheet(view: View, region: Region): Float64Array[] {
  return region.rings.map(r => thinnedRing(moved(view, r), STRAY_MM))
}

/** Lines on the sheet. */
export function linesOnSheet(view: View, lines: readonly Float64Array[]): Float64Array[] {
  return lines.map(l => thinned(moved(view, l), STRAY_MM))
}

function moved(view: View, points: Float64Array): Float64Array {
  const out = new Float64Array(points.length)
  const sx = view.mirrored ? -view.scale : view.scale
  for (let k = 0; k < points.length; k += 2) {
    out[k] = view.originX + points[k]! * sx
    out[k + 1] = view.originY + points[k + 1]! * view.scale
  }
  return out
}

/** The largest scale at which a box goes into a space, the view centred left to right. */
export function fitted(
  box: Bounds,
  room: { readonly widthMm: number; readonly heightMm: number; readonly left: number; readonly foot: number },
  mirrored: boolean
): View {
  const w = box.maxX - box.minX
  const h = box.maxY - box.minY
  const scale = Math.min(room.widthMm / w, room.heightMm / h)
  const spare = (room.widthMm - w * scale) / 2
  return {
    scale,
    originX: room.left + spare + (mirrored ? box.maxX : -box.minX) * scale,
    originY: room.foot - box.minY * scale,
    mirrored
  }
}
