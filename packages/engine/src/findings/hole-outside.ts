import type { Entry } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import { area, bounds, inside, nearest } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { translate } from '../shape/transform.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Least wall between a pocket or bore and the edge of the piece, mm (common practice). */
const LEAST_WALL_MM = 3
/** Places of an edge are looked at this close to each other, mm. */
const STEP_MM = 1

/** A cut or a part that lies outside the piece, or nearer to its edge than holds. */
export const holeOutside: Check = {
  id: 'hole-outside',
  about: 'a cut or hardware outside the outline, past its edge, or with too thin a wall to it',
  cases: ['C85'],
  run: work => [...work.entries.cuts.flatMap(c => ofCut(work, c)), ...ofHardware(work)]
}

const BASIS = 'distance on the plan to the finished outline; 3 mm of wall: common practice, no source'

function ofCut(work: Work, cut: Entry<Cut>): Found[] {
  const { outline, cutRegions, cutLines } = work.stack.geometry
  const { at, id, value } = cut
  // What frees the part, and rebates, lie along the edge.
  if (value.kind === 'outline' || value.kind === 'rebate') return []
  const region = cutRegions[cut.index] ?? null
  if (region === null) {
    const lines = cutLines[cut.index] ?? []
    if (lines.some(line => anyInside(outline, line))) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} runs beside the piece: no place of it is inside the outline.`,
        basis: BASIS
      }
    ]
  }
  if (wellInside(region, outline)) return []
  if (area(intersection(region, outline)) < 0.5)
    return [
      {
        severity: 'stop',
        at,
        says: `${id} lies outside the piece: nothing of it is inside the outline.`,
        basis: BASIS
      }
    ]
  // Grooves and slots are led out of an edge on purpose.
  if (value.kind !== 'pocket' && value.kind !== 'bore') return []
  const wall = wallOf(region, outline)
  if (wall.mm >= LEAST_WALL_MM - 1e-6) return []
  const past = wall.mm <= 1e-6
  return [
    {
      severity: 'caution',
      at,
      says: `${id} ${past ? `runs ${decimals(Math.max(0, -wall.mm), 1)} mm past the edge` : `leaves a wall of ${decimals(wall.mm, 1)} mm to the edge`}, near ${decimals(wall.x, 0)}, ${decimals(wall.y, 0)}: ${past ? 'the edge opens there; is it meant?' : `less than ${LEAST_WALL_MM} mm breaks out.`}`,
      value: wall.mm,
      unit: 'mm',
      limit: LEAST_WALL_MM,
      basis: BASIS,
      ...moveIn(work, cut, region, wall)
    }
  ]
}

function ofHardware(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id } = work.entries.hardware[fit.hardware]!
    if (inside(work.stack.geometry.outline, fit.x, fit.y)) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} sits at ${decimals(fit.x, 1)}, ${decimals(fit.y, 1)}: outside the piece.`,
        basis: 'its middle against the finished outline'
      }
    ]
  })
}

// Whether the circle about a cut's box keeps clear of the edge: most do, and need no closer look.
function wellInside(region: Region, outline: Region): boolean {
  const b = bounds(region)
  const radius = Math.hypot(b.maxX - b.minX, b.maxY - b.minY) / 2
  const { distanceMm } = nearest(outline, (b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2)
  return -distanceMm >= radius + LEAST_WALL_MM
}

interface Wall {
  /** Least distance from the cut to the edge, mm; negative: past it. */
  readonly mm: number
  readonly x: number
  readonly y: number
  /** The place of the edge. */
  readonly edgeX: number
  readonly edgeY: number
}

// Two outlines are nearest to each other at a corner of one of them.
function wallOf(region: Region, outline: Region): Wall {
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
      if (off >= Math.min(LEAST_WALL_MM, least.mm)) continue
      const at = nearest(region, edgeX, edgeY)
      // A corner of the outline inside the cut: the cut runs past it.
      if (at.distanceMm < least.mm) least = { mm: at.distanceMm, x: at.x, y: at.y, edgeX, edgeY }
    }
  }
  return least
}

// Away from the edge until the wall is there, edge after edge; none where that does not do.
function moveIn(work: Work, cut: Entry<Cut>, region: Region, first: Wall): Pick<Found, 'fix' | 'fixSays'> {
  const { outline } = work.stack.geometry
  const from = cut.value.shape?.at ?? [0, 0]
  let [dx, dy] = [0, 0]
  let wall = first
  for (let turn = 0; turn < 4; turn++) {
    const sign = wall.mm < 0 ? -1 : 1
    const long = Math.hypot(wall.x - wall.edgeX, wall.y - wall.edgeY)
    if (long < 1e-6) return {}
    const by = LEAST_WALL_MM - wall.mm
    dx += (sign * (wall.x - wall.edgeX) * by) / long
    dy += (sign * (wall.y - wall.edgeY) * by) / long
    wall = wallOf(translate(region, outward(from[0], dx) - from[0], outward(from[1], dy) - from[1]), outline)
    if (wall.mm >= LEAST_WALL_MM - 1e-6) {
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

function anyInside(outline: Region, line: Float64Array): boolean {
  for (let k = 0; k + 3 < line.length; k += 2) {
    const n = Math.max(
      1,
      Math.ceil(Math.hypot(line[k + 2]! - line[k]!, line[k + 3]! - line[k + 1]!) / STEP_MM)
    )
    for (let s = 0; s <= n; s++) {
      const t = s / n
      if (
        inside(
          outline,
          line[k]! + t * (line[k + 2]! - line[k]!),
          line[k + 1]! + t * (line[k + 3]! - line[k + 1]!)
        )
      )
        return true
    }
  }
  return false
}
