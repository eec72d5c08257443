import type { CatalogueRecord } from './record.ts'
import type { Tags } from './tag.ts'

type Range = readonly [low: number, high: number]

export type HardwareKind =
  | 'movement'
  | 'compass'
  | 'round insert'
  | 'threaded insert'
  | 'magnet'
  | 'hanger'
  | 'foot'
  | 'light'
  | 'power'
  | 'cell'
  | 'cable'
  | 'switch'
  | 'handle'
  | 'tube'
  | 'pin'
  | 'screw'
  | 'hinge'

/** Size of the part itself, mm. */
export type Body =
  | {
      readonly shape: 'rectangle'
      readonly widthMm: number
      readonly lengthMm: number
      readonly depthMm: number
    }
  | { readonly shape: 'round'; readonly diameterMm: number; readonly depthMm: number }

/** Least pocket: the body with `clearanceMm` on each side and `overDepthMm` below. */
export type Pocket = Body & { readonly clearanceMm: number; readonly overDepthMm: number }

/** A hole that goes with it: shaft, screw, cable, pilot. */
export interface Hole {
  readonly what: string
  readonly diameterMm: Range
  readonly through: boolean
}

/** Metric thread, and how far the thread reaches for each length sold, mm. */
export interface Thread {
  readonly name: string
  readonly majorMm: number
  readonly pitchMm: number | null
}

/**
 * A movement's thread length (as sold, from ... to) and the thickest dial that the shorter of them takes, 4
 * to 5 less. The total length of the shaft says nothing about the fit: it serves for the hands only.
 */
export interface ThreadLength {
  readonly threadMm: Range
  readonly greatestDialMm: number
}

/** Shaft of a movement: what it needs beyond the dial, and its hands. */
export interface Shaft {
  readonly lengths: readonly ThreadLength[]
  /** Thread to stand out before the dial for washer and nut, mm. */
  readonly beyondDialMm: Range
  /** Reach of the longest hand it turns, mm. */
  readonly handReachMm: Range
  /** Gap from the tip of the shaft to a glass, mm. */
  readonly glassGapMm: Range
  /** Bores of hands, mm: hour (push fit), minute, second. */
  readonly handBoresMm: { readonly hour: Range; readonly minute: Range; readonly second: Range }
}

/**
 * A generic bought-in part.
 *
 * Limits: dimensions of common practice, to plan with until the part is in the hand: measure yours. Nothing
 * here says what a part may carry, or that a mains part is fit for its place.
 */
export interface HardwareRecord extends CatalogueRecord {
  readonly kind: HardwareKind
  readonly body: Body | null
  readonly pocket: Pocket | null
  readonly holes: readonly Hole[]
  readonly thread: Thread | null
  readonly shaft: Shaft | null
  /** Greatest temperature it takes, while it is cast in or after, °C; null: above any casting. */
  readonly heatLimitC: number | null
  /** Belongs to a mains circuit: work for a licensed trade. */
  /** How far its size may be off, either way, mm; and the class it is sold in (ISO 286). */
  readonly toleranceMm?: number
  readonly toleranceClass?: string
  /** Countersunk head, across, mm. */
  readonly headMm?: number
  readonly mains: boolean
  /** Wears out or must be reached: never cast in. */
  readonly needsAccess: boolean
  /** Magnetic, or thrown off by magnets and steel nearby. */
  readonly magnetic: boolean
  readonly tags?: Tags<HardwareRecord>
}
