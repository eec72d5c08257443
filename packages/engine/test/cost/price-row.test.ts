import { describe, expect, it } from 'vitest'
import { pricedIn } from '../../src/cost/price-row.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { planOf, TABLE } from '../sheets/pieces.ts'

const shopOf = (unit: string, pack = 1) =>
  checkShop(
    { castwright: 1, prices: [{ item: 'hardwax-oil', unit, pack, price: 40, stock: 2, days: 3 }] },
    'shop'
  ).value

describe('a price of the shop', () => {
  // Exact: 1 l = 1000 ml; 1 kg = 1000 g; 1 lb = 453.59237 g (1959); 1 ft² = 0.09290304 m².
  it.each([
    ['l', 'ml', 1000],
    ['ml', 'ml', 1],
    ['kg', 'g', 1000],
    ['lb', 'g', 453.59237],
    ['m', 'm', 1],
    ['cm', 'm', 0.01],
    ['ft²', 'm²', 0.09290304],
    ['pieces', 'piece', 1]
  ])('per %s is turned into one per %s', (given, asked, holds) => {
    const { row, leftAside } = pricedIn(shopOf(given, 2), 'hardwax-oil', asked)
    expect(row!.packs[0]!.size).toBeCloseTo(2 * holds, 9)
    expect(row!.lots[0]!.amount).toBeCloseTo(2 * holds, 9)
    expect(row).toMatchObject({ packs: [{ price: 40 }], days: 3 })
    expect(leftAside).toBe('')
  })

  it.each([
    ['kg', 'ml'],
    ['l', 'piece'],
    ['bottle', 'ml'],
    ['piece', 'm²']
  ])('per %s is not taken for one per %s, and that is said', (given, asked) => {
    expect(pricedIn(shopOf(given), 'hardwax-oil', asked)).toEqual({
      row: null,
      leftAside: `the shop prices it per ${given}, and it is needed in ${asked}`
    })
  })

  it('says nothing of what the shop does not price', () => {
    expect(pricedIn(shopOf('ml'), 'p240', 'piece')).toEqual({ row: null, leftAside: '' })
  })

  it('a litre in the shop buys one pack of a litre, not as many as there are millilitres', () => {
    const oil = (unit: string) => {
      const shop: ShopDocument = { castwright: 1, prices: [{ item: 'hardwax-oil', unit, price: 40 }] }
      return planOf({ ...TABLE, finish: { both: { coat: 'hardwax-oil' } } }, {}, shop).plan.buy.find(
        l => l.item === 'hardwax-oil'
      )!
    }
    expect(oil('l')).toMatchObject({ cost: 40, buy: 1000, packs: [{ size: 1000, count: 1, price: 40 }] })
    expect(oil('kg')).toMatchObject({ cost: null, packs: [] })
    expect(oil('kg').note).toContain('the shop prices it per kg')
  })
})
