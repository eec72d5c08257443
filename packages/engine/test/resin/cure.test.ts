import { describe, expect, it } from 'vitest'
import type { ResinKinetics } from '../../src/catalogue/resin.ts'
import { conversionAlong, crossingS, isothermalTimeS } from '../../src/resin/conversion.ts'
import { cureRate, cureRateSlope } from '../../src/resin/cure.ts'
import { cureTable, rateTable, tableRates } from '../../src/resin/cure-table.ts'
import { conversionAtGlass, glassTransitionC } from '../../src/resin/glass.ts'
import { rows } from './cure.evidence.ts'
import { integrate } from './odex.ts'
import { checkRows } from './rows.ts'
import { ALL_SETS, altered, CLASSES, FIRST_FIT } from './sets.ts'

checkRows(rows)

const K = 273.15

describe('cure rate', () => {
  it('starts at k1 when nothing has reacted and ends at nothing when all has', () => {
    for (const [, { kinetics }] of ALL_SETS) {
      const free = { ...kinetics, diffusion: null }
      expect(cureRate(free, 25 + K, 0)).toBeCloseTo(kinetics.k2At25PerS * kinetics.k1OverK2At25, 15)
      expect(cureRate(kinetics, 60 + K, 1)).toBe(0)
    }
  })

  it('is faster when warmer, at every conversion', () => {
    for (const [name, { kinetics }] of ALL_SETS)
      for (let a = 0; a < 1; a += 0.05)
        for (let c = 5; c < 90; c += 5)
          expect(cureRate(kinetics, c + 5 + K, a), `${name} ${a} ${c}`).toBeGreaterThan(
            cureRate(kinetics, c + K, a)
          )
  })

  it('has the slope of its own difference quotient', () => {
    const shapes = [
      CLASSES.deep.kinetics,
      { ...CLASSES.medium.kinetics, m: 0.813, n: 2.74 },
      FIRST_FIT.c.kinetics
    ]
    for (const kinetics of shapes)
      for (const a of [0.05, 0.3, 0.6, 0.85, 0.95]) {
        const h = 1e-6
        const quotient = (cureRate(kinetics, 310, a + h) - cureRate(kinetics, 310, a - h)) / (2 * h)
        const scale = cureRate(kinetics, 310, 0.3)
        expect(Math.abs(cureRateSlope(kinetics, 310, a) - quotient) / scale).toBeLessThan(1e-6)
      }
  })

  it('stops short of full cure in a cold room and gets there in a warm one', () => {
    const { kinetics } = CLASSES.medium
    const week = { timeS: [0, 7 * 86_400], tempC: [15, 15] }
    const cold = conversionAlong(kinetics, week)[1]!
    const warm = conversionAlong(kinetics, { ...week, tempC: [60, 60] })[1]!
    expect(cold).toBeLessThan(0.9)
    expect(warm).toBeGreaterThan(0.97)
    // the glass transition comes to rest 10 to 35 K above the room, where diffusion holds the reaction
    const above = glassTransitionC(kinetics, cold) - 15
    expect(above).toBeGreaterThan(10)
    expect(above).toBeLessThan(35)
  })
})

describe('glass transition', () => {
  it('runs from uncured to cured, straight for λ = 1, and can be turned round', () => {
    const k = { tg0C: -45, tgInfC: 58, lambda: 0.42 }
    expect(glassTransitionC(k, 0)).toBe(-45)
    expect(glassTransitionC(k, 1)).toBeCloseTo(58, 10)
    expect(glassTransitionC({ ...k, lambda: 1 }, 0.5)).toBeCloseTo((-45 + 58) / 2, 10)
    for (let a = 0; a <= 1; a += 0.125)
      expect(conversionAtGlass(k, glassTransitionC(k, a))).toBeCloseTo(a, 12)
    expect(conversionAtGlass(k, -100)).toBe(0)
    expect(conversionAtGlass(k, 100)).toBe(1)
  })
})

