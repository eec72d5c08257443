import { describe, expect, it } from 'vitest'
import { bodyHistory, cupHistory, H_CUP } from '../../src/resin/cup.ts'
import { cureRate } from '../../src/resin/cure.ts'
import { clingingMl, fillOf } from '../../src/resin/vessel.ts'
import { rows } from './classes.evidence.ts'
import { integrate } from './odex.ts'
import { checkRows } from './rows.ts'
import { altered, CLASSES } from './sets.ts'

checkRows(rows)

const CUP = { diameterMm: 60, capacityMl: 250 }
const hundred = { resin: CLASSES.medium, massG: 100, vessel: CUP, roomC: 22 }

describe('a vessel', () => {
  it('is filled to volume over base, and its surface counts top and base', () => {
    const fill = fillOf({ diameterMm: 100, capacityMl: 1000 }, Math.PI * 5 ** 2 * 10)
    expect(fill.heightMm).toBeCloseTo(100, 10)
    expect(fill.areaMm2).toBeCloseTo(Math.PI * 100 * 100 + 2 * Math.PI * 50 ** 2, 6)
    // a cylinder as high as wide has V/A = D/6, the sphere that it holds has R/3 = D/6 as well
    expect(fill.volumePerAreaMm).toBeCloseTo(100 / 6, 10)
    expect(fill.sphereRadiusMm).toBeCloseTo(50, 10)
  })

  it('refuses more than it holds', () => {
    expect(() => fillOf(CUP, 251)).toThrow(/volume in the vessel in ml is 251; allowed .* to 250/)
  })

  it('keeps back a film that thickens with the root of viscosity', () => {
    const [thin, thick] = [0.7, 2.8].map(eta => clingingMl(CUP, 91, eta, 1100, 60))
    expect(thick! / thin!).toBeCloseTo(2, 10)
    // by hand: height 32.2 mm, film 2/3·√(0.7·0.0322/(1100·9.80665·60)) = 0.124 mm over 89 cm² is 1.1 ml
    expect(thin).toBeCloseTo(1.1, 1)
  })
})

