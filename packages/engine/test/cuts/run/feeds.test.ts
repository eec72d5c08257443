import { describe, expect, it } from 'vitest'
import type { CutMaterial } from '../../../src/catalogue/chip-load.ts'
import { chipRangeMm } from '../../../src/cuts/run/chip.ts'
import { cuttersOf } from '../../../src/cuts/run/cutters.ts'
import type { CutOperation, FeedsAsk } from '../../../src/cuts/run/feeds.ts'
import { feedsFor } from '../../../src/cuts/run/feeds.ts'
import { machineOf } from '../../../src/cuts/run/machine.ts'
import { usualShop } from '../../../src/piece/read.ts'
import type { ShopMachine } from '../../../src/piece/shop-schema.ts'
import { chance } from '../../stack/random.ts'

const shop = usualShop()
const machine = machineOf(shop)
const { cutters } = cuttersOf(shop)
const byId = (id: string) => cutters.find(c => c.id === id)!
const ask = (id: string, material: CutMaterial, more: Partial<FeedsAsk> = {}) =>
  feedsFor({
    cutter: byId(id),
    met: [{ material, name: material }],
    operation: 'clear',
    machine,
    depthMm: 12,
    tolMm: 0.1,
    ...more
  })
const strong: ShopMachine = { ...machine, force: 2000, feed: 30_000, spindle: 20_000, plunge: 10_000 }

