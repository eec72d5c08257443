import type { Pour } from '../piece/piece-schema.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { PourStack } from '../stack/stack.ts'
import type { PourBatches } from './batches.ts'
import { batchesOf } from './batches.ts'
import type { TintPigment } from './facts.ts'
import type { Speed } from './speed.ts'

/** How a pour is mixed where several pieces are made alike: for how many blanks at once, and in what batches. */
export interface PourRound {
  readonly blanks: number
  /** Masses of all those blanks; null for a pour of nothing. */
  readonly batches: PourBatches | null
}

/** The pour and its place in the stack as one for several blanks: what is mixed for them is mixed together. */
function forBlanks(pour: Pour, stack: PourStack, blanks: number): readonly [Pour, PourStack] {
  if (blanks === 1) return [pour, stack]
  return [
    pour.mixed === undefined ? pour : { ...pour, mixed: pour.mixed * blanks },
    { ...stack, massG: stack.massG * blanks, surfaceMm2: stack.surfaceMm2 * blanks }
  ]
}

/**
 * Batches of a pour for several blanks. They are split anew from the whole, so that few cups serve many; where the maker
 * fixed number or minutes, each blank is mixed as fixed.
 *
 * Check: masses are those of one blank times their number; every batch is out of its vessel in time (tests).
 */
export function pourRound(
  of: {
    readonly pour: Pour
    readonly stack: PourStack
    readonly choice: ResinChoice
    readonly tint: readonly TintPigment[]
    readonly speed: Speed
    readonly shop: Shop
  },
  own: PourBatches | null,
  blanks: number
): PourRound {
  if (own === null || blanks === 1) return { blanks, batches: own }
  const fixed = of.pour.batches !== undefined || of.pour.minutes !== undefined
  const [pour, stack] = forBlanks(of.pour, of.stack, blanks)
  const together = fixed ? null : batchesOf(pour, stack, of.choice, of.tint, of.speed, of.shop, blanks)
  if (together !== null && together.mixed !== null) return { blanks, batches: together }
  const { mixed } = own
  return {
    blanks,
    batches: {
      ...own,
      pouredG: own.pouredG * blanks,
      mixedG: own.mixedG * blanks,
      mixed: mixed === null ? null : { ...mixed, count: mixed.count * blanks }
    }
  }
}
