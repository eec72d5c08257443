import type { ResinKinetics } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { cureRate, cureRateSlope } from './cure.ts'

/** Temperature against time, straight between samples: timeS rising from any start, tempC of equal length. */
export interface TemperatureHistory {
  readonly timeS: ArrayLike<number>
  readonly tempC: ArrayLike<number>
}

/**
 * Conversion along a temperature history, the ordinary differential equation of cure.ts.
 *
 * Classical Runge-Kutta of order four in steps of at most 0.01 of conversion, a twentieth of the rate's
 * own time of growth, and 1 K. Error below 1e-7 of conversion on every set tried (test: an independent
 * extrapolation integrator). Returns the conversion at each sample time.
 *
 * Limits: the temperature is given, so the heat of the reaction must already be in it (column.ts, cup.ts).
 */
export function conversionAlong(
  kinetics: ResinKinetics,
  history: TemperatureHistory,
  startConversion = 0
): Float64Array {
  const { timeS, tempC } = history
  checkHistory(history)
  inRange('start conversion', startConversion, 0, 1)
  const out = new Float64Array(timeS.length)
  out[0] = startConversion
  for (let i = 1; i < timeS.length; i++)
    out[i] = advance(kinetics, timeS[i - 1]!, timeS[i]!, tempC[i - 1]!, tempC[i]!, out[i - 1]!)
  return out
}

/** A history with its conversion, sampled at every step of the integration. */
export interface ConversionPath {
  readonly timeS: readonly number[]
  readonly tempC: readonly number[]
  readonly conversion: readonly number[]
}

/** As {@link conversionAlong}, at every step: dense enough to read a time between two samples off it. */
export function conversionPath(
  kinetics: ResinKinetics,
  history: TemperatureHistory,
  startConversion = 0
): ConversionPath {
  checkHistory(history)
  inRange('start conversion', startConversion, 0, 1)
  const timeS = [history.timeS[0]!]
  const tempC = [history.tempC[0]!]
  const conversion = [startConversion]
  const visit = (t: number, c: number, a: number): void => {
    timeS.push(t)
    tempC.push(c)
    conversion.push(a)
  }
  for (let i = 1; i < history.timeS.length; i++) {
    const { timeS: t, tempC: c } = history
    advance(kinetics, t[i - 1]!, t[i]!, c[i - 1]!, c[i]!, conversion.at(-1)!, visit)
  }
  return { timeS, tempC, conversion }
}

/** Largest change of conversion in a step, and largest step times |∂r/∂α|. */
const STEP = 0.01
const GROWTH = 0.05

/** Conversion at `endS` from `conversion` at `startS`, temperature straight between the two ends, °C. */
function advance(
  kinetics: ResinKinetics,
  startS: number,
  endS: number,
  startC: number,
  endC: number,
  conversion: number,
  visit?: (timeS: number, tempC: number, conversion: number) => void
): number {
  const span = endS - startS
  const kelvin = (t: number): number => ZERO_CELSIUS_K + startC + ((endC - startC) * (t - startS)) / span
  const perKelvin = span / Math.abs(endC - startC)
  let t = startS
  let a = conversion
  while (t < endS) {
    const r1 = cureRate(kinetics, kelvin(t), a)
    // short against the growth of the rate too: at α = 0 the rate itself says nothing of what is coming
    const growth = Math.abs(cureRateSlope(kinetics, kelvin(t), a))
    const dt = Math.min(endS - t, STEP / r1, GROWTH / growth, perKelvin)
    const r2 = cureRate(kinetics, kelvin(t + dt / 2), a + (dt / 2) * r1)
    const r3 = cureRate(kinetics, kelvin(t + dt / 2), a + (dt / 2) * r2)
    const r4 = cureRate(kinetics, kelvin(t + dt), a + dt * r3)
    a = Math.min(1, a + (dt / 6) * (r1 + 2 * r2 + 2 * r3 + r4))
    t += dt
    if (endS - t < 1e-9 * span) t = endS
    visit?.(t, kelvin(t) - ZERO_CELSIUS_K, a)
  }
  return a
}

function checkHistory({ timeS, tempC }: TemperatureHistory): void {
  if (timeS.length < 2 || tempC.length !== timeS.length)
    throw new Error(
      `a history has ${timeS.length} times and ${tempC.length} temperatures; at least 2, as many of each`
    )
  for (let i = 0; i < timeS.length; i++) {
    inRange('temperature in °C', tempC[i]!, -40, 400)
    if (!Number.isFinite(timeS[i]!) || (i > 0 && !(timeS[i]! > timeS[i - 1]!)))
      throw new Error(`time ${timeS[i]} s at sample ${i} does not rise`)
  }
}

/**
 * Seconds at one temperature until a conversion is reached: t = ∫ dα/(dα/dt), by Gauss-Legendre
 * quadrature of five points on 400 equal panels. Infinity when the diffusion limit holds it back
 * beyond ten years.
 *
 * Check: m = n = 1 has the closed form t = ln((1 + (k2/k1)·α)/(1 − α))/(k1 + k2).
 */
export function isothermalTimeS(
  kinetics: ResinKinetics,
  tempC: number,
  conversion: number,
  startConversion = 0
): number {
  inRange('temperature in °C', tempC, -40, 400)
  inRange('conversion', conversion, 0, 0.999999)
  inRange('start conversion', startConversion, 0, 1)
  if (conversion <= startConversion) return 0
  const tempK = tempC + ZERO_CELSIUS_K
  const panel = (conversion - startConversion) / PANELS
  let sum = 0
  for (let i = 0; i < PANELS; i++) {
    const middle = startConversion + (i + 0.5) * panel
    for (let j = 0; j < 5; j++)
      sum += (WEIGHTS[j]! * panel) / 2 / cureRate(kinetics, tempK, middle + (NODES[j]! * panel) / 2)
  }
  return sum < TEN_YEARS_S ? sum : Number.POSITIVE_INFINITY
}

const PANELS = 400
const TEN_YEARS_S = 10 * 365.25 * 86_400

// Gauss-Legendre, five points on −1..1 (Abramowitz & Stegun, table 25.4), written as the roots that define it.
const NEAR = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3
const FAR = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3
const NODES = [-FAR, -NEAR, 0, NEAR, FAR]
const W_NEAR = (322 + 13 * Math.sqrt(70)) / 900
const W_FAR = (322 - 13 * Math.sqrt(70)) / 900
const WEIGHTS = [W_FAR, W_NEAR, 128 / 225, W_NEAR, W_FAR]

/**
 * The first time at which a rising quantity passes `level`, straight between samples; null if it never does.
 * A sample already at the level gives its own time.
 */
export function crossingS(timeS: ArrayLike<number>, value: ArrayLike<number>, level: number): number | null {
  for (let i = 0; i < timeS.length; i++) {
    if (!(value[i]! >= level)) continue
    if (i === 0) return timeS[0]!
    const before = value[i - 1]!
    // A value that jumps to infinity (viscosity at gel) leaves no slope to follow: take the sample itself.
    const part = Number.isFinite(value[i]!) ? (level - before) / (value[i]! - before) : 1
    return timeS[i - 1]! + part * (timeS[i]! - timeS[i - 1]!)
  }
  return null
}
