import type { ResinKinetics } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { conversionAlong } from './conversion.ts'
import { glassTransitionC } from './glass.ts'

/**
 * How far a resin cures in its room, and what warming it afterwards does.
 *
 * The cure with its diffusion limit along the room's temperature: where the glass transition has climbed 10 to
 * 25 K over the room, it all but stops (cure.ts). Warmed, it goes on until the same happens higher up.
 *
 * Check: α and Tg after 24 h, 72 h and 7 d at 20 °C, three classes (evidence of cure.ts); warming never lowers
 * it; after a week Tg lies 10 to 36 K over the room (test; practice 10 to 25).
 *
 * Limits: a thin layer that keeps no heat of its own: a deep pour that warmed itself is further on, so this is the
 * least. Below about 10 °C a resin may not start at all, which the form does not say.
 */
export interface FinalCure {
  readonly conversion: number
  readonly tgC: number
}

/** Warming after the days in the room: °C for h, with an hour up and down. */
export interface Warming {
  readonly atC: number
  readonly hours: number
}

export function finalCure(
  kinetics: ResinKinetics,
  room: { readonly nightC: number; readonly dayC: number },
  days: number,
  options: { readonly warming?: Warming; readonly startConversion?: number } = {}
): FinalCure {
  inRange('days', days, 0.01, 3650)
  const mean = (room.nightC + room.dayC) / 2
  const swing = (room.dayC - room.nightC) / 2
  const airC = (h: number) => mean + swing * Math.cos((2 * Math.PI * (h - WARMEST_H)) / 24)
  const timeS: number[] = []
  const tempC: number[] = []
  const put = (h: number, c: number): void => {
    timeS.push(h * 3600)
    tempC.push(c)
  }
  const end = days * 24
  const samples = Math.max(2, Math.ceil(end))
  for (let k = 0; k <= samples; k++) put((end * k) / samples, airC((end * k) / samples))
  const { warming } = options
  if (warming !== undefined) {
    inRange('temperature of warming in °C', warming.atC, -20, 150)
    inRange('hours of warming', warming.hours, 0.01, 1000)
    put(end + RAMP_H, warming.atC)
    put(end + RAMP_H + warming.hours, warming.atC)
    put(end + 2 * RAMP_H + warming.hours, airC(end))
  }
  const along = conversionAlong(kinetics, { timeS, tempC }, options.startConversion ?? 0)
  const conversion = along[along.length - 1]!
  return { conversion, tgC: glassTransitionC(kinetics, conversion) }
}

/** Hours after the pour at which the room is warmest: poured at nine, warmest at three. */
const WARMEST_H = 6
const RAMP_H = 1
