import type { Homography } from './plane-map.ts'
import { multiply, pxToMm } from './plane-map.ts'

/** How a sheet on the screen shows the plan: units a mm, and the unit where the plan's (0, 0) lies; y down. */
export interface SheetScale {
  readonly unitsPerMm: number
  readonly originX: number
  readonly originY: number
}

/** A picture laid under the plan. */
export interface Unwarped {
  /** The sixteen numbers of CSS `matrix3d()`, for an image of its own size in px with `transform-origin: 0 0`. */
  readonly matrix3d: readonly number[]
  /** The box the laid picture fills on the plan, mm; null when it reaches to the horizon and has no end. */
  readonly boxMm: {
    readonly minX: number
    readonly minY: number
    readonly maxX: number
    readonly maxY: number
  } | null
}

/** Farthest the corner of a laid picture may lie, mm: beyond, it counts as having no end. */
const FARTHEST_MM = 100_000

/**
 * Lays a picture of `widthPx` × `heightPx` under the plan: the transform that sends its px to sheet units.
 *
 * CSS Transforms Level 2 (memory): `matrix3d` lists columns, and a point is divided by its fourth coordinate, so
 * the three rows of the homography stand in the rows x, y and w; z stays.
 */
export function unwarpSize(h: Homography, widthPx: number, heightPx: number, sheet: SheetScale): Unwarped {
  const s = sheet.unitsPerMm
  const m = multiply([s, 0, sheet.originX, 0, -s, sheet.originY, 0, 0, 1], h)
  const [a, b, c, d, e, f, g, k, i] = m
  return {
    matrix3d: [a, d, 0, g, b, e, 0, k, 0, 0, 1, 0, c, f, 0, i],
    boxMm: boxOf(h, widthPx, heightPx)
  }
}

// A straight edge stays straight, so the corners tell the box as long as none lies beyond the horizon.
function boxOf(h: Homography, w: number, t: number): Unwarped['boxMm'] {
  const corners = [pxToMm(h, 0, 0), pxToMm(h, w, 0), pxToMm(h, w, t), pxToMm(h, 0, t)]
  let [minX, minY, maxX, maxY] = [FARTHEST_MM, FARTHEST_MM, -FARTHEST_MM, -FARTHEST_MM]
  for (const p of corners) {
    if (p === null || !(Math.hypot(p[0], p[1]) <= FARTHEST_MM)) return null
    minX = Math.min(minX, p[0])
    maxX = Math.max(maxX, p[0])
    minY = Math.min(minY, p[1])
    maxY = Math.max(maxY, p[1])
  }
  return { minX, minY, maxX, maxY }
}
