import { describe, expect, it } from 'vitest'
import { meanLeft } from '../../src/timber/drying-curve.ts'
import type { DryingLog, DryingLogInput } from '../../src/timber/drying-log.ts'
import { dryingLog } from '../../src/timber/drying-log.ts'
import { equilibriumMoistureBand } from '../../src/timber/moisture.ts'
import { meanFraction } from '../../src/timber/settle.ts'
import { world } from './drying-world.ts'

/** More with CASTWRIGHT_LOGS. */
const COUNT = Number(process.env['CASTWRIGHT_LOGS'] ?? 120)

const air = (pct: number) => {
  const { centralPct, lowPct, highPct } = equilibriumMoistureBand(20, 0.5)
  return { airPct: pct, airLowPct: (pct * lowPct) / centralPct, airHighPct: (pct * highPct) / centralPct }
}

const fitted = (input: DryingLogInput): DryingLog => {
  const log = dryingLog(input)
  if ('refused' in log) throw new Error(JSON.stringify(log))
  return log
}

// Weights that follow one exponential exactly: the closed form of a profile that has become its first mode.
const DRY_G = 3000
const exact =
  (rate: number, first = 16, settles = 9) =>
  (day: number) =>
    DRY_G * (1 + (settles + (first - settles) * Math.exp(-rate * day)) / 100)
const weekly = (mass: (day: number) => number, weeks: number) =>
  Array.from({ length: weeks }, (_, i) => ({ day: 7 * i, massG: mass(7 * i) }))
const plain = (weighings: DryingLogInput['weighings']): DryingLogInput => ({
  weighings,
  known: [{ day: 0, pct: 16, doubtPct: 0.3 }],
  thicknessMm: 40,
  ...air(9),
  wantedPct: 11,
  scaleG: 1
})

describe('the curve of a log', () => {
  it('knows what is still to come within 2e-6 of the full series', () => {
    for (let fo = 1e-5; fo < 2; fo *= 1.07)
      expect(Math.abs(meanLeft(fo) - (1 - meanFraction(fo))), `Fo ${fo}`).toBeLessThan(2e-6)
  })
})

describe('a drying log', () => {
  // 90 % bands; the sampling error of 120 trials is 2.7 %.
  it('holds the day and the moisture in its band on seeded logs of another integrator', () => {
    let day = 0
    let moist = 0
    let open = 0
    for (let seed = 1; seed <= COUNT; seed++) {
      const w = world(seed, 4 + (seed % 7))
      const wantedPct = w.settlesPct + 1.5
      const log = fitted({
        weighings: w.weighings,
        // The meter is out by up to its doubt.
        known: [{ day: 0, pct: w.firstPct + ((seed % 7) - 3) / 3, doubtPct: 1 }],
        thicknessMm: w.thicknessMm,
        ...air(w.airPct),
        wantedPct,
        scaleG: 1
      })
      const truth = w.coreDay(wantedPct)
      const to = log.readyTo ?? Number.POSITIVE_INFINITY
      if (log.readyFrom !== null && truth >= log.readyFrom && truth <= to) day++
      if (w.lastPct >= log.meanPct[0] && w.lastPct <= log.meanPct[2]) moist++
      if (log.readyTo === null) open++
    }
    for (const held of [day, moist]) {
      expect(held / COUNT).toBeGreaterThan(0.82)
      expect(held / COUNT).toBeLessThan(0.99)
    }
    // A band that is always open to the right would hold everything.
    expect(open / COUNT).toBeLessThan(0.7)
  }, 120_000)

  // One mode: core over the balance is π/2 of the mean over it, so it reaches 2 points at ln(7·(π/2)/2)/rate.
  it('finds the day of the closed form where the weights are exact', () => {
    const rate = 0.02
    const log = fitted(plain(weekly(exact(rate), 14)))
    const day = Math.log((7 * Math.PI) / 2 / 2) / rate
    expect(log.readyDay! / day).toBeGreaterThan(0.93)
    expect(log.readyDay! / day).toBeLessThan(1.07)
    expect(log.settlesPct[1]).toBeCloseTo(9, 0)
    expect(log.meanPct[1]).toBeCloseTo(9 + 7 * Math.exp(-rate * 91), 0)
  })

  it('knows more with more weights: the band of the day narrows', () => {
    const width = (weeks: number) => {
      const { readyFrom, readyTo } = fitted(plain(weekly(exact(0.02), weeks)))
      return (readyTo ?? 1e6) - readyFrom!
    }
    expect(width(12)).toBeLessThan(width(4))
  })

  it('never promises what the air does not give', () => {
    const damp = fitted({ ...plain(weekly(exact(0.03, 18, 13), 8)), ...air(13), wantedPct: 10 })
    expect(damp.readyDay).toBeNull()
    expect(damp.readyTo).toBeNull()
  })

  it('gives the same answer twice', () => {
    const input = plain(weekly(exact(0.02), 6))
    expect(dryingLog(input)).toEqual(dryingLog(input))
  })

  it('refuses what is no drying, and names the weighing', () => {
    const good = weekly(exact(0.02), 6)
    expect(dryingLog(plain(good.slice(0, 2)))).toEqual({ refused: 'few', day: 7 })
    expect(dryingLog(plain([0, 1, 2].map(day => ({ day, massG: 3400 - day }))))).toEqual({
      refused: 'short',
      day: 2
    })
    expect(dryingLog(plain(good.map((w, i) => (i === 3 ? { ...w, massG: 1.1 * w.massG } : w))))).toEqual({
      refused: 'jump',
      day: 21
    })
    expect(dryingLog(plain(good.map((w, i) => (i === 3 ? { ...w, massG: 0.9 * w.massG } : w))))).toEqual({
      refused: 'jump',
      day: 28
    })
    expect(dryingLog(plain(good.map((w, i) => ({ ...w, massG: 3400 + 6 * i }))))).toEqual({
      refused: 'gains',
      day: 35
    })
    expect(() => dryingLog({ ...plain(good), thicknessMm: 0 })).toThrow(/thickness is 0 mm/)
  })
})
