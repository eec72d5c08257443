import { describe, expect, it } from 'vitest'
import { lineOf } from '../../src/cost/line-of.ts'
import type { Need } from '../../src/cost/need.ts'
import type { PieceNeeds } from '../../src/cost/together.ts'
import { together } from '../../src/cost/together.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { Shop, ShopDocument } from '../../src/piece/shop-schema.ts'
import { drawn } from './solver.ts'

const shopOf = (more: Partial<ShopDocument>) => checkShop({ castwright: 1, ...more }, 'shop').value
const need = (item: string, amount: number, group: Need['group'] = 'finish'): Need => ({
  group, item, name: item, unit: group === 'finish' ? 'ml' : 'piece', uses: [{ amount, day: null }], spare: 0, note: '', resin: null
}) // biome-ignore format: one need
const piece = (name: string, shop: Shop, ...needs: Need[]): PieceNeeds => ({
  name,
  needs,
  buy: needs.map(n => lineOf(n, shop))
})
const OIL = {
  item: 'oil',
  unit: 'ml',
  pack: 1000,
  price: 60,
  packs: [{ pack: 250, price: 18 }],
  from: 'near'
}

describe('several pieces bought for together', () => {
  // By hand: 200 and 700 ml apart are 18 and 3 × 18 = 54 (a large one is 60): 72; together 900 ml are a large one, 60.
  it('packs are shared, and each piece carries what it uses of them', () => {
    const shop = shopOf({ suppliers: [{ id: 'near', delivery: 9 }], prices: [OIL] })
    const all = together(
      [piece('tray', shop, need('oil', 200)), piece('table', shop, need('oil', 700))],
      shop
    )
    expect(all.buy).toHaveLength(1)
    expect(all.buy[0]).toMatchObject({ need: 900, buy: 1000, cost: 60, note: 'tray 200 ml, table 700 ml' })
    expect(all.shares.map(s => s.buy[0]!.rate)).toEqual([0.06, 0.06])
    // One delivery of 9: 2 of 9 parts and 7 of 9.
    const parts = all.shares.map(s => s.delivery[0]!.amount)
    expect(parts[0]).toBeCloseTo(2 / 9, 12)
    expect(parts[1]).toBeCloseTo(7 / 9, 12)
  })

  it('the shelf is used once, and what is cut to size is no other piece’s', () => {
    const shop = shopOf({ prices: [{ ...OIL, from: undefined, stock: 300 } as never] })
    const all = together(
      [
        piece('a', shop, need('oil', 300), need('oak: left', 1, 'timber')),
        piece('b', shop, need('oil', 300), need('oak: left', 1, 'timber'))
      ],
      shop
    )
    expect(all.buy.find(l => l.item === 'oil')).toMatchObject({ need: 600, stock: 300, buy: 500, cost: 36 })
    expect(all.buy.filter(l => l.group === 'timber').map(l => l.name)).toEqual([
      'oak: left (a)',
      'oak: left (b)'
    ])
  })

  it('a piece by itself gives its own list', () => {
    const shop = shopOf({ suppliers: [{ id: 'near', delivery: 9 }], prices: [OIL] })
    const one = piece('tray', shop, need('oil', 200), need('oak: left', 1, 'timber'))
    const all = together([one], shop)
    expect(all.buy).toEqual(one.buy)
    expect(all.shares[0]!.buy).toEqual(one.buy)
    expect(all.shares[0]!.delivery[0]!.amount).toBe(1)
  })

  it('100 seeded sets: never dearer than each by itself, uses and shares of deliveries add up', () => {
    const draw = drawn(31)
    for (let k = 0; k < 100; k++) {
      const items = ['oil', 'wax', 'lacquer'].slice(0, 1 + draw(3))
      const shop = shopOf({
        suppliers: [{ id: 'near', delivery: 9 }],
        prices: items.map(item => ({
          item,
          unit: 'ml',
          pack: 100 + draw(900),
          price: 5 + draw(60),
          packs: [{ pack: 50 + draw(300), price: 3 + draw(20) }],
          from: 'near'
        }))
      })
      const pieces = Array.from({ length: 1 + draw(4) }, (_, i) =>
        piece(`p${i}`, shop, ...items.map(item => need(item, 1 + draw(900))))
      )
      const all = together(pieces, shop)
      const sum = (of: readonly { cost: number | null }[]) => of.reduce((t, l) => t + l.cost!, 0)
      expect(sum(all.buy)).toBeLessThanOrEqual(pieces.reduce((t, p) => t + sum(p.buy), 0) + 1e-9)
      for (const line of all.buy) {
        const used = all.shares.reduce((t, s) => t + s.buy.find(l => l.item === line.item)!.need, 0)
        expect(used).toBe(line.need)
        expect(line.buy).toBeGreaterThanOrEqual(line.need - 1e-9)
      }
      expect(all.shares.reduce((t, s) => t + s.delivery[0]!.amount, 0)).toBeCloseTo(1, 9)
    }
  })
})
