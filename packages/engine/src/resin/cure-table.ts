import type { ResinKinetics } from '../catalogue/resin.ts'
import { kept } from '../quantity/kept.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { rateConstant1, rateConstant2 } from './cure.ts'
import { glassTransitionC } from './glass.ts'

/**
 * A cure rate laid out in tables for the kernels: no exponential and no power in the inner loop.
 *
 *   dα/dt = (k1(T)·f(α) + k2(T)·g(α)) / (1 + p(T)·q(α))
 *
 * For the Kamal-Sourour form f = (1 − α)^n, g = α^m·(1 − α)^n; the diffusion limit splits exactly into
 * p = exp(−T/width) and q = exp((Tg(α) − offset)/width). k1, k2 and p are linear on 1/8 K from −40 to
 * 400 °C, f, g and q on 4096 cells of conversion; each cell's slope is stored, so the derivatives that an
 * implicit step needs come free. Outside the tables the ends hold: temperature and conversion are clamped.
 *
 * Error against the direct rate, from linear interpolation (h²/8)·y″: at E = 60 kJ/mol and 0 to 150 °C
 * k within 2e-5, p within 6e-5 relative (width 6 K), f and g within 3e-8 absolute for m = 1, n = 2. For m
 * below 1 the first cell of conversion is off by up to 0.2·4096^−m. Tested: cure-table.test.ts.
 */
export interface CureTable {
  readonly k1: Float64Array
  readonly k1Slope: Float64Array
  readonly k2: Float64Array
  readonly k2Slope: Float64Array
  readonly p: Float64Array
  readonly pSlope: Float64Array
  readonly f: Float64Array
  readonly fSlope: Float64Array
  readonly g: Float64Array
  readonly gSlope: Float64Array
  readonly q: Float64Array
  readonly qSlope: Float64Array
}

/** A rate law that splits as a {@link CureTable} needs it; temperatures in K, rates in 1/s. */
export interface RateLaw {
  readonly k1: (tempK: number) => number
  readonly k2: (tempK: number) => number
  readonly f: (conversion: number) => number
  readonly g: (conversion: number) => number
  readonly p: (tempK: number) => number
  readonly q: (conversion: number) => number
}

const LEAST_K = ZERO_CELSIUS_K - 40
const PER_K = 8
const TEMPS = 440 * PER_K
const CONVERSIONS = 4096

/** Tables of any rate law that splits; for tests against published laws and for other forms of kinetics. */
export function rateTable(law: RateLaw): CureTable {
  return tables({
    k1: byTemp(law.k1),
    k2: byTemp(law.k2),
    p: byTemp(law.p),
    f: byConversion(law.f),
    g: byConversion(law.g),
    q: byConversion(law.q)
  })
}

/** Values of one part of a law, and the slope of each cell. */
type Column = readonly [value: Float64Array, slope: Float64Array]

function tables({ k1, k2, p, f, g, q }: Readonly<Record<keyof RateLaw, Column>>): CureTable {
  return {
    k1: k1[0],
    k1Slope: k1[1],
    k2: k2[0],
    k2Slope: k2[1],
    p: p[0],
    pSlope: p[1],
    f: f[0],
    fSlope: f[1],
    g: g[0],
    gSlope: g[1],
    q: q[0],
    qSlope: q[1]
  }
}

const byTemp = (of: (tempK: number) => number) => tabulate(TEMPS, i => of(LEAST_K + i / PER_K), PER_K)
const byConversion = (of: (a: number) => number) =>
  tabulate(CONVERSIONS, i => of(i / CONVERSIONS), CONVERSIONS)

function tabulate(cells: number, at: (i: number) => number, perUnit: number): Column {
  const value = new Float64Array(cells + 1)
  const slope = new Float64Array(cells + 1)
  for (let i = 0; i <= cells; i++) {
    value[i] = at(i)
    if (!Number.isFinite(value[i]))
      throw new Error(`the rate law is ${value[i]} at table entry ${i} of ${cells}`)
  }
  for (let i = 0; i < cells; i++) slope[i] = (value[i + 1]! - value[i]!) * perUnit
  return [value, slope]
}

