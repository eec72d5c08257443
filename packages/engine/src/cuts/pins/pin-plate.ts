import { ringArea } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import type { Frame } from './frame.ts'
import { pointToProgram } from './frame.ts'
import type { PinPlan } from './pin-plan.ts'

/** Where the bed is drilled for one pin: the same place in both settings. */
export interface PlatePin {
  /** From 1, as on the sheets. */
  readonly number: number
  /** In the coordinates of each setting, in order; alike when the pattern is. */
  readonly at: readonly (readonly [x: number, y: number])[]
  readonly diameterMm: number
  /** Pressed into timber or board: so much narrower than the pin (practice). */
  readonly bedHoleMm: number
  readonly depthMm: number
}

/** In timber a pin sits fast in a hole so much narrower, mm on the diameter (practice). */
const PRESS_MM = 0.05

/** What the bed is drilled to: a table of places about the zero. */
export function pinPlate(plan: PinPlan, frames: readonly Frame[]): PlatePin[] {
  return plan.pins.map((pin, i) => ({
    number: i + 1,
    at: frames.map(f => pointToProgram(f, pin.x, pin.y)),
    diameterMm: pin.diameterMm,
    bedHoleMm: Number((pin.diameterMm - PRESS_MM).toFixed(3)),
    depthMm: pin.bedMm
  }))
}

/** A place to touch at the machine before the cut. */
export interface ZeroPoint {
  readonly name: string
  readonly x: number
  readonly y: number
  /** Height to be read there; null: place alone. */
  readonly z: number | null
}

/**
 * The places of a setting that are touched before its first cut: the centre, which is the zero, and two marks pricked on
 * the face from the drawing, named as they are seen on the machine. `reachMm` is the farthest corner of the outline.
 *
 * A corner of the piece would not do: turned or mirrored, a rectangle has a corner there again. So mark A is pricked at
 * the corner farthest right and far, mark B halfway to the one farthest left and far: unlike, and not in line.
 */
export function zeroPoints(
  frame: Frame,
  outline: Region
): { readonly points: readonly [ZeroPoint, ZeroPoint, ZeroPoint]; readonly reachMm: number } {
  const lies = outline.rings
    .filter(r => ringArea(r) > 0)
    .flatMap(ring => {
      const places: [number, number][] = []
      for (let k = 0; k < ring.length; k += 2) places.push(pointToProgram(frame, ring[k]!, ring[k + 1]!))
      return places
    })
  const most = (of: (x: number, y: number) => number) =>
    lies.reduce((best, p) => (of(p[0], p[1]) > of(best[0], best[1]) + 1e-9 ? p : best), lies[0] ?? [0, 0])
  const right = most((x, y) => x + y)
  const left = most((x, y) => y - x)
  return {
    points: [
      { name: 'the zero', x: 0, y: 0, z: 0 },
      { name: 'mark A, far right', x: SHARE * right[0], y: SHARE * right[1], z: null },
      { name: 'mark B, halfway to the far left', x: left[0] / 2, y: left[1] / 2, z: null }
    ],
    reachMm: lies.reduce((most, [x, y]) => Math.max(most, Math.hypot(x, y)), 0)
  }
}

/** How far towards the corner mark A is pricked: on the piece, not on its edge. */
const SHARE = 0.9
