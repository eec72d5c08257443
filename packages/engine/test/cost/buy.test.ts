import { describe, expect, it } from 'vitest'
import type { BuyLine } from '../../src/cost/buy-line.ts'
import { cheapestPacks } from '../../src/cost/packs.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { fillDetail } from '../../src/sheets/run-cut.ts'
import { BOARDS, PANEL, planOf, TABLE } from '../sheets/pieces.ts'

// Amounts are checked against sums made here from what the run sheet mixes, not from the list.

const line = (buy: readonly BuyLine[], item: string): BuyLine => {
  const found = buy.filter(l => l.item === item)
  expect(found, item).toHaveLength(1)
  return found[0]!
}

describe('the buy list', () => {
  it('goes by a price that the shop gives for a resin by its name, as for anything else', () => {
    const priced = (prices: object[]) =>
      line(planOf(PANEL, {}, { castwright: 1, prices } as never).plan.buy, 'deep')
    const need = priced([]).withSpare
    expect(priced([]).cost).toBe(null)
    const one = priced([
      { item: 'deep', unit: 'kg', pack: 1, price: 40, days: 6, stock: 0.1, packs: [{ pack: 5, price: 150 }] }
    ])
    // Worked by hand: what is over the 100 g of the shelf, in packs of a kilogram at 40, or of five at 150.
    const kilos = Math.ceil((need - 100) / 1000)
    expect(kilos).toBeLessThan(4)
    expect(one.cost).toBe(40 * kilos)
    expect(one.stock).toBeCloseTo(100, 9)
    expect(one.days).toBe(6)
    expect(priced([{ item: 'deep', unit: 'm', pack: 1, price: 40 }]).note).toContain('per m')
  })

  it('buys resin and pigment of filled lines: what the run sheet mixes for them', () => {
    const { plan, work } = planOf(PANEL)
    const { amounts } = fillDetail(work, 0)
    const g = (name: RegExp) => amounts!.shares.filter(s => name.test(s.name)).reduce((t, s) => t + s.g, 0)
    expect(amounts!.mixedG).toBeGreaterThan(1)
    const resin = line(plan.buy, 'thin')
    expect(Math.abs(resin.need - g(/^Part/))).toBeLessThan(1.2)
    const black = line(plan.buy, 'black-paste')
    // 3 % of the mix, up to the next gram.
    expect(black.need).toBe(Math.ceil(0.03 * amounts!.mixedG))
    expect(black.name).toMatch(/black/)
    const unfilled = planOf({ ...PANEL, markings: PANEL.markings!.map(({ filled: _, ...m }) => m) })
    expect(unfilled.plan.buy.some(l => l.item === 'black-paste' || l.item === 'thin')).toBe(false)
  })

  it('adds what lines take to what a pour takes of the same resin, for every blank', () => {
    const buyOf = (markings: NonNullable<PieceDocument['markings']>) =>
      planOf({ ...BOARDS, markings }).plan.buy
    const marked = {
      face: 'front' as const,
      lines: [
        [
          [-150, 70],
          [150, 70]
        ]
      ] as [number, number][][],
      width: 3,
      resin: 'medium',
      filled: [{ pigment: 'copper-pearl', percent: 4 }]
    }
    const bare = buyOf([])
    const both = buyOf([marked])
    const { plan, work } = planOf({ ...BOARDS, markings: [marked] })
    const fillG = fillDetail(work, 0).amounts!.mixedG * plan.quantity.blanks
    const more = (item: string) => line(both, item).need - line(bare, item).need
    expect(Math.abs(more('medium') - 0.96 * fillG)).toBeLessThan(1.01)
    expect(Math.abs(more('copper-pearl') - 0.04 * fillG)).toBeLessThan(1.01)
  })

  it('buys the pigments of colours poured into each other, each by its share', () => {
    const { plan } = planOf({
      ...TABLE,
      pours: [
        {
          id: 'river',
          resin: 'deep',
          depth: 20,
          marbling: [
            { share: 75, tint: [{ pigment: 'white-paste', percent: 4 }] },
            { share: 25, tint: [{ pigment: 'blue-tint', percent: 2 }] }
          ]
        }
      ]
    })
    const mixedG = plan.pours[0]!.batches!.mixedG
    expect(line(plan.buy, 'white-paste').need).toBe(Math.ceil(0.75 * 0.04 * mixedG))
    expect(line(plan.buy, 'blue-tint').need).toBe(Math.ceil(0.25 * 0.02 * mixedG))
  })

  it('calls everything by its name and rounds up to what is weighed', () => {
    for (const piece of [PANEL, TABLE, BOARDS]) {
      const { plan } = planOf(piece)
      for (const l of plan.buy) {
        expect(l.name, l.item).not.toBe('')
        if (!l.item.includes(': ') && l.group !== 'resin') expect(l.name).not.toBe(l.item)
        const steps = l.unit === 'm' || l.unit === 'm²' ? 100 : 1
        for (const x of [l.need, l.withSpare, l.packs.length > 0 ? 0 : l.buy]) {
          expect(Math.abs(x * steps - Math.round(x * steps)), `${l.item} ${x}`).toBeLessThan(1e-6)
        }
        expect(l.need).toBeGreaterThan(0)
        expect(l.withSpare).toBeGreaterThanOrEqual(l.need)
      }
    }
  })

  it('buys board for base and walls as one where it is the same board, else each', () => {
    const of = (wallBoard: string) => planOf({ ...TABLE, mould: { ...TABLE.mould, wallBoard } }).plan.buy
    const areaM2 = (note: string) =>
      [...note.matchAll(/(\d+) of (\d+) × (\d+) mm/g)].reduce(
        (sum, [, n, a, b]) => sum + (Number(n) * Number(a) * Number(b)) / 1e6,
        0
      )
    const unlike = of('birch-plywood-18')
    const base = line(unlike, 'melamine-particleboard-18')
    expect(base.name).toBe('melamine-faced particleboard 18 mm')
    // 600 × 420 and 10 of margin in walls of 18: 656 × 476.
    expect(base.need).toBe(0.32)
    const walls = line(unlike, 'birch-plywood-18')
    expect(walls.note).toMatch(/^walls /)
    expect(walls.need).toBe(Math.ceil(100 * areaM2(walls.note)) / 100)
    const both = line(of('melamine-particleboard-18'), 'melamine-particleboard-18')
    expect(both.note).toBe(`${base.note}; ${walls.note}`)
    expect(both.need).toBe(Math.ceil(100 * areaM2(both.note)) / 100)
  })

  it('buys an oil alike on both faces once, and coats that differ each', () => {
    const { plan } = planOf(TABLE)
    const oil = line(plan.buy, 'hardwax-oil')
    expect(oil.need).toBe(Math.ceil(plan.faces.reduce((sum, f) => sum + f.needMl, 0)))
    expect(oil.note).toMatch(/^both faces, 2 coats on /)
    const unlike = planOf({
      ...TABLE,
      finish: { front: { coat: 'oil-varnish' }, back: { coat: 'hardwax-oil' } }
    }).plan
    expect(line(unlike.buy, 'hardwax-oil').note).toMatch(/^back, 2 coats/)
    expect(line(unlike.buy, 'oil-varnish').note).toMatch(/^front, 3 coats/)
  })

  it('lists nothing for a mould that is not made, and nothing of which none is used', () => {
    const { plan } = planOf(BOARDS)
    expect(plan.buy.filter(l => l.group === 'mould')).toEqual([])
    expect(plan.buy.some(l => l.need <= 0)).toBe(false)
    expect(
      planOf(TABLE)
        .plan.buy.filter(l => l.group === 'mould')
        .map(l => l.item)
    ).toEqual(['melamine-particleboard-18', 'release-tape', 'silicone-sealant'])
    // An inlay that is poured before its cut is made fills nothing.
    const early = planOf({
      ...BOARDS,
      steps: [
        { do: 'prepare timber', what: 'board' },
        { do: 'pour', what: 'copper' },
        { do: 'cut', what: 'wave' },
        { do: 'deliver' }
      ]
    }).plan
    expect(early.pours[0]!.stack.massG).toBe(0)
    expect(early.buy.some(l => l.group === 'resin')).toBe(false)
  })
})

