import { describe, expect, it } from 'vitest'
import { CATALOGUE } from '../../src/catalogue/find.ts'
import {
  dryFilmUm,
  laidGPerM2,
  needMl,
  spreadM2PerL,
  thinnedSolidsPct,
  volumeSolidsPct,
  wetFilmUm
} from '../../src/coat/film.ts'
import { glossWord, glossWords, readAtDeg, reflectance, smoothGloss } from '../../src/coat/gloss.ts'
import { sagMmPerS, standingUm } from '../../src/coat/sag.ts'

describe('films', () => {
  it('wet and dry are each other’s inverse, thinned or not', () => {
    for (const solids of [5, 28, 40, 100])
      for (const thinner of [0, 0.1, 0.5])
        expect(dryFilmUm(wetFilmUm(37, solids, thinner), solids, thinner)).toBeCloseTo(37, 9)
  })

  it('a litre weighed out: what is laid on a square metre, by balance of volume', () => {
    // 1 l over the spread of 100 µm: 10 m², each with 0.1 l, at 0.92 g/ml 92 g.
    expect(spreadM2PerL(100) * 0.1).toBeCloseTo(1, 12)
    expect(laidGPerM2(100, 0.92)).toBeCloseTo(92, 9)
    expect(needMl(2, 100, 1)).toBeCloseTo(200, 9)
    expect(needMl(2, 100, 0.65)).toBeCloseTo(200 / 0.65, 9)
  })

  it('solids by weight: a made-up paint weighed apart', () => {
    // 30 g of solids that take 25 ml, 70 g of thinner of 0.87: 80.46 ml; the mix 0.948 g/ml, 23.7 % by volume.
    const thinnerMl = 70 / 0.87
    const mix = 100 / (25 + thinnerMl)
    expect(volumeSolidsPct(30, mix, 0.87)).toBeCloseTo((100 * 25) / (25 + thinnerMl), 9)
    expect(() => volumeSolidsPct(20, 1.2, 0.8)).toThrow(/volume solids is -20/)
  })

  it('refuses figures no paint has', () => {
    expect(() => thinnedSolidsPct(0, 0)).toThrow(/volume solids is 0/)
    expect(() => wetFilmUm(-1, 40)).toThrow(/film is -1/)
    expect(() => needMl(1, 100, 0)).toThrow(/share/)
  })
})

describe('a film on an upright face', () => {
  it('runs as the velocity profile says: shear summed in thin sheets', () => {
    // dv/dy = ρ·g·(h − y)/η from plate to surface, added up.
    const [h, eta, rho, n] = [0.2e-3, 1, 1000, 20_000]
    let v = 0
    for (let k = 0; k < n; k++) v += ((rho * 9.80665 * (h - (k + 0.5) * (h / n))) / eta) * (h / n)
    expect(sagMmPerS(200, eta, rho)).toBeCloseTo(1000 * v, 6)
    expect(sagMmPerS(200, 1, 1000)).toBeCloseTo(0.196, 3)
  })

  it('stands up to 0.14 mm of 1 Pa·s, in the middle of practice, and that is the inverse', () => {
    expect(standingUm(1, 1100)).toBeGreaterThan(100)
    expect(standingUm(1, 1100)).toBeLessThan(200)
    for (const eta of [0.05, 0.5, 3])
      expect(sagMmPerS(standingUm(eta, 1100, 0.1), eta, 1100)).toBeCloseTo(0.1, 9)
    expect(() => standingUm(0, 1100)).toThrow(/viscosity is 0/)
  })
})

describe('gloss', () => {
  it('every value has one word, and the words of a range join up', () => {
    expect([0, 17, 18, 44, 45, 84, 85, 100].map(glossWord)).toEqual([
      'matt',
      'matt',
      'satin',
      'satin',
      'gloss',
      'gloss',
      'polished',
      'polished'
    ])
    expect(glossWords(10, 35)).toEqual(['matt', 'satin'])
    expect(glossWords(85, 98)).toEqual(['polished'])
    expect(() => glossWord(101)).toThrow(/gloss is 101/)
  })

  it('which angle to read at (ASTM D523)', () => {
    expect([5, 10, 50, 70, 71].map(readAtDeg)).toEqual([85, 60, 60, 60, 20])
  })

  it('no coat of the catalogue is brighter than a smooth film of index 1.6', () => {
    for (const coat of CATALOGUE.coat) expect(coat.gloss60[1]).toBeLessThanOrEqual(smoothGloss(1.6, 60))
  })

  it('throws back nothing of the light polarised along the plane at Brewster’s angle', () => {
    // There half of the s part is all that is left: ((n² − 1)/(n² + 1))²/2.
    const n = 1.5
    const brewster = (Math.atan(n) * 180) / Math.PI
    expect(reflectance(n, brewster)).toBeCloseTo(((n * n - 1) / (n * n + 1)) ** 2 / 2, 12)
    expect(reflectance(n, 0)).toBeCloseTo(0.04, 12)
  })
})
