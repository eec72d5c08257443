import { type CureTable, cureTable } from '../../resin/cure-table.ts'
import type { ResinMaterial } from './field-problem.ts'

/**
 * The tables of all resins of a mould in one flat array, values and slopes of an entry side by side, so that a
 * look-up touches one line of memory: per resin first the temperatures (k1, k1', k2, k2', p, p'), 1/8 K apart
 * from −40 °C, then the conversions (f, f', g, g', q, q'), 4096 to the unit. Meaning and errors: cure-table.ts.
 */
export interface FlatRates {
  readonly table: Float64Array
  /** Offsets of resin r: temperatures at 2r, conversions at 2r + 1. */
  readonly at: Int32Array
  readonly factor: Float64Array
  readonly gel: Float64Array
}

/** Numbers of an entry. */
export const ENTRY = 6
export const LEAST_C = -40
export const PER_K = 8
export const TEMPS = 440 * PER_K
export const CONVERSIONS = 4096

/** Lays the tables out; resin numbers start at 1. */
export function flatRates(resins: readonly ResinMaterial[]): FlatRates {
  const size = (TEMPS + 1 + CONVERSIONS + 1) * ENTRY
  // Pours of one resin read the same tables: they stay in the cache.
  const laws = resins.map(r => r.table ?? cureTable(r.resin.kinetics))
  const kinds = [...new Set(laws)]
  const table = new Float64Array(size * kinds.length)
  const at = new Int32Array(2 * (resins.length + 1))
  const factor = new Float64Array(resins.length + 1)
  const gel = new Float64Array(resins.length + 1)
  resins.forEach((r, i) => {
    const temps = kinds.indexOf(laws[i]!) * size
    const conversions = temps + (TEMPS + 1) * ENTRY
    at[2 * (i + 1)] = temps
    at[2 * (i + 1) + 1] = conversions
    factor[i + 1] = r.rateFactor ?? 1
    gel[i + 1] = r.resin.kinetics.gelConversion
  })
  kinds.forEach((t: CureTable, i) => {
    const temps = i * size
    weave(table, temps, [t.k1, t.k1Slope, t.k2, t.k2Slope, t.p, t.pSlope], TEMPS)
    weave(table, temps + (TEMPS + 1) * ENTRY, [t.f, t.fSlope, t.g, t.gSlope, t.q, t.qSlope], CONVERSIONS)
  })
  return { table, at, factor, gel }
}

function weave(out: Float64Array, from: number, columns: readonly Float64Array[], last: number): void {
  for (let i = 0; i <= last; i++) for (let k = 0; k < ENTRY; k++) out[from + i * ENTRY + k] = columns[k]![i]!
}
