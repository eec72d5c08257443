import { describe, expect, it } from 'vitest'
import { CATALOGUE } from '../../src/catalogue/find.ts'
import {
  dryFilmUm,
  laidGPerM2,
  needMl,
  spreadM2PerL,
  thinnedSolidsPct,
  wetFilmUm
} from '../../src/coat/film.ts'
import { glossWords, readAtDeg } from '../../src/coat/gloss.ts'
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
  it('words of a range join up', () => {
    expect(glossWords(10, 35)).toEqual(['matt', 'satin'])
    expect(glossWords(0, 100)).toEqual(['matt', 'satin', 'gloss', 'polished'])
    expect(glossWords(85, 98)).toEqual(['polished'])
  })

  it('which angle to read at (ASTM D523)', () => {
    expect([5, 10, 50, 70, 71].map(readAtDeg)).toEqual([85, 60, 60, 60, 20])
  })

  // Fresnel for unpolarised light; black glass of index 1.567 counts as 100 (ISO 2813): 10.01 % at 60°.
  it('no coat of the catalogue is brighter than a smooth film of index 1.6', () => {
    const thrownBack = (n: number) => {
      const cos = 0.5
      const inner = Math.sqrt(1 - (1 - cos * cos) / (n * n))
      const s = ((cos - n * inner) / (cos + n * inner)) ** 2
      const p = ((inner - n * cos) / (inner + n * cos)) ** 2
      return (s + p) / 2
    }
    expect(thrownBack(1.567)).toBeCloseTo(0.1001, 4)
    const most = (100 * thrownBack(1.6)) / thrownBack(1.567)
    for (const coat of CATALOGUE.coat) expect(coat.gloss60[1]).toBeLessThanOrEqual(most)
  })
})
