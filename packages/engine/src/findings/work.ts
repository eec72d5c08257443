import type { PourBatches } from '../cast/batches.ts'
import type { PourCast } from '../cast/cast.ts'
import type { StepTime } from '../cast/clock.ts'
import type { Materials } from '../cast/facts.ts'
import type { Floating } from '../cast/floating.ts'
import type { MouldPlan } from '../cast/mould.ts'
import type { PourRound } from '../cast/pour-rounds.ts'
import type { Speed } from '../cast/speed.ts'
import type { WholeCast } from '../cast/whole/whole-cast.ts'
import type { BuyLine } from '../cost/buy-line.ts'
import type { Need } from '../cost/need.ts'
import type { HandCut } from '../cuts/hand/hand-cut.ts'
import type { Tied } from '../cuts/pins/tied.ts'
import type { MachineCuts } from '../cuts/run/machine-cut.ts'
import type { FaceFinish } from '../finish/faces.ts'
import type { LivingAir } from '../fits/air.ts'
import type { Appearance } from '../fits/appearance.ts'
import type { Bow } from '../fits/bow.ts'
import type { SizeChain } from '../fits/chain.ts'
import type { HardwareFit } from '../fits/hardware.ts'
import type { InUse } from '../fits/in-use.ts'
import type { Move } from '../fits/moves.ts'
import type { PartSeen } from '../fits/part-seen.ts'
import type { Season } from '../fits/season.ts'
import type { TimberFacts } from '../fits/timber-facts.ts'
import type { Hiding } from '../fits/tint.ts'
import type { Entries } from '../piece/entry.ts'
import type { Piece, PieceDocument } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { CutCover } from '../stack/cover.ts'
import type { Stack } from '../stack/stack.ts'
import type { OrderFault } from '../steps/fault.ts'
import type { MouldFills } from '../steps/mould-fills.ts'
import type { Step } from '../steps/step.ts'

/** How many blanks are started, and what that promises. */
export interface Quantity {
  readonly pieces: number
  readonly lossPct: number
  readonly certaintyPct: number
  /** Blanks that give the certainty, and those that are started: the document's, else these. */
  readonly enough: number
  readonly blanks: number
  /** Chance, 0..1, that the blanks started give the pieces wanted. */
  readonly chance: number
  /** Cast side by side in one mould, and how often a mould is filled. */
  readonly gang: number
  readonly moulds: number
}

/** Everything known of a piece before it is judged: what each stage found. Checks read it and change nothing. */
export interface Work {
  /** The document as typed: fixes are patches on it. */
  readonly document: PieceDocument
  readonly piece: Piece
  readonly shop: Shop
  readonly readings: readonly Reading[]
  /** How finely the cast was run: what a search for a fix has to match. */
  readonly effort: 'preview' | 'full'
  readonly entries: Entries
  readonly steps: readonly Step[]
  readonly faults: readonly OrderFault[]
  readonly materials: Materials
  readonly stack: Stack
  readonly speeds: readonly Speed[]
  readonly casts: readonly (PourCast | null)[]
  /** The cast in three directions that they are from; null while they are the column's. */
  readonly whole: WholeCast | null
  readonly clock: readonly StepTime[]
  /** Of one blank. */
  readonly batches: readonly (PourBatches | null)[]
  /** Of as many blanks as are poured at once. */
  readonly rounds: readonly PourRound[]
  /** How blanks go through the mould; null without one. */
  readonly fills: MouldFills | null
  readonly mould: MouldPlan
  readonly floating: readonly Floating[]
  readonly air: LivingAir
  readonly seasons: readonly Season[]
  /** Stand, cupping, rough thickness, seal and hold-down of each timber. */
  readonly timberFacts: readonly TimberFacts[]
  readonly hiding: readonly Hiding[]
  readonly covers: readonly CutCover[]
  /** Every open hole through the whole build, and the parts in them. */
  readonly chains: readonly SizeChain[]
  readonly appearance: Appearance
  /** Parts that are cast in, as the front shows them. */
  readonly partsSeen: readonly PartSeen[]
  readonly fits: readonly HardwareFit[]
  /** null where no bow can be told. */
  readonly bow: Bow | null
  /** On its legs or rails; null where the piece names none. */
  readonly inUse: InUse | null
  /** What is lifted or turned, and when. */
  readonly moves: readonly Move[]
  /** What no machine cuts: tool, template, passes, order and minutes. */
  readonly hand: readonly HandCut[]
  /** Pins that tie both faces to one datum, and what wrong placings would do. */
  readonly pins: Tied
  /** What the machine cuts, with which cutter and how; empty without a machine. */
  readonly machineCuts: MachineCuts
  readonly faces: readonly [front: FaceFinish, back: FaceFinish]
  readonly quantity: Quantity
  /** What has to be at hand, before shelf and packs are looked at; and what of it is bought. */
  readonly needs: readonly Need[]
  readonly buy: readonly BuyLine[]
}
