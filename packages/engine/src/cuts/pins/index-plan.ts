import { dowelPinOf } from '../../catalogue/dowel-pin.ts'
import type { Shop } from '../../piece/shop-schema.ts'
import { decimals } from '../../quantity/format.ts'
import { bounds } from '../../shape/measure.ts'
import type { Stack } from '../../stack/stack.ts'
import { settingsOf } from '../../steps/setting.ts'
import { deviationsMm } from '../../tolerance/iso286.ts'
import type { Strip } from '../area/strips.ts'
import { strips } from '../area/strips.ts'
import { cuttersOf } from '../run/cutters.ts'
import type { Ground } from './offer.ts'
import { EDGE_DIAMETERS, faultAt } from './offer.ts'

/** A hole right through the waste, on whose pin the piece is set again after it was moved along. On the plan, mm. */
export interface IndexHole {
  readonly x: number
  readonly y: number
  readonly diameterMm: number
  readonly holeMm: number
  readonly bedMm: number
  /** Pin as it is sold; null: turned or cut by the maker. */
  readonly pin: { readonly name: string; readonly lengthMm: number } | null
}

/** A pair of holes, one in the waste on either side, of two diameters. */
export type IndexPair = readonly [IndexHole, IndexHole]

/**
 * A piece longer than the bed, moved along it: the strips that are worked one after the other, and the holes that the
 * one and the next share.
 */
export interface IndexPlan {
  /** Axis of the plan that it is moved along. */
  readonly axis: 'x' | 'y'
  /** Travel of the machine along it and across it, mm. */
  readonly travelMm: number
  readonly acrossMm: number
  /** Strips on the plan, mm, in the sense of the axis; they overlap. */
  readonly strips: readonly Strip[]
  readonly overlapMm: number
  /** How far the piece is moved each time, mm. */
  readonly pitchMm: number
  /** How far beside its strip a cutter may go, mm. */
  readonly besideMm: number
  /** Pair i is made while strip i lies on the machine, and found again by strip i + 1 (or the other way about). */
  readonly pairs: readonly IndexPair[]
}

/** How a pin sits: sizes from the document or as usual. */
export interface IndexPins {
  readonly diametersMm: readonly [number, number]
  readonly playMm: number
  readonly bedMm: number
}

/** An edge of a cutter goes so much past the strip, mm; what strips overlap by beyond two cutters, mm (practice). */
const PAST_MM = 3
const OVERLAP_MORE_MM = 10
/** Room over the end of a pin, mm (practice). */
const OVER_PIN_MM = 1
/** Step in which places of holes are tried, mm. */
const STEP_MM = 2

/** Whether the casting lies on the machine as it is, on either of its sides. */
function fitsBed(w: number, h: number, { x, y }: { readonly x: number; readonly y: number }): boolean {
  return (w <= x && h <= y) || (w <= y && h <= x)
}

/**
 * The strips and shared holes of a piece that is longer than the bed one way. null: it fits, or there is no machine. A
 * sentence: it cannot be moved along, and why.
 *
 * The longer axis of the casting goes along the longer travel that leaves room across. Strips overlap by two of the
 * widest cutter and 10 mm, so that whatever a round cutter takes near the end of one it takes whole in the next: a disc
 * of diameter d lies wholly in one of two strips that overlap by d or more. Holes go right through, one in the waste
 * on either side, of two diameters, where both strips' travel reaches; offers are judged as those of other pins are.
 *
 * Limits: what is moved along must stay held; the machine's own error across a strip adds to that of the pins.
 */
