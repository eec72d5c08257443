import type { Region } from '../../shape/region.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Frame } from './frame.ts'
import type { Guard } from './guard.ts'

/** What a block is made from. */
export interface BlockAsk {
  readonly stack: Stack
  readonly frame: Frame
  /** How many events of the stack have happened. */
  readonly events: number
  /** How many have when the program is done; null: it is not said what is wanted. */
  readonly wantedEvents: number | null
  /** Where on the plan what is wanted is asked for; null: everywhere. */
  readonly mask: Region | null
  readonly cellMm: number
  /** What the piece lies on, program z; left out: the lowest place of the piece as it lies. */
  readonly bedMm?: number
  /** How deep the cutter may go into the bed, mm. */
  readonly bedDeepMm: number
  readonly guards: readonly Guard[]
  /** Materials that must stay closed, as "pour 2"; the program may not cut them beyond what is wanted. */
  readonly closed: readonly string[]
}
