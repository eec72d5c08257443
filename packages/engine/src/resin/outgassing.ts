import { inRange } from '../quantity/range.ts'
import { ZERO_CELSIUS_K } from './constant.ts'

/**
 * Air that a porous body gives off when it warms in liquid resin.
 *
 *   V = ε·V_body·(T1 − T0)/T0 · share of its open faces that the resin covers · what a seal lets through
 *
 *   ε  air as a fraction of the body's volume   T  K: when the resin covers it, and warmest while it is liquid
 *
 * Air at constant pressure takes up T1/T0 times its room (ideal gas); what no longer fits leaves by the open
 * faces. A body that cools draws resin in instead: pour on timber that is warmer than it will be, or seal it.
 *
 * Source: ideal gas law (exact); seals: practice, no source: two thin coats close the pores but for a few
 * pinholes. Measured as air at T0 and the room's pressure.
 * Check: 100 ml of air from 20 to 49.315 °C gives 10 ml.
 *
 * Limits: all of the body warms to T1 (the unfavourable end; a thick plank warms at its skin); air leaves
 * evenly by its open faces, while end grain lets out more than the sides; steam from a damp body comes on top.
 */
export function airGivenOff(body: {
  readonly volumeMl: number
  readonly airFraction: number
  readonly fromC: number
  readonly toC: number
  /** Share of the faces by which air can leave that lie in the resin, 0..1; 1 if not given. */
  readonly coveredShare?: number
  readonly seal?: Seal
}): number {
  inRange('volume in ml', body.volumeMl, 0, 1e9)
  inRange('air fraction', body.airFraction, 0, 1)
  inRange('temperature in °C', body.fromC, -40, 400)
  inRange('temperature in °C', body.toC, -40, 400)
  const share = inRange('share covered', body.coveredShare ?? 1, 0, 1)
  const warming = Math.max(0, (body.toC - body.fromC) / (body.fromC + ZERO_CELSIUS_K))
  return body.volumeMl * body.airFraction * warming * share * LETS_THROUGH[body.seal ?? 'no']
}

export type Seal = 'no' | 'sealed'

/** Share of the air that passes a seal coat (practice, no source). */
const LETS_THROUGH: Readonly<Record<Seal, number>> = { no: 1, sealed: 0.05 }

/** Bubbles of one diameter that a volume of air makes. */
export function bubblesOf(airMl: number, diameterMm: number): number {
  inRange('diameter of a bubble in mm', diameterMm, 1e-3, 50)
  return (airMl * 1000) / ((Math.PI / 6) * diameterMm ** 3)
}