describe('feeds', () => {
  // Middle of the practice row of 6 mm in resin, 0.08 to 0.18, at its low turns, 12 000, two edges:
  // 12 000 × 2 × 0.13 = 3120; the machine goes 2500: a chip of 0.104.
  it('give the worked example of 6 mm in resin', () => {
    const run = ask('flat-end-mill 6', 'resin')
    expect(run.rpm).toBe(12_000)
    expect(run.feedMmMin).toBe(2500)
    expect(run.chipMm).toBeCloseTo(2500 / 24_000, 6)
    expect(run.depthMm).toBeCloseTo(0.375 * 6, 9)
    expect(run.rampDeg).toBe(2)
    expect(run.climb).toBe(true)
    expect(run.plungeMmMin).toBe(750)
    expect(run.why[0]).toMatch(/^feed: the machine goes 2500 mm\/min at most/)
    // kc(0.104) = 175·1.0417^−0.3 = 172.9; × 2.25 × 0.1042 = 40.5 N.
    expect(run.forceN).toBeCloseTo(40.5, 1)
    expect(run.faults).toEqual([])
  })

  it('name the frame first where it gives first, and go shallower', () => {
    const run = ask('flat-end-mill 12', 'resin')
    expect(run.why[0]).toMatch(/^push: the frame stands 60 N: .* instead of 4.5 deep$/)
    expect(run.forceN).toBeLessThanOrEqual(60.001)
    expect(run.depthMm).toBeLessThan(4.5)
    expect(ask('flat-end-mill 12', 'resin', { machine: strong }).depthMm).toBeCloseTo(4.5, 9)
  })

  it('take the most careful of what is met', () => {
    const both = ask('flat-end-mill 6', 'softwood', {
      met: [
        { material: 'softwood', name: 'spruce' },
        { material: 'resin', name: 'cast resin' }
      ]
    })
    const resin = ask('flat-end-mill 6', 'resin')
    expect(both.depthMm).toBe(resin.depthMm)
    expect(both.feedMmMin).toBe(resin.feedMmMin)
    expect(ask('flat-end-mill 6', 'softwood').depthMm).toBeGreaterThan(both.depthMm)
  })

  it('go lighter in the cold, thinner and half as deep', () => {
    const run = ask('flat-end-mill 3', 'resin', { light: true, machine: strong })
    const warm = ask('flat-end-mill 3', 'resin', { machine: strong })
    expect(run.depthMm).toBeCloseTo(warm.depthMm / 2, 9)
    expect(run.chipMm).toBeLessThan(warm.chipMm)
  })

  it('widen the way per tooth where the side cut is thin, and not past twice', () => {
    const whole = ask('flat-end-mill 6', 'hardwood', { machine: strong, tolMm: 1 })
    const last = ask('flat-end-mill 6', 'hardwood', { machine: strong, tolMm: 1, operation: 'finish' })
    // 0.3 of 6 mm: thinning 2·√(0.05·0.95) = 0.436, held at 0.5.
    expect(last.perToothMm).toBeCloseTo(2 * whole.perToothMm, 3)
  })

  it('say that a spindle turns too fast, that it rubs, that it pushes too hard', () => {
    const marked = { ...byId('flat-end-mill 6'), fastestRpm: 6000 }
    expect(ask('flat-end-mill 6', 'resin', { cutter: marked }).faults[0]).toMatchObject({
      kind: 'too fast',
      limit: 6000
    })
    // 24 000 turns at least and 300 mm/min at most: 0.006 mm a tooth.
    const rubbing = ask('flat-end-mill 6', 'hardwood', {
      machine: { ...machine, slowest: 24_000, feed: 300 }
    })
    expect(rubbing.faults.map(f => f.kind)).toEqual(['rubs'])
    expect(rubbing.faults[0]!.value).toBeCloseTo(300 / 48_000, 6)
    const weak = ask('flat-end-mill 12', 'resin', { machine: { ...machine, force: 5 } })
    expect(weak.faults.map(f => f.kind)).toContain('pushes')
  })

  it('pass no limit over 600 seeded cutters, materials and machines', () => {
    const operations: CutOperation[] = [
      'clear',
      'slot',
      'outline',
      'finish',
      'flatten',
      'v',
      'round',
      'drill'
    ]
    let limited = 0
    for (let seed = 1; seed <= 600; seed++) {
      const c = chance(seed)
      const slowest = c.span(1000, 12_000)
      const m: ShopMachine = {
        ...machine,
        slowest,
        fastest: slowest + c.span(1000, 20_000),
        feed: c.span(200, 6000),
        plunge: c.span(50, 2000),
        force: c.span(15, 300),
        spindle: c.span(100, 3000)
      }
      const cutter = { ...c.pick(cutters), fastestRpm: c.is(0.3) ? c.span(5000, 30_000) : null }
      const depthMm = c.span(0.3, 30)
      const operation = c.pick(operations)
      const run = feedsFor({
        cutter,
        met: [{ material: c.pick(['softwood', 'hardwood', 'dense', 'resin'] as const), name: 'it' }],
        operation,
        machine: m,
        depthMm,
        tolMm: c.span(0.02, 0.5),
        light: c.is(0.2)
      })
      const kinds = run.faults.map(f => f.kind)
      const at = `seed ${seed}: ${JSON.stringify(run)}`
      for (const x of [run.rpm, run.feedMmMin, run.plungeMmMin, run.rampMmMin, run.depthMm, run.stepMm])
        expect(x, at).toBeGreaterThan(0)
      expect(run.feedMmMin, at).toBeLessThanOrEqual(m.feed)
      expect(run.plungeMmMin, at).toBeLessThanOrEqual(m.plunge)
      expect(run.depthMm, at).toBeLessThanOrEqual(Math.max(depthMm, 0.01))
      expect(run.rpm, at).toBeGreaterThanOrEqual(Math.floor(m.slowest))
      expect(run.rpm, at).toBeLessThanOrEqual(m.fastest)
      if (cutter.fastestRpm !== null && !kinds.includes('too fast'))
        expect(run.rpm, at).toBeLessThanOrEqual(cutter.fastestRpm)
      if (!kinds.includes('pushes') && cutter.shape.form !== 'drill' && operation !== 'drill')
        expect(run.forceN, at).toBeLessThanOrEqual(m.force * 1.0001)
      expect(run.powerW, at).toBeLessThanOrEqual(0.7 * m.spindle * 1.0001)
      if (!kinds.includes('rubs')) expect(run.chipMm, at).toBeGreaterThanOrEqual(run.leastChipMm - 1e-9)
      if (/^(push|bending|power|feed|turns)/.test(run.why[0]!)) limited++
    }
    expect(limited).toBeGreaterThan(100)
  })
})

describe('chip range', () => {
  it('grows with the diameter and lies between its neighbours', () => {
    for (const m of ['softwood', 'hardwood', 'dense', 'board', 'resin'] as const) {
      let before: readonly [number, number] = [0, 0]
      for (let d = 0.4; d <= 14; d += 0.2) {
        const now = chipRangeMm(m, d)
        expect(now[0]).toBeGreaterThanOrEqual(before[0])
        expect(now[1]).toBeGreaterThanOrEqual(before[1])
        expect(now[1]).toBeGreaterThan(now[0])
        before = now
      }
    }
    // Halfway by the logarithm from 3 to 6 mm: √18; softwood √(0.05·0.15).
    expect(chipRangeMm('softwood', Math.sqrt(18))[0]).not.toBeCloseTo(Math.sqrt(0.05 * 0.15), 6)
    // From 4 to 6: √24, √(0.08·0.15).
    expect(chipRangeMm('softwood', Math.sqrt(24))[0]).toBeCloseTo(Math.sqrt(0.08 * 0.15), 12)
  })
})