describe('a batch in its cup', () => {
  it('as one temperature follows the heat balance of its own surface, against an independent integrator', () => {
    for (const [resin, massG] of [
      [CLASSES.medium, 100],
      [CLASSES.deep, 200]
    ] as const) {
      const cup = cupHistory({ ...hundred, resin, massG, startC: 26, mode: 'lumped', untilH: 1.5 })
      const areaM2 = fillOf(CUP, massG / 1.1).areaMm2 * 1e-6
      const lossPerK = (H_CUP * areaM2) / ((massG / 1000) * 1800)
      const [T, a] = integrate(
        (_, [temp, alpha]) => {
          const rate = cureRate(resin.kinetics, temp! + 273.15, alpha!)
          return [(resin.kinetics.heatJPerKg / 1800) * rate - lossPerK * (temp! - 22), rate]
        },
        [26, 0],
        1.5 * 3600
      ) as [number, number]
      expect(Math.abs(cup.history.meanC.at(-1)! - T)).toBeLessThan(0.3)
      expect(Math.abs(cup.history.meanConversion.at(-1)! - a)).toBeLessThan(2e-3)
    }
  })

  it('lasts longer when cooler, smaller, or shallower, and shorter out of a warm bath', () => {
    const base = cupHistory(hundred)
    const longer = [
      cupHistory({ ...hundred, roomC: 18 }),
      cupHistory({ ...hundred, massG: 50 }),
      cupHistory({ ...hundred, vessel: { diameterMm: 150, capacityMl: 1000 } })
    ]
    for (const cup of longer) {
      expect(cup.gelMin!).toBeGreaterThan(base.gelMin!)
      expect(cup.minutesOut!).toBeGreaterThan(base.minutesOut!)
      expect(cup.peakC).toBeLessThan(base.peakC)
    }
    const warm = cupHistory({ ...hundred, startC: 30 })
    expect(warm.minutesOut!).toBeLessThan(base.minutesOut!)
  })

  it('gels first in the core: the sphere before the lumped mass, and hotter', () => {
    for (const resin of Object.values(CLASSES)) {
      const sphere = cupHistory({ ...hundred, resin })
      const lumped = cupHistory({ ...hundred, resin, mode: 'lumped' })
      expect(sphere.gelMin!).toBeLessThan(lumped.gelMin!)
      expect(sphere.peakC).toBeGreaterThan(lumped.peakC)
    }
  })

  it('tells one temperature from many: both agree when the Biot number is small', () => {
    const resin = altered(CLASSES.medium, { kLiquidWmK: 20, kSlopeWmK: 0 })
    const sphere = cupHistory({ ...hundred, resin })
    const lumped = cupHistory({ ...hundred, resin, mode: 'lumped' })
    expect(sphere.lumpedApplies).toBe(true)
    expect(cupHistory(hundred).lumpedApplies).toBe(false)
    expect(sphere.peakC).toBeCloseTo(lumped.peakC, 0)
    expect(sphere.gelMin! / lumped.gelMin!).toBeCloseTo(1, 2)
  })

  it('chooses one temperature for a thin body and the sphere for a cup, and closes its heat balance in both', () => {
    for (const resin of Object.values(CLASSES)) {
      const thin = bodyHistory({ resin, volumePerAreaMm: 1.5, roomC: 22 })
      const cup = bodyHistory({ resin, volumePerAreaMm: 12, roomC: 22 })
      expect([thin.mode, cup.mode]).toEqual(['lumped', 'sphere'])
      expect(thin.biot).toBeLessThan(0.1)
      // The core of a ball is over its mean by about Bi(R)/3·(1 − 3/5), about a tenth of the rise here, and reacts faster for it; one temperature knows no core.
      const other = bodyHistory({ resin, volumePerAreaMm: 1.5, roomC: 22, mode: 'sphere' })
      expect(other.peakC - thin.peakC).toBeGreaterThanOrEqual(-0.01)
      expect(other.peakC - thin.peakC).toBeLessThan(0.16 * (other.peakC - 22))
      for (const run of [thin, cup, other]) expect(Math.abs(run.energyClosure)).toBeLessThan(1e-3)
    }
  })

  it('must be out by the earliest of thick, hot and gelled, and says which', () => {
    const small = cupHistory({ ...hundred, resin: CLASSES.deep })
    expect(small).toMatchObject({ because: 'thick', hotMin: null })
    expect(small.minutesOut).toBe(small.doubleMin)
    const bucket = cupHistory({
      ...hundred,
      massG: 2000,
      vessel: { diameterMm: 150, capacityMl: 3000 },
      startC: 55
    })
    expect(bucket.because).toBe('hot')
    expect(bucket.minutesOut).toBe(bucket.hotMin)
    expect(bucket.minutesOut!).toBeLessThan(bucket.doubleMin!)
  })

  it('has a Semenov number that grows with the bucket and crosses 1/e where the mass runs away', () => {
    const mild = cupHistory({ ...hundred, resin: CLASSES.deep })
    const wild = cupHistory({ ...hundred, resin: CLASSES.thin, roomC: 25 })
    expect(mild.semenov).toBeLessThan(1 / Math.E)
    expect(mild.peakC).toBeLessThan(60)
    expect(wild.semenov).toBeGreaterThan(1 / Math.E)
    expect(wild.peakC).toBeGreaterThan(150)
  })

  it('says null where nothing comes within the run', () => {
    const cup = bodyHistory({ resin: CLASSES.deep, volumePerAreaMm: 5, roomC: 15, untilH: 1 })
    expect(cup).toMatchObject({
      gelMin: null,
      doubleMin: null,
      hotMin: null,
      minutesOut: null,
      because: null
    })
  })
})
