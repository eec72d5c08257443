import type { Piece } from '../piece/piece-schema.ts'
import type { Problem } from '../piece/problem.ts'
import type { Place } from '../plate/tip.ts'
import { inside } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'

export type Supports = NonNullable<Piece['supports']>

/** Supports nearer to each other than this share of the piece count as one line of them. */
const ONE_LINE = 0.06

/** All places at which something carries it. */
export function placesOf(supports: Supports): Place[] {
  return supports.legs !== undefined
    ? supports.legs.map(([x, y]) => [x, y] as const)
    : supports.rails!.flatMap(({ from, to }) => [[from[0], from[1]] as const, [to[0], to[1]] as const])
}

/** Where it is screwed down. */
export function screwsOf(supports: Supports): Place[] {
  return supports.screws?.map(([x, y]) => [x, y] as const) ?? placesOf(supports)
}

/**
 * Lines of supports across one direction, mm along it, from the start of the piece's box: legs that stand nearly
 * abreast are one line at their mean. Rails carry all along: only the direction across them has lines.
 */
export function linesOf(supports: Supports, along: 'x' | 'y', box: Bounds): number[] {
  const k = along === 'x' ? 0 : 1
  const [start, extent] = along === 'x' ? [box.minX, box.maxX - box.minX] : [box.minY, box.maxY - box.minY]
  let places: number[]
  if (supports.rails !== undefined) {
    const run = [0, 1].map(i =>
      supports.rails!.reduce((sum, { from, to }) => sum + Math.abs(to[i]! - from[i]!), 0)
    )
    if (run[k]! > run[1 - k]!) return []
    places = supports.rails.map(({ from, to }) => (from[k] + to[k]) / 2)
  } else places = supports.legs!.map(p => p[k])
  const sorted = places.map(p => Math.min(extent, Math.max(0, p - start))).sort((a, b) => a - b)
  const lines: number[][] = []
  for (const p of sorted) {
    const last = lines.at(-1)
    // By their mean: so no two lines come nearer to each other than that either.
    if (last !== undefined && p - meanOf(last) <= ONE_LINE * extent) last.push(p)
    else lines.push([p])
  }
  return lines.map(meanOf)
}

function meanOf(places: readonly number[]): number {
  return places.reduce((a, b) => a + b, 0) / places.length
}

/** Legs, ends of rails and screws that do not lie under the piece, and legs that cannot carry it. */
export function supportProblems(supports: Supports, outline: Region): Problem[] {
  const out: Problem[] = []
  const check = (path: string, [x, y]: readonly number[]) => {
    if (!inside(outline, x!, y!))
      out.push({
        path,
        found: `a place at [${x}, ${y}], beside the finished piece`,
        allowed: 'places inside its outline',
        example: '[0, 0]'
      })
  }
  for (const [i, p] of (supports.legs ?? []).entries()) check(`/supports/legs/${i}`, p)
  supports.rails?.forEach(({ from, to }, i) => {
    // The ends of a rail may stand at the edge: its middle must lie under the piece.
    check(`/supports/rails/${i}`, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2])
  })
  for (const [i, p] of (supports.screws ?? []).entries()) check(`/supports/screws/${i}`, p)
  if (out.length === 0 && flatness(placesOf(supports)) < 1)
    out.push({
      path: '/supports',
      found: 'supports that stand on one line',
      allowed: 'at least three legs that are not on one line, or two rails beside each other',
      example: '{ "legs": [[-250, -150], [250, -150], [0, 150]] }'
    })
  return out
}

// Twice the largest triangle that the first place makes with two others, mm²: nought where all stand on one line.
function flatness(places: readonly Place[]): number {
  let most = 0
  const [a] = places
  for (const b of places)
    for (const c of places)
      most = Math.max(most, Math.abs((b[0] - a![0]) * (c[1] - a![1]) - (b[1] - a![1]) * (c[0] - a![0])))
  return most
}
