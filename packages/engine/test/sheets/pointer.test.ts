import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/findings/finding.ts'
import { lengthsIn } from '../../src/piece/lengths.ts'
import { METRIC } from '../../src/quantity/shown-units.ts'
import type { Region } from '../../src/shape/region.ts'
import { corePartsAt } from '../../src/sheets/core-model.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { crossing, findingBlock } from '../../src/sheets/page-finding.ts'
import { entryName } from '../../src/sheets/page-place.ts'
import { sheetPart } from '../../src/sheets/page-sheet.ts'
import { pointerTo, wellInside } from '../../src/sheets/pointer.ts'
import { seeded } from '../../src/sheets/seeded.ts'
import { sheetViews } from '../../src/sheets/sheet-views.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PANEL, planOf, TABLE } from './pieces.ts'

/** A disc of many sides. */
const DISC: Region = {
  rings: [
    Float64Array.from(
      Array.from({ length: 360 }, (_, k) => [
        100 * Math.cos((k * Math.PI) / 180),
        100 * Math.sin((k * Math.PI) / 180)
      ]).flat()
    )
  ]
}

describe('the way of the pointer', () => {
  it('ends inside the outline by a hair, on the straight way, as far as it goes', () => {
    const random = seeded(7)
    for (let k = 0; k < 200; k++) {
      const angle = 2 * Math.PI * random()
      const far = 400 * random()
      const to: [number, number] = [far * Math.cos(angle), far * Math.sin(angle)]
      const [x, y] = pointerTo(DISC, [0, 0], to)
      const where = `to ${to[0]}, ${to[1]}: ${x}, ${y}`
      expect(wellInside(DISC, x, y), where).toBe(true)
      // A circle of 100: the way out of it is as long as it is.
      expect(Math.abs(Math.hypot(x, y) - Math.min(far, 99.8)), where).toBeLessThan(0.3)
      expect(Math.abs(Math.sin(angle) * x - Math.cos(angle) * y), where).toBeLessThan(0.1)
    }
  })

  it('begins where the piece has something to show, though its middle is a hole', () => {
    const { plan, work } = planOf({
      ...TABLE,
      cuts: [{ id: 'bore', kind: 'bore', face: 'front', shape: { circle: 60, at: [0, 0] }, through: true }]
    })
    const model = coreModelOf(work)
    const { data } = sheetPart(plan, work, model, sheetViews(work, model))
    expect(corePartsAt(model, 0, 0).some(p => p.material !== null)).toBe(false)
    expect(corePartsAt(model, ...data.pointer).some(p => p.material !== null)).toBe(true)
    expect(Math.hypot(...data.pointer)).toBeLessThan(70)
  })
})

const FINDING: Finding = {
  id: 'pour-heat',
  severity: 'caution',
  at: '/pours/0',
  says: 'it may be hot.',
  value: 43,
  unit: '°C',
  band: [31, 66.4],
  limit: 60,
  basis: 'reckoned',
  settledBy: null,
  fix: null,
  fixSays: null,
  cases: []
}
const words = (f: Finding, units = METRIC) =>
  findingBlock({ number: 1, finding: f, despite: null, next: null }, lengthsIn(units))
    .text.replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')

