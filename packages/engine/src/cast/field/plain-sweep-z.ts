import type { FieldShape, FieldStep } from './field-kernel.ts'
import { CONVERSIONS, ENTRY, type FlatRates, LEAST_C, PER_K, TEMPS } from './plain-rates.ts'

/** The arrays a step along z reads and writes; see field-kernel.ts. */
export interface ZArrays {
  readonly tempC: Float64Array
  readonly increment: Float64Array
  readonly tried: Float64Array
  readonly conversion: Float64Array
  readonly triedConversion: Float64Array
  readonly capacity: Float64Array
  readonly heat: Float64Array
  readonly film: Float64Array
  readonly resin: Float64Array
  readonly gx: Float64Array
  readonly gy: Float64Array
  readonly gz: Float64Array
  readonly gelS: Float64Array
  readonly source: Float64Array
}

/** 1 − dt/2·∂r/∂α is held above this, so that the step stays well posed on a runaway. */
const LEAST_SHARE = 0.5

/**
 * The explicit part of a step, the cure of every cell, and the implicit sweep along z, column by column.
 * Returns the greatest change of conversion. Allocates nothing.
 */
export function sweepZ(
  shape: FieldShape,
  a: ZArrays,
  rates: FlatRates,
  upper: Float64Array,
  step: FieldStep
): number {
  const { tempC, increment, tried, conversion, triedConversion, capacity, heat, film, resin } = a
  const { gx, gy, gz, gelS, source } = a
  const { nx, ny, nz, first, fromX, toX } = shape
  const { table, at, factor, gel } = rates
  const { dtS: dt, ambientC, timeS, sourced } = step
  const layers = Math.min(step.layers, nz)
  const plane = nx * nz
  const g = step.theta * dt
  const half = 0.5 * step.ratio
  let most = 0
  for (let iy = 0; iy < ny; iy++) {
    for (let ix = fromX[iy]!; ix < toX[iy]!; ix++) {
      const c0 = first + iy * plane + ix * nz
      for (let c = c0; c < c0 + layers; c++) {
        const t = tempC[c]!
        let right =
          gz[c - 1]! * (tempC[c - 1]! - t) +
          gz[c]! * (tempC[c + 1]! - t) +
          gx[c - nz]! * (tempC[c - nz]! - t) +
          gx[c]! * (tempC[c + nz]! - t) +
          gy[c - plane]! * (tempC[c - plane]! - t) +
          gy[c]! * (tempC[c + plane]! - t) +
          film[c]! * (ambientC - t)
        if (sourced) right += source[c]!
        right *= dt
        const r = resin[c]! | 0
        if (r > 0) {
          const u = conversion[c]!
          // where in the temperature tables, half a step ahead
          let x = (t + half * increment[c]! - LEAST_C) * PER_K
          if (x < 0) x = 0
          if (x > TEMPS) x = TEMPS
          const j = x | 0
          const dT = (x - j) * (1 / PER_K)
          const p = at[2 * r]! + j * ENTRY
          const y = u * CONVERSIONS
          const k = y | 0
          const dA = (y - k) * (1 / CONVERSIONS)
          const q = at[2 * r + 1]! + k * ENTRY
          const k1 = table[p]! + table[p + 1]! * dT
          const k2 = table[p + 2]! + table[p + 3]! * dT
          const pT = table[p + 4]! + table[p + 5]! * dT
          const fSlope = table[q + 1]!
          const gSlope = table[q + 3]!
          const qSlope = table[q + 5]!
          const chemical = k1 * (table[q]! + fSlope * dA) + k2 * (table[q + 2]! + gSlope * dA)
          const limit = 1 + pT * (table[q + 4]! + qSlope * dA)
          // the rate is chemical/limit; step and growth brought over one denominator, limit²
          const h = dt * factor[r]!
          const squared = limit * limit
          let under = squared - 0.5 * h * ((k1 * fSlope + k2 * gSlope) * limit - chemical * pT * qSlope)
          if (under < LEAST_SHARE * squared) under = LEAST_SHARE * squared
          let change = (h * chemical * limit) / under
          if (change > 1 - u) change = 1 - u
          const after = u + change
          triedConversion[c] = after
          if (change > most) most = change
          if (after >= gel[r]! && u < gel[r]!) gelS[c] = timeS + (dt * (gel[r]! - u)) / change
          right += heat[c]! * change
        }
        tried[c] = right
      }
    }
    for (let ix = fromX[iy]!; ix < toX[iy]!; ix += 4)
      solveFour(first + iy * plane + ix * nz, nz, layers, g, gz, capacity, film, tried, upper)
  }
  return most
}

/**
 * Solves four columns that stand side by side, in step: a column alone waits at every division for the one before.
 * The right side in `tried` becomes the increment. `upper` is room for four columns.
 */
function solveFour(
  c0: number,
  nz: number,
  layers: number,
  g: number,
  gz: Float64Array,
  capacity: Float64Array,
  film: Float64Array,
  tried: Float64Array,
  upper: Float64Array
): void {
  const c1 = c0 + nz
  const c2 = c1 + nz
  const c3 = c2 + nz
  let low0 = 0
  let low1 = 0
  let low2 = 0
  let low3 = 0
  let a0 = 0
  let a1 = 0
  let a2 = 0
  let a3 = 0
  let v0 = 0
  let v1 = 0
  let v2 = 0
  let v3 = 0
  for (let iz = 0; iz < layers; iz++) {
    const up0 = g * gz[c0 + iz]!
    const up1 = g * gz[c1 + iz]!
    const up2 = g * gz[c2 + iz]!
    const up3 = g * gz[c3 + iz]!
    const i0 = 1 / (capacity[c0 + iz]! + up0 + g * film[c0 + iz]! + low0 * (1 - a0))
    const i1 = 1 / (capacity[c1 + iz]! + up1 + g * film[c1 + iz]! + low1 * (1 - a1))
    const i2 = 1 / (capacity[c2 + iz]! + up2 + g * film[c2 + iz]! + low2 * (1 - a2))
    const i3 = 1 / (capacity[c3 + iz]! + up3 + g * film[c3 + iz]! + low3 * (1 - a3))
    a0 = up0 * i0
    a1 = up1 * i1
    a2 = up2 * i2
    a3 = up3 * i3
    v0 = (tried[c0 + iz]! + low0 * v0) * i0
    v1 = (tried[c1 + iz]! + low1 * v1) * i1
    v2 = (tried[c2 + iz]! + low2 * v2) * i2
    v3 = (tried[c3 + iz]! + low3 * v3) * i3
    low0 = up0
    low1 = up1
    low2 = up2
    low3 = up3
    const at = 4 * iz
    upper[at] = a0
    upper[at + 1] = a1
    upper[at + 2] = a2
    upper[at + 3] = a3
    tried[c0 + iz] = v0
    tried[c1 + iz] = v1
    tried[c2 + iz] = v2
    tried[c3 + iz] = v3
  }
  for (let iz = layers - 2; iz >= 0; iz--) {
    const at = 4 * iz
    v0 = tried[c0 + iz]! + upper[at]! * v0
    v1 = tried[c1 + iz]! + upper[at + 1]! * v1
    v2 = tried[c2 + iz]! + upper[at + 2]! * v2
    v3 = tried[c3 + iz]! + upper[at + 3]! * v3
    tried[c0 + iz] = v0
    tried[c1 + iz] = v1
    tried[c2 + iz] = v2
    tried[c3 + iz] = v3
  }
}
