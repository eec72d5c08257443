import type { FieldStep } from './field-kernel.ts'
import { CONVERSIONS, ENTRY, type FlatRates, LEAST_C, PER_K, TEMPS } from './plain-rates.ts'

/** The arrays the cure of a cell reads and writes; see field-kernel.ts. */
export interface CureArrays {
  readonly tempC: Float64Array
  readonly increment: Float64Array
  readonly tried: Float64Array
  readonly conversion: Float64Array
  readonly triedConversion: Float64Array
  readonly heat: Float64Array
  readonly gelS: Float64Array
}

/** 1 − dt/2·∂r/∂α is held above this, so that the step stays well posed on a runaway. */
const LEAST_SHARE = 0.5

/**
 * Cure of the cells `from` ≤ c < `to` of one column, all of resin `r`; its heat is added to `tried`. Returns the
 * greatest change of conversion. Allocates nothing.
 */
export function cureCells(
  { tempC, increment, tried, conversion, triedConversion, heat, gelS }: CureArrays,
  { table, at, factor, gel }: FlatRates,
  r: number,
  from: number,
  to: number,
  step: FieldStep
): number {
  const half = 0.5 * step.ratio
  const h = step.dtS * factor[r]!
  const gelled = gel[r]!
  const temps = at[2 * r]!
  const cures = at[2 * r + 1]!
  let most = 0
  for (let c = from; c < to; c++) {
    const u = conversion[c]!
    // where in the temperature tables, half a step ahead
    let x = (tempC[c]! + half * increment[c]! - LEAST_C) * PER_K
    if (x < 0) x = 0
    if (x > TEMPS) x = TEMPS
    const j = x | 0
    const dT = (x - j) * (1 / PER_K)
    const p = temps + j * ENTRY
    const y = u * CONVERSIONS
    const k = y | 0
    const dA = (y - k) * (1 / CONVERSIONS)
    const q = cures + k * ENTRY
    const k1 = table[p]! + table[p + 1]! * dT
    const k2 = table[p + 2]! + table[p + 3]! * dT
    const pT = table[p + 4]! + table[p + 5]! * dT
    const fSlope = table[q + 1]!
    const gSlope = table[q + 3]!
    const qSlope = table[q + 5]!
    const chemical = k1 * (table[q]! + fSlope * dA) + k2 * (table[q + 2]! + gSlope * dA)
    const limit = 1 + pT * (table[q + 4]! + qSlope * dA)
    // the rate is chemical/limit, 1 without diffusion; step and growth brought over one denominator, limit²
    const squared = limit * limit
    let under = squared - 0.5 * h * ((k1 * fSlope + k2 * gSlope) * limit - chemical * pT * qSlope)
    if (under < LEAST_SHARE * squared) under = LEAST_SHARE * squared
    let change = (h * chemical * limit) / under
    if (change > 1 - u) change = 1 - u
    const after = u + change
    triedConversion[c] = after
    if (change > most) most = change
    if (after >= gelled && u < gelled) gelS[c] = step.timeS + (step.dtS * (gelled - u)) / change
    tried[c] = tried[c]! + heat[c]! * change
  }
  return most
}
