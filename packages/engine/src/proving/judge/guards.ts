import type { Guard } from '../sweep/guard.ts'

/** Where the tip of the cutter may go, program coordinates, mm. */
export interface Envelope {
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
  readonly minZ: number
  readonly maxZ: number
}

/** What a program is held against beside the piece. */
export interface Guards {
  /** Pins, clamps, keep-clear places, hardware that is cast in. */
  readonly things: readonly Guard[]
  /** null: not known. */
  readonly envelope: Envelope | null
  /** Of a piece that is moved along between programs: where the tip may go from a move on, in order. */
  readonly envelopes?: readonly { readonly fromMove: number; readonly envelope: Envelope }[]
  /** What the piece lies on, program z; left out: the lowest place of the piece as it lies. */
  readonly bedMm?: number
  /** How deep the cutter may go into it, mm. */
  readonly bedDeepMm: number
  /** Materials the program must leave closed beyond what is wanted: "pour 2". */
  readonly closed: readonly string[]
  /** Most that may be taken in a minute, mm³; null: no limit. */
  readonly mostMm3Min: number | null
  /** What holds the piece: the waste round it, or its whole face (tape, vacuum). */
  readonly held: 'waste' | 'face'
  /** Height that may be left or cut away beyond what is wanted, mm. */
  readonly tolMm: number
}
