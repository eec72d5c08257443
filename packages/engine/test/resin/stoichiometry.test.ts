import { describe, expect, it } from 'vitest'
import {
  blendEew,
  leastBatchG,
  massRatio,
  mixFromVolumes,
  offRatio,
  ratioErrorFromScale,
  volumeRatio
} from '../../src/resin/stoichiometry.ts'
import { checkRows } from './rows.ts'
import { rows } from './stoichiometry.evidence.ts'

checkRows(rows)

describe('stoichiometry', () => {
  it('undoes the volume ratio with the mass ratio', () => {
    for (const [ratio, a, b] of [
      [2.44, 1.14, 0.98],
      [1, 1.16, 0.95],
      [7.79, 1.1, 1.2]
    ] as const)
      expect(massRatio(volumeRatio(ratio, a, b), a, b)).toBeCloseTo(ratio, 12)
  })

  it('makes 100 : 83 by mass of 1 : 1 by volume', () => {
    const mix = mixFromVolumes(1, 1, 1.2, 1.2 * 0.83)
    expect((100 * mix.massB) / mix.massA).toBeCloseTo(83, 10)
  })

  it('caps the conversion of the group in excess, on either side of the ratio', () => {
    expect(offRatio(0)).toMatchObject({ epoxideCap: 1, amineCap: 1, verdict: 'harmless' })
    expect(offRatio(0.2)).toMatchObject({ epoxideCap: 1, amineCap: 1 / 1.2 })
    expect(offRatio(-0.2)).toMatchObject({ epoxideCap: 0.8, amineCap: 1 })
  })

  it('grades the error by the bands of practice, edges belonging to the milder side', () => {
    const verdicts = [0.05, -0.05, 0.06, 0.1, -0.11, 0.2, 0.21, -0.5].map(e => offRatio(e).verdict)
    expect(verdicts).toEqual([
      'harmless',
      'harmless',
      'noticeable',
      'noticeable',
      'soft',
      'soft',
      'tacky',
      'tacky'
    ])
  })

  it('weighs the least batch to exactly the error asked for', () => {
    const mix = { massA: 100, massB: 44, densityAGMl: 1.14, densityBGMl: 0.98 }
    for (const step of [0.1, 1, 5]) {
      const least = leastBatchG(mix, step, 0.05)
      expect(ratioErrorFromScale((least * 44) / 144, step)).toBeCloseTo(0.05, 12)
    }
  })

  it('takes the smaller part for the least batch even when that is part A', () => {
    const mix = { massA: 1, massB: 2, densityAGMl: 1, densityBGMl: 1 }
    expect(leastBatchG(mix, 1, 0.05)).toBeCloseTo(30, 10)
  })

  it('refuses what has no meaning', () => {
    expect(() => blendEew([{ mass: 1, eew: null }])).toThrow(/0 equivalents/)
    expect(() => ratioErrorFromScale(0, 1)).toThrow(/mass of hardener in g is 0/)
    expect(() => offRatio(Number.NaN)).toThrow(/NaN/)
  })
})
