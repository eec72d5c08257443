/**
 * The moves of a program as they were read, one entry each, in flat arrays: a million lines cost some 90 MB. Places
 * are in the active work system, mm, the tip of the cutter with its length offset taken into account as the program
 * asks; where they lie in the piece is the setting's.
 */
export interface Motions {
  readonly count: number
  readonly kind: Uint8Array
  /** Line of the file, from 1. */
  readonly line: Uint32Array
  /**
   * Where the move ends. It starts where the one before ended; the first starts at an unknown place (NaN). A place
   * counted from the machine's own zero, or where a probe stopped, is NaN too.
   */
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
  /** Middle of an arc, absolute: along x y (plane 17), z x (18) or y z (19). Of a dwell, a holds its seconds. Else 0. */
  readonly a: Float64Array
  readonly b: Float64Array
  /** Of an arc: 17, 18 or 19; else 17. */
  readonly plane: Uint8Array
  /** mm/min; 0: none given. */
  readonly feed: Float32Array
  /** Turns a minute, negative counter-clockwise, 0 off. */
  readonly spindle: Float32Array
  /** Number of the cutter in the spindle, and of the length offset in use (0: none). */
  readonly tool: Uint16Array
  readonly offset: Uint16Array
}

/** What a move is. */
export const MOTION = {
  rapid: 0,
  line: 1,
  /** Clockwise and counter-clockwise seen from the positive end of the third axis. */
  arcClockwise: 2,
  arcCounter: 3,
  dwell: 4,
  /** The program stops for the operator, or a cutter is changed: no way is made. */
  stop: 5,
  change: 6
} as const
