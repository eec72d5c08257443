import { describe, expect, it } from 'vitest'
import { tasksOf } from '../../src/calendar/tasks.ts'
import { costOf } from '../../src/cost/cost.ts'
import { wearCost } from '../../src/cost/cutter-wear.ts'
import { deliveryCost, outsideCost } from '../../src/cost/orders.ts'
import { paidOf, pricesOf } from '../../src/cost/price.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { MadePath } from '../../src/programs/program-input.ts'
import { planOf, TABLE } from '../sheets/pieces.ts'
import { bought } from './bought.ts'

const shop = (more: Partial<ShopDocument> = {}) => checkShop({ castwright: 1, ...more }, 'shop').value
const none = { tasks: [], batches: 0, blanks: 1 }

describe('delivery', () => {
  const own = (freeFrom?: number) =>
    shop({
      suppliers: [
        { id: 'near', delivery: 9.5, ...(freeFrom === undefined ? {} : { freeFrom }) },
        { id: 'far', delivery: 30 }
      ],
      prices: [
        { item: 'wood', unit: 'piece', price: 50, from: 'near' },
        { item: 'oil', unit: 'piece', price: 20, from: 'near' },
        { item: 'glue', unit: 'piece', price: 5, stock: 3, from: 'far' }
      ]
    })
  const lines = (s: ReturnType<typeof shop>) => ['wood', 'oil', 'glue'].map(i => bought(s, i, 1))

  // By hand: one order of 70 from "near"; of "far" all is on the shelf, and nothing is ordered.
  it('is paid once an order, not where nothing is ordered, and not from the sum on that frees it', () => {
    for (const [freeFrom, rate] of [
      [undefined, 9.5],
      [70.01, 9.5],
      [70, 0]
    ] as const) {
      const s = own(freeFrom)
      expect(deliveryCost(lines(s), s).map(l => [l.name, l.rate])).toEqual([['delivery from near', rate]])
    }
    const s = own()
    const cost = costOf({ ...none, buy: lines(s), shop: s })
    expect(cost.sums).toMatchObject({ material: 7500, delivery: 950 })
    expect(cost.bought).toBe(7950)
    expect(cost.onceCoins).toBe(950)
  })

  it('a supplier that the shop does not have is refused, and the nearest is offered', () => {
    const wrong = () =>
      shop({ suppliers: [{ id: 'near' }], prices: [{ item: 'a', unit: 'g', from: 'neer' }] })
    expect(wrong).toThrow(InputProblem)
    expect(wrong).toThrow(/prices\[0\]\.from: found "neer".*for example "near"/)
  })
})

describe('work of others', () => {
  const cut = (id: string) => ({ id, way: 'sent out' as const })

  // By hand: an order of 40, and two cuts of 15 on each of three blanks: 130.
  it('sent out: the order once, each cut of each blank; what is made for the piece by its own price', () => {
    const s = shop({ sentOut: { firm: 'the joiner', price: 40, each: 15 } })
    const more = outsideCost(
      [cut('recess'), cut('slot'), { id: 'edge', way: 'router' }],
      [
        { work: 'legs', firm: 'the smith', price: 180, days: 14 },
        { work: 'a plate', days: 0 }
      ],
      3,
      s
    )
    const cost = costOf({ ...none, blanks: 3, buy: [], shop: s, more })
    expect(cost.sums.outside).toBe(13_000 + 18_000)
    expect(cost.unpriced).toEqual(['a plate'])
    expect(cost.onceCoins).toBe(4000)
  })

  it('a firm that nobody priced is named', () => {
    const more = outsideCost([cut('recess')], [], 1, shop())
    expect(costOf({ ...none, buy: [], shop: shop(), more }).unpriced).toEqual([
      'recess: cut by a shop outside'
    ])
  })
})

describe('wear of cutters', () => {
  const made = (id: string, minutes: number, cutMm: number) =>
    ({
      operation: { cutter: { id, name: id }, met: [{ material: 'resin', filled: false }] },
      time: { minutes, cutMm }
    }) as unknown as MadePath

  it('by the minutes a cutter lasts, else by its way; a cutter without a price holds nothing up', () => {
    const s = shop({
      cutters: [
        { id: 'six', kind: 'flat-end-mill', diameter: 6, length: 22, price: 24, life: 480 },
        { id: 'ball', kind: 'ball-nose', diameter: 8, length: 25, price: 30 },
        { id: 'old', kind: 'ball-nose', diameter: 4, length: 20 }
      ]
    })
    const all = [made('six', 30, 1e5), made('six', 10, 1e5), made('ball', 5, 50_000), made('old', 9, 1e5)]
    const [six, ball, old] = wearCost(all, 2, s)
    // By hand: 40 of 480 min on each of two blanks; 50 m of 500 m in resin (cuts/run/wear.ts) on each.
    expect(six).toMatchObject({ rate: 24, amount: 2 * (40 / 480) })
    expect(ball).toMatchObject({ rate: 30, amount: 2 * 0.1 })
    expect(old).toMatchObject({ rate: null })
    const cost = costOf({ ...none, buy: [], shop: s, more: [six!, ball!, old!] })
    expect(cost.sums.cutters).toBe(400 + 600)
    expect(cost.unpriced).toEqual([])
  })
})

