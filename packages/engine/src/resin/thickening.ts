import type { ResinFlow, ResinKinetics } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { GAS_CONSTANT, REFERENCE_K, ZERO_CELSIUS_K } from './constant.ts'
import { conversionPath, crossingS, isothermalTimeS, type TemperatureHistory } from './conversion.ts'

/**
 * Viscosity of a curing resin, Castro-Macosko over an Arrhenius fresh viscosity.
 *
 *   η = η0(T)·(αg/(αg − α))^(C1 + C2·α),   η0 = η0(25 °C)·exp(Eη/R·(1/T − 1/298.15 K))
 *
 *   η, η0  viscosity                  Pa·s
 *   α, αg  conversion, and at gel     1
 *   Eη     activation energy of flow  J/mol
 *
 * Source: Castro & Macosko, AIChE J 28 (1982) 250 (memory).
 * Check: α = 0 gives η0(T); grows without bound towards αg; from αg on it is Infinity.
 *
 * Limits: 10-60 °C; fillers, stones and marbling shear are not in it. Numbers in between the fresh
 * viscosity and gel are good to a factor of about two for a generic class.
 */
export function viscosityPaS(
  flow: ResinFlow,
  gelConversion: number,
  tempC: number,
  conversion: number
): number {
  const a = Math.max(0, conversion)
  if (a >= gelConversion) return Number.POSITIVE_INFINITY
  return freshViscosityPaS(flow, tempC) * (gelConversion / (gelConversion - a)) ** (flow.c1 + flow.c2 * a)
}

/** η0(T), Pa·s. */
export function freshViscosityPaS(flow: ResinFlow, tempC: number): number {
  const tempK = tempC + ZERO_CELSIUS_K
  return flow.eta25PaS * Math.exp((flow.etaEJPerMol / GAS_CONSTANT) * (1 / tempK - 1 / REFERENCE_K))
}

/** The temperature, °C, at which the fresh mix is as thick as `levelPaS`; the inverse of {@link freshViscosityPaS}. */
export function freshAsThickC(flow: ResinFlow, levelPaS: number): number {
  inRange('viscosity in Pa·s', levelPaS, 1e-6, 1e9)
  const perK = 1 / REFERENCE_K + (GAS_CONSTANT / flow.etaEJPerMol) * Math.log(levelPaS / flow.eta25PaS)
  return 1 / perK - ZERO_CELSIUS_K
}

/** A stick's trail still closes: where marbling with sharp edges begins, Pa·s. Practice; the maker's own "strings" reading replaces it. */
export const SYRUP_PAS = 3
/** Ropes like honey: too thick to pour, level or free bubbles, Pa·s. Practice (table honey 2-10, molasses 5-10). */
export const HONEY_PAS = 10

/**
 * The conversion at which the viscosity at `tempC` reaches `levelPaS`, by bisection to 1e-12 (the law rises
 * throughout). 0 when the fresh mix is already as thick.
 */
export function conversionAtViscosity(
  flow: ResinFlow,
  gelConversion: number,
  tempC: number,
  levelPaS: number
): number {
  inRange('viscosity in Pa·s', levelPaS, 1e-6, 1e9)
  if (freshViscosityPaS(flow, tempC) >= levelPaS) return 0
  let low = 0
  let high = gelConversion
  for (let i = 0; i < 60 && high - low > 1e-12; i++) {
    const middle = (low + high) / 2
    if (viscosityPaS(flow, gelConversion, tempC, middle) < levelPaS) low = middle
    else high = middle
  }
  return high
}

/** When a mix is too thick for a job, minutes from the start; null where it is not reached. */
export interface ThickeningTimes {
  /** Twice the viscosity that it had at the start at the same temperature: the working time. */
  readonly doubleMin: number | null
  /** {@link SYRUP_PAS}. */
  readonly syrupMin: number | null
  /** {@link HONEY_PAS}. */
  readonly honeyMin: number | null
  readonly gelMin: number | null
}

/** Thickening of a thin film that stays at one temperature, by quadrature over conversion. */
export function filmThickening(kinetics: ResinKinetics, flow: ResinFlow, tempC: number): ThickeningTimes {
  const until = (levelPaS: number): number | null => {
    const a = conversionAtViscosity(flow, kinetics.gelConversion, tempC, levelPaS)
    return finite(isothermalTimeS(kinetics, tempC, a) / 60)
  }
  return {
    doubleMin: until(2 * freshViscosityPaS(flow, tempC)),
    syrupMin: until(SYRUP_PAS),
    honeyMin: until(HONEY_PAS),
    gelMin: finite(isothermalTimeS(kinetics, tempC, kinetics.gelConversion) / 60)
  }
}

const finite = (x: number): number | null => (Number.isFinite(x) ? x : null)

/** Thickening along a temperature history (straight between samples), from its first sample on. */
export function thickeningAlong(
  kinetics: ResinKinetics,
  flow: ResinFlow,
  history: TemperatureHistory,
  startConversion = 0
): ThickeningTimes {
  const path = conversionPath(kinetics, history, startConversion)
  return thickeningOf(kinetics, flow, path, path.conversion)
}

/** Thickening where the conversion at each sample is already known (a column's mean, a cup). */
export function thickeningOf(
  kinetics: ResinKinetics,
  flow: ResinFlow,
  history: TemperatureHistory,
  conversion: ArrayLike<number>
): ThickeningTimes {
  const { timeS, tempC } = history
  // The logarithm is close to straight between samples where the viscosity itself is not.
  const log = new Float64Array(timeS.length)
  for (let i = 0; i < log.length; i++)
    log[i] = Math.log(viscosityPaS(flow, kinetics.gelConversion, tempC[i]!, conversion[i]!))
  // Against a fresh mix as warm: what cools in a cold mould thickens without curing, and thins again.
  const cured = log.map((v, i) => v - Math.log(freshViscosityPaS(flow, tempC[i]!)))
  const startS = timeS[0]!
  const minutes = (values: ArrayLike<number>, level: number): number | null => {
    const at = crossingS(timeS, values, level)
    return at === null ? null : (at - startS) / 60
  }
  return {
    doubleMin: minutes(cured, Math.log(2) + cured[0]!),
    syrupMin: minutes(log, Math.log(SYRUP_PAS)),
    honeyMin: minutes(log, Math.log(HONEY_PAS)),
    gelMin: minutes(conversion, kinetics.gelConversion)
  }
}