describe('tables of the cure rate', () => {
  it('stay within the error that their docstring states, on every set', () => {
    let off = 0
    for (const [, { kinetics }] of ALL_SETS) off = Math.max(off, tableError(kinetics, 0, 150))
    expect(off).toBeLessThan(8e-5)
    expect(off).toBeGreaterThan(1e-6) // a table that were exact would not be a table
  })

  it('state a larger error in the first cell of conversion when m is below 1', () => {
    const kinetics = { ...CLASSES.medium.kinetics, m: 0.7, n: 1.6, diffusion: null }
    const a = Float64Array.of(0.25 / 4096, 0.4)
    const [rate] = ratesOf(kinetics, Float64Array.of(300, 300), a)
    const k2 = cureRate({ ...kinetics, k1OverK2At25: 1e-12 }, 300, 0.5) / (0.5 ** 0.7 * 0.5 ** 1.6)
    expect(Math.abs(rate[0]! - cureRate(kinetics, 300, a[0]!)) / k2).toBeLessThan(0.2 * 4096 ** -0.7)
    expect(Math.abs(rate[1]! / cureRate(kinetics, 300, 0.4) - 1)).toBeLessThan(2e-5)
  })

  it('give the derivatives of their own rate', () => {
    const { kinetics } = CLASSES.medium
    for (const a of [0.1013, 0.5511, 0.8507])
      for (const t of [290.03, 310.04, 350.03]) {
        const h = 1e-5
        const [rate, byA, byT] = ratesOf(
          kinetics,
          Float64Array.of(t, t, t, t + h * 100, t - h * 100),
          Float64Array.of(a, a + h, a - h, a, a)
        )
        expect(byA[0]! / ((rate[1]! - rate[2]!) / (2 * h))).toBeCloseTo(1, 4)
        expect(byT[0]! / ((rate[3]! - rate[4]!) / (200 * h))).toBeCloseTo(1, 4)
      }
  })

  it('hold their ends: colder, hotter, under-cured and over-cured all stay finite', () => {
    const { kinetics } = CLASSES.thin
    const [rate] = ratesOf(kinetics, Float64Array.of(1, 2000, 300, 300), Float64Array.of(0.5, 0.5, -1, 2))
    expect([...rate].every(Number.isFinite)).toBe(true)
    expect(rate[3]).toBe(0)
  })

  it('refuse a law that is not finite', () => {
    const zero = (): number => 0
    expect(() => rateTable({ k1: () => Number.NaN, k2: zero, f: zero, g: zero, p: zero, q: zero })).toThrow(
      /NaN/
    )
  })
})

