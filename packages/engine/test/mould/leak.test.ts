import { describe, expect, it } from 'vitest'
import {
  leakRateMlPerH,
  resinLeakMlPerH,
  runningTotal,
  standingHeightMm,
  waterTestMassG
} from '../../src/mould/leak.ts'

describe('water test', () => {
  it('takes 240 g a millimetre over 600 × 400 mm', () => {
    expect(waterTestMassG(600 * 400, 1)).toBeCloseTo(239.57, 2)
    expect(waterTestMassG(600 * 400, 12)).toBeCloseTo(12 * 239.568, 6)
  })

  it('turns a fallen level into a leak, and that into the far smaller one of resin', () => {
    expect(leakRateMlPerH(600 * 400, 1, 2)).toBeCloseTo(120, 12)
    // Poiseuille: density over viscosity; 1100 kg/m³ and 0.35 Pa·s against water.
    expect(resinLeakMlPerH(120, 0.35, 1100)).toBeCloseTo((120 * (1100 / 998.2)) / 350, 9)
    expect(resinLeakMlPerH(0, 0.35, 1100)).toBe(0)
  })
})

describe('running total', () => {
  // Maker's report: a hairline gap at one edge took three batches, 18 US fl oz in all, and none came out.
  it('that passes the estimate by more than half says stop', () => {
    const fluidOunceMl = (231 * 25.4 ** 3) / 1000 / 128
    const batch = 6 * fluidOunceMl
    // The visible gap: 1.6 mm × 12 mm × 600 mm.
    const expected = (1.6 * 12 * 600) / 1000
    const total = runningTotal([batch, batch, batch], expected)
    expect(total.pouredMl).toBeCloseTo(532.3, 1)
    expect(total.stop).toBe(true)
  })

  it('stops past the limit and not at it', () => {
    expect(runningTotal([600, 900], 1000)).toMatchObject({ pouredMl: 1500, stop: false })
    expect(runningTotal([600, 900, 1], 1000).stop).toBe(true)
    expect(runningTotal([400], 1000).excess).toBeCloseTo(-0.6, 12)
    expect(runningTotal([], 1000)).toMatchObject({ pouredMl: 0, excess: -1, stop: false })
    expect(runningTotal([1200], 1000, 0.1).stop).toBe(true)
  })
})

describe('a supposed cause', () => {
  // 251 ml missing, blamed on a timber of 19 000 mm² already set in hard resin.
  it('is tested by the height that the missing volume would stand', () => {
    expect(standingHeightMm(251, 19_000)).toBeCloseTo(13.2, 1)
  })
})

describe('at the door', () => {
  it('refuses what cannot be', () => {
    expect(() => waterTestMassG(0, 1)).toThrow(/free area is 0/)
    expect(() => runningTotal([100], 0)).toThrow(/expected volume is 0 ml/)
    expect(() => runningTotal([Number.NaN], 100)).toThrow(/NaN/)
    expect(() => leakRateMlPerH(1000, 1, 0)).toThrow(/time is 0 h/)
  })
})
