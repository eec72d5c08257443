import { describe, expect, it } from 'vitest'
import {
  MEAN_DEPTH,
  meterMoisture,
  temperatureCorrectionPct,
  throughThickness
} from '../../src/timber/meter.ts'

describe('temperature of a resistance meter', () => {
  it('is nothing at 20 °C, for every figure', () => {
    for (const r of [6, 12, 20, 28]) expect(temperatureCorrectionPct(r, 20)).toBe(0)
  })

  // Practice: 0.06 to 0.12 % a degree over 8 to 16 %, less where it is warmer.
  it('takes off 0.06 to 0.13 % a degree at joinery moistures, more at higher figures', () => {
    for (const r of [8, 12, 16])
      for (const [from, to] of [
        [0, 10],
        [10, 20],
        [20, 30],
        [30, 40]
      ] as const) {
        const perK = (temperatureCorrectionPct(r, to) - temperatureCorrectionPct(r, from)) / (to - from)
        expect(perK, `${r} %, ${from} to ${to}`).toBeLessThan(-0.06)
        expect(perK, `${r} %, ${from} to ${to}`).toBeGreaterThan(-0.14)
      }
    expect(temperatureCorrectionPct(20, 5)).toBeGreaterThan(temperatureCorrectionPct(10, 5))
  })

  it('leaves what was not taken by resistance as it is', () => {
    expect(meterMoisture({ readingPct: 11, way: 'pinless', tempC: 5 })).toEqual({ pct: 11, doubtPct: 2 })
    expect(meterMoisture({ readingPct: 11, way: 'oven-dry', tempC: 5 })).toEqual({ pct: 11, doubtPct: 0.3 })
    expect(meterMoisture({ readingPct: 11, way: 'pins', tempC: 5 }).pct).toBeGreaterThan(12)
  })

  it('is surer on the timber’s own setting, and with its temperature', () => {
    const doubt = (more: object) => meterMoisture({ readingPct: 11, way: 'pins', ...more }).doubtPct
    expect(doubt({ ownSetting: true, tempC: 20 })).toBe(1)
    expect(doubt({ tempC: 20 })).toBe(2)
    expect(doubt({ ownSetting: true })).toBeGreaterThan(1)
  })
})

describe('depth of the pins', () => {
  // The mean of the profile by Simpson over many steps, against the closed form.
  it('reads the mean at 0.2197 of the thickness, by quadrature', () => {
    const n = 2000
    let sum = 0
    for (let i = 0; i <= n; i++)
      sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * Math.sin((Math.PI * i) / n)
    const mean = sum / (3 * n)
    expect(Math.sin(Math.PI * MEAN_DEPTH)).toBeCloseTo(mean, 10)
    expect(MEAN_DEPTH).toBeCloseTo(0.2197, 4)
    const at = throughThickness({ atDepthPct: 13, depthMm: MEAN_DEPTH * 40, thicknessMm: 40, surfacePct: 9 })
    expect(at.meanPct).toBeCloseTo(13, 10)
    expect(at.corePct).toBeCloseTo(9 + (4 * Math.PI) / 2, 10)
  })

  // The parabola's mean lies at (1 − 1/√3)/2 = 0.2113: the two shapes agree within a hundredth of the thickness.
  it('agrees with a parabolic profile within a hundredth of the thickness', () => {
    expect(Math.abs(MEAN_DEPTH - (1 - 1 / Math.sqrt(3)) / 2)).toBeLessThan(0.01)
  })

  it('gives back every profile it is read from, either face', () => {
    for (const share of [0.1, 0.25, 0.5, 0.8]) {
      const [surfacePct, corePct] = [8, 15]
      const atDepthPct = surfacePct + (corePct - surfacePct) * Math.sin(Math.PI * share)
      const got = throughThickness({ atDepthPct, depthMm: share * 50, thicknessMm: 50, surfacePct })
      expect(got.corePct).toBeCloseTo(corePct, 10)
      expect(got.meanPct).toBeCloseTo(surfacePct + ((corePct - surfacePct) * 2) / Math.PI, 10)
    }
  })

  it('carries a reading of the skin no further than one of a tenth', () => {
    const at = (depthMm: number) =>
      throughThickness({ atDepthPct: 12, depthMm, thicknessMm: 50, surfacePct: 8 }).corePct
    expect(at(0.5)).toBe(at(5))
    expect(() => at(51)).toThrow(/depth of the pins is 51 mm; allowed 0.1 to 50/)
  })
})
