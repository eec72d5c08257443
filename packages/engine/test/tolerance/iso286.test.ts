import { describe, expect, it } from 'vitest'
import { deviationsMm, fitMm, standardToleranceMm } from '../../src/tolerance/iso286.ts'
import { BANDS, LIMITS, TIMES_I, unitUm } from './iso286-table.ts'

describe('limits of plain sizes', () => {
  // Source: ISO 286-2 as handbooks print it (memory).
  it.each(LIMITS)('Ø%d %s', (size, name, lower, upper) => {
    const d = deviationsMm(size, name)
    expect(d.lowerMm * 1000).toBeCloseTo(lower, 9)
    expect(d.upperMm * 1000).toBeCloseTo(upper, 9)
    expect(Object.is(d.lowerMm, -0) || Object.is(d.upperMm, -0)).toBe(false)
  })

  // The standard rounds its own formula: to 1 µm up to 100 µm, to 5 and 10 beyond, on a geometric row.
  it('grades follow i = 0.45·∛D + 0.001·D, rounded', () => {
    for (const band of BANDS)
      for (const [grade, times] of Object.entries(TIMES_I)) {
        const um = times * unitUm(band)
        const ours = standardToleranceMm(band[1], Number(grade)) * 1000
        expect(Math.abs(ours - um), `IT${grade} to ${band[1]}: ${um}`).toBeLessThanOrEqual(
          Math.max(1, 0.045 * um)
        )
      }
  })

  // Formulas behind ISO 286-1: g −2.5·D^0.34, f −5.5·D^0.41, e −11·D^0.41, n 5·D^0.34, m IT7 − IT6 (memory).
  it('deviations follow their formulas, rounded', () => {
    for (const [above, to] of BANDS) {
      const d = Math.sqrt(above * to)
      expect(deviationsMm(to, 'g6').upperMm * 1000).toBeCloseTo(-2.5 * d ** 0.34, -0.5)
      expect(Math.abs(deviationsMm(to, 'f7').upperMm * 1000 + 5.5 * d ** 0.41)).toBeLessThan(1)
      expect(Math.abs(deviationsMm(to, 'e8').upperMm * 1000 + 11 * d ** 0.41)).toBeLessThan(1)
      expect(Math.abs(deviationsMm(to, 'n6').lowerMm * 1000 - 5 * d ** 0.34)).toBeLessThan(1)
      const m = standardToleranceMm(to, 7) - standardToleranceMm(to, 6)
      expect(deviationsMm(to, 'm6').lowerMm).toBeCloseTo(m, 9)
    }
  })

  it('a size on the end of a band belongs to the lower one', () => {
    expect(deviationsMm(18, 'H7').upperMm).toBe(0.018)
    expect(deviationsMm(18.001, 'H7').upperMm).toBe(0.021)
  })

  // A hole is the mirror of the shaft of its letter.
  it('holes mirror shafts', () => {
    for (const letter of ['d', 'e', 'f', 'g', 'h'])
      for (const size of [2, 5, 9, 14, 22, 45, 70])
        expect(deviationsMm(size, `${letter.toUpperCase()}8`).lowerMm).toBeCloseTo(
          -deviationsMm(size, `${letter}8`).upperMm,
          12
        )
  })
})

describe('fits', () => {
  // Worked: 6 H7/m6: 0 − 12 = −12, 12 − 4 = +8 µm; 25 H7/g6: 0 + 7, 21 + 20; 8 H7/h6: 0, 15 + 9.
  it.each([
    [6, 'H7', 'm6', -12, 8],
    [25, 'H7', 'g6', 7, 41],
    [8, 'H7', 'h6', 0, 24],
    [25, 'H7', 'p6', -35, -1]
  ] as const)('Ø%d %s/%s', (size, hole, shaft, least, greatest) => {
    const fit = fitMm(size, hole, shaft)
    expect(fit.leastMm * 1000).toBeCloseTo(least, 9)
    expect(fit.greatestMm * 1000).toBeCloseTo(greatest, 9)
  })
})

describe('what is not known', () => {
  it('is refused with what is allowed', () => {
    expect(() => deviationsMm(6, 'x6')).toThrow(/"x6"; allowed: D E F G H for holes, d e f g h k m n p/)
    expect(() => deviationsMm(6, 'H14')).toThrow(/grade from 5 to 13/)
    expect(() => deviationsMm(6, 'k8')).toThrow(/k of grades 5 to 7/)
    expect(() => deviationsMm(81, 'H7')).toThrow(/nominal size is 81 mm; allowed 0 to 80 mm/)
    expect(() => deviationsMm(0, 'H7')).toThrow(/above 0/)
    expect(() => deviationsMm(Number.NaN, 'H7')).toThrow(/nominal size is NaN/)
    expect(() => standardToleranceMm(6, 4)).toThrow(/grade is 4/)
  })
})
