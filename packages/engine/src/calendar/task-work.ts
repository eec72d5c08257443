import type { PourCast } from '../cast/cast.ts'
import type { StepTime } from '../cast/clock.ts'
import type { Materials } from '../cast/facts.ts'
import type { MouldPlan } from '../cast/mould.ts'
import type { PourRound } from '../cast/pour-rounds.ts'
import type { HandCut } from '../cuts/hand/hand-cut.ts'
import type { MachineCuts } from '../cuts/run/machine-cut.ts'
import type { FaceFinish } from '../finish/faces.ts'
import type { Move } from '../fits/moves.ts'
import type { TimberFacts } from '../fits/timber-facts.ts'
import type { Entries } from '../piece/entry.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Stack } from '../stack/stack.ts'
import type { MouldFills } from '../steps/mould-fills.ts'
import type { Step } from '../steps/step.ts'

/** What is bought: the calendar asks when it comes. */
export interface BoughtLine {
  readonly group: 'resin' | 'colour' | 'stones' | 'timber' | 'mould' | 'finish' | 'hardware'
  readonly item: string
  readonly name: string
  /** Beyond the stock, in the line's unit. */
  readonly buy: number
  /** Days until it is here; null: the shop does not say. */
  readonly days: number | null
}

/** What of a piece its tasks follow from: any Work is one. */
export interface TaskWork {
  readonly piece: Piece
  readonly shop: Shop
  readonly readings: readonly Reading[]
  readonly entries: Entries
  readonly steps: readonly Step[]
  readonly clock: readonly StepTime[]
  readonly materials: Materials
  readonly stack: Stack
  readonly casts: readonly (PourCast | null)[]
  readonly rounds: readonly PourRound[]
  readonly fills: MouldFills | null
  readonly quantity: { readonly pieces: number; readonly blanks: number }
  readonly mould: MouldPlan
  readonly timberFacts: readonly TimberFacts[]
  readonly moves: readonly Move[]
  readonly hand: readonly HandCut[]
  readonly machineCuts: MachineCuts
  readonly faces: readonly [front: FaceFinish, back: FaceFinish]
  readonly buy: readonly BoughtLine[]
}

/** Minutes of a machine at one step: what its programs ask for. */
export interface MachineMinutes {
  /** Index of the step. */
  readonly step: number
  /** Changes of cutter with the height taken anew. */
  readonly changes: number
  readonly testMin: number
  readonly airMin: number
  readonly runMin: number
  /** 'programs': by the moves of the programs themselves; 'feeds': from area, feed and depth of a pass. */
  readonly by: 'programs' | 'feeds'
}