describe('the figures of a finding', () => {
  it('lead with the end of the band that crosses the limit, where the value itself does not', () => {
    expect(words(FINDING)).toContain('May reach 66.4 °C Limit 60 °C Likeliest 43')
    expect(words({ ...FINDING, value: 63 })).toContain('Value 63 °C Limit 60 °C Between 31 and 66.4')
    expect(crossing({ ...FINDING, band: [31, 58] })).toBeNull()
    expect(crossing({ ...FINDING, id: 'cold-room', value: 14, band: [10, 18], limit: 12 })).toBe(10)
    expect(crossing({ ...FINDING, id: 'cold-room', value: 11, band: [8, 14], limit: 12 })).toBeNull()
  })

  it('quote no temperature past the runaway', () => {
    expect(words({ ...FINDING, value: 212, band: [140, 340] })).toContain(
      'Value over 150 °C Limit 60 °C Between 140 and over 150'
    )
    expect(words({ ...FINDING, unit: 'g', value: 212, band: null })).toContain('Value 212 g')
  })

  // 60 °C are 140 °F, 150 °C are 302 °F: exact (SI brochure). 25.4 mm an inch, 28.349523125 g an ounce: exact (NIST SP 811).
  it('stand in the units asked for: value, limit and band alike', () => {
    const units = { length: 'in', temperature: '°F', mass: 'oz' } as const
    expect(words(FINDING, units)).toContain('May reach 152 °F Limit 140 °F Likeliest 109')
    expect(words({ ...FINDING, value: 212, band: [140, 340] }, units)).toContain(
      'Value over 302 °F Limit 140 °F Between 284 and over 302'
    )
    const length: Finding = {
      ...FINDING,
      id: 'hardware-fit',
      unit: 'mm',
      value: -12.7,
      limit: 0,
      band: [-25.4, 2.54],
      says: 'it lacks 12.7 mm.'
    }
    expect(words(length, units)).toContain('Value −0.5 in Limit 0 in Between −1 and 0.1')
    expect(words(length, units)).toContain('It lacks 12.7 mm (0.5 in).')
    const fractions = { ...units, length: 'in fraction' } as const
    expect(words({ ...length, value: 14.5 }, fractions)).toContain('Value 37/64 (0.571) in')
    expect(words({ ...FINDING, unit: 'g', value: 283.49523125, band: null, limit: null }, units)).toContain(
      'Value 10 oz'
    )
    // Time and share have one unit everywhere.
    expect(words({ ...FINDING, unit: 'min', value: 12, band: null, limit: 9 }, units)).toContain(
      'Value 12 min Limit 9 min'
    )
  })

  it('carry a true minus', () => {
    expect(
      words({ ...FINDING, id: 'hardware-fit', value: -1.2, unit: 'mm', band: null, limit: 0 })
    ).toContain('Value −1.2 mm')
  })
})

describe('the few words of a step', () => {
  it('say how a timber is held down, by weights in two figures, by screws with the lift they take', () => {
    const facts = (held: 'weights' | 'screws') => {
      const { plan, work } = planOf({
        ...TABLE,
        timbers: TABLE.timbers!.map(t => ({ ...t, held, moisture: 9 }))
      })
      const i = work.steps.findIndex(s => s.kind === 'set timber' && s.timber?.index === 0)
      return {
        words: stepFacts(plan, work, i).join(),
        hold: plan.timbers[0]!.holdG,
        most: work.floating[0]!.hold.netLiftHighG
      }
    }
    const grams = (words: string): number => {
      const [, number, unit] = /([\d.]+) (kg|g)/.exec(words)!
      return Number(number) * (unit === 'kg' ? 1000 : 1)
    }
    const weights = facts('weights')
    expect(weights.words).toMatch(/^may lift: hold down with [\d.]+ k?g$/)
    expect(Math.abs(grams(weights.words) / weights.hold - 1)).toBeLessThan(0.05)
    const screws = facts('screws')
    expect(screws.words).toMatch(/^screw down: [\d.]+ k?g of lift at most$/)
    expect(grams(screws.words)).toBeGreaterThanOrEqual(screws.most - 1e-9)
    expect(grams(screws.words)).toBeLessThan(1.1 * screws.most)
  })
})

describe('what an entry is called', () => {
  it('tells one step from another', () => {
    const { work } = planOf({
      ...PANEL,
      steps: [{ do: 'make mould' }, { do: 'set timber', what: 'north bank' }]
    })
    const names = [0, 1].map(k => entryName(work, `/steps/${k}`))
    expect(names[0]).toMatch(/^step 1, .*mould/i)
    expect(names[1]).toMatch(/^step 2, .*north bank/i)
    expect(entryName(work, '/steps')).toBe('the steps')
    expect(entryName(work, '/mould/wall')).toBe('the mould’s walls')
    expect(entryName(work, '/mould/liner')).toBe('the mould’s lining')
    expect(entryName(work, '/mould')).toBe('the mould')
  })
})
