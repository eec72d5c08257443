import { inRange } from '../quantity/range.ts'

/**
 * How long a board takes to settle to new air: diffusion of bound water through a slab.
 *
 *   mean      E(Fo)   = 1 − (8/π²)·Σ 1/(2n+1)²·exp(−(2n+1)²·π²·Fo)
 *   mid-plane E_m(Fo) = 1 − (4/π)·Σ (−1)^n/(2n+1)·exp(−(2n+1)²·π²·Fo)
 *   small Fo  E = 4·√(Fo/π)                      Fo = D·t/L²
 *
 *   E  fraction of the change done, 0..1      D  diffusion coefficient across the grain, m²/s
 *   t  time     L  thickness when both faces are open; twice it when one face is sealed (the sealed face is
 *      then the mid-plane)
 *
 * Source: Crank, The Mathematics of Diffusion, plane sheet with its surfaces held at constant concentration
 * (memory).
 * Check: half the change at 0.049·L²/D, 90 % at 0.21·L²/D; 20 mm with 2e-10 m²/s: 27 h and 4.9 days.
 *
 * Limits: D is an order of magnitude, not a constant: published fits and cup tests on the same timber
 * disagree (BioResources 2017, walnut and cherry; abstract read), and D grows with moisture. The surface is
 * taken to be in balance with the air at once; a finish or still air resists, so that real boards take weeks:
 * **these days are the least**. Ends are taken as sealed or far away: along the grain it goes 10 to 15 times
 * faster.
 */

/**
 * Bound-water diffusion across the grain near room temperature, m²/s: 1 to 5e-10 by default, within 1e-11
 * (dry, dense) to 1e-9 (near saturation, light) (Siau 1984, Skaar 1988; memory).
 */
export const DIFFUSION_M2_PER_S = { low: 1e-10, central: 2e-10, high: 5e-10 }

/** Warming that doubles the coefficient, K: 15 to 20 (Siau, Skaar; memory). */
const DIFFUSION_DOUBLING_K = 17.5

const SECONDS_PER_DAY = 86_400

/** Below this the next term of the short-time series is exp(−1/(4·Fo)) = e^−2500: nothing. */
const SHORT_FO = 1e-4

export interface Slab {
  readonly thicknessMm: number
  /** Faces open to the air: 2, or 1 when the other is sealed. */
  readonly openFaces: 1 | 2
  /** m²/s; left out: the default range. */
  readonly diffusionM2PerS?: number
}

/** Days with their band from the diffusion coefficient; `lowDays` is the fast end. */
export interface SettlingDays {
  readonly centralDays: number
  readonly lowDays: number
  readonly highDays: number
}

/** Fraction of the mean change of moisture done at Fourier number `fo` (0 up), 0..1. */
export function meanFraction(fo: number): number {
  inRange('Fourier number', fo, 0, 1e12, '')
  if (fo < SHORT_FO) return 4 * Math.sqrt(fo / Math.PI)
  let left = 0
  for (let odd = 1; ; odd += 2) {
    const term = Math.exp(-odd * odd * Math.PI * Math.PI * fo) / (odd * odd)
    left += term
    if (term <= 1e-18) break
  }
  return 1 - (8 / Math.PI ** 2) * left
}

/** Fraction of the change done at the mid-plane (or at the sealed face) at Fourier number `fo`, 0..1. */
export function coreFraction(fo: number): number {
  inRange('Fourier number', fo, 0, 1e12, '')
  if (fo < SHORT_FO) return 0
  let left = 0
  let sign = 1
  for (let odd = 1; ; odd += 2) {
    const term = Math.exp(-odd * odd * Math.PI * Math.PI * fo) / odd
    left += sign * term
    sign = -sign
    if (term <= 1e-18) break
  }
  return 1 - (4 / Math.PI) * left
}

/**
 * Fraction of the mean change done after `days`, with the default central coefficient unless one is given.
 */
export function settledFraction(slab: Slab, days: number): number {
  return meanFraction(fourier(slab, days))
}

/** Fraction of the change done at the slowest place after `days`. */
export function settledCoreFraction(slab: Slab, days: number): number {
  return coreFraction(fourier(slab, days))
}

/**
 * Days until `fraction` (0..0.9999) of the change is done, in the mean or at the core, with the band from the
 * range of the coefficient (a given coefficient makes the band zero wide).
 */
export function daysToFraction(slab: Slab, fraction: number, where: 'mean' | 'core' = 'mean'): SettlingDays {
  inRange('fraction of the change', fraction, 0, 0.9999, '')
  const lengthM = slabLengthM(slab)
  const fo = where === 'mean' ? invert(meanFraction, fraction) : invert(coreFraction, fraction)
  const days = (d: number): number => (fo * lengthM ** 2) / d / SECONDS_PER_DAY
  const given = slab.diffusionM2PerS
  if (given !== undefined) {
    const centralDays = days(checkDiffusion(given))
    return { centralDays, lowDays: centralDays, highDays: centralDays }
  }
  const { low, central, high } = DIFFUSION_M2_PER_S
  return { centralDays: days(central), lowDays: days(high), highDays: days(low) }
}

/** A coefficient known at 20 °C carried to `tempC` (0..90 °C) by its doubling. */
export function diffusionAtTempM2PerS(at20M2PerS: number, tempC: number): number {
  inRange('temperature', tempC, 0, 90, '°C')
  return checkDiffusion(at20M2PerS) * 2 ** ((tempC - 20) / DIFFUSION_DOUBLING_K)
}

function fourier(slab: Slab, days: number): number {
  inRange('time', days, 0, 1e6, 'days')
  const d = checkDiffusion(slab.diffusionM2PerS ?? DIFFUSION_M2_PER_S.central)
  return (d * days * SECONDS_PER_DAY) / slabLengthM(slab) ** 2
}

function slabLengthM(slab: Slab): number {
  inRange('thickness', slab.thicknessMm, 0.1, 1000, 'mm')
  return (slab.thicknessMm / 1000) * (slab.openFaces === 1 ? 2 : 1)
}

function checkDiffusion(d: number): number {
  return inRange('diffusion coefficient', d, 1e-12, 1e-7, 'm²/s')
}

/** Both fractions rise with Fo from 0 to past 0.9999 at Fo = 1: bisection. */
function invert(f: (fo: number) => number, fraction: number): number {
  if (fraction === 0) return 0
  let low = 0
  let high = 1
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (f(middle) < fraction) low = middle
    else high = middle
  }
  return (low + high) / 2
}
