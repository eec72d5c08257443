import { describe, expect, it } from 'vitest'
import { BOARDS, planOf } from '../sheets/pieces.ts'

describe('abrasives on the buy list', () => {
  it('discs of each grade: minutes of both faces and all blanks over the life of a disc', () => {
    const { plan } = planOf(BOARDS, {}, { castwright: 1, sander: { minutes: 5 } })
    const { blanks } = plan.quantity
    const minutes = new Map<number, number>()
    // Two minutes of each grade go to changing the disc.
    for (const f of plan.faces)
      for (const g of f.sanding!.grades) minutes.set(g.grit, (minutes.get(g.grit) ?? 0) + g.minutes - 2)
    const lines = plan.buy.filter(l => /^p\d+$/.test(l.item))
    expect(lines.map(l => Number(l.item.slice(1)))).toEqual([...minutes.keys()].sort((a, b) => a - b))
    for (const l of lines) {
      expect(l.need).toBe(Math.ceil((minutes.get(Number(l.item.slice(1)))! * blanks) / 5 - 1e-6))
      expect(l).toMatchObject({ unit: 'piece', group: 'finish' })
      expect(l.name).toBe(`P${l.item.slice(1)} disc of 150 mm`)
    }
  })

  it('prices and stock of the shop by the grade, and pastes only where resin is polished', () => {
    const { plan } = planOf(
      BOARDS,
      {},
      { castwright: 1, prices: [{ item: 'p240', unit: 'piece', pack: 10, price: 6, stock: 2 }] }
    )
    const line = plan.buy.find(l => l.item === 'p240')!
    expect(line.stock).toBe(2)
    // Whole packs that with the stock hold the need and its spare, none to spare.
    expect(line.buy + 2).toBeGreaterThanOrEqual(line.withSpare)
    expect(line.buy + 2 - 10).toBeLessThan(line.withSpare)
    expect(line.cost).toBe((6 * line.buy) / 10)
    expect(plan.buy.some(l => l.item.startsWith('polish'))).toBe(false)
    const clear = planOf({
      castwright: 1,
      name: 'clear',
      outline: { rectangle: [500, 400] },
      pours: [{ id: 'clear', resin: 'deep', depth: 20 }],
      finish: { front: { coat: 'none', gloss: 'polished' } }
    }).plan
    const area = clear.faces[0]!.areaM2
    expect(clear.buy.find(l => l.item === 'polish-1-um')!.need).toBe(Math.ceil(area * 20))
  })
})
