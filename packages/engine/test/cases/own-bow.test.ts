import { describe, expect, it } from 'vitest'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne } from './asked.ts'

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
