import type { Face } from '../../piece/piece-schema.ts'
import type { Reading } from '../../piece/reading-schema.ts'
import type { Stack } from '../../stack/stack.ts'
import { settingsOf } from '../../steps/setting.ts'
import { frameOf } from './frame.ts'
import type { MeasuredFrame } from './measured-frame.ts'
import { measuredFrame } from './measured-frame.ts'
import type { PinPlan } from './pin-plan.ts'
import type { PlatePin, ZeroPoint } from './pin-plate.ts'
import { pinPlate, zeroPoints } from './pin-plate.ts'

/** A setting as it is tied to the datum. */
export interface TiedSetting {
  readonly up: Face
  /** Places to touch before its first cut, and the farthest corner from the zero, mm. */
  readonly touch: readonly ZeroPoint[]
  readonly reachMm: number
  /** Height of the bed under the zero, mm; moved by a thickness that was read. */
  readonly bedMm: number
  /** How the piece was found to lie; null until marks, edges or pins were read. */
  readonly place: MeasuredFrame['place']
  readonly names: MeasuredFrame['names']
  readonly unused: MeasuredFrame['unused']
  readonly thickness: MeasuredFrame['thickness']
}

/** Pins, where the bed is drilled for them, and the settings they tie. */
export interface Tied extends PinPlan {
  readonly plate: readonly PlatePin[]
  readonly settings: readonly TiedSetting[]
}

/** The pin plan with its settings, as planned and as read. */
export function tiedOf(pins: PinPlan, stack: Stack, readings: readonly Reading[]): Tied {
  const both = settingsOf(stack.steps).map(setting => ({
    setting,
    frame: frameOf(stack.piece, setting, stack, pins.datum)
  }))
  return {
    ...pins,
    plate: pinPlate(
      pins,
      both.map(b => b.frame)
    ),
    settings: both.map(({ setting, frame }): TiedSetting => {
      const read = measuredFrame(frame, setting, stack, pins, readings)
      const { points, reachMm } = zeroPoints(frame, stack.geometry.outline)
      return {
        up: setting.up,
        touch: points,
        reachMm,
        bedMm: read.frame.bedZ,
        place: read.place,
        names: read.names,
        unused: read.unused,
        thickness: read.thickness
      }
    })
  }
}
