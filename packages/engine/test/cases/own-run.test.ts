import { describe, expect, it } from 'vitest'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

describe('cases of cutters and machines', () => {
  // Given: lapis and turquoise in the fill; minerals of 3 to 5 match hardwood. Assumed: both faces flattened by 1 mm,
  // the stones to the level of the pour.
  const fill = (kind: string, to: number): Given => ({
    piece: {
      ...PLAIN,
      pours: [
        {
          id: 'clear',
          resin: 'deep',
          depth: 20,
          stones: [{ kind, zone: { rectangle: [60, 60] }, from: 8, to }]
        }
      ]
    }
  })

  it('C83 stone over 5 where a face is flattened is refused: diamond, or 2 mm lower', () => {
    for (const kind of ['lapis-chips', 'turquoise-chips']) {
      const found = theOne(fill(kind, 20), 'stones-proud')
      expect(found.severity).toBe('stop')
      expect(found.says).toMatch(/ruins cutter and paper/)
      expect(found.says).toMatch(/keep them 2 mm under it, or grind it with diamond under water/)
      const after = mended(fill(kind, 20), found.fix!)
      expect(asked(after, 'stones-proud')).toEqual([])
      // Flattened to 19 as cast at most: 17 lies 2 mm under it.
      expect(asked(fill(kind, 16.8), 'stones-proud')).toEqual([])
      expect(theOne(fill(kind, 17.5), 'stones-proud').severity).toBe('caution')
    }
    // Malachite, 3.5 to 4, and limestone, 3, are cut.
    expect(theOne(fill('malachite-chips', 20), 'stones-proud').severity).toBe('caution')
  })

  // Given: a heater that cannot warm the garage, 10 to 12 °C; blanks break.
  const cold = (day: number): Given => ({
    piece: { ...PLAIN, cuts: [{ id: 'pocket', face: 'back', shape: { rectangle: [40, 40] }, depth: 8 }] },
    shop: {
      castwright: 1,
      climate: { night: 10, day },
      machine: { x: 800, y: 600 }
    } satisfies ShopDocument
  })

  it('C85 resin below 15 °C is cut lightly, or the blank is warmed', () => {
    const found = theOne(cold(12), 'cold-brittle')
    expect(found.says).toMatch(/Warm the blank through, or take half the depth/)
    expect(asked(cold(16), 'cold-brittle')).toEqual([])
    const pass = (day: number) => worked(cold(day)).machineCuts.cuts.find(c => c.id === 'pocket')!.run!
    expect(pass(12).depthMm).toBeCloseTo(pass(16).depthMm / 2, 9)
    expect(pass(12).chipMm).toBeLessThan(pass(16).chipMm)
    expect(pass(12).why).toContain('cold or thin: light passes')
  })
})
