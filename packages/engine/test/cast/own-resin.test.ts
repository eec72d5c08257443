import { describe, expect, it } from 'vitest'
import { fitCupTest, fitOfLabel, ownResin } from '../../src/cast/own-resin.ts'
import { checkCupTest, checkPiece, checkShop } from '../../src/piece/read.ts'
import { chooseResin, type ResinChoice } from '../../src/piece/resin-choice.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { filmGelS } from '../../src/resin/gel.ts'
import { workOf } from '../../src/work.ts'
import { PLAIN } from '../findings/harness.ts'

/** An invented cup of a medium resin, °C: 150 g in 60 mm at 22 °C. */
const CUP = {
  mass: 150,
  diameter: 60,
  room: 22,
  readings: [
    [0, 22.9],
    [20, 26.6],
    [40, 29.5],
    [60, 33.8],
    [80, 44.3],
    [90, 59],
    [100, 94.6],
    [110, 121.8],
    [120, 121.2],
    [140, 95.6],
    [160, 68.4],
    [180, 51]
  ] as [number, number][],
  strings: 90,
  gelled: 100
}

const shopOf = (resin: object) =>
  checkShop({ castwright: 1, resins: [{ id: 'mine', like: 'medium', ...resin }] } as ShopDocument, 'shop')
    .value
const chosen = (resin: object): ResinChoice => chooseResin('mine', shopOf(resin), '/resin') as ResinChoice

describe('the resin a pour uses', () => {
  it('is the class without a label', () => {
    const choice = chosen({})
    expect(ownResin(choice)).toBe(choice)
    expect(choice.known).toBe('class')
  })

  it('goes by the label where there is one', () => {
    const own = ownResin(chosen({ gelTime: { minutes: '3 h', temperature: 25 } }))
    expect(own.known).toBe('label')
    expect(filmGelS(own.record.model!.kinetics, 25) / 3600).toBeCloseTo(3, 6)
    expect(own.record.band.time).toBeLessThanOrEqual(0.3)
  })

  it('goes by its last cup test before its label, with a narrower band', () => {
    const choice = chosen({ gelTime: { minutes: '3 h' }, cupTests: [CUP] })
    const own = ownResin(choice)
    expect(own.known).toBe('cup')
    expect(own.record.band.time).toBeLessThan(choice.record.band.time)
    expect(own.record.model!.kinetics.heatJPerKg).toBeGreaterThan(250_000)
    expect(own.record.model!.kinetics.heatJPerKg).toBeLessThan(340_000)
    // The same choice again is the same answer, and °F says what °C says.
    expect(ownResin(chosen({ gelTime: { minutes: '3 h' }, cupTests: [CUP] })).record).toEqual(own.record)
    const inF = { ...CUP, unit: '°F', readings: CUP.readings.map(([t, c]) => [t, c * 1.8 + 32]) }
    const fahrenheit = ownResin(chosen({ cupTests: [inF] })).record.model!.kinetics
    expect(fahrenheit.k2At25PerS / own.record.model!.kinetics.k2At25PerS).toBeCloseTo(1, 4)
  })

  it('stays the label’s where a cup test tells nothing of the speed', () => {
    const short = {
      ...CUP,
      readings: CUP.readings.slice(0, 3).map(([t], i) => [t / 20, 22 + 0.15 * i]),
      strings: undefined,
      gelled: undefined
    }
    const own = ownResin(
      chosen({ gelTime: { minutes: '3 h' }, cupTests: [JSON.parse(JSON.stringify(short))] })
    )
    expect(own.known).toBe('label')
  })

  it('stays a full cup test’s where a later one ended early, and no test widens the band', () => {
    const part = JSON.parse(
      JSON.stringify({ ...CUP, readings: CUP.readings.slice(0, 4), strings: undefined, gelled: undefined })
    ) as object
    const full = ownResin(chosen({ cupTests: [CUP] }))
    expect(ownResin(chosen({ cupTests: [CUP, part] })).record).toEqual(full.record)
    expect(ownResin(chosen({ cupTests: [part, CUP] })).record).toEqual(full.record)
    const choice = chosen({})
    const only = ownResin(chosen({ cupTests: [part] }))
    expect(only.record.band.time).toBeLessThanOrEqual(choice.record.band.time)
    const { value } = checkCupTest(part, 'form')
    const { report, says } = fitCupTest(value, 'mine', shopOf({ cupTests: [CUP, part] }))
    // By itself it is wider than the class: the test can fail.
    expect(report.alone).toBeGreaterThan(choice.record.band.time)
    expect(says.join(' ')).toMatch(
      /2 tests of it are kept: later plans go by number 1, which leaves the narrowest/
    )
  })

  it('is no narrower than the class where the label contradicts itself', () => {
    const label = { potLife: { minutes: 20 }, gelTime: { minutes: '20 h' } }
    const { record } = ownResin(chosen(label))
    expect(record.band.time).toBe(0.6)
    const heat = record.model!.kinetics.heatJPerKg / chosen({}).record.model!.kinetics.heatJPerKg
    expect(heat).toBeGreaterThanOrEqual(0.8 - 1e-12)
    expect(heat).toBeLessThanOrEqual(1.2 + 1e-12)
  })

  it('is what all of the plan uses', () => {
    const piece = checkPiece({ ...PLAIN, pours: [{ id: 'clear', resin: 'mine', depth: 6 }] }, 'piece')
    const work = (resin: object) => workOf({ piece, shop: shopOf(resin), effort: 'preview' })
    const [plain, cup] = [work({}), work({ cupTests: [CUP] })]
    expect(cup.materials.resins[0]!.known).toBe('cup')
    // Narrower in shares of its own time.
    const spread = (w: typeof plain): number => {
      const { open, band } = w.casts[0]!.windows.recoat as unknown as { open: number; band: [number, number] }
      return 1 - band[0] / open
    }
    expect(spread(cup)).toBeLessThan(spread(plain))
    expect(cup.casts[0]!.peakBandC[1] - cup.casts[0]!.peakBandC[0]).not.toBe(
      plain.casts[0]!.peakBandC[1] - plain.casts[0]!.peakBandC[0]
    )
  })

  it('of another family is left as recorded', () => {
    const choice = chosen({ family: 'polyester', potLife: { minutes: 20 } })
    expect(ownResin(choice)).toBe(choice)
    expect(fitOfLabel(choice)).toBeNull()
  })
})