// Same kinetics object, same tables: a plan runs a resin hundreds of times. Records are never changed in place.
const made = new WeakMap<ResinKinetics, CureTable>()

// A fit changes one figure of a law at a time: the parts that do not hang on it stay as they are.
const columns = new Map<string, Column>()
const columnOf = (part: string, figures: readonly unknown[], make: () => Column): Column =>
  kept(columns, `${part} ${figures.join(' ')}`, make)

/** Tables of a resin's rate law (cure.ts). About 1 ms the first time a record is seen, then kept beside it. */
export function cureTable(kinetics: ResinKinetics): CureTable {
  const known = made.get(kinetics)
  if (known) return known
  const { k2At25PerS: k2, k1OverK2At25: over, e1JPerMol, e2JPerMol, m, n, diffusion: d } = kinetics
  const { tg0C, tgInfC, lambda } = kinetics
  const width = d?.widthK
  const table = tables({
    k1: columnOf('k1', [k2, over, e1JPerMol], () => byTemp(tempK => rateConstant1(kinetics, tempK))),
    k2: columnOf('k2', [k2, e2JPerMol], () => byTemp(tempK => rateConstant2(kinetics, tempK))),
    f: columnOf('f', [n], () => byConversion(a => (1 - a) ** n)),
    g: columnOf('g', [m, n], () => byConversion(a => a ** m * (1 - a) ** n)),
    // Both halves of the exponential are taken from 25 °C, which keeps either within range.
    p: columnOf('p', [width], () =>
      byTemp(tempK => (d ? Math.exp((25 + ZERO_CELSIUS_K - tempK) / d.widthK) : 0))
    ),
    q: columnOf('q', [width, d?.offsetK, tg0C, tgInfC, lambda], () =>
      byConversion(a => (d ? Math.exp((glassTransitionC(kinetics, a) - 25 - d.offsetK) / d.widthK) : 0))
    )
  })
  made.set(kinetics, table)
  return table
}

/**
 * Rates and their derivatives for the cells `from` ≤ i < `to`; `factor` scales the rate (1 as recorded).
 * tempK[i], conversion[i] in; rate[i] 1/s, byConversion[i] 1/s, byTemp[i] 1/(s·K) out. Allocates nothing.
 */
export function tableRates(
  table: CureTable,
  factor: number,
  from: number,
  to: number,
  tempK: Float64Array,
  conversion: Float64Array,
  rate: Float64Array,
  byConversion: Float64Array,
  byTemp: Float64Array
): void {
  const { k1, k1Slope, k2, k2Slope, p, pSlope, f, fSlope, g, gSlope, q, qSlope } = table
  for (let i = from; i < to; i++) {
    // where in the temperature tables
    const x = Math.min(TEMPS, Math.max(0, (tempK[i]! - LEAST_K) * PER_K))
    const j = x | 0
    const dT = (x - j) / PER_K
    // where in the conversion tables
    const y = Math.min(CONVERSIONS, Math.max(0, conversion[i]! * CONVERSIONS))
    const c = y | 0
    const da = (y - c) / CONVERSIONS
    const k1T = k1[j]! + k1Slope[j]! * dT
    const k2T = k2[j]! + k2Slope[j]! * dT
    const pT = p[j]! + pSlope[j]! * dT
    const fA = f[c]! + fSlope[c]! * da
    const gA = g[c]! + gSlope[c]! * da
    const qA = q[c]! + qSlope[c]! * da
    // rate = chemical/(1 + pq) and its derivatives by the quotient rule
    const fd = factor / (1 + pT * qA)
    const chemical = k1T * fA + k2T * gA
    const limit = (chemical * fd * fd) / factor
    rate[i] = fd * chemical
    byConversion[i] = fd * (k1T * fSlope[c]! + k2T * gSlope[c]!) - limit * pT * qSlope[c]!
    byTemp[i] = fd * (k1Slope[j]! * fA + k2Slope[j]! * gA) - limit * pSlope[j]! * qA
  }
}
