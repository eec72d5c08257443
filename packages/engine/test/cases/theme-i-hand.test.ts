import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Cuts by hand: what the maker of the case should have been told.

const INCH = 25.4
type Cut = NonNullable<PieceDocument['cuts']>[number]
const cutting = (cut: Cut, more: Partial<Given> = {}, species = 'ash-white'): Given => ({
  piece: { ...PLAIN, timbers: PLAIN.timbers!.map(t => ({ ...t, species })), cuts: [cut] },
  ...more
})

describe('theme I: cuts by hand', () => {
  // A rebate of 3/8 in along the right end, open at the edge.
  const rebate: Cut = {
    id: 'rebate',
    kind: 'rebate',
    face: 'back',
    shape: { rectangle: [20, 220], at: [145, 0] },
    depth: (3 / 8) * INCH,
    way: 'router'
  }

  it('C87 3/8 in by router is three passes of 1/8, end grain first, with a backer where the bit comes out', () => {
    const { doing } = worked(cutting(rebate, {}, 'cherry-black')).hand.find(h => h.id === 'rebate')!
    expect(doing!.passes!.count).toBe(3)
    expect(doing!.passes!.eachMm).toBeCloseTo(INCH / 8, 9)
    expect(doing!.does.join(' ')).toMatch(/End grain first; a backer/)
  })

  it('C87 in timber that tears four passes, none over 3/32 in by more than a hair', () => {
    const { doing } = worked(cutting(rebate, {}, 'sapele')).hand.find(h => h.id === 'rebate')!
    expect(doing!.passes!.count).toBe(4)
    expect(doing!.passes!.eachMm).toBeLessThanOrEqual((3 / 32) * INCH + 0.02)
  })

  // An insert of 3 1/8 in; the largest bit is 2 3/8 in.
  const bore: Cut = {
    id: 'socket',
    kind: 'bore',
    face: 'front',
    shape: { circle: '3 1/8 in', at: [100, 0] },
    depth: 10,
    way: 'drill'
  }
  const shop = {
    castwright: 1 as const,
    hand: { drill: ['2 3/8 in', 10], bits: [{ diameter: 12, length: 30 }] }
  }

  it('C94 79.4 with bits up to 60.3: no bit in the list, rout it along a template', () => {
    const found = theOne(cutting(bore, { shop }), 'hand-way')
    expect(found.severity).toBe('caution')
    expect(found.says).toMatch(/no bit of 79.4; the largest is 60.3/)
    expect(found.says).toMatch(/By router it goes: bush 17, bit 12/)
    const after = mended(cutting(bore, { shop }), found.fix!)
    expect(asked(after, 'hand-way')).toEqual([])
    expect(
      worked(after)
        .hand.find(h => h.id === 'socket')!
        .doing!.does.join(' ')
    ).toMatch(/tape shifts/)
  })

  it('C94 with a bit of that size nothing is said', () => {
    const given = cutting(bore, { shop: { ...shop, hand: { ...shop.hand, drill: ['3 1/8 in'] } } })
    expect(asked(given, 'hand-way')).toEqual([])
  })
})