describe('allowance for spoil', () => {
  const s = shop({ prices: [{ item: 'wood', unit: 'piece', price: 95 }] })
  const of = (pct: number, blanks = 1, pieces = 1) =>
    costOf({ ...none, blanks, buy: [bought(s, 'wood', blanks)], shop: s, loss: { pieces, pct } })

  // Closed form: made until it is good, 1/(1 − 0.05) blanks are begun on average: 95/0.95 = 100.
  it('of a single piece is the mean of what is lost before it is good', () => {
    expect(of(5).total).toBe(10_000)
    expect(of(5).sums.spoil).toBe(500)
    expect(of(0).total).toBe(9500)
  })

  it('of a batch stands in the blanks that are begun, and is said', () => {
    const batch = of(5, 14, 12)
    expect(batch.sums.spoil).toBe(0)
    expect(batch.spareSays).toMatch(/^2 of the 14 blanks/)
  })
})

describe('prices', () => {
  const s = shop({
    prices: [{ item: 'wood', unit: 'piece', price: 80 }],
    rates: { labour: 20, hour: 45, overhead: 15, margin: 10, tax: 21 }
  })
  const hands = {
    id: 'a', piece: '', step: 'a', at: '', kind: 'coat', says: '', minutes: 120, band: null,
    basis: { from: 'practice', says: '' }, attended: true, mayPause: false, needs: ['hands'],
    safety: [], fixed: null, notBeforeMin: null, dueMin: null
  } as const // biome-ignore format: one task
  const cost = costOf({ ...none, tasks: [hands], buy: [bought(s, 'wood', 1)], shop: s })

  it('by the hour: hours as they are charged, all else at cost', () => {
    // By hand: 2 × 45 + 80.
    expect(pricesOf(cost, s.rates).find(p => p.rule === 'by the hour')).toMatchObject({
      coins: 17_000,
      anHour: Math.round((17_000 - 8000 - 0.15 * 12_000) / 2)
    })
    const { hour: _, ...bare } = s.rates
    expect(pricesOf(cost, bare).find(p => p.rule === 'by the hour')!.coins).toBe(12_000)
  })

  it('the client pays whole steps, never less, and price and tax still add up', () => {
    const rates = { tax: 21, round: 5 }
    // By hand: 100.00 and 21 % are 121.00, up to 125.00, of which 103.31 before tax.
    expect(paidOf(10_000, rates, 'EUR')).toEqual({ net: 10_331, tax: 2169, gross: 12_500 })
    expect(paidOf(700, { tax: 0, round: 500 }, 'JPY')).toEqual({ net: 1000, tax: 0, gross: 1000 })
    for (let k = 1; k < 4000; k += 37) {
      const { net, tax, gross } = paidOf(k, { tax: 19, round: 0.5 }, 'EUR')
      expect(gross % 50).toBe(0)
      expect(net + tax).toBe(gross)
      expect(gross).toBeGreaterThanOrEqual(k)
    }
  })
})

describe('what is made outside, in the days', () => {
  it('is on its way so many days, and is there before parts are fitted or the piece leaves', () => {
    const outside = [{ work: 'legs', firm: 'the smith', price: 180, days: 14 }, { work: 'a plate' }]
    const { work } = planOf({ ...TABLE, outside })
    const { tasks, gaps } = tasksOf(work, { piece: '', originMs: 0 })
    const [legs, ...others] = tasks.filter(t => t.kind === 'delivery')
    expect(others).toEqual([])
    expect(legs).toMatchObject({ minutes: 14 * 1440, says: 'legs: the smith', attended: false })
    const last = tasks.find(t => t.step?.startsWith('fit')) ?? tasks.find(t => t.step === 'deliver')!
    expect(gaps.some(g => g.before === legs!.id && g.after === last.id)).toBe(true)
  })
})
