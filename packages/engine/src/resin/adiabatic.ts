import { inRange } from '../quantity/range.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { cureRate } from './cure.ts'
import type { ResinModel } from './model.ts'

/**
 * A mix that loses no heat: the upper bound of every casting, and of a large bucket.
 *
 *   T(α) = T0 + (H/cp)·(α − α0)      t = ∫ dα / r(T(α), α)
 *
 *   H  heat of reaction   J/kg      cp  heat capacity   J/(kg·K), constant
 *   r  cure rate (cure.ts) 1/s      α0  conversion at the start
 *
 * Source: energy balance (exact for constant cp).
 *
 * Limits: no loss at all; cp constant; above 150 °C the rates are outside their range.
 */
export interface AdiabaticRun {
  /** H/cp·(1 − α0), K. */
  readonly riseK: number
  /** Seconds until the rate is greatest, and the conversion there. */
  readonly timeToMaxRateS: number
  readonly conversionAtMaxRate: number
}

/** Full rise, K, of a mix at conversion `startConversion`. */
export function adiabaticRiseK(resin: ResinModel, startConversion = 0): number {
  return (resin.kinetics.heatJPerKg / resin.bulk.cpJkgK) * (1 - startConversion)
}

const STEPS = 20_000

/** The run from a start temperature, °C; midpoint rule on 20 000 steps of conversion (error below 1e-4 of the time). */
export function adiabaticRun(resin: ResinModel, startC: number, startConversion = 0): AdiabaticRun {
  inRange('start temperature in °C', startC, -40, 120)
  inRange('start conversion', startConversion, 0, 0.99)
  const riseK = adiabaticRiseK(resin, startConversion)
  const span = 1 - startConversion
  const step = span / STEPS
  let timeS = 0
  let greatest = 0
  let timeToMaxRateS = 0
  let conversionAtMaxRate = startConversion
  for (let i = 0; i < STEPS; i++) {
    const a = startConversion + (i + 0.5) * step
    const tempK = ZERO_CELSIUS_K + startC + (riseK * (a - startConversion)) / span
    const rate = cureRate(resin.kinetics, tempK, a)
    if (rate > greatest) {
      greatest = rate
      timeToMaxRateS = timeS + step / 2 / rate
      conversionAtMaxRate = a
    }
    timeS += step / rate
    // Past the greatest rate the rest is of no interest, and near α = 1 the integrand has no bound.
    if (rate < greatest / 2) break
  }
  return { riseK, timeToMaxRateS, conversionAtMaxRate }
}
