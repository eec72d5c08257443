import { describe, expect, it } from 'vitest'
import { aboutTime, kilos, roughMass, roughTime, trueMinus } from '../../src/quantity/rough.ts'
import { seeded } from '../../src/sheets/seeded.ts'

describe('rough figures', () => {
  it('say a predicted time in two figures, and in steps of five minutes below three hours', () => {
    const cases: [number, string][] = [
      [3.2, '3 min'],
      [16, '15 min'],
      [143, '2 h 25'],
      [17 * 60 + 26, 'about 17 h'],
      [40 * 60 + 37, 'about 41 h'],
      [3 * 60 + 43, 'about 3.7 h'],
      [99.6 * 60, 'about 100 h'],
      [6 * 1440 + 300, 'about 6.2 d']
    ]
    for (const [min, words] of cases) expect(aboutTime(min)).toBe(words)
  })

  it('never say more time than there is, where something must be done within it', () => {
    expect(roughTime(19, 'down')).toBe('15 min')
    expect(roughTime(17 * 60 + 58, 'down')).toBe('17 h')
    expect(roughTime(25, 'down')).toBe('25 min')
    expect(aboutTime(29, 'down')).toBe('25 min')
    expect(aboutTime(223, 'down')).toBe('about 3.7 h')
  })

  it('say a mass in two figures, upwards never less than it is, and stay within a tenth of it', () => {
    expect(roughMass(1407)).toBe('1.4 kg')
    expect(roughMass(1407, 'up')).toBe('1.5 kg')
    expect(roughMass(1400, 'up')).toBe('1.4 kg')
    expect(roughMass(430)).toBe('430 g')
    const random = seeded(19)
    for (let k = 0; k < 200; k++) {
      const g = 10 ** (1 + 4 * random())
      const [, number, unit] = /^([\d.]+) (g|kg)$/.exec(roughMass(g, 'up'))!
      const said = Number(number) * (unit === 'kg' ? 1000 : 1)
      expect(said / g, `${g} g`).toBeGreaterThanOrEqual(1 - 1e-9)
      expect(said / g, `${g} g`).toBeLessThan(1.1)
    }
  })

  it('go over to kilograms at one, and carry a minus', () => {
    expect([kilos(999), kilos(1000), kilos(3906), kilos(12_340)]).toEqual([
      '999 g',
      '1 kg',
      '3.91 kg',
      '12.34 kg'
    ])
    expect(trueMinus('-1.2')).toBe('−1.2')
    expect(trueMinus('1-2')).toBe('1-2')
  })
})
