import type { ShapeDocument } from '../piece/shape-field.ts'
import type { Frame } from './frame.ts'
import { turned } from './shape-place.ts'
import type { Handle } from './shape-resize.ts'

/**
 * What a pull at a handle, a turn or a move does to a shape, as a map of the plan: while a hand drags, the outline
 * drawn is only mapped; the shape itself is changed once, when the hand lets go.
 */

/** x' = a·x + c·y + e, y' = b·x + d·y + f; mm on the plan. */
export type PlanMap = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

export interface Pulled {
  readonly frame: Frame
  readonly map: PlanMap
}

type Pair = readonly [number, number]

/** What a shape keeps while it is pulled: nothing, its proportions, or its middle and its roundness. */
export type Keeps = 'nothing' | 'proportions' | 'middle'

/** Least size a pull leaves, mm. */
const LEAST_MM = 0.1
/** From this far an angle is drawn to a multiple of 45 degrees. */
const NEAR_DEG = 2.5

export function keepsOf(shape: ShapeDocument): Keeps {
  if (shape.circle !== undefined) return 'middle'
  return shape.rectangle !== undefined || shape.polygon !== undefined || shape.path !== undefined
    ? 'nothing'
    : 'proportions'
}

/** The frame with `handle` pulled to the place `to` of the plan, mm. */
export function pulledFrame(frame: Frame, handle: Handle, to: Pair, keeps: Keeps): Pulled {
  const [u, v] = turned(to[0] - frame.x, to[1] - frame.y, -frame.turnDeg)
  const [w, h] = [frame.widthMm, frame.heightMm]
  const sideX = handle.includes('left') ? -1 : handle.includes('right') ? 1 : 0
  const sideY = handle.includes('near') ? -1 : handle.includes('far') ? 1 : 0
  if (keeps === 'middle') {
    const size = Math.max(LEAST_MM, 2 * Math.max(Math.abs(sideX * u), Math.abs(sideY * v)))
    return pulled(frame, size / w, size / h, 0, 0)
  }
  // Sizes measured from the side that stays.
  const wide = sideX === 0 ? w : Math.max(LEAST_MM, sideX * u + w / 2)
  const high = sideY === 0 ? h : Math.max(LEAST_MM, sideY * v + h / 2)
  if (keeps === 'nothing') return pulled(frame, wide / w, high / h, sideX, sideY)
  const k = sideX !== 0 && sideY !== 0 ? Math.max(wide / w, high / h) : sideX === 0 ? high / h : wide / w
  return pulled(frame, k, k, sideX, sideY)
}

/** The frame turned to `deg`, about its middle. */
export function turnedFrame(frame: Frame, deg: number): Pulled {
  const [cos, sin] = turned(1, 0, deg - frame.turnDeg)
  return {
    frame: { ...frame, turnDeg: deg },
    map: about([frame.x, frame.y], [cos, sin, -sin, cos])
  }
}

/** The frame moved, mm. */
export function movedFrame(frame: Frame, dx: number, dy: number): Pulled {
  return { frame: { ...frame, x: frame.x + dx, y: frame.y + dy }, map: [1, 0, 0, 1, dx, dy] }
}

/** Whole degrees, multiples of 45 from a little way off; above −180 to 180. */
export function snappedTurn(deg: number): number {
  const eighth = Math.round(deg / 45) * 45
  const whole = Math.abs(deg - eighth) <= NEAR_DEG ? eighth : Math.round(deg)
  const own = whole - 360 * Math.round(whole / 360)
  return own === -180 ? 180 : own + 0
}

// Scaled in its own directions; the side opposite the handle stays, or the middle where there is no side.
function pulled(frame: Frame, kx: number, ky: number, sideX: number, sideY: number): Pulled {
  const still = turned((-sideX * frame.widthMm) / 2, (-sideY * frame.heightMm) / 2, frame.turnDeg)
  const [cos, sin] = turned(1, 0, frame.turnDeg)
  const map = about(
    [frame.x + still[0], frame.y + still[1]],
    [
      kx * cos * cos + ky * sin * sin,
      (kx - ky) * cos * sin,
      (kx - ky) * cos * sin,
      kx * sin * sin + ky * cos * cos
    ]
  )
  const [x, y] = mapped(map, [frame.x, frame.y])
  return {
    frame: { ...frame, x, y, widthMm: frame.widthMm * kx, heightMm: frame.heightMm * ky },
    map
  }
}

function about([x, y]: Pair, [a, b, c, d]: readonly [number, number, number, number]): PlanMap {
  return [a, b, c, d, x - a * x - c * y, y - b * x - d * y]
}

/** A place of the plan under a map, mm. */
export function mapped([a, b, c, d, e, f]: PlanMap, [x, y]: Pair): [number, number] {
  return [a * x + c * y + e, b * x + d * y + f]
}