/** The least price of all counts that hold a need, walked. */
function leastPaid(
  need: number,
  packs: readonly { readonly size: number; readonly price: number }[]
): number {
  let least = Number.POSITIVE_INFINITY
  const walk = (i: number, held: number, cost: number): void => {
    if (cost >= least) return
    if (held >= need * (1 - 1e-12)) least = cost
    else if (i < packs.length)
      for (let n = 0; (n - 1) * packs[i]!.size < need - held; n++)
        walk(i + 1, held + n * packs[i]!.size, cost + n * packs[i]!.price)
  }
  walk(0, 0, 0)
  return least
}

describe('packs against every choice there is', () => {
  it('300 seeded needs: never short, never dearer than the cheapest of all counts', () => {
    let seed = 7
    const draw = (n: number) => {
      seed = (seed * 48_271) % 2_147_483_647
      return seed % n
    }
    for (let k = 0; k < 300; k++) {
      // Whole grams, tenths, and ounces: 28.349523125 g (international yard and pound agreement, 1959).
      const unit = [1, 0.1, 28.349523125][k % 3]!
      const packs = Array.from({ length: 1 + draw(3) }, () => ({
        size: (20 + draw(500)) * unit,
        price: 5 + draw(200)
      }))
      const need = (1 + draw(1800)) * unit
      const got = cheapestPacks(need, packs)
      const paid = got.reduce((sum, p) => sum + p.count * p.price!, 0)
      expect(got.reduce((sum, p) => sum + p.count * p.size, 0)).toBeGreaterThanOrEqual(need * (1 - 1e-12))
      expect(paid, JSON.stringify({ need, packs })).toBe(leastPaid(need, packs))
    }
  })

  it('packs that are no whole grams count as what they hold (by hand)', () => {
    const packs = [
      { size: 333.4, price: 3 },
      { size: 100.1, price: 1 }
    ]
    // 3 × 333.4 = 1000.2 g for 9.00; ten of the small ones hold 1001 g for 10.00.
    expect(cheapestPacks(1000, packs)).toEqual([{ ...packs[0], count: 3 }])
  })

  it('a need of many small steps is never short, and within one pack of the least', () => {
    // 30 kg in steps of a tenth; 300 kg in grams; sizes without a common measure.
    for (const [need, sizes] of [
      [30_000, [333.4, 100.1]],
      [300_000, [701, 1499]],
      [30_000, [Math.PI * 100, Math.E * 1000]],
      [3000, [5000, 453.59237]]
    ] as const) {
      const packs = sizes.map((size, k) => ({ size, price: size * (1 + k / 10) }))
      const got = cheapestPacks(need, packs)
      const paid = got.reduce((sum, p) => sum + p.count * p.price!, 0)
      expect(got.reduce((sum, p) => sum + p.count * p.size, 0)).toBeGreaterThanOrEqual(need)
      // The first is 1 a gram, the least there is.
      expect(paid).toBeGreaterThanOrEqual(need)
      expect(paid).toBeLessThan(need + packs[0]!.price)
    }
  })

  // Closed form: of one size, need / size rounded up.
  it.each([399, 400, 401, 500, 5000])('%i packs of one size are not cut short', count => {
    expect(cheapestPacks(count * 100, [{ size: 100, price: 5 }])).toEqual([{ size: 100, count, price: 5 }])
    expect(cheapestPacks(count * 100 + 1, [{ size: 100, price: null }])).toEqual([
      { size: 100, count: count + 1, price: null }
    ])
  })
})
