import { describe, expect, it } from 'vitest'
import { type Batches, type BatchRequest, splitBatches } from '../../src/resin/batch.ts'
import { cupHistory } from '../../src/resin/cup.ts'
import { CLASSES } from './sets.ts'

const BUCKETS = [
  { diameterMm: 80, capacityMl: 500 },
  { diameterMm: 140, capacityMl: 2500 },
  { diameterMm: 250, capacityMl: 10_000 }
]
const base: BatchRequest = {
  totalG: 2000,
  mix: { massA: 100, massB: 44, densityAGMl: 1.14, densityBGMl: 0.98 },
  vessels: BUCKETS,
  scaleResolutionG: 1,
  resin: CLASSES.medium,
  roomC: 22,
  mixMin: 7,
  pourMinPerKg: 4
}
const split = (change: Partial<BatchRequest>): Batches => {
  const plan = splitBatches({ ...base, ...change })
  if (!plan.possible) throw new Error(plan.says)
  return plan
}

describe('splitting into batches', () => {
  it('adds up to the total, keeps A to B, and counts the tint inside', () => {
    for (const totalG of [150, 999, 2000, 17_000])
      for (const tint of [[], [{ name: 'white', massFraction: 0.03 }], pearls()]) {
        const plan = split({ totalG, tint })
        const tinted = plan.tintG.reduce((a, b) => a + b, 0)
        const batch = plan.partAG + plan.partBG + tinted
        expect(batch * plan.count).toBeCloseTo(totalG, 6)
        expect(plan.partAG / plan.partBG).toBeCloseTo(100 / 44, 10)
        expect(plan.partAMl * 1.14).toBeCloseTo(plan.partAG, 9)
        expect(plan.partBMl * 0.98).toBeCloseTo(plan.partBG, 9)
        expect(tinted / plan.batchG).toBeCloseTo(
          tint.reduce((a, p) => a + p.massFraction, 0),
          12
        )
      }
  })

  it('takes the fewest that are out in time: one fewer would stand too long', () => {
    const request: BatchRequest = { ...base, totalG: 20_000, resin: CLASSES.thin }
    const plan = split(request)
    expect(plan.count).toBeGreaterThan(1)
    expect(plan.standingMin).toBeLessThanOrEqual(plan.allowedMin!)
    const fewer = request.totalG / (plan.count - 1)
    for (const vessel of BUCKETS) {
      if (fewer / 1.08 > vessel.capacityMl) continue
      const cup = cupHistory({ resin: CLASSES.thin, massG: fewer, vessel, roomC: 22, effort: 'quick' })
      expect(7 + (4 * fewer) / 1000).toBeGreaterThan(cup.minutesOut!)
    }
  })

  it('needs more batches when the room is warmer, the hands slower, or the buckets smaller', () => {
    const thin = { totalG: 12_000, resin: CLASSES.thin }
    const { count } = split(thin)
    expect(split({ ...thin, roomC: 25 }).count).toBeGreaterThan(count)
    expect(split({ ...thin, pourMinPerKg: 8 }).count).toBeGreaterThan(count)
    expect(split({ ...thin, vessels: BUCKETS.slice(0, 1) }).count).toBeGreaterThan(count)
  })

  it('does not add a batch by rounding when the total fills its vessels exactly', () => {
    const mix = { massA: 1, massB: 1, densityAGMl: 1, densityBGMl: 1 }
    const vessels = [{ diameterMm: 100, capacityMl: 400 }]
    for (let count = 1; count <= 30; count++)
      expect(split({ mix, vessels, resin: null, totalG: 300 * count }).count, `${count} × 300 g`).toBe(count)
    expect(split({ mix, vessels, resin: null, totalG: 300 * 7 + 1 }).count).toBe(8)
  })

  it('refuses 8 g on a scale of 1 g steps and names the least batch', () => {
    const plan = splitBatches({ ...base, totalG: 8 })
    expect(plan).toMatchObject({ possible: false, why: 'scale' })
    expect(plan.leastBatchG).toBeCloseTo((10 * 144) / 44, 8)
    expect(split({ totalG: 8, scaleResolutionG: 0.1 }).count).toBe(1)
  })

  it('refuses when no vessel holds the least that can be weighed', () => {
    const plan = splitBatches({ ...base, vessels: [{ diameterMm: 30, capacityMl: 30 }] })
    expect(plan).toMatchObject({ possible: false, why: 'vessel' })
  })

  it('refuses when even the least batch sets before it is out', () => {
    const plan = splitBatches({ ...base, resin: CLASSES.thin, roomC: 30, mixMin: 25 })
    expect(plan).toMatchObject({ possible: false, why: 'heat' })
    if (!plan.possible) expect(plan.says).toMatch(/slower resin, a cooler room/)
  })

  it('does not let 4 kg of a fast resin stand for half an hour in a bucket', () => {
    const slow = { resin: CLASSES.thin, totalG: 4200, pourMinPerKg: 6 }
    const plan = split(slow)
    expect(plan.count).toBeGreaterThan(1)
    expect(plan.allowedMin!).toBeLessThan(25)
  })

  it('judges a family without a model by vessel and scale alone', () => {
    const plan = split({ resin: null, totalG: 20_000 })
    expect(plan).toMatchObject({ allowedMin: null, cup: null, count: 3 })
  })

  it('leaves a few per cent in the cups, more of a thicker resin', () => {
    const [deep, thin] = [CLASSES.deep, CLASSES.thin].map(resin => split({ resin, totalG: 300 }).leftoverPct)
    expect(deep).toBeGreaterThan(0.5)
    expect(thin!).toBeGreaterThan(deep!)
    expect(thin!).toBeLessThan(6)
  })

  it('refuses what has no meaning', () => {
    expect(() => splitBatches({ ...base, vessels: [] })).toThrow(/0 vessels/)
    expect(() => splitBatches({ ...base, totalG: 0 })).toThrow(/total mass in g is 0/)
    expect(() => splitBatches({ ...base, tint: [{ name: 'white', massFraction: 2 }] })).toThrow(/white is 2/)
  })
})

function pearls(): { name: string; massFraction: number }[] {
  return [
    { name: 'pearl', massFraction: 0.02 },
    { name: 'dye', massFraction: 0.0005 }
  ]
}
