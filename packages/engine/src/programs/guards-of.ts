import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import type { ShopMachine } from '../piece/shop-schema.ts'
import type { Guards } from '../proving/judge/guards.ts'
import type { Stack } from '../stack/stack.ts'
import type { Lying } from './in-the-way.ts'
import { closedLayers, inTheWay, travel } from './in-the-way.ts'
import { BED_ALLOWED_MM } from './program-input.ts'
import type { ProgramFile } from './program-set.ts'

/** Twice what was reckoned may be taken before it is said: a ramp leaves a wedge that the next pass takes with its own. */
const OVER_RECKONED = 2
/** Height that may be left or cut away beyond what is wanted before it is told, mm. */
const TOLERANCE_MM = 0.05

/** What programs of a step are held against beside the piece. */
export function guardsOf(machining: Machining, on: MachineSetting, programs: readonly ProgramFile[]): Guards {
  const { machine, stack, materials } = machining.bench
  const most = Math.max(
    ...programs
      .flatMap(p => p.made)
      .map(({ operation: { feeds, job } }) => {
        const deep = Math.min(feeds.depthMm, job.topMm - job.floorMm)
        return feeds.feedMmMin * deep * job.cutter.diameterMm
      })
  )
  return {
    things: inTheWay({ stack, materials, pins: machining.pins, ...on }),
    envelope: travel(on, machine),
    bedMm: on.frame.bedZ,
    bedDeepMm: BED_ALLOWED_MM,
    closed: closedLayers(stack),
    mostMm3Min: OVER_RECKONED * most,
    held: heldOf(stack.piece.holding.by),
    tolMm: TOLERANCE_MM
  }
}

/**
 * The same for a program that comes from elsewhere: nothing is known of how much it means to take.
 *
 * @param machine null where the shop has none: then no travel is known
 * @param compared whether it is held against what its step is to leave: else no layer is to stay closed
 */
export function anyGuards(lying: Lying, machine: ShopMachine | null, compared: boolean): Guards {
  return {
    things: inTheWay(lying),
    envelope: machine === null ? null : travel(lying, machine),
    bedMm: lying.frame.bedZ,
    bedDeepMm: machine?.spoilboard === 0 ? 0 : BED_ALLOWED_MM,
    closed: compared ? closedLayers(lying.stack) : [],
    mostMm3Min: null,
    held: heldOf(lying.stack.piece.holding.by),
    tolMm: TOLERANCE_MM
  }
}

function heldOf(by: Stack['piece']['holding']['by']): Guards['held'] {
  return by === 'tape' || by === 'vacuum' ? 'face' : 'waste'
}
