import type { StepTime } from '../cast/clock.ts'
import type { Materials } from '../cast/facts.ts'
import type { Season } from '../fits/season.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Stack } from '../stack/stack.ts'
import { pinPlan } from './pins/pin-plan.ts'
import type { Tied } from './pins/tied.ts'
import { tiedOf } from './pins/tied.ts'
import type { MachineCuts } from './run/machine-cut.ts'
import { machineCutsOf } from './run/machine-cut.ts'

/** What a machine asks of a plan at every edit: cutters and feeds of its cuts, and pins. No path is made. */
export interface ForMachine {
  readonly machineCuts: MachineCuts
  readonly pins: Tied
}

export interface ForMachineInput {
  readonly stack: Stack
  readonly materials: Materials
  readonly shop: Shop
  readonly readings: readonly Reading[]
  readonly seasons: readonly Season[]
  readonly clock: readonly StepTime[]
}

/** Of a piece whose shop has a machine, or that names pins. */
export function forMachine({
  stack,
  materials,
  shop,
  readings,
  seasons,
  clock
}: ForMachineInput): ForMachine {
  return {
    machineCuts: machineCutsOf(stack, materials, shop),
    pins: tiedOf(pinPlan(stack, stack.piece, shop, { seasons, clock }), stack, readings)
  }
}
