import type { Reading } from '../../piece/reading-schema.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Setting } from '../../steps/setting.ts'
import { edgesRead } from './edge-read.ts'
import type { Frame } from './frame.ts'
import { pointToProgram } from './frame.ts'
import type { PinPlan } from './pin-plan.ts'
import type { EdgeTouch, Mark, Registered } from './registered.ts'
import { registered } from './registered.ts'
import type { ThicknessRead } from './thickness-read.ts'
import { latest, thicknessRead } from './thickness-read.ts'

/** A frame with what was measured baked in. */
export interface MeasuredFrame {
  readonly frame: Frame
  /** How the piece lies by its marks, edges or pins; null when none were read, or they do not settle it. */
  readonly place: Registered | null
  /** Each place of its residuals in words: "mark 1", "left side, touch 2". */
  readonly names: readonly string[]
  /** Why what was read is not used, in words; none: all is. */
  readonly unused: readonly string[]
  /** Thickness as measured and as planned then, mm; null when none was read. */
  readonly thickness: ThicknessRead | null
}

/**
 * The frame of a setting after readings: marks and edges touched with its face up, else pins found in the bed for the
 * settings after the first, turn and shift the program; the last thickness read moves the height of the bed, one to one.
 *
 * Limits: a thickness says no step: it is taken to belong to the flattening whose planned thickness is nearest to it.
 * Readings that leave the piece free to shift or turn leave the frame as planned, and `unused` says why.
 */
export function measuredFrame(
  frame: Frame,
  setting: Setting,
  stack: Pick<Stack, 'states' | 'steps' | 'geometry'>,
  pins: PinPlan,
  readings: readonly Reading[]
): MeasuredFrame {
  const { marks, names, touches, refused } = touched(frame, setting, stack, pins, readings)
  const { place, why } = registeredOr(marks, touches)
  const thickness = thicknessRead(stack, readings, setting.to)
  const moved =
    thickness === null ? frame : { ...frame, bedZ: frame.bedZ - (thickness.measuredMm - thickness.plannedMm) }
  return {
    frame:
      place === null
        ? moved
        : { ...moved, turnDeg: place.turnDeg, shiftX: place.shiftX, shiftY: place.shiftY },
    place,
    names,
    unused: [...refused, ...(why === null ? [] : [why])],
    thickness
  }
}

// Marks and edges touched on the piece; where there are none, pins found in the bed.
function touched(
  frame: Frame,
  setting: Setting,
  { geometry }: Pick<Stack, 'geometry'>,
  pins: PinPlan,
  readings: readonly Reading[]
) {
  const edges = edgesRead(frame, geometry, readings)
  const onPiece = placeMarks(frame, readings)
  const byPins = onPiece === null && edges.touches.length === 0 && setting.index > 0
  const marks = onPiece ?? (byPins ? pinMarks(frame, pins, readings) : null) ?? []
  return {
    marks,
    names: [...marks.map((_, k) => `${byPins ? 'pin' : 'mark'} ${k + 1}`), ...edges.names],
    touches: edges.touches,
    refused: edges.refused
  }
}

function placeMarks(frame: Frame, readings: readonly Reading[]): Mark[] | null {
  const last = latest(readings.flatMap(r => (r.kind === 'place' && r.face === frame.up ? [r] : [])))
  return last === null
    ? null
    : last.marks.map(m => ({ drawn: pointToProgram(frame, m.drawn[0], m.drawn[1]), measured: m.measured }))
}

function pinMarks(frame: Frame, { pins }: PinPlan, readings: readonly Reading[]): Mark[] | null {
  const marks = pins.flatMap((pin, i): Mark[] => {
    const last = latest(readings.flatMap(r => (r.kind === 'pin' && r.pin === i + 1 ? [r] : [])))
    return last === null ? [] : [{ drawn: pointToProgram(frame, pin.x, pin.y), measured: [last.x, last.y] }]
  })
  return marks.length < 2 ? null : marks
}

function registeredOr(
  marks: readonly Mark[],
  touches: readonly EdgeTouch[]
): { place: Registered | null; why: string | null } {
  if (marks.length + touches.length === 0) return { place: null, why: null }
  try {
    return { place: registered(marks, touches), why: null }
  } catch (e) {
    if (e instanceof RangeError) return { place: null, why: e.message }
    throw e
  }
}
