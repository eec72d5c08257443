import type { Reading } from '../../piece/reading-schema.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Setting } from '../../steps/setting.ts'
import type { Frame } from './frame.ts'
import { pointToProgram } from './frame.ts'
import type { PinPlan } from './pin-plan.ts'
import type { Mark, Registered } from './registered.ts'
import { registered } from './registered.ts'
import type { ThicknessRead } from './thickness-read.ts'
import { latest, thicknessRead } from './thickness-read.ts'

/** A frame with what was measured baked in. */
export interface MeasuredFrame {
  readonly frame: Frame
  /** How the piece lies by its marks; null when none were read, or too few. */
  readonly place: Registered | null
  /** Thickness as measured and as planned then, mm; null when none was read. */
  readonly thickness: ThicknessRead | null
}

/**
 * The frame of a setting after readings: marks touched with its face up, else pins found in the bed for the settings
 * after the first, turn and shift the program; the last thickness read moves the height of the bed, one to one.
 *
 * Limits: a thickness says no step: it is taken to belong to the flattening whose planned thickness is nearest to it.
 * Readings of two places that lie on one another, or fewer than two, leave the frame as planned.
 */
export function measuredFrame(
  frame: Frame,
  setting: Setting,
  stack: Pick<Stack, 'states' | 'steps'>,
  pins: PinPlan,
  readings: readonly Reading[]
): MeasuredFrame {
  const marks = placeMarks(frame, readings) ?? (setting.index === 0 ? null : pinMarks(frame, pins, readings))
  const place = marks === null ? null : registeredOrNull(marks)
  const thickness = thicknessRead(stack, readings, setting.to)
  const moved =
    thickness === null ? frame : { ...frame, bedZ: frame.bedZ - (thickness.measuredMm - thickness.plannedMm) }
  return {
    frame:
      place === null
        ? moved
        : { ...moved, turnDeg: place.turnDeg, shiftX: place.shiftX, shiftY: place.shiftY },
    place,
    thickness
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

function registeredOrNull(marks: readonly Mark[]): Registered | null {
  try {
    return registered(marks)
  } catch (e) {
    if (e instanceof RangeError) return null
    throw e
  }
}
