import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import type { ShopMachine } from '../piece/shop-schema.ts'
import type { Guards } from '../proving/judge/guards.ts'
import { circle } from '../shape/build.ts'
import type { Stack } from '../stack/stack.ts'
import type { Lying } from './in-the-way.ts'
import { closedLayers, inTheWay, travel } from './in-the-way.ts'
import { BED_ALLOWED_MM } from './program-input.ts'
import type { ProgramFile } from './program-set.ts'

/** Twice what was reckoned may be taken before it is said: a ramp leaves a wedge that the next pass takes with its own. */
const OVER_RECKONED = 2
/** Height that may be left or cut away beyond what is wanted before it is told, mm. */
const TOLERANCE_MM = 0.05

/**
 * What programs of a step are held against beside the piece.
 *
 * @param moves how many moves each program has: one whose piece was moved along has its own travel
 */
export function guardsOf(
  machining: Machining,
  programs: readonly ProgramFile[],
  moves: readonly number[]
): Guards {
  const of = programs.map(p => machining.settings[p.made[0]!.operation.setting]!)
  const on = of[0]!

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
    things: [
      ...inTheWay({ stack, materials, pins: machining.pins, ...on }),
      // Nothing stands in a hole while it is made.
      ...(programs.every(p => p.made.every(m => m.operation.kind === 'index holes')) ? [] : standing(of))
    ],
    envelope: travel(on, machine),
    ...(on.position === null
      ? {}
      : {
          envelopes: of.map((o, i) => ({
            fromMove: moves.slice(0, i).reduce((a, b) => a + b, 0),
            envelope: travel(o, machine)
          }))
        }),
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

// Index pins that the piece stands on in one of its positions, each once.
function standing(settings: readonly MachineSetting[]): Guards['things'] {
  const holes = settings.flatMap(s => s.position?.stands ?? [])
  const bed = settings[0]!.frame.bedZ
  const once = holes.filter((h, i) => holes.findIndex(o => o.x === h.x && o.y === h.y) === i)
  return once.map((h, i) => ({
    kind: 'pin',
    name: `index pin ${i + 1}`,
    region: circle(h.diameterMm, 0.01, h.x, h.y),
    fromMm: bed - h.bedMm,
    toMm: bed + (h.pin === null ? 0 : Math.max(0, h.pin.lengthMm - h.bedMm))
  }))
}

function heldOf(by: Stack['piece']['holding']['by']): Guards['held'] {
  return by === 'tape' || by === 'vacuum' ? 'face' : 'waste'
}
