import type { Piece } from '../piece/piece-schema.ts'
import { difference, union } from '../shape/combine.ts'
import { area, nearest } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import { needsMould } from '../steps/step.ts'
import type { Geometry } from './geometry.ts'

/** Less than this outside of the outline is no waste, mm²: what flattened curves leave of each other. */
const LEAST_MM2 = 1

/**
 * What stands outside of the outline and no cut takes off, on the plan; empty where there is none. Cast, it is
 * what resin fills and timber covers of the mould, ears included; boards that are not cast stand for themselves.
 *
 * Limits: a cut of kind outline is taken to free the part, whatever its shape; so are cuts right through that
 * together cover all of the waste. A groove along a line frees nothing.
 */
export function wasteRound(piece: Piece, geometry: Geometry): Region {
  if (piece.cuts.some(c => c.kind === 'outline')) return EMPTY
  const waste = difference(castingOf(piece, geometry), geometry.outline)
  if (area(waste) < LEAST_MM2) return EMPTY
  const through = piece.cuts.flatMap((c, i) => (c.through ? (geometry.cutRegions[i] ?? []) : []))
  const left = through.length === 0 ? waste : difference(waste, union(...through))
  return area(left) < LEAST_MM2 ? EMPTY : waste
}

/** Whether the piece has to be trimmed to its outline. */
export function hasWaste(piece: Piece, geometry: Geometry): boolean {
  return wasteRound(piece, geometry).rings.length > 0
}

/** How far the waste reaches from the outline at its farthest corner, mm; 0 without waste. */
export function wasteReachMm(piece: Piece, geometry: Geometry): number {
  let most = 0
  for (const ring of wasteRound(piece, geometry).rings)
    for (let k = 0; k < ring.length; k += 2)
      most = Math.max(most, nearest(geometry.outline, ring[k]!, ring[k + 1]!).distanceMm)
  return most
}

/** What there is of the piece on the plan before anything is cut: what resin fills and timber covers. */
export function castingOf(piece: Piece, g: Geometry): Region {
  const timbers = g.timbers.flatMap(t => (t.lofts === null ? [t.upper] : [t.upper, t.lower]))
  const casts = needsMould(piece)
    ? piece.pours.flatMap((p, i) => (p.kind === 'cast' ? [g.pourRegions[i] ?? g.mould] : []))
    : []
  if (casts.includes(g.mould)) return g.mould
  return [...timbers, ...casts].reduce((sum, r) => union(sum, r), EMPTY)
}
