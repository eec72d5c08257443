import { type CupHistory, cupHistory, HOT_C } from './cup.ts'
import type { ResinModel } from './model.ts'
import { freshViscosityPaS } from './thickening.ts'
import type { Vessel } from './vessel.ts'

/**
 * Parts warmed in a bath before they are mixed: thinner, so bubbles leave sooner; and faster, so less time.
 *
 *   thinner   η0(bath)/η0(room), Arrhenius flow       bubbles rise by its inverse
 *   time      the cup's model from the bath's temperature on, in the vessel, losing heat to the room
 *
 * Refused where the vessel runs away (it passes {@link HOT_C} before the mix is out) or where the time left is
 * shorter than stirring and pouring take.
 *
 * Source: thickening.ts, cup.ts. Check: a bath at room temperature changes nothing; time falls and thinness
 * rises throughout with the bath's temperature (test).
 *
 * Limits: as the cup's. The mould is at the room's temperature and cools a thin layer within minutes: what is
 * won for bubbles in the vessel is won, in a thin layer it is soon lost.
 */
export interface WarmBath {
  /** Viscosity of the fresh mix at the bath over that at the room. */
  readonly viscosityRatio: number
  /** Time until the batch must be out of its vessel, min, from the bath and from the room; null: not within 72 h. */
  readonly minutesOut: number | null
  readonly minutesOutAtRoom: number | null
  /** Why it is refused; null when it may be done. */
  readonly refused: 'runaway' | 'short' | null
  /** Greatest temperature in the vessel when it is left there, °C. */
  readonly peakC: number
}

export interface WarmBathProblem {
  readonly resin: ResinModel
  readonly massG: number
  readonly vessel: Vessel
  readonly roomC: number
  readonly bathC: number
  /** Stirring and pouring out, min. */
  readonly neededMin: number
  /** Early end of the resin's band as a share of its times, 0..1: 0.7 for times ±30 %; 1 if not given. */
  readonly earlyShare?: number
  readonly rateFactor?: number
}

export function warmBath(p: WarmBathProblem): WarmBath {
  const run = (startC: number): CupHistory =>
    cupHistory({
      resin: p.resin,
      massG: p.massG,
      vessel: p.vessel,
      roomC: p.roomC,
      startC,
      effort: 'quick',
      ...(p.rateFactor === undefined ? {} : { rateFactor: p.rateFactor })
    })
  const warm = run(p.bathC)
  const early = p.earlyShare ?? 1
  const gone = (min: number | null) => min !== null && min * early < p.neededMin
  // A bath as hot as the limit itself is a runaway from the first minute.
  const hot = p.bathC >= HOT_C || gone(warm.hotMin)
  return {
    viscosityRatio: freshViscosityPaS(p.resin.flow, p.bathC) / freshViscosityPaS(p.resin.flow, p.roomC),
    minutesOut: warm.minutesOut,
    minutesOutAtRoom: run(p.roomC).minutesOut,
    refused: hot ? 'runaway' : gone(warm.minutesOut) ? 'short' : null,
    peakC: warm.peakC
  }
}
