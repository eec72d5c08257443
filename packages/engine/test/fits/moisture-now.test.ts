import { describe, expect, it } from 'vitest'
import { readyWords } from '../../src/fits/drying-now.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { readReadings } from '../../src/piece/read.ts'
import { dayAfter, dayWords } from '../../src/quantity/day.ts'
import { equilibriumMoisturePct } from '../../src/timber/moisture.ts'
import { theOne, worked } from '../cases/asked.ts'
import type { Given } from '../findings/harness.ts'
import { PLAIN } from '../findings/harness.ts'

const with_ = (...readings: object[]): Given => ({
  piece: PLAIN,
  readings: readings.map((r, i) => ({ id: `reading-${100 + i}`, timber: 'left', ...r }))
})
const left = (given: Given) => worked(given).seasons[0]!
const AIR = equilibriumMoisturePct(20.5, 0.5)
const day = (n: number) => new Date(Date.UTC(2026, 0, 5 + n, 8)).toISOString().replace('.000Z', 'Z')

describe('moisture of a timber', () => {
  it('is the document’s, then the latest reading’s, whatever order they stand in', () => {
    expect(left(with_())).toMatchObject({ moisturePct: 8.5, source: 'document', corePct: 8.5, log: null })
    const later = { kind: 'moisture', moisture: 9.1, at: day(9) }
    const sooner = { kind: 'moisture', moisture: 12, at: day(1) }
    expect(left(with_(later, sooner))).toMatchObject({ moisturePct: 9.1, source: 'reading', how: 'measured' })
  })

  it('is corrected for cold timber, and says what the meter read', () => {
    const s = left(with_({ kind: 'moisture', moisture: 9, way: 'pins', temperature: 5, at: day(0) }))
    expect(s.moisturePct).toBeGreaterThan(10)
    expect(s.moisturePct).toBeLessThan(11)
    expect(s.how).toMatch(/read 9 at 5 °C/)
  })

  // 20 mm thick: 4.39 mm is the depth of the mean.
  it('is carried from the depth of the pins to mean and core', () => {
    const pins = (depth: number) =>
      left(with_({ kind: 'moisture', moisture: 12, way: 'pins', depth, at: day(0) }))
    const mean = pins(4.394)
    expect(mean.moisturePct).toBeCloseTo(12, 2)
    expect(mean.corePct).toBeCloseTo(AIR + ((12 - AIR) * Math.PI) / 2, 2)
    expect(pins(10).corePct).toBeCloseTo(12, 6)
    expect(pins(2).moisturePct).toBeGreaterThan(mean.moisturePct)
  })

  it('is surer on the setting of its own species than on another', () => {
    const width = (setting: string) => {
      const s = left(
        with_({ kind: 'moisture', moisture: 10, way: 'pins', temperature: 20, setting, at: day(0) })
      )
      return s.bandPct[1] - s.bandPct[0]
    }
    expect(width('white ash')).toBe(2)
    expect(width('douglas-fir-coast')).toBe(4)
  })

  // EN 13183-1: (wet − dry)/dry.
  it('comes from a sample dried in the oven', () => {
    const s = left(with_({ kind: 'sample', wet: 56, dry: 50, at: day(0) }))
    expect(s.moisturePct).toBeCloseTo(12, 9)
    expect(s.how).toBe('sample dried in the oven')
  })
})

describe('weekly weights', () => {
  // One exponential from 16 % to 9 %, 3 % a week of what is left.
  const kg = (n: number) => 3 * (1 + (9 + 7 * Math.exp(-0.028 * n)) / 100)
  const weights = (weeks: number) =>
    Array.from({ length: weeks }, (_, i) => ({
      kind: 'weight',
      mass: `${kg(7 * i).toFixed(4)} kg`,
      ...(i === 0 ? { moisture: 16 } : {}),
      at: day(7 * i)
    }))

  it('give moisture and the day it is ready, which the finding says', () => {
    const given = { ...with_(...weights(7)), shop: { castwright: 1 as const, scale: { resolution: 1 } } }
    const s = left(given)
    expect(s.source).toBe('log')
    expect(s.moisturePct).toBeCloseTo(9 + 7 * Math.exp(-0.028 * 42), 0)
    const { ready } = s.log!
    expect(ready!.from <= ready!.on && ready!.on <= ready!.to!).toBe(true)
    // The core comes to 11.05 % where 7·(π/2)·exp(−0.028·t) is 2.05: the 60th day.
    const days = (Date.parse(ready!.on) - Date.parse(day(0))) / 86_400_000
    expect(days).toBeGreaterThan(45)
    expect(days).toBeLessThan(75)
    expect(theOne(given, 'timber-wet').says).toContain(`by its weights ${readyWords(ready!)}`)
    // One date for one timber: what its own weights say stands before what diffusion would say.
    expect(theOne(given, 'timber-wet').says).not.toMatch(/its core takes/)
  })

  it('say nothing while they are too few, and why', () => {
    expect(left(with_(...weights(2)))).toMatchObject({
      source: 'document',
      log: { ready: null, fit: null, doubt: null, why: 'three weights at least make a forecast' }
    })
  })

  it('give way to a meter that was read later', () => {
    const s = left(with_(...weights(5), { kind: 'moisture', moisture: 10.2, at: day(40) }))
    expect(s).toMatchObject({ source: 'reading', moisturePct: 10.2 })
    expect(s.log!.ready).not.toBeNull()
  })
})

describe('days', () => {
  it('are counted in the zone of the reading', () => {
    expect(dayAfter('2026-12-31T23:30+01:00', 0)).toBe('2026-12-31')
    expect(dayAfter('2026-12-31T23:30Z', 0.1)).toBe('2027-01-01')
    expect(dayAfter('2028-02-28T12:00-05:00', 1)).toBe('2028-02-29')
    expect(dayWords('2027-02-12')).toBe('12 Feb 2027')
  })
})

describe('at the door', () => {
  const refused = (record: object) => {
    try {
      readReadings(`${JSON.stringify({ id: 'reading-1', at: day(0), ...record })}\n`, 'my.readings.jsonl')
    } catch (e) {
      if (e instanceof InputProblem) return e.message
    }
    return 'taken'
  }

  it('refuses moisture of 200 %, a sample that gains in the oven, and an unknown way', () => {
    expect(refused({ kind: 'moisture', timber: 'left', moisture: 200 })).toMatch(
      /my\.readings\.jsonl line 1 at moisture: found 200; allowed: .*0 to 60/
    )
    expect(refused({ kind: 'sample', timber: 'left', wet: 50, dry: 55 })).toMatch(
      /at dry: found 55; allowed: 16\.7 to 50 g: it loses water in the oven/
    )
    expect(refused({ kind: 'moisture', timber: 'left', moisture: 9, way: 'pin' })).toMatch(
      /at way: found "pin"/
    )
    expect(refused({ kind: 'weight', timber: 'left', mass: 0 })).toMatch(/at mass: found 0/)
  })
})
