import { describe, expect, it } from 'vitest'
import {
  type CharringKind,
  charDepthMm,
  charringRateMmPerMin,
  DECORATIVE_CHAR_MM,
  decorativeCharMm,
  weakLayerMm
} from '../../src/timber/char.ts'

describe('charring', () => {
  it('is slower in dense hardwood, and falls straight from 290 to 450 kg/m³', () => {
    expect(charringRateMmPerMin('hardwood', 290)).toBe(0.65)
    expect(charringRateMmPerMin('hardwood', 370)).toBeCloseTo(0.575, 12)
    expect(charringRateMmPerMin('hardwood', 450)).toBe(0.5)
    expect(charringRateMmPerMin('hardwood', 900)).toBe(0.5)
    expect(charringRateMmPerMin('hardwood', 370, 20, 'notional')).toBeCloseTo(0.625, 12)
  })

  it('of panels falls with density and rises when thinner than 20 mm', () => {
    expect(charringRateMmPerMin('plywood', 450, 20)).toBe(1)
    expect(charringRateMmPerMin('plywood', 450, 5)).toBeCloseTo(2, 12)
    expect(charringRateMmPerMin('board', 600, 25)).toBeCloseTo(0.9 * Math.sqrt(0.75), 12)
  })

  it('takes the layer without strength in proportion up to 20 minutes', () => {
    expect(weakLayerMm(0)).toBe(0)
    expect(weakLayerMm(10)).toBe(3.5)
    expect(weakLayerMm(60)).toBe(7)
  })

  it('by a torch stays within furnace rate and practice, and is nothing without a flame', () => {
    expect(decorativeCharMm(0, 500, 'softwood')).toEqual({ lowMm: 0, highMm: 0 })
    const short = decorativeCharMm(30, 500, 'softwood')
    expect(short.lowMm).toBeCloseTo(0.325, 12)
    expect(short.highMm).toBe(DECORATIVE_CHAR_MM.high)
    expect(decorativeCharMm(600, 500, 'softwood').highMm).toBeCloseTo(6.5, 12)
  })

  it('refuses densities and rates the table does not have', () => {
    expect(() => charringRateMmPerMin('softwood', 200)).toThrow(
      /density of softwood is 200 kg\/m³; allowed 290/
    )
    expect(() => charringRateMmPerMin('board', 600, 20, 'notional')).toThrow(/no notional/)
    expect(() => charDepthMm(0.65, Number.NaN)).toThrow(/NaN/)
    const kinds: CharringKind[] = ['glulam', 'laminated veneer', 'panelling']
    for (const kind of kinds) expect(charringRateMmPerMin(kind, 500)).toBeGreaterThan(0.5)
  })
})