describe('a cup test at the ends of what a shop may hold', () => {
  const ends: readonly object[] = [
    { mass: 5 },
    { mass: 50_000 },
    { diameter: 20 },
    { diameter: 1000 },
    { room: 0 },
    { room: 45 },
    { start: 5 },
    { start: 60 },
    { strings: 1 },
    { gelled: 43_200 },
    {
      readings: [
        [0, -10],
        [1, 350],
        [43_200, -10]
      ]
    },
    {
      readings: [
        [43_198, 22],
        [43_199, 23],
        [43_200, 25]
      ]
    }
  ]
  it.each(ends)('%j is a resin of plain numbers', end => {
    const own = ownResin(chosen({ cupTests: [{ ...CUP, ...end }] }))
    const text = JSON.stringify([own.record.model, own.record.band], (_, v: unknown) =>
      typeof v === 'number' && !Number.isFinite(v) ? 'odd' : v
    )
    expect(text).not.toContain('odd')
    expect(own.record.band.time).toBeGreaterThan(0)
    expect(own.record.band.time).toBeLessThanOrEqual(0.5)
  })
})

describe('a cup test for a form', () => {
  it('is fitted as a shop holds it, and answers in plain data', () => {
    const { value } = checkCupTest(CUP, 'form')
    const result = fitCupTest(value, 'mine', shopOf({}))
    expect(JSON.parse(JSON.stringify(result))).toEqual(result)
    expect(result.says[0]).toMatch(/^Your resin is /)
    expect(result.report.parameters.length).toBe(result.report.correlation.length)
    result.report.correlation.forEach((row, i) => {
      expect(row[i]).toBeCloseTo(1, 9)
    })
  })
  it('says where it cannot be used', () => {
    expect(() => checkCupTest({ ...CUP, mass: -1 }, 'form')).toThrow(/form at mass: found -1/)
    expect(() =>
      checkCupTest(
        {
          ...CUP,
          readings: [
            [0, 22],
            [0, 23],
            [5, 24]
          ]
        },
        'form'
      )
    ).toThrow(/form at readings\[1\]\[0\]: found 0; allowed: minutes that rise: over 0/)
    expect(() =>
      checkCupTest(
        {
          ...CUP,
          readings: [
            [0, 22],
            [3, 22],
            [5, 22]
          ]
        },
        'form'
      )
    ).toThrow(/temperatures that move/)
    const { value } = checkCupTest(CUP, 'form')
    expect(() => fitCupTest(value, 'nine', shopOf({}))).toThrow(/the resin "nine"/)
    expect(() => fitCupTest(value, 'mine', shopOf({ family: 'other' }))).toThrow(/an epoxy/)
  })
})
