import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Task } from '../../src/calendar/task.ts'
import { costOf } from '../../src/cost/cost.ts'
import { minorDigits, moneyWords, toCoins } from '../../src/cost/money.ts'
import { costOfMany, onceOf } from '../../src/cost/once.ts'
import { anHourOf, pricesOf } from '../../src/cost/price.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { bought } from './bought.ts'

const RESIN = { group: 'resin', unit: 'g' } as const
const shop = (more: Partial<ShopDocument> = {}) => checkShop({ castwright: 1, ...more }, 'shop').value
const task = (kind: Task['kind'], minutes: number, needs: readonly string[] = ['hands']): Task => ({
  id: `${kind} ${minutes}`, piece: '', step: kind, at: '', kind, says: kind, minutes, band: null,
  basis: { from: 'practice', says: '' }, attended: needs.includes('hands'), mayPause: false, needs,
  safety: [], fixed: null, notBeforeMin: null, dueMin: null
}) // biome-ignore format: one task

describe('money', () => {
  // ISO 4217 list of currencies: digits of the minor unit (memory).
  it.each([
    ['EUR', 2],
    ['USD', 2],
    ['JPY', 0],
    ['KWD', 3],
    ['no code', 2]
  ])('%s has %i digits', (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits)
    expect(moneyWords(toCoins(12, currency), currency)).toBe(`${(12).toFixed(digits)} ${currency}`)
  })
})

describe('cost', () => {
  // Worked by hand: wood 1 at 50, resin 800 g of a pack of 1000 g at 31.25 makes 25; 3 h at 18 makes 54; the machine 30 min at 12 makes 6.
  const s = shop({
    prices: [
      { item: 'wood', unit: 'piece', price: 50 },
      { item: 'resin', unit: 'g', pack: 1000, price: 31.25 }
    ],
    rates: { labour: 18, machine: 12, overhead: 15, margin: 10 }
  })
  const input = {
    buy: [bought(s, 'wood', 1), bought(s, 'resin', 800, RESIN)],
    tasks: [
      task('mould', 60),
      task('sand', 90),
      task('cut', 30, ['hands', 'machine']),
      task('wait', 600, [])
    ],
    batches: 0,
    blanks: 1,
    shop: s
  }
  const cost = costOf(input)

  it('is what is used at the price of its packs, and the minutes at their rates', () => {
    expect(cost.sums).toMatchObject({ material: 7500, consumables: 0, labour: 5400, machine: 600 })
    expect(cost.total).toBe(13_500)
    expect(cost.unpriced).toEqual([])
  })

  it('prices by the rules side by side: 15 % and 10 % on top', () => {
    const [onTop, ofPrice, , four] = pricesOf(cost, s.rates)
    // 135 × 1.15 × 1.10 = 170.775; 135 × 1.15 / 0.9 = 172.50; 4 × 75 = 300.
    expect([onTop!.coins, ofPrice!.coins, four!.coins]).toEqual([17_078, 17_250, 30_000])
    // For three hours are left 170.78 less 81 of other cost and 20.25 of overhead: 23.18 an hour.
    expect(onTop!.anHour).toBe(2318)
    // Overhead alone on top leaves the rate itself.
    expect(anHourOf(cost, s.rates, Math.round(cost.total * 1.15))).toBe(1800)
  })

  it('work done once is shared: of six alike each carries a sixth of the mould', () => {
    const once = onceOf(cost, s.rates, 100)
    expect(once).toBe(1800)
    expect(costOfMany(cost.total, once, 1, 1)).toBe(13_500)
    expect(costOfMany(cost.total, once, 1, 6) / 6).toBe(13_500 - 1800 + 300)
    // Twelve planned at once and twelve of one asked for come to the same.
    const twelve = costOf({
      ...input,
      blanks: 12,
      tasks: input.tasks.map(t => (t.kind === 'mould' ? t : { ...t, minutes: 12 * t.minutes })),
      buy: [bought(s, 'wood', 12), bought(s, 'resin', 9600, RESIN)]
    })
    expect(twelve.total).toBe(costOfMany(cost.total, once, 1, 12))
    expect(twelve.handsMin).toBe(60 + 12 * 120)
  })

  it('what has no price counts for nothing and is named', () => {
    const none = shop()
    const buy = [bought(none, 'wood', 1), bought(none, 'resin', 800, RESIN)]
    const bare = costOf({ ...input, buy, shop: none, batches: 2 })
    expect(bare.total).toBe(0)
    expect(bare.unpriced).toEqual(['wood', 'resin', 'mixing cup', 'stir stick', 'your hands', 'the machine'])
  })

  it('a pack without a price is not for nothing: its line has none and is named', () => {
    const of = (known: number | null) => {
      const more = { pack: 750, ...(known === null ? {} : { price: known }) }
      const own = shop({ prices: [{ item: 'river', unit: 'g', pack: 1500, price: 42, packs: [more] }] })
      return costOf({ ...input, shop: own, tasks: [], buy: [bought(own, 'river', 2000, RESIN)] })
    }
    expect(of(null).unpriced).toEqual(['river'])
    expect(of(null).total).toBe(0)
    // By hand: 42 + 24 for 2250 g, of which 2000 g are used: 58.67.
    expect(of(24).total).toBe(5867)
    expect(of(24).unpriced).toEqual([])
  })

  it('lines add up to their sums in coins, whatever the numbers; a markup and its share of the price agree', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0.001, max: 5000, noNaN: true }),
            fc.double({ min: 0.01, max: 900, noNaN: true })
          ),
          { maxLength: 12 }
        ),
        fc.integer({ min: 1, max: 300 }),
        (rows, markup) => {
          const priced = shop({
            prices: rows.map(([, price], k) => ({ item: `i${k}`, unit: 'piece', price })),
            rates: { overhead: 0, margin: markup }
          })
          const c = costOf({
            buy: rows.map(([need], k) => bought(priced, `i${k}`, need)),
            tasks: [],
            batches: 0,
            blanks: 1,
            shop: priced
          })
          const sum = c.lines.reduce((a, l) => a + (l.coins ?? 0), 0)
          expect(c.total).toBe(sum)
          const share = (100 * markup) / (100 + markup)
          const onTop = pricesOf(c, { ...priced.rates, margin: markup })[0]!.coins
          const ofPrice = pricesOf(c, { ...priced.rates, margin: share })[1]!.coins
          expect(Math.abs(onTop - ofPrice)).toBeLessThanOrEqual(1)
        }
      ),
      { numRuns: 60 }
    )
  })
})
