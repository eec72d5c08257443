import type { Entry } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { bounds, nearest } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { translate } from '../shape/transform.ts'
import type { Found } from './finding.ts'
import { rounded, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Whether the circle about a cut's box keeps clear of the edge: most do, and need no closer look. */
export function wellInside(region: Region, outline: Region, leastMm: number): boolean {
  const b = bounds(region)
  const radius = Math.hypot(b.maxX - b.minX, b.maxY - b.minY) / 2
  const { distanceMm } = nearest(outline, (b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2)
  return -distanceMm >= radius + leastMm
}

/** Where a cut comes nearest to the edge of the piece. */
export interface Wall {
  /** Least distance from the cut to the edge, mm; negative: past it. */
  readonly mm: number
  readonly x: number
  readonly y: number
  /** The place of the edge. */
  readonly edgeX: number
  readonly edgeY: number
}

/** The thinnest wall between a cut and the edge; exact up to `leastMm`, beyond it at least that. */
export function wallOf(region: Region, outline: Region, leastMm: number): Wall {
  // Two outlines are nearest to each other at a corner of one of them.
  let least: Wall = { mm: Number.POSITIVE_INFINITY, x: 0, y: 0, edgeX: 0, edgeY: 0 }
  for (const ring of region.rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const [x, y] = [ring[k]!, ring[k + 1]!]
      const edge = nearest(outline, x, y)
      if (-edge.distanceMm < least.mm) least = { mm: -edge.distanceMm, x, y, edgeX: edge.x, edgeY: edge.y }
    }
  }
  const b = bounds(region)
  for (const ring of outline.rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const [edgeX, edgeY] = [ring[k]!, ring[k + 1]!]
      const off = Math.max(b.minX - edgeX, edgeX - b.maxX, b.minY - edgeY, edgeY - b.maxY)
      if (off >= Math.min(leastMm, least.mm)) continue
      const at = nearest(region, edgeX, edgeY)
      // A corner of the outline inside the cut: the cut runs past it.
      if (at.distanceMm < least.mm) least = { mm: at.distanceMm, x: at.x, y: at.y, edgeX, edgeY }
    }
  }
  return least
}

/** The fix that moves a cut away from the edge until the wall is there, edge after edge; none where that does not do. */
export function moveIn(
  work: Work,
  cut: Entry<Cut>,
  region: Region,
  first: Wall,
  leastMm: number
): Pick<Found, 'fix' | 'fixSays'> {
  const { outline } = work.stack.geometry
  const from = cut.value.shape?.at ?? [0, 0]
  let [dx, dy] = [0, 0]
  let wall = first
  for (let turn = 0; turn < 4; turn++) {
    const sign = wall.mm < 0 ? -1 : 1
    const long = Math.hypot(wall.x - wall.edgeX, wall.y - wall.edgeY)
    if (long < 1e-6) return {}
    const by = leastMm - wall.mm
    dx += (sign * (wall.x - wall.edgeX) * by) / long
    dy += (sign * (wall.y - wall.edgeY) * by) / long
    wall = wallOf(
      translate(region, outward(from[0], dx) - from[0], outward(from[1], dy) - from[1]),
      outline,
      leastMm
    )
    if (wall.mm >= leastMm - 1e-6) {
      const to = [outward(from[0], dx), outward(from[1], dy)] as const
      return {
        fix: setValue(work.document, `${cut.at}/shape/at`, [...to]),
        fixSays: `${cut.id} at ${decimals(to[0], 1)}, ${decimals(to[1], 1)}`
      }
    }
  }
  return {}
}

// A coordinate moved, rounded to a tenth in the direction it moves.
function outward(from: number, by: number): number {
  if (Math.abs(by) < 1e-9) return from
  return rounded(from + by, by > 0 ? 'up' : 'down', 0.1)
}
