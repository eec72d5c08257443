import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import type { ShopMachine } from '../piece/shop-schema.ts'
import type { Guards } from '../proving/judge/guards.ts'
import type { Guard } from '../proving/sweep/guard.ts'
import { circle } from '../shape/build.ts'
import type { Stack } from '../stack/stack.ts'
import { BED_ALLOWED_MM } from './program-input.ts'
import type { ProgramFile } from './program-set.ts'

/** Height that clamps and screws are taken to stand over the work, mm (practice). */
const CLAMP_MM = 40
/** Twice what was reckoned may be taken before it is said: a ramp leaves a wedge that the next pass takes with its own. */
const OVER_RECKONED = 2
/** Height that may be left or cut away beyond what is wanted before it is told, mm. */
const TOLERANCE_MM = 0.05

/** What programs of a step are held against beside the piece. */
export function guardsOf(machining: Machining, on: MachineSetting, programs: readonly ProgramFile[]): Guards {
  const { machine, stack } = machining.bench
  const { geometry, piece } = stack
  const bed = on.frame.bedZ
  const things: Guard[] = [
    ...geometry.keepClear.map(
      (region, i): Guard => ({
        kind: 'clamp',
        name: `place ${i + 1} to be kept clear`,
        region,
        fromMm: bed,
        toMm: on.stock.maxZ + CLAMP_MM
      })
    ),
    // Pins stand in their holes once the piece lies on them.
    ...(pinned(machining, on)
      ? machining.pins.pins.map(
          (p, i): Guard => ({
            kind: 'pin',
            name: `pin ${i + 1}`,
            region: circle(p.diameterMm, 0.01, p.x, p.y),
            fromMm: bed - p.bedMm,
            toMm: bed + (p.pin === null ? (p.depthMm ?? 0) : Math.max(0, p.pin.lengthMm - p.bedMm))
          })
        )
      : [])
  ]
  const x = (on.stock.minX + on.stock.maxX) / 2
  const y = (on.stock.minY + on.stock.maxY) / 2
  const turned = turns(on, machine)
  const [alongX, alongY] = turned ? [machine.y, machine.x] : [machine.x, machine.y]
  const most = Math.max(
    ...programs
      .flatMap(p => p.made)
      .map(({ operation: { feeds, job } }) => {
        const deep = Math.min(feeds.depthMm, job.topMm - job.floorMm)
        return feeds.feedMmMin * deep * job.cutter.diameterMm
      })
  )
  return {
    things,
    envelope: {
      minX: x - alongX / 2,
      maxX: x + alongX / 2,
      minY: y - alongY / 2,
      maxY: y + alongY / 2,
      minZ: bed - machine.spoilboard,
      maxZ: bed + machine.z
    },
    bedMm: bed,
    bedDeepMm: BED_ALLOWED_MM,
    closed: [],
    mostMm3Min: OVER_RECKONED * most,
    held: heldOf(piece.holding.by),
    tolMm: TOLERANCE_MM
  }
}

/** The same for a program that comes from elsewhere: nothing is known of how much it means to take. */
export function anyGuards(
  { geometry, piece }: Stack,
  machine: ShopMachine,
  bedMm: number,
  highestMm: number
): Guards {
  return {
    things: geometry.keepClear.map(
      (region, i): Guard => ({
        kind: 'clamp',
        name: `place ${i + 1} to be kept clear`,
        region,
        fromMm: bedMm,
        toMm: highestMm + CLAMP_MM
      })
    ),
    envelope: null,
    bedMm,
    bedDeepMm: machine.spoilboard === 0 ? 0 : BED_ALLOWED_MM,
    closed: [],
    mostMm3Min: null,
    held: heldOf(piece.holding.by),
    tolMm: TOLERANCE_MM
  }
}

function heldOf(by: Stack['piece']['holding']['by']): Guards['held'] {
  return by === 'tape' || by === 'vacuum' ? 'face' : 'waste'
}

// The piece is laid along the longer travel where it does not fit the other way.
function turns(on: MachineSetting, machine: { readonly x: number; readonly y: number }): boolean {
  const [w, h] = [on.stock.maxX - on.stock.minX, on.stock.maxY - on.stock.minY]
  return (w > machine.x || h > machine.y) && w <= machine.y && h <= machine.x
}

function pinned(machining: Machining, on: MachineSetting): boolean {
  const drilled = machining.operations.find(o => o.kind === 'pin holes')
  return drilled !== undefined && on.setting.index > drilled.setting
}