describe('conversion along a temperature history', () => {
  it('meets the closed form for m = n = 1, quadrature and Runge-Kutta alike', () => {
    const k1 = 1e-3
    const k2 = 1e-2
    const kinetics = simple(k1, k2)
    const e = Math.exp(-(k1 + k2) * 100)
    const exact = (1 - e) / (1 + (k2 / k1) * e)
    expect(exact).toBeCloseTo(0.154117228298, 11)
    expect(
      Math.abs(conversionAlong(kinetics, { timeS: [0, 100], tempC: [25, 25] })[1]! - exact)
    ).toBeLessThan(1e-7)
    for (const a of [0.05, 0.3, 0.6, 0.9]) {
      const t = Math.log((1 + (k2 / k1) * a) / (1 - a)) / (k1 + k2)
      expect(isothermalTimeS(kinetics, 25, a) / t).toBeCloseTo(1, 10)
    }
  })

  it('agrees with an independent integrator on every parameter set, with and without diffusion limit', () => {
    let off = 0
    for (const [, set] of ALL_SETS)
      for (const kinetics of [set.kinetics, { ...set.kinetics, diffusion: null }]) {
        // a day that warms by 20 K and cools again, scaled to the speed of the resin
        const endS = 1.5 * isothermalTimeS(kinetics, 25, 0.6)
        const tempC = (t: number): number => 20 + 20 * (1 - Math.abs((2 * t) / endS - 1))
        const history = { timeS: [0, endS / 2, endS], tempC: [20, 40, 20] }
        const ours = conversionAlong(kinetics, history)
        const half = integrate((t, [a]) => [cureRate(kinetics, tempC(t) + K, a!)], [0], endS / 2)[0]!
        const full = integrate(
          (t, [a]) => [cureRate(kinetics, tempC(t + endS / 2) + K, a!)],
          [half],
          endS / 2
        )[0]!
        off = Math.max(off, Math.abs(ours[1]! - half), Math.abs(ours[2]! - full))
      }
    expect(off).toBeLessThan(1e-7)
  })

  it('agrees with itself: the quadrature gives the time at which the history gets there', () => {
    for (const [name, { kinetics }] of ALL_SETS)
      for (const level of [0.2, 0.6, 0.75]) {
        const t = isothermalTimeS(kinetics, 22, level)
        const got = conversionAlong(kinetics, { timeS: [0, t], tempC: [22, 22] })[1]!
        expect(Math.abs(got - level), name).toBeLessThan(1e-6)
      }
  })

  it('can be cut in two: the end of one part starts the next', () => {
    const { kinetics } = CLASSES.deep
    const whole = conversionAlong(kinetics, { timeS: [0, 1e4, 5e4], tempC: [20, 25, 22] })
    const rest = conversionAlong(kinetics, { timeS: [1e4, 5e4], tempC: [25, 22] }, whole[1]!)
    expect(rest[1]).toBe(whole[2])
  })

  it('says Infinity where the diffusion limit keeps a conversion out of reach', () => {
    expect(isothermalTimeS(CLASSES.medium.kinetics, 10, 0.99)).toBe(Number.POSITIVE_INFINITY)
  })

  it('refuses a history that does not rise in time and temperatures that are no numbers', () => {
    const { kinetics } = CLASSES.deep
    expect(() => conversionAlong(kinetics, { timeS: [0, 0], tempC: [20, 20] })).toThrow(/does not rise/)
    expect(() => conversionAlong(kinetics, { timeS: [0, 1], tempC: [20, Number.NaN] })).toThrow(/NaN/)
    expect(() => conversionAlong(kinetics, { timeS: [0], tempC: [20] })).toThrow(/1 times/)
    expect(() => isothermalTimeS(kinetics, 20, 1)).toThrow(/conversion is 1/)
  })

  it('finds crossings between samples, at the first sample, and not at all', () => {
    expect(crossingS([0, 10, 20], [0, 1, 3], 2)).toBeCloseTo(15, 12)
    expect(crossingS([5, 10], [2, 3], 2)).toBe(5)
    expect(crossingS([0, 10], [0, 1], 2)).toBeNull()
    expect(crossingS([0, 10], [0, Number.POSITIVE_INFINITY], 2)).toBe(10)
  })
})

function simple(k1: number, k2: number): ResinKinetics {
  return { ...CLASSES.medium.kinetics, k2At25PerS: k2, k1OverK2At25: k1 / k2, m: 1, n: 1, diffusion: null }
}

function ratesOf(
  kinetics: ResinKinetics,
  tempK: Float64Array,
  conversion: Float64Array
): [Float64Array, Float64Array, Float64Array] {
  const n = tempK.length
  const out = [new Float64Array(n), new Float64Array(n), new Float64Array(n)] as [
    Float64Array,
    Float64Array,
    Float64Array
  ]
  tableRates(cureTable(kinetics), 1, 0, n, tempK, conversion, ...out)
  return out
}

/** Worst |table/direct − 1| over a lattice that falls between the table's own points. */
function tableError(kinetics: ResinKinetics, fromC: number, toC: number): number {
  const tempK: number[] = []
  const conversion: number[] = []
  for (let c = fromC + 0.06; c < toC; c += 1.37)
    for (let a = 0.000122; a < 0.99; a += 0.0173) {
      tempK.push(c + K)
      conversion.push(a)
    }
  const [rate] = ratesOf(kinetics, Float64Array.from(tempK), Float64Array.from(conversion))
  let most = 0
  for (let i = 0; i < tempK.length; i++)
    most = Math.max(most, Math.abs(rate[i]! / cureRate(kinetics, tempK[i]!, conversion[i]!) - 1))
  return most
}

describe('a scaled resin', () => {
  it('takes the same path in less time when both rate constants are scaled', () => {
    const { kinetics } = CLASSES.deep
    const twice = altered(CLASSES.deep, {}, { k2At25PerS: 2 * kinetics.k2At25PerS }).kinetics
    expect(isothermalTimeS(twice, 22, 0.6) / isothermalTimeS(kinetics, 22, 0.6)).toBeCloseTo(0.5, 12)
  })
})
