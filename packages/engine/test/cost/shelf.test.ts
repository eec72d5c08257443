import { describe, expect, it } from 'vitest'
import { lastDay, stillGood, takenFrom } from '../../src/cost/shelf.ts'
import { lengthsIn } from '../../src/piece/lengths.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { METRIC } from '../../src/quantity/shown-units.ts'
import { buyCsv } from '../../src/sheets/buy-csv.ts'
import { buyRows } from '../../src/sheets/buy-rows.ts'
import { planOf, TABLE } from '../sheets/pieces.ts'
import { bought } from './bought.ts'
import { drawn, exactSolver } from './solver.ts'

const day = (k: number) => `2026-12-${String(k).padStart(2, '0')}`
const lot = (name: string, amount: number, until: string | null) => ({ lot: name, amount, until })

describe('stock by lot and day', () => {
  it('what expires first is used first, what keeps last', () => {
    const lots = [lot('keeps', 500, null), lot('late', 300, day(20)), lot('soon', 200, day(9))]
    const { taken, short, expired } = takenFrom(lots, [{ amount: 600, day: day(5) }])
    expect(taken.map(t => [t.lot, t.amount])).toEqual([
      ['soon', 200],
      ['late', 300],
      ['keeps', 100]
    ])
    expect([short, expired]).toEqual([0, []])
  })

  it('what has expired on the day is not used: on its last day it is', () => {
    const lots = [lot('old', 200, day(4)), lot('today', 100, day(5))]
    const { taken, short, expired } = takenFrom(lots, [{ amount: 250, day: day(5) }])
    expect(taken.map(t => t.lot)).toEqual(['today'])
    expect(short).toBe(150)
    expect(expired).toEqual([lots[0]])
    expect(stillGood(lots, [{ amount: 1, day: day(5) }])).toBe(100)
    // Of a day that is not known nothing has expired.
    expect(takenFrom(lots, [{ amount: 250, day: null }]).short).toBe(0)
  })

  // ISO 8601 days: 30 days after 1 February 2027 is 3 March, after 1 February 2028 (a leap year) 2 March.
  it.each([
    [{ opened: '2027-02-01' }, 30, '2027-03-03'],
    [{ opened: '2028-02-01' }, 30, '2028-03-02'],
    [{ opened: '2027-02-01', expires: '2027-02-10' }, 30, '2027-02-10'],
    [{ opened: '2027-02-01', expires: '2027-04-10' }, 30, '2027-03-03'],
    [{ opened: '2027-02-01' }, undefined, null],
    [{}, 30, null]
  ])('%j that keeps %s days once opened is good until %s', (given, keeps, until) => {
    expect(lastDay(given, keeps)).toBe(until)
  })

  it('meets as much of 120 seeded uses as any way can (linear programme, highs 1.15)', async () => {
    const highs = await exactSolver()
    const draw = drawn(5)
    for (let k = 0; k < 120; k++) {
      const lots = Array.from({ length: 1 + draw(5) }, (_, i) =>
        lot(`l${i}`, 10 + draw(400), draw(5) === 0 ? null : day(1 + draw(20)))
      )
      const uses = Array.from({ length: 1 + draw(4) }, () => ({
        amount: 10 + draw(400),
        day: day(1 + draw(20))
      }))
      const pairs = lots.flatMap((l, i) =>
        uses.flatMap((u, j) => (l.until === null || l.until >= u.day ? [[i, j] as const] : []))
      )
      const sum = (of: readonly (readonly [number, number])[]) => of.map(([i, j]) => `x${i}_${j}`).join(' + ')
      const rows = [
        ...lots.flatMap((l, i) => {
          const of = pairs.filter(p => p[0] === i)
          return of.length === 0 ? [] : [` l${i}: ${sum(of)} <= ${l.amount}`]
        }),
        ...uses.flatMap((u, j) => {
          const of = pairs.filter(p => p[1] === j)
          return of.length === 0 ? [] : [` u${j}: ${sum(of)} <= ${u.amount}`]
        })
      ]
      const most =
        pairs.length === 0
          ? 0
          : highs.solve(`Maximize\n obj: ${sum(pairs)}\nSubject To\n${rows.join('\n')}\nEnd`).ObjectiveValue
      const { taken, short } = takenFrom(lots, uses)
      const asked = uses.reduce((t, u) => t + u.amount, 0)
      expect(asked - short).toBeCloseTo(most, 6)
      expect(taken.reduce((t, l) => t + l.amount, 0)).toBeCloseTo(asked - short, 9)
    }
  })
})

describe('several packs of anything', () => {
  const shop = checkShop(
    {
      castwright: 1,
      prices: [
        { item: 'oil', unit: 'ml', pack: 1000, price: 60, packs: [{ pack: 250, price: 18 }], stock: 100 },
        { item: 'board', unit: 'm²', pack: 2.5, price: 30, packs: [{ pack: 0.001, price: 1 }] }
      ]
    },
    'shop'
  ).value

  // By hand: 700 ml less 100 on the shelf are three small ones for 54, less than a large one for 60; 850 ml are 60.
  it('buys those that cost least together', () => {
    const of = (need: number) => bought(shop, 'oil', need, { unit: 'ml', group: 'finish' })
    expect(of(700)).toMatchObject({ cost: 54, buy: 750, stock: 100, rate: 54 / 750 })
    expect(of(950)).toMatchObject({ cost: 60, buy: 1000 })
    expect(of(90)).toMatchObject({ cost: 0, buy: 0, packs: [], rate: 60 / 1000 })
    expect(bought(shop, 'board', 0.4, { unit: 'm²', group: 'mould' })).toMatchObject({ cost: 30, buy: 2.5 })
  })
})

describe('the buy list of a piece', () => {
  it('leaves expired oil standing on the day of its coats, and says which lot is used', () => {
    const shop: ShopDocument = {
      castwright: 1,
      prices: [
        {
          item: 'hardwax-oil',
          unit: 'ml',
          pack: 375,
          price: 24,
          lots: [
            { amount: 900, lot: 'old', expires: '2020-01-01' },
            { amount: 10, lot: 'new', expires: '2999-01-01' }
          ]
        }
      ]
    }
    const { plan } = planOf({ ...TABLE, finish: { both: { coat: 'hardwax-oil' } } }, {}, shop)
    const oil = plan.buy.find(l => l.item === 'hardwax-oil')!
    expect(oil).toMatchObject({ stock: 10, expired: [{ lot: 'old', amount: 900 }] })
    expect(oil.buy).toBeGreaterThan(0)
    expect(plan.findings.map(f => f.id)).toContain('stock-expired')
    const row = buyRows(plan.buy, lengthsIn(METRIC))
      .flatMap(g => g.rows)
      .find(r => r.name.startsWith('Hard'))!
    expect(row.note).toContain('10 ml of lot new')
    expect(buyCsv(plan)).toContain('10 ml of lot new')
    expect(row.note).toContain('lot old (until 1 Jan 2020) has expired: not used')
  })
})
