import type { CutterShape } from '../catalogue/cutter-shape.ts'

/** How a cutter is run in the material at hand, and why. */
export interface Feeds {
  readonly rpm: number
  /** Along the work, straight down, and down a ramp or helix, mm/min. */
  readonly feedMmMin: number
  readonly plungeMmMin: number
  readonly rampMmMin: number
  /** Steepest way down a ramp or helix, degrees; 90 where it may plunge only. */
  readonly rampDeg: number
  /** Greatest depth of one pass, and sideways step of clearing passes, mm. */
  readonly depthMm: number
  readonly stepMm: number
  /** Left on walls for a last pass, mm; 0 for none. */
  readonly allowanceMm: number
  readonly climb: boolean
  /** Reasons in plain words, the one that limits first. */
  readonly why: readonly string[]
}

/**
 * What every path is made from, in the coordinates of its setting (x, y, z mm, z up): seen from above as it lies,
 * regions counter-clockwise outside, holes clockwise.
 */
export interface CutJob {
  readonly cutter: CutterShape
  readonly feeds: Feeds
  /** Where material begins and where the cut ends, z; floor < top. */
  readonly topMm: number
  readonly floorMm: number
  /** Height at which rapid moves cross the work, z; above `topMm`. */
  readonly clearMm: number
  /** How far a path may stray from the drawn line, mm. */
  readonly tolMm: number
  /** Arcs may be written as arcs; else lines within `tolMm`. */
  readonly arcs: boolean
}

/** A path could not be made: which cutter would do, in words for a finding. */
export interface NoPath {
  readonly says: string
  /** Largest cutter that would do, mm; null: none would. */
  readonly largestMm: number | null
}
