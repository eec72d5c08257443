import type { EdgeTree } from '../shape/edge-tree.ts'
import { edgeDistance, edgeTree } from '../shape/edge-tree.ts'
import { bounds, inside } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { Bounds, Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'

/**
 * Walls as a V leaves them that runs along the middle lines of a region: as drawn at the height `edge`, narrower
 * below it, wider above.
 *
 *   half as far in as δ from the outline it is δ/tan(θ/2) deep      (δ negative outside: above the edge)
 *
 * Check: the paths that cut it, swept (cuts/line/v-carve).
 */
export interface Flare {
  /** Height at which it is as wide as drawn, mm as cast. */
  readonly edge: number
  /** Included angle of the V, degrees. */
  readonly angleDeg: number
}

/** How far the edges of a level cut may stray, mm. */
const TOL_MM = 0.005
/** Nothing is looked for farther beside the outline, mm: as much as is worked off a face after a figure is cut. */
const REACH_MM = 12

/** The region at a depth under the edge, mm; negative above it. */
export function flareAt(region: Region, flare: Flare, depthMm: number): Region {
  const inwardMm = depthMm * Math.tan((flare.angleDeg * Math.PI) / 360)
  if (-inwardMm > REACH_MM) return offset(region, REACH_MM, { join: 'round', tolMm: TOL_MM })
  if (Math.abs(inwardMm) < TOL_MM / 10) return region
  const cut = offset(region, -inwardMm, { join: 'round', tolMm: TOL_MM })
  return cut.rings.length === 0 ? EMPTY : cut
}

/** Depth of the floor under the edge at a place, mm; negative above it; null far outside. */
export function flareDepth(region: Region, flare: Flare, x: number, y: number): number | null {
  const { box, tree } = treeOf(region)
  if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return null
  const d = edgeDistance(tree, x, y)
  const within = inside(region, x, y)
  if (!within && d > REACH_MM) return null
  return (within ? d : -d) / Math.tan((flare.angleDeg * Math.PI) / 360)
}

const trees = new WeakMap<Region, { readonly box: Bounds; readonly tree: EdgeTree }>()

function treeOf(region: Region): { readonly box: Bounds; readonly tree: EdgeTree } {
  let kept = trees.get(region)
  if (kept === undefined) {
    const b = bounds(region)
    kept = {
      box: {
        minX: b.minX - REACH_MM,
        minY: b.minY - REACH_MM,
        maxX: b.maxX + REACH_MM,
        maxY: b.maxY + REACH_MM
      },
      tree: edgeTree(region.rings)
    }
    trees.set(region, kept)
  }
  return kept
}
