import { describe, expect, it } from 'vitest'
import { mixLots } from '../../src/cost/mix-lots.ts'
import type { Need } from '../../src/cost/need.ts'
import type { Problem } from '../../src/piece/problem.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { ResinChoice } from '../../src/piece/resin-choice.ts'
import { chooseResin } from '../../src/piece/resin-choice.ts'

// Invented: a resin mixed 2 : 1 by mass. Every figure below is worked by hand: of 300 g, 200 g are A and 100 g are B.
const shopWith = (lots: object[], stock = 0) =>
  checkShop(
    {
      castwright: 1,
      resins: [{ id: 'own', name: 'Own', family: 'epoxy', ratio: { a: 2, b: 1, by: 'mass' }, stock, lots }]
    } as never,
    'shop'
  ).value

const asked = (lots: object[], uses: Need['uses'], { stock = 0, spare = 0 } = {}) => {
  const shop = shopWith(lots, stock)
  const resin = chooseResin('own', shop, 'test') as ResinChoice | Problem
  if ('found' in resin) throw new Error(resin.found)
  const need: Need = { group: 'resin', item: 'own', name: 'Own', unit: 'g', uses, spare, note: '', resin }
  return (pour: number) => mixLots([need], shop, { pour })!
}

const two = [
  { amount: 300, day: '2026-12-05', into: { pour: 0 } },
  { amount: 300, day: '2026-12-08', into: { pour: 1 } }
]

describe('lots of what is mixed', () => {
  it('one lot of both parts: it is sure for both pours', () => {
    const of = asked([{ mass: 900, lot: 'K2' }], two)
    for (const pour of [0, 1]) expect(of(pour)).toEqual({ taken: ['K2'], sure: 'K2', offered: ['K2'] })
  })

  it('a lot of each part: said together', () => {
    const of = asked(
      [
        { mass: 500, part: 'A', lot: 'R-1' },
        { mass: 300, part: 'B', lot: 'H-17' }
      ],
      two
    )
    expect(of(1).sure).toBe('R-1 (A), H-17 (B)')
  })

  it('a lot that ends within the second pour is sure for the first alone', () => {
    // 400 g of the lot that expires first: the first pour takes 300 g, the second 100 g and the rest of the other.
    const of = asked(
      [
        { mass: 900, lot: 'new', expires: '2027-06-30' },
        { mass: 400, lot: 'old', expires: '2027-01-31' }
      ],
      two
    )
    expect(of(0)).toEqual({ taken: ['old'], sure: 'old', offered: ['old', 'new'] })
    expect(of(1)).toMatchObject({ taken: ['old', 'new'], sure: null })
  })

  it('what is bought, what has no mark and what has expired is not sure', () => {
    expect(asked([{ mass: 400, lot: 'K2' }], two)(1)).toMatchObject({ taken: ['K2'], sure: null })
    expect(asked([{ mass: 900 }], two)(0)).toEqual({ taken: [], sure: null, offered: [] })
    expect(asked([{ mass: 300, lot: 'K2' }], two.slice(0, 1), { spare: 10, stock: 30 })(0).sure).toBeNull()
    const of = asked([{ mass: 900, lot: 'gone', expires: '2026-12-06' }], two)
    expect(of(0).sure).toBe('gone')
    expect(of(1)).toEqual({ taken: [], sure: null, offered: [] })
  })

  it('nothing is said of what is not mixed', () => {
    const shop = shopWith([])
    expect(mixLots([], shop, { fill: 0 })).toBeNull()
  })
})
