import { union } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import type { Flare } from './flare.ts'
import { flareAt } from './flare.ts'
import type { Profile } from './groove.ts'
import { halfWidthAt } from './groove.ts'
import { strokeAll } from './groove-region.ts'

/**
 * What happens to the material, in order. The stack at any day is the first so many events; a core, a level
 * cut and every volume follow from playing them. Heights z are mm as cast: from the mould base up.
 * `low` is the face that lay down in the mould, `high` the other.
 */
export type Side = 'low' | 'high'

/** A removal reaching from a face to `floor` (deepest place): a region, or a profile along lines. */
export interface Removal {
  readonly side: Side
  readonly floor: number
  readonly region: Region | null
  readonly lines: readonly Float64Array[] | null
  readonly profile: Profile | null
  /** What it takes under the face as well: from the floor up to a roof that stays, as under the lips of a keyhole. */
  readonly under?: { readonly region: Region; readonly roof: number }
  /** Walls of a region that slope as a V leaves them, as for figures of outlines; `floor` is its deepest place. */
  readonly flare?: Flare
}

export type StackEvent =
  | { readonly kind: 'timber'; readonly index: number }
  | { readonly kind: 'former'; readonly index: number; readonly from: number; readonly to: number }
  | { readonly kind: 'demould' }
  /** Resin fills whatever is open below `to` inside its region (null: the whole mould). */
  | {
      readonly kind: 'pour'
      readonly index: number
      readonly region: Region | null
      readonly to: number
      /** Its level was measured, not planned. */
      readonly built?: boolean
    }
  | { readonly kind: 'trim'; readonly side: Side; readonly z: number }
  | { readonly kind: 'cut'; readonly index: number; readonly removal: Removal }
  | { readonly kind: 'mark'; readonly index: number; readonly removal: Removal }
  /** Fills a marking (what: 'marking') or cuts (what: 'pour') from their floors to the level `z`. */
  | {
      readonly kind: 'fill'
      readonly what: 'marking' | 'pour'
      readonly index: number
      readonly removals: readonly Removal[]
      readonly side: Side
      readonly z: number
    }
  /** A coat of resin over a face: it fills what is open from `from` to `to` (region null: the outline). */
  | {
      readonly kind: 'flood'
      readonly index: number
      readonly region: Region | null
      readonly from: number
      readonly to: number
    }

/** What a place is made of. */
export type Material = { readonly kind: 'timber' | 'pour' | 'marking' | 'former'; readonly index: number }

/** How far the edge of a groove's level cut may stray, mm: well under the width of a marking. */
export const STROKE_TOL_MM = 0.002

/** The removal cut level at z. */
export function removalAt(r: Removal, z: number): Region {
  const s = r.side === 'low' ? r.floor - z : z - r.floor
  if (s <= 0) return EMPTY
  if (r.region !== null) {
    if (r.flare !== undefined)
      return flareAt(r.region, r.flare, r.side === 'low' ? z - r.flare.edge : r.flare.edge - z)
    if (r.under === undefined || s > Math.abs(r.floor - r.under.roof)) return r.region
    return union(r.region, r.under.region)
  }
  return strokeAll(r.lines!, 2 * halfWidthAt(r.profile!, s), STROKE_TOL_MM)
}

/** All of a removal seen on the plan, at the face `z`. */
export function removalPlan(r: Removal, faceZ: number): Region {
  return removalAt(r, faceZ)
}

/** Whether level cuts of the removal change with height. */
export function tapers(r: Removal): boolean {
  return r.flare !== undefined || (r.region === null && r.profile!.kind !== 'flat')
}

/** "timber 0", "pour 2", "marking 1". */
export function materialKey(m: Material): string {
  return `${m.kind} ${m.index}`
}
