import type { Bands } from '../catalogue/pigment-optics.ts'
import { type Lab, labOf } from './cielab.ts'

/**
 * How different two colours look: CIEDE2000.
 *
 *   G   = ½·(1 − √(C̄⁷/(C̄⁷ + 25⁷))),  a' = (1 + G)·a,  C' = √(a'² + b²),  h' = angle of (a', b)
 *   ΔE  = √[(ΔL'/S_L)² + (ΔC'/S_C)² + (ΔH'/S_H)² + R_T·(ΔC'/S_C)·(ΔH'/S_H)]
 *   ΔH' = 2·√(C₁'C₂')·sin(Δh'/2)
 *   S_L = 1 + 0.015·(L̄ − 50)²/√(20 + (L̄ − 50)²),  S_C = 1 + 0.045·C̄',  S_H = 1 + 0.015·C̄'·T
 *   T   = 1 − 0.17·cos(h̄ − 30°) + 0.24·cos 2h̄ + 0.32·cos(3h̄ + 6°) − 0.20·cos(4h̄ − 63°)
 *   R_T = −2·√(C̄'⁷/(C̄'⁷ + 25⁷))·sin(60°·exp(−((h̄ − 275°)/25°)²))
 *
 * Source: ISO/CIE 11664-6 (memory). Check: the 34 pairs of Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21,
 * Table 1 (read), each to its four decimals; a general colour library over seeded random colours.
 *
 * What it means: 1 is about just noticeable, below 2 a good match side by side (practice).
 * Limits: for two fields edge to edge, in daylight; made for differences below about 5, and only a rank beyond.
 */
export const JUST_NOTICED = 1
const PLAINLY_SEEN = 2

const DEGREE = Math.PI / 180
const POWER = 25 ** 7

/** Difference of two colours of CIELAB; 0 for the same, symmetric. */
export function difference(one: Lab, other: Lab): number {
  const [l1, a1, b1] = one
  const [l2, a2, b2] = other
  const mean = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2
  const stretch = 1.5 - 0.5 * Math.sqrt(mean ** 7 / (mean ** 7 + POWER))
  const c1 = Math.hypot(stretch * a1, b1)
  const c2 = Math.hypot(stretch * a2, b2)
  const h1 = angle(stretch * a1, b1)
  const h2 = angle(stretch * a2, b2)
  const grey = c1 * c2 === 0
  let turn = grey ? 0 : h2 - h1
  if (turn > 180) turn -= 360
  else if (turn < -180) turn += 360
  let hue = h1 + h2
  if (!grey) {
    if (Math.abs(h1 - h2) > 180) hue += hue < 360 ? 360 : -360
    hue /= 2
  }
  const l = (l1 + l2) / 2
  const c = (c1 + c2) / 2
  const t =
    1 -
    0.17 * Math.cos((hue - 30) * DEGREE) +
    0.24 * Math.cos(2 * hue * DEGREE) +
    0.32 * Math.cos((3 * hue + 6) * DEGREE) -
    0.2 * Math.cos((4 * hue - 63) * DEGREE)
  const dl = (l2 - l1) / (1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2))
  const dc = (c2 - c1) / (1 + 0.045 * c)
  const dh = (2 * Math.sqrt(c1 * c2) * Math.sin((turn / 2) * DEGREE)) / (1 + 0.015 * c * t)
  const lean =
    -2 * Math.sqrt(c ** 7 / (c ** 7 + POWER)) * Math.sin(60 * Math.exp(-(((hue - 275) / 25) ** 2)) * DEGREE)
  return Math.sqrt(Math.max(0, dl * dl + dc * dc + dh * dh + lean * dc * dh))
}

/** Difference of two colours of three bands linear in light. */
export function differenceOfBands(one: Bands, other: Bands): number {
  return difference(labOf(one), labOf(other))
}

/** Whether an eye sees a difference: no, hardly, or plainly. */
export type Shows = 'no' | 'faint' | 'yes'

export function showsOf(deltaE: number): Shows {
  return deltaE < JUST_NOTICED ? 'no' : deltaE <= PLAINLY_SEEN ? 'faint' : 'yes'
}

// Hue angle, 0..360 degrees; 0 for grey.
function angle(a: number, b: number): number {
  if (a === 0 && b === 0) return 0
  const h = Math.atan2(b, a) / DEGREE
  return h < 0 ? h + 360 : h
}
