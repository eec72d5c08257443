import { describe, expect, it } from 'vitest'
import { heatEffect, judgePeak, judgePeakBand } from '../../src/resin/limits.ts'
import { poursNeeded } from '../../src/resin/pours.ts'

describe('the ladder of peak temperatures', () => {
  it('steps at 60, 100 and 150 °C, edges belonging to the milder side', () => {
    const steps = [25, 60, 60.1, 100, 100.1, 150, 150.1].map(c => judgePeak(c))
    expect(steps.map(s => s.severity)).toEqual(['note', 'note', 'caution', 'caution', 'stop', 'stop', 'stop'])
    expect(steps.map(s => s.runaway)).toEqual([false, false, false, false, false, false, true])
    expect(steps.map(s => s.limitC)).toEqual([null, null, 60, 60, 100, 100, 150])
  })

  it('is a caution, not a stop, when a band of 54-63 °C lies across 60', () => {
    expect(judgePeakBand(58, 63)).toMatchObject({ severity: 'caution', limitC: 60 })
    expect(judgePeakBand(54, 59)).toMatchObject({ severity: 'note' })
  })

  it('is a caution when only the band is past 100, a stop when the centre is or a runaway lies in the band', () => {
    expect(judgePeakBand(80, 120)).toMatchObject({ severity: 'caution', limitC: 100 })
    expect(judgePeakBand(101, 120)).toMatchObject({ severity: 'stop', runaway: false })
    expect(judgePeakBand(78, 160)).toMatchObject({ severity: 'stop', runaway: true })
  })

  it('names the worst of what happens on the way up', () => {
    expect(heatEffect(50)).toBeNull()
    expect(heatEffect(130)?.aboveC).toBe(120)
    expect(() => judgePeak(Number.NaN)).toThrow(/NaN/)
  })
})

describe('pours needed', () => {
  it('makes eight pours of 2 in at 1/4 in, also when 2 in is typed as 51 mm', () => {
    expect(poursNeeded(2 * 25.4, 25.4 / 4)).toBe(8)
    expect(poursNeeded(50.8, 6.35)).toBe(8)
    expect(poursNeeded(51, 6.4)).toBe(8)
    expect(poursNeeded(51, 6.35)).toBe(8)
  })

  it('is exact for every whole multiple in eighths of an inch, and one more just beyond', () => {
    for (let eighths = 1; eighths <= 16; eighths++)
      for (let count = 1; count <= 40; count++) {
        const most = (eighths * 25.4) / 8
        expect(poursNeeded(most * count, most), `${count} × ${eighths}/8 in`).toBe(count)
        expect(poursNeeded(most * count * 1.02 + most * 0.01, most)).toBeGreaterThan(count)
      }
  })

  it('needs one for the thinnest, and refuses a depth of nothing', () => {
    expect(poursNeeded(0.01, 50)).toBe(1)
    expect(() => poursNeeded(0, 50)).toThrow(/total depth in mm is 0/)
    expect(() => poursNeeded(10, 0)).toThrow(/greatest depth/)
  })
})
