import type { Bands } from '../catalogue/pigment-optics.ts'
import { linearOfXyz, WHITE, xyzOf } from './srgb.ts'

/**
 * Colours as the eye spaces them: CIELAB.
 *
 *   L = 116·f(Y) − 16,  a = 500·(f(X) − f(Y)),  b = 200·(f(Y) − f(Z)),   X, Y, Z over those of the white
 *   f(t) = t^(1/3)      t > (6/29)³;      else t/(3·(6/29)²) + 4/29
 *
 *   L  lightness, 0 black to 100 white     a  green − to red +     b  blue − to yellow +
 *
 * Source: ISO/CIE 11664-4 (memory). Check: white is (100, 0, 0); a general colour library gives the same.
 *
 * Limits: for a colour beside its neighbours in daylight; what glows or lies in shadow is seen otherwise.
 */
export type Lab = readonly [lightness: number, a: number, b: number]

const KNEE = 6 / 29

/** CIELAB of three bands linear in light, 0..1. */
export function labOf(linear: Bands): Lab {
  const [x, y, z] = xyzOf(linear)
  const fx = root(x / WHITE[0])
  const fy = root(y / WHITE[1])
  const fz = root(z / WHITE[2])
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)]
}

/** Three bands linear in light, of CIELAB; below 0 or above 1 where no screen shows them. */
export function linearOfLab([l, a, b]: Lab): Bands {
  const fy = (l + 16) / 116
  return linearOfXyz([WHITE[0] * cube(fy + a / 500), WHITE[1] * cube(fy), WHITE[2] * cube(fy - b / 200)])
}

/** Chroma: how far from grey. */
export function chromaOf([, a, b]: Lab): number {
  return Math.hypot(a, b)
}

function root(t: number): number {
  return t > KNEE ** 3 ? Math.cbrt(t) : t / (3 * KNEE ** 2) + 4 / 29
}

function cube(f: number): number {
  return f > KNEE ? f ** 3 : 3 * KNEE ** 2 * (f - 4 / 29)
}
