import { describe, expect, it } from 'vitest'
import { trial } from './cup-trial.ts'

/**
 * Bands against a world that shares no code with the engine (cup-world.ts): other exponents, energies and k1/k2,
 * a cup that is a cylinder as often as a ball, a thermometer that lags by 20 to 60 s and whose errors hang
 * together, a clock started early or late, tests that begin late, have a gap or end before the peak. From each
 * cup a larger cup and a slab are predicted, then looked at.
 *
 * Seeds from 50 001 on were not looked at while priors and method were settled (those were 1 to 20 and 1000 to 1199).
 */
const FIRST_SEED = 50_001
const COUNT = Number(process.env['CASTWRIGHT_CUPS'] ?? 24)

describe(`${COUNT} seeded cup tests`, () => {
  const trials = Array.from({ length: COUNT }, (_, i) => trial(FIRST_SEED + i))
  const what = trials[0]!.asked.map(a => a.what)
  const held = what.map(
    (_, q) =>
      trials.filter(t => t.asked[q]!.true >= t.asked[q]!.low && t.asked[q]!.true <= t.asked[q]!.high).length
  )

  it.each(what.map((w, q) => [w, q] as const))(
    'the 90 % band on the %s holds as often as it says',
    (_, q) => {
      const share = held[q]! / COUNT
      // 85 to 95 % of 200; of fewer, three standard deviations of a count about 90 % more.
      const slack = COUNT >= 200 ? 0 : 3 * Math.sqrt(0.09 / COUNT)
      expect(share, `${held[q]} of ${COUNT}`).toBeGreaterThanOrEqual(0.85 - slack)
      expect(share, `${held[q]} of ${COUNT}`).toBeLessThanOrEqual(0.95 + slack)
    }
  )

  it('all bands together hold in 85 to 95 %', () => {
    const share = held.reduce((a, b) => a + b, 0) / (COUNT * what.length)
    expect(share).toBeGreaterThanOrEqual(0.85)
    expect(share).toBeLessThanOrEqual(COUNT >= 200 ? 0.95 : 0.98)
  })

  it('the bands say something: they are narrower than what is believed without the test', () => {
    // A speed between 0.42 and 2.36 times the class: 1.72 wide in the logarithm of a time.
    const width = (q: number): number =>
      trials.map(t => t.asked[q]!.high - t.asked[q]!.low).sort((a, b) => a - b)[Math.floor(COUNT / 2)]!
    expect(width(what.indexOf('gel of a larger cup'))).toBeLessThan(0.5)
    expect(width(what.indexOf('gel of a slab'))).toBeLessThan(0.8)
  })
}, 120_000)
