import type { Entries } from '../piece/entry.ts'
import type { Face, Piece } from '../piece/piece-schema.ts'
import type { Step } from '../steps/step.ts'
import type { Side, StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'

/** What the stack needs to know of a pour's resin and stones. */
export interface PourFacts {
  /** Density of the liquid mix, g/ml. */
  readonly densityGMl: number
  /** Share of its depth by which a pour falls as it cures, 0..1. */
  readonly levelFall: number
  /** Solid share of a stones zone, per stones entry. */
  readonly stonesFill: readonly number[]
  /** Level as cast that was measured, mm: it stands in the place of the planned one. */
  readonly measuredMm?: number | null
}

/** A pour as it stands in the stack. Heights mm as cast, volumes ml. */
export interface PourStack {
  readonly index: number
  /** Lowest place it covers. */
  readonly floor: number
  /** Level when poured, and after cure. */
  readonly liquidLevel: number
  readonly level: number
  /** Depth at its deepest, when poured. */
  readonly liquidDepth: number
  /** Depth at its deepest, after cure: "as cast". */
  readonly depth: number
  /** Volume of liquid mix that goes in, stones taken off. */
  readonly liquidMl: number
  /** Volume it fills after cure, stones included. */
  readonly filledMl: number
  readonly stonesMl: number
  readonly massG: number
  /** Open area at its level, mm². */
  readonly surfaceMm2: number
  /** Side it lies on once out of the mould; null in the mould. */
  readonly side: Side | null
}

/** The piece after one step. */
export interface State {
  readonly step: Step
  /** How many events have happened. */
  readonly events: number
  /** Heights of the two faces as cast; null while there is nothing. */
  readonly lowZ: number
  readonly highZ: number
  /** Cuts that are open on a face: by index. */
  readonly open: readonly number[]
  /** Pours made so far: by index. */
  readonly poured: readonly number[]
}

/** A cut as it comes out, mm. */
export interface CutDepth {
  readonly index: number
  /** Depth from the face of the day on which it is made; null right through. */
  readonly day: number | null
  /** Depth from the finished face; null right through. */
  readonly finished: number | null
  /** Height as cast of its floor; ±Infinity right through. */
  readonly floor: number
  readonly side: Side
  /** The step that makes it; null when none does. */
  readonly step: Step | null
  /** Height as cast of the face it is cut from, on that day. */
  readonly faceZ: number
}

/** All that lies between back and front, through the whole build. */
export interface Stack {
  readonly piece: Piece
  readonly entries: Entries
  readonly geometry: Geometry
  readonly steps: readonly Step[]
  readonly events: readonly StackEvent[]
  readonly states: readonly State[]
  readonly pours: readonly PourStack[]
  readonly cuts: readonly CutDepth[]
  readonly markings: readonly CutDepth[]
  /** Highest place of the casting inside the outline, as cast, before flattening. */
  readonly castHeight: number
  /** Heights as cast of the finished faces. */
  readonly finishedLow: number
  readonly finishedHigh: number
}

/** The side of the mould a face lay on. */
export function sideOf(piece: Pick<Piece, 'down'>, face: Face): Side {
  return face === piece.down ? 'low' : 'high'
}

/** The face a side of the mould became. */
export function faceOf(piece: Pick<Piece, 'down'>, side: Side): Face {
  return (side === 'low') === (piece.down === 'back') ? 'back' : 'front'
}

/** A height as cast as a finished height: from the finished back. */
export function finishedHeight(
  stack: Pick<Stack, 'piece' | 'finishedLow' | 'finishedHigh'>,
  z: number
): number {
  return stack.piece.down === 'back' ? z - stack.finishedLow : stack.finishedHigh - z
}

/** Finished thickness, mm. */
export function finishedThickness(stack: Pick<Stack, 'finishedLow' | 'finishedHigh'>): number {
  return stack.finishedHigh - stack.finishedLow
}
