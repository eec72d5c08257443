import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  equilibriumMoistureBand,
  equilibriumMoisturePct,
  humidityForMoisture,
  MOISTURE_TEMP_RANGE_C,
  ovenDryMoisturePct
} from '../../src/timber/moisture.ts'
import { cells, fahrenheitSetPct } from './emc-table.ts'

describe('equilibrium moisture', () => {
  // Wood Handbook Table 4-2 prints one decimal: half a digit of rounding, and one recalled cell is 0.06 off.
  it('agrees with every one of the 228 cells of the handbook table within 0.07 %', () => {
    const all = cells()
    expect(all).toHaveLength(228)
    let worst = 0
    let where = ''
    for (const [tempC, humidity, pct] of all) {
      const off = equilibriumMoisturePct(tempC, humidity) - pct
      if (Math.abs(off) > Math.abs(worst)) {
        worst = off
        where = `${tempC} °C, ${humidity * 100} %`
      }
    }
    expect(Math.abs(worst), `worst ${worst.toFixed(4)} at ${where}`).toBeLessThanOrEqual(0.07)
    expect(where).toBe('43.3 °C, 95 %')
  })

  // A dropped zero in K's quadratic term or a flipped sign of K1, the known bad copies, would move cells by
  // 0.1 to 2.
  it('agrees with the separately rounded Fahrenheit set of the handbook within 0.015 % over the table', () => {
    for (const [tempC, humidity] of cells()) {
      const other = fahrenheitSetPct(tempC * 1.8 + 32, humidity)
      expect(Math.abs(equilibriumMoisturePct(tempC, humidity) - other), `${tempC} ${humidity}`).toBeLessThan(
        0.015
      )
    }
  })

  it('is nothing in dry air, and rises with humidity at every temperature', () => {
    for (const tempC of [-1, 5, 20, 40, 60, 90, 130]) {
      expect(equilibriumMoisturePct(tempC, 0)).toBe(0)
      for (let i = 0; i < 100; i++) {
        const drier = equilibriumMoisturePct(tempC, i / 100)
        expect(equilibriumMoisturePct(tempC, (i + 1) / 100)).toBeGreaterThan(drier)
      }
    }
  })

  it('gives back the humidity it was asked with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 132, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (tempC, humidity) => {
          const back = humidityForMoisture(equilibriumMoisturePct(tempC, humidity), tempC)
          expect(Math.abs(back - humidity)).toBeLessThan(1e-9)
        }
      ),
      { seed: 20260101, numRuns: 500 }
    )
  })

  it('brackets the value by half of the widest hysteresis, two points at half humidity', () => {
    const band = equilibriumMoistureBand(20, 0.5)
    expect(band.highPct - band.lowPct).toBeCloseTo(4, 12)
    expect(equilibriumMoistureBand(20, 0).highPct).toBe(0)
    expect(equilibriumMoistureBand(20, 0.8).lowPct).toBeLessThan(equilibriumMoisturePct(20, 0.8))
  })

  // EN 13183-1: (wet − dry)/dry.
  it('takes moisture from two weighings on the dry mass', () => {
    expect(ovenDryMoisturePct(112, 100)).toBeCloseTo(12, 12)
    expect(() => ovenDryMoisturePct(90, 100)).toThrow(/mass before drying is 90 g; allowed 100/)
    expect(() => ovenDryMoisturePct(10, 0)).toThrow(/oven-dry mass/)
  })

  it('refuses what lies outside the table, and says what is allowed', () => {
    expect(() => equilibriumMoisturePct(-5, 0.5)).toThrow(/temperature is -5 °C; allowed -1\.11/)
    expect(() => equilibriumMoisturePct(20, 50)).toThrow(/relative humidity is 50/)
    expect(() => equilibriumMoisturePct(Number.NaN, 0.5)).toThrow(/NaN/)
    expect(() => humidityForMoisture(29, 20)).toThrow(/allowed 0 to 28\.8/)
    for (const tempC of MOISTURE_TEMP_RANGE_C) expect(equilibriumMoisturePct(tempC, 0.5)).toBeGreaterThan(0)
  })
})
