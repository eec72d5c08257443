import type { ResinKinetics } from '../catalogue/resin.ts'
import { GAS_CONSTANT, REFERENCE_K, ZERO_CELSIUS_K } from './constant.ts'
import { glassTransitionC } from './glass.ts'

/**
 * Cure rate of a thermoset: Kamal-Sourour form with Arrhenius constants and a diffusion limit.
 *
 *   dα/dt = fd·(k1 + k2·α^m)·(1 − α)^n
 *   k_i = k_i(25 °C)·exp(−E_i/R·(1/T − 1/298.15 K))
 *   fd  = 1/(1 + exp((Tg(α) − T − offset)/width))        fd = 1 where the record switches it off
 *
 *   α   conversion (degree of cure)     1, 0..1
 *   k_i rate constants                  1/s
 *   E_i activation energies             J/mol
 *   T   temperature                     K
 *   Tg  glass transition, DiBenedetto   °C on the same scale as T (glass.ts)
 *
 * Sources: form, Kamal & Sourour, Polym Eng Sci 13 (1973) 59 (memory). Diffusion limit: a logistic on
 * Tg − T in the manner of Chern & Poehlein, Polym Eng Sci 27 (1987) 788 (memory), its two parameters
 * fitted so that ambient cure stops near Tg = T + 10…25 K.
 * Check: m = n = 1, k1 = 1e-3/s, k2 = 1e-2/s: α(100 s) = 0.154117228… (closed form).
 *
 * Limits: 15-90 °C, stoichiometric mix, one overall reaction. Above about 120 °C the rates of slow
 * classes are too low; below 10 °C a resin may not start at all, which this form does not say.
 */
export function cureRate(kinetics: ResinKinetics, tempK: number, conversion: number): number {
  const { m, n } = kinetics
  const a = Math.min(1, Math.max(0, conversion))
  const k1 = rateConstant1(kinetics, tempK)
  const k2 = rateConstant2(kinetics, tempK)
  return diffusionFactor(kinetics, tempK, a) * (k1 + k2 * a ** m) * (1 - a) ** n
}

/** k1 at a temperature in K, 1/s. */
export function rateConstant1(kinetics: ResinKinetics, tempK: number): number {
  const k1 = kinetics.k2At25PerS * kinetics.k1OverK2At25
  return k1 * Math.exp((-kinetics.e1JPerMol / GAS_CONSTANT) * (1 / tempK - 1 / REFERENCE_K))
}

/** k2 at a temperature in K, 1/s. */
export function rateConstant2(kinetics: ResinKinetics, tempK: number): number {
  return kinetics.k2At25PerS * Math.exp((-kinetics.e2JPerMol / GAS_CONSTANT) * (1 / tempK - 1 / REFERENCE_K))
}

/** The logistic diffusion limit fd, 0..1. */
function diffusionFactor(kinetics: ResinKinetics, tempK: number, conversion: number): number {
  const d = kinetics.diffusion
  if (!d) return 1
  const aboveK = glassTransitionC(kinetics, conversion) - (tempK - ZERO_CELSIUS_K) - d.offsetK
  return 1 / (1 + Math.exp(aboveK / d.widthK))
}

// α^(m−1) is unbounded at α = 0 for m < 1; the rate itself needs no floor, only its slope.
const SLOPE_FLOOR = 1e-6

/** ∂(dα/dt)/∂α at a temperature in K, 1/s. */
export function cureRateSlope(kinetics: ResinKinetics, tempK: number, conversion: number): number {
  const { m, n, diffusion, tg0C, tgInfC, lambda } = kinetics
  const a = Math.min(1, Math.max(0, conversion))
  const up = Math.max(a, SLOPE_FLOOR)
  const down = Math.max(1 - a, SLOPE_FLOOR)
  const k1 = rateConstant1(kinetics, tempK)
  const k2 = rateConstant2(kinetics, tempK)
  const fd = diffusionFactor(kinetics, tempK, a)
  const chemical = (k1 + k2 * a ** m) * (1 - a) ** n
  const chemicalSlope = k2 * m * up ** (m - 1) * (1 - a) ** n - (k1 + k2 * a ** m) * n * down ** (n - 1)
  if (!diffusion) return chemicalSlope
  const tgSlope = ((tgInfC - tg0C) * lambda) / (1 - (1 - lambda) * a) ** 2
  return fd * chemicalSlope - chemical * fd * (1 - fd) * (tgSlope / diffusion.widthK)
}
