import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { costOf } from '../../src/cost/cost.ts'
import { anHourOf } from '../../src/cost/price.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { quoteOf } from '../../src/quote.ts'
import { bought } from '../cost/bought.ts'

const EXAMPLES = join(import.meta.dirname, '../../../../examples')
const example = JSON.parse(readFileSync(join(EXAMPLES, 'saltmarsh-panel.piece.json'), 'utf8')) as object
const AS_OF = '2026-11-28T08:00:00Z'

function quoted(rates: object, prices: readonly object[], count?: number, price?: number, quantity?: number) {
  const planned = plan(
    {
      piece: checkPiece(quantity === undefined ? example : { ...example, quantity }, 'piece'),
      shop: checkShop({ castwright: 1, rates, prices: [...prices] }, 'shop').value
    },
    { asOf: AS_OF, effort: 'preview' }
  )
  return quoteOf(planned, {
    asOf: AS_OF,
    ...(count === undefined ? {} : { count }),
    ...(price === undefined ? {} : { price })
  })
}

describe('the price of a river board', () => {
  // Sells at 130, wood 50, resin 20 to 30, three hours: 50 to 60 are left, under 20 an hour.
  it.each([20, 30])(
    'C37 sold at 130 with wood at 50 and resin at %i: 50 to 60 left, under 20 an hour',
    resin => {
      const shop = checkShop(
        {
          castwright: 1,
          rates: { overhead: 0 },
          prices: [
            { item: 'wood', unit: 'piece', price: 50 },
            { item: 'resin', unit: 'g', price: resin / 1000 }
          ]
        },
        'shop'
      ).value
      const hands = {
        id: 'all',
        piece: '',
        step: 'all',
        at: '',
        kind: 'sand',
        says: '',
        minutes: 180,
        band: null,
        basis: { from: 'practice', says: '' },
        attended: true,
        mayPause: false,
        needs: ['hands'],
        safety: [],
        fixed: null,
        notBeforeMin: null,
        dueMin: null
      } as const
      const cost = costOf({
        buy: [bought(shop, 'wood', 1), bought(shop, 'resin', 1000, { group: 'resin', unit: 'g' })],
        tasks: [hands],
        batches: 1,
        blanks: 1,
        shop
      })
      const left = 13_000 - cost.sums.material
      expect(left).toBeGreaterThanOrEqual(5000)
      expect(left).toBeLessThanOrEqual(6000)
      const hour = anHourOf(cost, shop.rates, 13_000)!
      expect(hour).toBe(Math.round(left / 3))
      // 16.67 to 20 before consumables; they have no price here, are lines of their own, and take it under 20.
      expect(hour).toBeLessThanOrEqual(2000)
      expect(cost.lines.filter(l => l.group === 'consumables').map(l => l.coins)).toContain(null)
    }
  )

  it('C37 a quote says what an asked price leaves for an hour', () => {
    const q = quoted({ labour: 30, overhead: 0, margin: 0 }, [], undefined, 130)
    expect(q.cost.lines.some(l => l.group === 'consumables')).toBe(true)
    expect(q.asked!.anHour).toBe(
      Math.round((13_000 - (q.cost.total - q.cost.sums.labour)) / (q.cost.handsMin / 60))
    )
    expect(q.asked!.anHour!).toBeLessThan(2000)
  })

  it('C37 twelve planned cost about twelve times one, not the work of one', () => {
    const one = quoted({ labour: 30 }, [])
    const twelve = quoted({ labour: 30 }, [], undefined, undefined, 12)
    expect(twelve.net / one.net).toBeGreaterThan(8)
    // Blanks that may be lost are among them: more than twelve times the repeated part is no fault.
    expect(twelve.cost.handsMin).toBeGreaterThan(12 * (one.cost.handsMin - one.cost.onceHandsMin))
  })
})

describe('never one bare number for cost and price', () => {
  it('O12 cost, price before tax, tax and what the client pays are sums of their own that add up', () => {
    const q = quoted({ labour: 35, overhead: 15, margin: 10, tax: 21, deposit: 40 }, [])
    expect(q.net + q.tax).toBe(q.gross)
    expect(q.tax).toBe(Math.round(q.net * 0.21))
    expect(q.deposit).toBe(Math.round(q.gross * 0.4))
    expect(q.net).toBeGreaterThan(q.cost.total)
    // Prices are missing: every sum is "at least", and what lacks one is named.
    expect(q.whole).toBe(false)
    expect(q.cost.unpriced.length).toBeGreaterThan(0)
  })

  it('O12 one of six and one of twelve cost less than one of one, and never less than what is not shared', () => {
    const { units } = quoted({ labour: 35 }, [])
    const [one, six, twelve] = units.map(u => u.coins)
    expect(one!).toBeGreaterThan(six!)
    expect(six!).toBeGreaterThan(twelve!)
    expect(twelve!).toBeGreaterThan(one! / 3)
    expect(quoted({ labour: 35 }, [], 1).net).toBe(one)
  })
})

describe('minutes of a quote', () => {
  it('are those of the calendar, with what was recorded of the steps', () => {
    const at = (k: number) => `2026-11-2${k}T10:00:00Z`
    const sanded = ['sand back', 'sand front'].map((step, k) => ({
      kind: 'done' as const, id: `took-000${k}`, step, minutes: 300, at: at(k)
    })) // biome-ignore format: one record
    const of = (readings: readonly (typeof sanded)[number][]) =>
      quoteOf(
        plan(
          { piece: checkPiece(example, 'piece'), shop: checkShop({ castwright: 1 }, 'shop').value, readings },
          { asOf: AS_OF, effort: 'preview' }
        ),
        { asOf: AS_OF }
      ).cost.handsMin
    expect(of(sanded)).toBeGreaterThan(of([]) + 20)
  })
})
