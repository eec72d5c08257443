import { describe, expect, it } from 'vitest'
import { dailyTemperature } from '../../src/resin/ambient.ts'
import { conversionAlong } from '../../src/resin/conversion.ts'
import { filmGelS, gelConversion, gelTimeS } from '../../src/resin/gel.ts'
import { levelFall, shrinkageFromDensities, strainAfterGel } from '../../src/resin/shrinkage.ts'
import {
  conversionAtViscosity,
  filmThickening,
  freshViscosityPaS,
  thickeningAlong,
  viscosityPaS
} from '../../src/resin/thickening.ts'
import { ALL_SETS, CLASSES } from './sets.ts'

describe('viscosity', () => {
  it('is that of the fresh mix at the start, grows throughout, and has no bound at gel', () => {
    for (const [name, { flow, kinetics }] of ALL_SETS) {
      const gel = kinetics.gelConversion
      expect(viscosityPaS(flow, gel, 25, 0)).toBe(flow.eta25PaS)
      let before = 0
      for (let a = 0; a < gel; a += 0.01) {
        const now = viscosityPaS(flow, gel, 25, a)
        expect(now, `${name} ${a}`).toBeGreaterThan(before)
        before = now
      }
      expect(viscosityPaS(flow, gel, 25, gel - 1e-9)).toBeGreaterThan(1e9)
      expect(viscosityPaS(flow, gel, 25, gel)).toBe(Number.POSITIVE_INFINITY)
      expect(viscosityPaS(flow, gel, 25, 1)).toBe(Number.POSITIVE_INFINITY)
    }
  })

  it('falls as a fresh mix warms, by the Arrhenius factor', () => {
    const { flow } = CLASSES.medium
    const factor = Math.exp((55_000 / 8.31446261815324) * (1 / 313.15 - 1 / 298.15))
    expect(freshViscosityPaS(flow, 40) / freshViscosityPaS(flow, 25)).toBeCloseTo(factor, 12)
  })

  it('is met at the conversion found for it', () => {
    for (const [, { flow, kinetics }] of ALL_SETS)
      for (const level of [2, 3, 10, 100]) {
        const a = conversionAtViscosity(flow, kinetics.gelConversion, 22, level)
        const eta = viscosityPaS(flow, kinetics.gelConversion, 22, a)
        if (freshViscosityPaS(flow, 22) >= level) expect(a).toBe(0)
        else expect(eta / level).toBeCloseTo(1, 8)
      }
  })
})

describe('thickening', () => {
  it('comes in order: twice, 10 Pa·s, gel; and later in a colder room', () => {
    for (const [name, { flow, kinetics }] of ALL_SETS) {
      const cold = filmThickening(kinetics, flow, 15)
      const warm = filmThickening(kinetics, flow, 25)
      expect(warm.doubleMin!, name).toBeLessThan(warm.honeyMin!)
      expect(warm.honeyMin!, name).toBeLessThan(warm.gelMin!)
      expect(cold.gelMin!, name).toBeGreaterThan(warm.gelMin!)
      expect(cold.doubleMin!, name).toBeGreaterThan(warm.doubleMin!)
    }
  })

  it('is the same along a constant history as for a film at that temperature', () => {
    for (const [name, { flow, kinetics }] of ALL_SETS) {
      const endS = 1.2 * filmGelS(kinetics, 22)
      const along = thickeningAlong(kinetics, flow, { timeS: [0, endS], tempC: [22, 22] })
      const film = filmThickening(kinetics, flow, 22)
      for (const key of ['doubleMin', 'syrupMin', 'honeyMin', 'gelMin'] as const)
        expect(along[key]! / film[key]!, `${name} ${key}`).toBeCloseTo(1, 3)
    }
  })

  it('counts from the first sample of a history that begins late, and says null for what does not come', () => {
    const { flow, kinetics } = CLASSES.deep
    const t = thickeningAlong(kinetics, flow, { timeS: [5000, 20_000, 30_000], tempC: [22, 22, 22] })
    expect(t.doubleMin! * 60).toBeGreaterThan(5000)
    expect(t.doubleMin! * 60).toBeLessThan(15_000)
    expect(t.gelMin).toBeNull()
  })

  it('shortens along a day that is warmer at noon than its mean', () => {
    const { kinetics } = CLASSES.deep
    const air = dailyTemperature({ meanC: 22, swingC: 5, startHour: 9 })
    const timeS = Array.from({ length: 121 }, (_, i) => i * 600)
    const swinging = gelTimeS(kinetics, { timeS, tempC: timeS.map(air) })!
    const steady = gelTimeS(kinetics, { timeS, tempC: timeS.map(() => 22) })!
    expect(swinging).toBeLessThan(steady)
    expect(steady / filmGelS(kinetics, 22)).toBeCloseTo(1, 3)
  })
})

describe('the room over the day', () => {
  it('is warmest at its hour, coldest twelve hours later, and comes back after a day', () => {
    const air = dailyTemperature({ meanC: 20, swingC: 4, startHour: 9 })
    expect(air(6 * 3600)).toBeCloseTo(24, 10)
    expect(air(18 * 3600)).toBeCloseTo(16, 10)
    expect(air(86_400 + 1234)).toBeCloseTo(air(1234), 10)
  })
})

describe('gel', () => {
  it('does not come when a group is used up first', () => {
    expect(gelConversion(2, 2, 1)).toBeNull() // a chain never gels
    expect(gelConversion(4, 2, 0.3)).toBeNull()
    expect(gelConversion(4, 2, 3.2)).toBeNull()
    expect(gelConversion(1, 2)).toBeNull()
  })

  it('is symmetric: swapping the two molecules swaps the two conversions', () => {
    const one = gelConversion(4, 2.2, 0.9)!
    const other = gelConversion(2.2, 4, 1 / 0.9)!
    expect(other.epoxide).toBeCloseTo(one.amine, 12)
    expect(other.amine).toBeCloseTo(one.epoxide, 12)
  })

  it('is found between the samples of a history', () => {
    const { kinetics } = CLASSES.thin
    const history = { timeS: [0, 4000, 8000, 12_000], tempC: [25, 25, 25, 25] }
    const t = gelTimeS(kinetics, history)!
    const at = conversionAlong(kinetics, { timeS: [0, t], tempC: [25, 25] })[1]!
    expect(Math.abs(at - kinetics.gelConversion)).toBeLessThan(1e-4)
    expect(gelTimeS(kinetics, { timeS: [0, 10], tempC: [25, 25] })).toBeNull()
  })
})

describe('shrinkage', () => {
  it('falls between a third, gelled at once, and the whole, never gelled', () => {
    expect(levelFall(0.06, 0)).toBeCloseTo(0.02, 12)
    expect(levelFall(0.06, 1)).toBeCloseTo(0.06, 12)
    expect(strainAfterGel(0.06, 1)).toBe(0)
  })

  it('adds up: what the level loses before gel and three strains after it are the whole volume', () => {
    for (const gel of [0.3, 0.55, 0.6]) {
      const beforeGel = levelFall(0.05, gel) - strainAfterGel(0.05, gel)
      expect(beforeGel + 3 * strainAfterGel(0.05, gel)).toBeCloseTo(0.05, 12)
    }
  })

  it('refuses a resin that swells', () => {
    expect(() => shrinkageFromDensities(1150, 1100)).toThrow(/cured resin in kg\/m³ is 1100/)
  })
})