export function indexPlan(
  stack: Stack,
  shop: Pick<Shop, 'machine' | 'cutters'>,
  groundOf: () => Ground,
  pins: IndexPins
): IndexPlan | string | null {
  const { machine } = shop
  if (machine === undefined) return null
  const box = bounds(stack.geometry.mould)
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY]
  if (fitsBed(w, h, machine)) return null
  const axis = w >= h ? 'x' : 'y'
  const [long, cross] = axis === 'x' ? [w, h] : [h, w]
  const ways = [
    [machine.x, machine.y],
    [machine.y, machine.x]
  ] as const
  const way = [...ways].sort((a, b) => b[0] - a[0]).find(([, across]) => cross <= across)
  if (way === undefined)
    return `it is ${decimals(cross, 0)} mm across, more than the machine travels on either side`
  const [travelMm, acrossMm] = way
  const widest = Math.max(
    0,
    ...cuttersOf(shop)
      .cutters.filter(c => c.own || c.shape.form === 'surfacing' || c.shape.form === 'flat')
      .map(c => c.shape.diameterMm)
  )
  const besideMm = widest / 2 + PAST_MM
  const overlapMm = 2 * widest + OVERLAP_MORE_MM
  const usable = travelMm - 2 * besideMm
  if (usable < 1.5 * overlapMm)
    return `with a cutter ${decimals(widest, 0)} mm wide the ${decimals(travelMm, 0)} mm of travel leave too short a strip to move it along`
  const [low, high] = axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY]
  const parts = strips(low, low + long, usable, overlapMm)
  const ground = groundOf()
  const pairs: IndexPair[] = []
  for (let i = 0; i + 1 < parts.length; i++) {
    const middle = (s: Strip) => (s.fromMm + s.toMm) / 2
    const reach = travelMm / 2 - Math.max(...pins.diametersMm)
    const from = Math.max(low, middle(parts[i + 1]!) - reach)
    const to = Math.min(high, middle(parts[i]!) + reach)
    const pair = pairBetween(ground, stack, axis, from, to, pins)
    if (pair === null)
      return `the waste on its two long sides has no place for the index pins: each hole wants ${decimals(EDGE_DIAMETERS * Math.max(...pins.diametersMm), 0)} mm to the edge of the casting and 3 mm to every cut`
    pairs.push(pair)
  }
  const pitchMm = parts.length > 1 ? parts[1]!.fromMm - parts[0]!.fromMm : 0
  return { axis, travelMm, acrossMm, strips: parts, overlapMm, pitchMm, besideMm, pairs }
}

// From the middle between the strips outward: the nearest place along that offers a hole on both sides.
function pairBetween(
  ground: Ground,
  stack: Stack,
  axis: 'x' | 'y',
  from: number,
  to: number,
  pins: IndexPins
): IndexPair | null {
  const box = bounds(ground.casting)
  const [near, far] = axis === 'x' ? [box.minY, box.maxY] : [box.minX, box.maxX]
  const middle = (near + far) / 2
  const [first, second] = pins.diametersMm
  const at = (u: number, v: number): readonly [number, number] => (axis === 'x' ? [u, v] : [v, u])
  // From the edge of the casting inward, until the piece begins.
  const search = (u: number, start: number, step: number, diameter: number): number | null => {
    for (let v = start; step > 0 ? v < middle : v > middle; v += step) {
      const fault = faultAt(ground, ...at(u, v), diameter)
      if (fault === null) return v
      if (fault.kind === 'inside') return null
    }
    return null
  }
  const half = (to - from) / 2
  for (let k = 0; k * STEP_MM <= half; k++)
    for (const off of k === 0 ? [0] : [k * STEP_MM, -k * STEP_MM]) {
      const u = Number(((from + to) / 2 + off).toFixed(2))
      const a = search(u, Math.ceil(near + EDGE_DIAMETERS * first), 1, first)
      if (a === null) continue
      const z = search(u, Math.floor(far - EDGE_DIAMETERS * second), -1, second)
      if (z !== null) return [hole(stack, at(u, a), first, pins), hole(stack, at(u, z), second, pins)]
    }
  return null
}

function hole(
  stack: Stack,
  [x, y]: readonly [number, number],
  diameterMm: number,
  pins: IndexPins
): IndexHole {
  const sold = dowelPinOf(diameterMm)
  const over = sold === null ? 0 : deviationsMm(diameterMm, sold.toleranceClass).upperMm
  const last = settingsOf(stack.steps).at(-1)
  const state = last === undefined ? undefined : stack.states[last.to]
  // No pin stands out of the piece as it is in the end.
  const room = pins.bedMm + (state === undefined ? stack.castHeight : state.highZ - state.lowZ) - OVER_PIN_MM
  const lengthMm = sold?.lengthsMm.filter(l => l <= room).at(-1)
  return {
    x,
    y,
    diameterMm,
    holeMm: Number((diameterMm + over + pins.playMm).toFixed(3)),
    bedMm: pins.bedMm,
    pin: sold === null || lengthMm === undefined ? null : { name: sold.name, lengthMm }
  }
}
