import { describe, expect, it } from 'vitest'
import { capillaryMm, DAM_OVER_MM, damForMm, EDGE_DEG, puddleMm, standsMm } from '../../src/coat/flood.ts'
import {
  levelNeedPerPa,
  levelWithinMmPerM,
  longestWaveMm,
  tensionTimeS,
  type WetFilm,
  wedgeMm,
  weightTimeS
} from '../../src/coat/levelling.ts'

const film = (filmMm: number): WetFilm => ({ filmMm, tensionNM: 0.04, densityKgM3: 1100 })

describe('a puddle', () => {
  it('stands where its weight and its skin are in balance: forces added up', () => {
    // Across the rim: γ(1 − cos θ) holds, ρ·g·h²/2 presses.
    for (const deg of [20, 45, 60, 90, 120]) {
      const h = puddleMm(0.04, 1100, deg) / 1000
      const holds = 0.04 * (1 - Math.cos((deg * Math.PI) / 180))
      expect((1100 * 9.80665 * h * h) / 2).toBeCloseTo(holds, 12)
    }
    expect(() => puddleMm(0, 1100, 90)).toThrow(/surface tension is 0/)
  })

  it('stands 2 to 3 mm by itself, as practice has it', () => {
    const [low, middle, high] = standsMm(1100)
    expect(low).toBeGreaterThan(2)
    expect(high).toBeLessThan(3)
    expect(middle).toBeCloseTo(puddleMm(0.04, 1100, EDGE_DEG), 12)
    expect(capillaryMm(0.04, 1100)).toBeCloseTo(middle / Math.SQRT2, 9)
  })

  it('a dam stands over the coat', () => {
    expect(damForMm(5)).toBe(5 + DAM_OVER_MM)
    expect(damForMm(5.2)).toBe(8)
  })
})

describe('levelling', () => {
  // The slow way: the ripple's equation in small steps of time.
  it('is what stepping the equation gives', () => {
    const { tensionNM, densityKgM3 } = film(1)
    const [h, l, eta] = [1e-3, 20e-3, 0.7]
    const k = (2 * Math.PI) / l
    const rate = (h ** 3 * k * k * (densityKgM3 * 9.80665 + tensionNM * k * k)) / (3 * eta)
    let [a, t] = [1, 0]
    const dt = 1e-5
    while (a > 0.01) {
      // Second order, so that the step does not count.
      const half = a - (dt / 2) * rate * a
      a -= dt * rate * half
      t += dt
    }
    expect(eta * levelNeedPerPa(film(1), 20, 0.01)).toBeCloseTo(t, 3)
  })

  it('adds the rates of weight and tension, alike at the wave of 2π capillary lengths', () => {
    const wave = 2 * Math.PI * capillaryMm(0.04, 1100)
    expect(wave).toBeCloseTo(12.1, 1)
    expect(tensionTimeS(film(1), wave, 1) / weightTimeS(film(1), wave, 1)).toBeCloseTo(1, 9)
    for (const l of [2, 12, 300]) {
      const both = 1 / (1 / tensionTimeS(film(1), l, 1) + 1 / weightTimeS(film(1), l, 1))
      expect(levelNeedPerPa(film(1), l, Math.exp(-1))).toBeCloseTo(both, 9)
    }
  })

  it('the longest wave is the inverse, over eight decades of fluidity', () => {
    for (let e = -3; e <= 5; e++) {
      const m = 10 ** e
      const l = longestWaveMm(film(2.6), m, 0.01)
      expect(levelNeedPerPa(film(2.6), l, 0.01) / m).toBeCloseTo(1, 6)
    }
    expect(longestWaveMm(film(2.6), 0, 0.01)).toBe(0)
  })

  it('half the film takes eight times as long', () => {
    expect(levelNeedPerPa(film(1), 50, 0.1) / levelNeedPerPa(film(2), 50, 0.1)).toBeCloseTo(8, 9)
  })

  it('a pool is deeper by the slope times the span', () => {
    expect(wedgeMm(600, 1)).toBeCloseTo(0.6, 12)
    expect(levelWithinMmPerM(3, 600)).toBeCloseTo(0.5, 12)
    expect(wedgeMm(600, levelWithinMmPerM(3, 600))).toBeCloseTo(0.3, 12)
    expect(() => wedgeMm(600, -1)).toThrow(/out of level is -1/)
  })
})
