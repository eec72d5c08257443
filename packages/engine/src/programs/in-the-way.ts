import type { Bench } from '../cuts/operation/bench.ts'
import type { Position } from '../cuts/operation/position.ts'
import type { Frame } from '../cuts/pins/frame.ts'
import { zToProgram } from '../cuts/pins/frame.ts'
import type { PinPlan } from '../cuts/pins/pin-plan.ts'
import { castInParts } from '../fits/cast-in.ts'
import type { ShopMachine } from '../piece/shop-schema.ts'
import type { Envelope } from '../proving/judge/guards.ts'
import type { Guard } from '../proving/sweep/guard.ts'
import { circle } from '../shape/build.ts'
import type { Stack } from '../stack/stack.ts'
import type { Setting } from '../steps/setting.ts'

/** Height that clamps and screws are taken to stand over the work, mm (practice). */
const CLAMP_MM = 40

/** The piece as it lies when a program is run. */
export interface Lying {
  readonly stack: Stack
  readonly materials: Pick<Bench['materials'], 'hardware'>
  readonly pins: PinPlan
  readonly setting: Setting
  readonly frame: Frame
  /** Box of the casting in the coordinates of the setting, mm. */
  readonly stock: {
    readonly minX: number
    readonly maxX: number
    readonly minY: number
    readonly maxY: number
    readonly maxZ: number
  }
}

/** What a cutter must not run into: places kept clear, pins the piece lies on, parts that are cast in. */
export function inTheWay({ stack, materials, pins, setting, frame, stock }: Lying): Guard[] {
  const bed = frame.bedZ
  return [
    ...stack.geometry.keepClear.map(
      (region, i): Guard => ({
        kind: 'clamp',
        name: `place ${i + 1} to be kept clear`,
        region,
        fromMm: bed,
        toMm: stock.maxZ + CLAMP_MM
      })
    ),
    // Pins stand in their holes once the piece lies on them.
    ...(onPins(stack, setting)
      ? pins.pins.map(
          (p, i): Guard => ({
            kind: 'pin',
            name: `pin ${i + 1}`,
            region: circle(p.diameterMm, 0.01, p.x, p.y),
            fromMm: bed - p.bedMm,
            toMm: bed + (p.pin === null ? (p.depthMm ?? 0) : Math.max(0, p.pin.lengthMm - p.bedMm))
          })
        )
      : []),
    ...castInParts(stack, materials.hardware).map((part): Guard => {
      const z = [zToProgram(frame, part.from), zToProgram(frame, part.to)]
      return {
        kind: 'hardware',
        name: part.name,
        region: part.region,
        fromMm: Math.min(...z),
        toMm: Math.max(...z)
      }
    })
  ]
}

/** Layers that hide what lies behind them: where a cut is not meant to go into one from above, it stays closed. */
export function closedLayers({ entries }: Pick<Stack, 'entries'>): string[] {
  return entries.pours.filter(p => p.value.opaque).map(p => `pour ${p.index}`)
}

/** Where the tip may go with the piece, or the strip of it that is worked, in the middle of the machine, laid along the longer travel where it must be. */
export function travel(
  { stock, frame, position }: Pick<Lying, 'stock' | 'frame'> & { readonly position?: Position | null },
  machine: Pick<ShopMachine, 'x' | 'y' | 'z' | 'spoilboard'>
): Envelope {
  if (position !== undefined && position !== null) {
    const { axis, middleMm, travelMm, acrossMm } = position
    const middle = axis === 'x' ? (stock.minY + stock.maxY) / 2 : (stock.minX + stock.maxX) / 2
    const along = [middleMm - travelMm / 2, middleMm + travelMm / 2] as const
    const across = [middle - acrossMm / 2, middle + acrossMm / 2] as const
    const [x, y] = axis === 'x' ? [along, across] : [across, along]
    return {
      minX: x[0],
      maxX: x[1],
      minY: y[0],
      maxY: y[1],
      minZ: frame.bedZ - machine.spoilboard,
      maxZ: frame.bedZ + machine.z
    }
  }
  const [w, h] = [stock.maxX - stock.minX, stock.maxY - stock.minY]
  const turned = (w > machine.x || h > machine.y) && w <= machine.y && h <= machine.x
  const [alongX, alongY] = turned ? [machine.y, machine.x] : [machine.x, machine.y]
  const x = (stock.minX + stock.maxX) / 2
  const y = (stock.minY + stock.maxY) / 2
  return {
    minX: x - alongX / 2,
    maxX: x + alongX / 2,
    minY: y - alongY / 2,
    maxY: y + alongY / 2,
    minZ: frame.bedZ - machine.spoilboard,
    maxZ: frame.bedZ + machine.z
  }
}

function onPins({ steps }: Pick<Stack, 'steps'>, setting: Setting): boolean {
  const drilled = steps.findIndex(s => s.kind === 'drill pins')
  return drilled >= 0 && drilled < setting.from
}
