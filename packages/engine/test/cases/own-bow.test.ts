import { describe, expect, it } from 'vitest'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

describe('a top that cups', () => {
  // Given: a large resin area left unplaned on one face makes the top cup. Assumed: a skin of 1 to 3 mm.
  const skinned = (skinMm: number): Given => ({
    piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 21 + skinMm }] }
  })

  it('C64 a skin of 2 to 3 mm bows it by more than is let pass; planed off, it is well', () => {
    for (const skinMm of [2, 3]) {
      const found = theOne(skinned(skinMm), 'bow-after')
      expect(found.says).toMatch(
        /in the dampest air .* goes hollow by about .* its timber moves and the resin/
      )
      expect(found.value).toBeGreaterThan(0.5)
      expect(found.band![0]).toBeLessThan(found.value!)
      expect(asked(mended(skinned(skinMm), found.fix!), 'bow-after')).toEqual([])
    }
    expect(asked(skinned(0), 'bow-after')).toEqual([])
  })

  it('C64 one face hardly planed: said once, with the bow that is reckoned', () => {
    const bare = { piece: { ...skinned(2).piece, flatten: { back: 4, front: 0 } } }
    const found = theOne(bare, 'one-face-flattened')
    expect(found.says).toMatch(/pulls the piece hollow, by about \d/)
    expect(asked(bare, 'bow-after')).toEqual([])
  })
})

describe('a top on a frame', () => {
  // Given: steel base and channel irons with no slots. Assumed: elm 900 mm wide, flat-sawn, core 4 % too wet.
  const elm = (held: 'slots' | 'round holes'): Given => ({
    piece: {
      ...PLAIN,
      outline: { rectangle: [1800, 900] },
      timbers: [
        {
          id: 'slab',
          species: 'elm-american',
          outline: { difference: [{ rectangle: [1812, 912] }, { circle: 40 }] },
          thickness: 50,
          moisture: 12.5,
          grain: 0
        }
      ],
      pours: [{ id: 'void', resin: 'deep', depth: 50 }],
      supports: {
        legs: [
          [-800, -440],
          [800, -440],
          [800, 440],
          [-800, 440]
        ],
        held
      }
    }
  })

  it('C58 irons without slots, 4 % and more to dry: slots of ± 6 mm and more', () => {
    const found = theOne(elm('round holes'), 'slots-short')
    const now = worked(elm('round holes')).seasons[0]!
    // Half of 900 mm × 0.00338 per % to the driest air: all of it goes one way.
    const drying = 440 * now.coefficientPerPct! * (now.moisturePct - now.dryPct)
    expect(found.value! / 2 / drying).toBeGreaterThan(0.85)
    expect(found.value! / 2 / drying).toBeLessThan(1.15)
    expect(found.value! / 2).toBeGreaterThan(6)
    expect(found.says).toMatch(/a round hole lets it go nowhere: the top splits/)
    expect(asked(mended(elm('round holes'), found.fix!), 'slots-short')).toEqual([])
  })
})
