import { describe, expect, it } from 'vitest'
import { densityKgM3, specificGravityAt } from '../../src/timber/density.ts'
import {
  ALONG_OVER_ACROSS,
  conductivityWPerMK,
  diffusivityM2PerS,
  EXPANSION_ALONG_PER_K,
  heatCapacityKJPerKgK,
  thermalExpansionPerK
} from '../../src/timber/heat.ts'

describe('heat in timber', () => {
  // Wood Handbook ch. 4 calls 1.6e-7 m²/s typical (memory); walnut at 8 % worked by hand: 0.14/(611 × 1530) =
  // 1.5e-7.
  it('puts the diffusivity of walnut at 8 % by the hand-worked 1.5e-7 m²/s', () => {
    const k = conductivityWPerMK(specificGravityAt(0.51, 8), 8)
    const diffusivity = diffusivityM2PerS(k, densityKgM3(0.51, 8), heatCapacityKJPerKgK(293.15, 8))
    expect(diffusivity).toBeGreaterThan(1.45e-7)
    expect(diffusivity).toBeLessThan(1.65e-7)
  })

  it('conducts and holds more heat when heavier, damper or warmer', () => {
    expect(conductivityWPerMK(0.6, 8)).toBeGreaterThan(conductivityWPerMK(0.5, 8))
    expect(conductivityWPerMK(0.5, 12)).toBeGreaterThan(conductivityWPerMK(0.5, 8))
    expect(heatCapacityKJPerKgK(300, 12)).toBeGreaterThan(heatCapacityKJPerKgK(300, 8))
    expect(heatCapacityKJPerKgK(320, 8)).toBeGreaterThan(heatCapacityKJPerKgK(300, 8))
  })

  it('holds, past fibre saturation, the heat of the saturated timber and of the free water, without a step', () => {
    const at30 = heatCapacityKJPerKgK(300, 30)
    expect(heatCapacityKJPerKgK(300, 30.0001)).toBeCloseTo(at30, 4)
    // 1.3 kg of saturated timber and 0.7 kg of water are 2 kg at 100 %.
    expect(2 * heatCapacityKJPerKgK(300, 100)).toBeCloseTo(1.3 * at30 + 0.7 * 4.18, 12)
    expect(heatCapacityKJPerKgK(300, 200)).toBeLessThan(4.18)
  })

  // Cast epoxy expands by 50 to 80e-6 /K (memory): more than timber both ways.
  it('expands more around than across the rings, and far more across than along', () => {
    expect(thermalExpansionPerK(0.6, 'tangential')).toBeGreaterThan(thermalExpansionPerK(0.6, 'radial'))
    expect(thermalExpansionPerK(0.3, 'radial')).toBeGreaterThan(4 * EXPANSION_ALONG_PER_K.high)
    expect(thermalExpansionPerK(0.6, 'tangential')).toBeLessThan(50e-6)
    expect(ALONG_OVER_ACROSS.central).toBeGreaterThan(ALONG_OVER_ACROSS.low)
  })

  it('refuses what lies outside the fit', () => {
    expect(() => heatCapacityKJPerKgK(20, 8)).toThrow(/temperature is 20 K; allowed 263\.15/)
    expect(() => conductivityWPerMK(600, 8)).toThrow(/specific gravity is 600/)
    expect(() => diffusivityM2PerS(0.14, 0, 1.5)).toThrow(/density/)
    expect(() => thermalExpansionPerK(Number.NaN, 'radial')).toThrow(/NaN/)
  })
})
