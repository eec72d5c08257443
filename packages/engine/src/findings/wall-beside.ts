import type { Entry } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import { area, bounds, nearest } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { translate } from '../shape/transform.ts'
import type { Wall } from './edge-wall.ts'
import { wallOf } from './edge-wall.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Least wall between two cuts side by side, mm (common practice, as to the edge of the piece). */
const LEAST_WALL_MM = 3
/** Cuts with upright walls and a floor or none. */
const HOLLOWS = new Set(['pocket', 'bore', 'slot'])

/**
 * Two cuts side by side that leave a wall thinner than practice, and taller than it is thick: a lower one is a ridge.
 * Limits: cuts from one face, or right through; cuts that are filled again are passed over.
 */
export const wallBeside: Check = {
  id: 'wall-beside',
  about: 'a wall between two cuts side by side thinner than practice',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const filled = new Set(work.piece.pours.flatMap(p => p.into ?? []))
  const hollow = work.entries.cuts.filter(
    c =>
      HOLLOWS.has(c.value.kind) &&
      c.value.around === undefined &&
      !filled.has(c.id) &&
      work.stack.geometry.cutRegions[c.index] != null
  )
  return hollow.flatMap((cut, k) =>
    hollow.slice(0, k).flatMap((other): Found[] => {
      const wall = between(work, other, cut)
      return wall === null ? [] : [thin(work, hollow, other, cut, wall)]
    })
  )
}

function between(work: Work, a: Entry<Cut>, b: Entry<Cut>): Wall | null {
  const [one, two] = [work.stack.cuts[a.index]!, work.stack.cuts[b.index]!]
  if (one.side !== two.side && !a.value.through && !b.value.through) return null
  const tallMm = Math.min(one.day ?? 0, two.day ?? 0)
  const wall = apart(regionOf(work, b), regionOf(work, a))
  return wall === null || wall.mm >= LEAST_WALL_MM - 1e-6 || tallMm <= wall.mm ? null : wall
}

function regionOf(work: Work, cut: Entry<Cut>): Region {
  return work.stack.geometry.cutRegions[cut.index]!
}

// The wall from one to the other; null where they are far apart, touch, cross, or one lies in the other.
function apart(region: Region, other: Region): Wall | null {
  const [a, b] = [bounds(region), bounds(other)]
  const off = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY)
  if (off >= LEAST_WALL_MM) return null
  const from = leastFrom(region, other)
  const back = leastFrom(other, region)
  const wall =
    from.mm <= back.mm ? from : { mm: back.mm, x: back.edgeX, y: back.edgeY, edgeX: back.x, edgeY: back.y }
  if (!(wall.mm > 1e-6) || area(intersection(region, other)) > 1e-6) return null
  return wall
}

// From the corners of one to the edge of the other; two outlines are nearest at a corner of one of them.
function leastFrom(region: Region, other: Region): Wall {
  let least: Wall = { mm: Number.POSITIVE_INFINITY, x: 0, y: 0, edgeX: 0, edgeY: 0 }
  for (const ring of region.rings)
    for (let k = 0; k < ring.length; k += 2) {
      const [x, y] = [ring[k]!, ring[k + 1]!]
      const edge = nearest(other, x, y)
      if (edge.distanceMm < least.mm) least = { mm: edge.distanceMm, x, y, edgeX: edge.x, edgeY: edge.y }
    }
  return least
}

function thin(
  work: Work,
  hollow: readonly Entry<Cut>[],
  other: Entry<Cut>,
  cut: Entry<Cut>,
  wall: Wall
): Found {
  return {
    severity: 'caution',
    at: cut.at,
    says: `${other.id} and ${cut.id} leave a wall of ${decimals(wall.mm, 1)} mm between them, near ${decimals(wall.x, 0)}, ${decimals(wall.y, 0)}; below ${LEAST_WALL_MM} mm a wall chips or breaks away when the second is cut.`,
    value: wall.mm,
    unit: 'mm',
    limit: LEAST_WALL_MM,
    basis: 'distance between the two on the plan; 3 mm: common practice, no source',
    ...moveAway(work, hollow, cut, wall)
  }
}

// The later one moved straight away from the earlier, where that comes near neither another cut nor the edge.
function moveAway(
  work: Work,
  hollow: readonly Entry<Cut>[],
  cut: Entry<Cut>,
  wall: Wall
): Pick<Found, 'fix' | 'fixSays'> {
  // A hole of a part that lies elsewhere is placed by its part.
  if (cut.value.for !== undefined || cut.value.islands !== undefined) return {}
  const from = cut.value.shape?.at ?? [0, 0]
  const by = LEAST_WALL_MM - wall.mm
  const to = [
    moved(from[0], ((wall.x - wall.edgeX) * by) / wall.mm),
    moved(from[1], ((wall.y - wall.edgeY) * by) / wall.mm)
  ] as const
  const region = translate(regionOf(work, cut), to[0] - from[0], to[1] - from[1])
  if (wallOf(region, work.stack.geometry.outline, LEAST_WALL_MM).mm < LEAST_WALL_MM) return {}
  for (const c of hollow) {
    if (c === cut) continue
    if (area(intersection(region, regionOf(work, c))) > 1e-6) return {}
    const left = apart(region, regionOf(work, c))
    if (left !== null && left.mm < LEAST_WALL_MM - 1e-6) return {}
  }
  return {
    fix: setValue(work.document, `${cut.at}/shape/at`, [...to]),
    fixSays: `${cut.id} at ${decimals(to[0], 1)}, ${decimals(to[1], 1)}`
  }
}

// Rounded to a tenth in the direction it moves.
function moved(from: number, by: number): number {
  return Math.abs(by) < 1e-9 ? from : rounded(from + by, by > 0 ? 'up' : 'down', 0.1)
}
