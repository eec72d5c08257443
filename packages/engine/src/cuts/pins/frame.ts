import type { Face, Piece } from '../../piece/piece-schema.ts'
import { bounds } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { mirrorX, mirrorY, translate } from '../../shape/transform.ts'
import type { Side } from '../../stack/event.ts'
import type { Stack } from '../../stack/stack.ts'
import { sideOf } from '../../stack/stack.ts'
import type { Setting } from '../../steps/setting.ts'

/**
 * How the piece lies on the machine: from the plan (seen from the front, heights as cast) to the coordinates of a
 * setting (seen from above as it lies, z up out of the face that is up) and back.
 *
 *   front up                          X = x − x0      Y = y − y0
 *   back up, turned about x           X = x − x0      Y = −(y − y0)     left stays left
 *   back up, turned about y           X = −(x − x0)   Y = y − y0        near stays near
 *   always                            Z = s·(z − zeroZ),  s = +1 where the face up lay up in the mould, else −1
 *
 *   x0, y0   the datum: on the line it is turned over about, and in the middle of the outline's box along it, mm
 *   zeroZ    height as cast of Z 0: the face up after it was flattened in this setting, else as it is put there
 *
 * Source: a half turn in space about the line (machining.md B7, derived). It keeps the sense of turning: so what is
 * mirrored on the plan is mended to run counter-clockwise again, and paths are made after it.
 * Check: the rotation of points in space about the line, by its matrix, for both faces, both lines and both ways in
 * the mould.
 *
 * Limits: the faces are taken to be level and parallel; what the place really is like is measured (registered.ts).
 */
export interface Frame {
  readonly up: Face
  /** What is exchanged against the plan: x left and right, y near and far. */
  readonly mirror: 'none' | 'x' | 'y'
  readonly x0: number
  readonly y0: number
  /** Height as cast of Z 0, mm, and the sense of Z against heights as cast. */
  readonly zeroZ: number
  readonly zSign: 1 | -1
  /** Z of what lies below: the bed, when the face that is down lies on it; negative, mm. */
  readonly bedZ: number
  /** How the piece was found to lie: a program is turned by this about the datum, then shifted; 0 until measured. */
  readonly turnDeg: number
  readonly shiftX: number
  readonly shiftY: number
}

/** The line a piece is turned over about: parallel to x (left stays left) or to y. */
export type About = 'x' | 'y'

/** Where both faces are tied. */
export interface Datum {
  readonly x0: number
  readonly y0: number
  readonly about: About
}

/**
 * The datum of a piece: along the line it is turned about in the middle of the outline's box; across it in the middle
 * of the pins' box, else of the outline's.
 */
export function datumOf(
  outline: Region,
  about: About,
  pins: readonly (readonly [x: number, y: number])[] = []
): Datum {
  const b = bounds(outline)
  const across = (k: 0 | 1, low: number, high: number) =>
    pins.length === 0
      ? (low + high) / 2
      : (Math.min(...pins.map(p => p[k])) + Math.max(...pins.map(p => p[k]))) / 2
  return about === 'x'
    ? { x0: (b.minX + b.maxX) / 2, y0: across(1, b.minY, b.maxY), about }
    : { x0: across(0, b.minX, b.maxX), y0: (b.minY + b.maxY) / 2, about }
}

/** The frame of a setting. */
export function frameOf(
  piece: Pick<Piece, 'down'>,
  setting: Setting,
  stack: Pick<Stack, 'states' | 'steps' | 'castHeight'>,
  datum: Datum
): Frame {
  const { up } = setting
  const side = sideOf(piece, up)
  const { upZ, downZ } = facesOf(setting, stack, side)
  const zSign = side === 'high' ? 1 : -1
  return {
    up,
    mirror: up === 'front' ? 'none' : datum.about === 'x' ? 'y' : 'x',
    x0: datum.x0,
    y0: datum.y0,
    zeroZ: upZ,
    zSign,
    bedZ: zSign * (downZ - upZ) + 0,
    turnDeg: 0,
    shiftX: 0,
    shiftY: 0
  }
}

/** A region of the plan as it lies, counter-clockwise outside again. */
export function regionToProgram(frame: Frame, region: Region): Region {
  const moved = translate(region, -frame.x0, -frame.y0)
  return mirrored(frame, moved)
}

/** A region as it lies, back on the plan. */
export function regionToPlan(frame: Frame, region: Region): Region {
  return translate(mirrored(frame, region), frame.x0, frame.y0)
}

/** Lines of the plan as they lie, each from its own start to its own end. */
export function linesToProgram(frame: Frame, lines: readonly Float64Array[]): Float64Array[] {
  return lines.map(line => mapped(line, (x, y) => pointToProgram(frame, x, y)))
}

export function linesToPlan(frame: Frame, lines: readonly Float64Array[]): Float64Array[] {
  return lines.map(line => mapped(line, (x, y) => pointToPlan(frame, x, y)))
}

export function pointToProgram(frame: Frame, x: number, y: number): [x: number, y: number] {
  const { mirror } = frame
  // + 0 turns −0 into 0.
  return [
    (mirror === 'x' ? frame.x0 - x : x - frame.x0) + 0,
    (mirror === 'y' ? frame.y0 - y : y - frame.y0) + 0
  ]
}

export function pointToPlan(frame: Frame, x: number, y: number): [x: number, y: number] {
  const { mirror } = frame
  return [mirror === 'x' ? frame.x0 - x : x + frame.x0, mirror === 'y' ? frame.y0 - y : y + frame.y0]
}

/** A height as cast as it lies. */
export function zToProgram(frame: Frame, z: number): number {
  return frame.zSign * (z - frame.zeroZ) + 0
}

/** A height as it lies, as cast. */
export function zToPlan(frame: Frame, z: number): number {
  return frame.zeroZ + frame.zSign * z
}

/** A direction on the plan, degrees counter-clockwise from x, as it lies. */
export function angleToProgram(frame: Frame, degrees: number): number {
  const a = frame.mirror === 'none' ? degrees : frame.mirror === 'y' ? -degrees : 180 - degrees
  return (((a % 360) + 360) % 360) + 0
}

/** A place of the program as the machine goes to it, the measured place of the piece baked in. */
export function placed(frame: Frame, x: number, y: number): [x: number, y: number] {
  const a = (frame.turnDeg * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  return [c * x - s * y + frame.shiftX, s * x + c * y + frame.shiftY]
}

function mirrored(frame: Frame, region: Region): Region {
  return frame.mirror === 'none' ? region : frame.mirror === 'x' ? mirrorX(region) : mirrorY(region)
}

function mapped(line: Float64Array, map: (x: number, y: number) => [number, number]): Float64Array {
  const out = new Float64Array(line.length)
  for (let k = 0; k < line.length; k += 2) out.set(map(line[k]!, line[k + 1]!), k)
  return out
}

// Heights as cast of the face up after its last flattening in the setting, and of the face down then.
function facesOf(
  setting: Setting,
  { states, steps, castHeight }: Pick<Stack, 'states' | 'steps' | 'castHeight'>,
  side: Side
): { upZ: number; downZ: number } {
  let at = setting.from - 1
  for (let i = setting.from; i <= setting.to; i++)
    if (steps[i]!.kind === 'flatten' && steps[i]!.face === setting.up) at = i
  const state = states[at]
  const [low, high] = state === undefined ? [0, castHeight] : [state.lowZ, state.highZ]
  return side === 'high' ? { upZ: high, downZ: low } : { upZ: low, downZ: high }
}
