import { describe, expect, it } from 'vitest'
import { type Asked, trial } from './cup-trial.ts'
import { once } from './rows.ts'

/**
 * Bands against a world that shares no code with the engine (cup-world.ts): other exponents, energies and k1/k2,
 * a cup that is a cylinder as often as a ball, a thermometer that lags by 20 to 60 s and whose errors hang
 * together, a clock started early or late, tests that begin late, have a gap or end before the peak. From each
 * cup a larger cup and a slab of another batch are predicted, then looked at.
 *
 * Seeds from 70 001 on were not looked at while priors and method were settled (those were 1 to 20, 1000 to 1199 and 50 001 to 50 200).
 */
const FIRST_SEED = 70_001
const COUNT = Number(process.env['CASTWRIGHT_CUPS'] ?? 16)

const WHAT = [
  'peak of a larger cup',
  'gel of a larger cup',
  'peak of a slab',
  'gel of a slab',
  'strings of a slab'
] as const

const trials = once(() => Array.from({ length: COUNT }, (_, i) => trial(FIRST_SEED + i)))
const asked = (what: string): Asked[] => trials().map(t => t.asked.find(a => a.what === what)!)
const held = (what: string): number => asked(what).filter(a => a.true >= a.low && a.true <= a.high).length

describe(`${COUNT} seeded cup tests`, { timeout: 300_000 }, () => {
  it.each(WHAT)('nine in ten bands on the %s hold', what => {
    const share = held(what) / COUNT
    // 85 to 95 % of 200; of fewer, three standard deviations of a count about 90 % more.
    const slack = COUNT >= 200 ? 0 : 3 * Math.sqrt(0.09 / COUNT)
    expect(share, `${held(what)} of ${COUNT}`).toBeGreaterThanOrEqual(0.85 - slack)
    expect(share, `${held(what)} of ${COUNT}`).toBeLessThanOrEqual(0.95 + slack)
  })

  it('all bands together hold in 85 to 95 %', () => {
    const share = WHAT.reduce((sum, what) => sum + held(what), 0) / (COUNT * WHAT.length)
    expect(share).toBeGreaterThanOrEqual(COUNT >= 200 ? 0.85 : 0.8)
    expect(share).toBeLessThanOrEqual(COUNT >= 200 ? 0.95 : 0.98)
  })

  it('the bands say something: they are narrower than what is believed without the test', () => {
    // A speed between 0.42 and 2.36 times the class: 1.72 wide in the logarithm of a time.
    const width = (what: string): number =>
      asked(what)
        .map(a => a.high - a.low)
        .sort((a, b) => a - b)[Math.floor(COUNT / 2)]!
    expect(width('gel of a larger cup')).toBeLessThan(0.5)
    expect(width('gel of a slab')).toBeLessThan(0.8)
  })
})
